### The screen Method.

method-about = Version { $version }, in force since { $since }. What was begun before a new version keeps its own.
    .means = Below the title of Method.
method-not-loaded = No method is loaded yet: operations, parts, settings and checks of a conversion. Fill in the sheets Operations, Kit lines, Setpoints and Checks of the empty workbook on Load, or drop your own below.
    .means = While there is no method.
method-sheet-empty = { $sheet } has no rows.
    .means = Instead of the table of a sheet.
method-review = Review
    .means = A tab: what the review finds.
method-review-none = The review finds nothing to say, by the looms, parts and crews of today.
    .means = Instead of the findings.
method-review-about = What the review of the method finds by the looms, parts, tools and crews of today.
    .means = Above the findings.
method-versions = Versions
    .means = A tab.
method-version-head = Version
    .means = Heading.
method-since = In force since
    .means = Heading.
method-change = Another version
    .means = Heading.
method-change-about = Download it, edit it in a spreadsheet, and drop it here. It is shown what it changes, row by row and for which looms in hours and parts, before anything counts.
    .means = Below it.
method-download = The method as a workbook
    .means = Button.
method-upload = A new version of the method
    .means = Field for files.
