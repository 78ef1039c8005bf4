### What a cell of a column may hold.

possible-number = { $kind ->
        [integer] a whole number
        [fraction] a share
       *[number] a number
    }{ $bounds ->
        [from-to] {" from "}{ $low } to { $high }
        [at-least] {" of at least "}{ $low }
        [at-most] {" of at most "}{ $high }
       *[any] {""}
    }{ $unit ->
        [none] {""}
       *[other] {" "}{ $unit }
    }
    .means = A cell holds a number within bounds.
possible-day = a day of { OWN($first) } to { OWN($last) }, such as 2027-01-31
    .means = A cell holds a day of these years.
possible-value = { $kind ->
        [date] a day such as 2027-01-31
        [moment] a moment such as 2027-01-31 06:00
        [time] a time of day such as 06:00
        [weekdays] weekdays such as Mon-Fri or Mon, Wed
        [yes_no] yes or no
        [any] a value
       *[text] a text
    }
    .means = What a cell holds by its kind.
limit = { QUANTITY($value, $unit) }
    .means = The lowest or highest value of a column.
one-or-other = { $one } or { $other }
    .means = Either of two.
zone-name = an IANA name such as { $near }
    .means = A cell holds a time zone.
currency-sign = a code or sign without figures, such as { $example }
    .means = A cell holds a currency.
