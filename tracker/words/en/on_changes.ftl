### The screen Changes.

changes-about = Who did what, in which role and by what; nothing here is ever changed or removed.
    .means = What the screen is for.
changes-loom = Loom
    .means = Field: of which loom the changes are asked for.
changes-hall = Hall
    .means = Field: the hall of that loom.
changes-who = Who
    .means = Field and column: who did it.
changes-since = Since
    .means = Field: from which day on.
changes-number = No.
    .means = Column: the number under which something was done; what has one number was done together.
changes-when = When
    .means = Column: when it was done.
changes-roles = Roles
    .means = Column: in which roles somebody acted.
changes-by = By
    .means = Column: by a command or a screen.
changes-what = What
    .means = Column: what was done.
changes-through = { $by ->
        [command] command
        [screen] screen
       *[other] { $by }
    }
    .means = By what something was done.
changes-told = { $who } (told: { $told })
    .means = Who wrote something down, and who is told to have done it.
changes-more = The newest { $lines } lines; the workbook has more.
    .means = Below a list that is cut.
changes-workbook = All of it as a workbook
    .means = Button: download.
changes-undo = Undo
    .means = Beside what can be undone, and the button that does it.
changes-undo-rest = Undo the others
    .means = Button: what was changed since stays.
changes-undo-not = Leave it as it is
    .means = Button: do not undo.
changes-undo-left = Changed since, so that this stays as it is:
    .means = Above what an undo leaves alone.
