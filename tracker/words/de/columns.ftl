### Was eine Zelle einer Spalte enthalten darf.

possible-number = { $kind ->
        [integer] eine ganze Zahl
        [fraction] ein Anteil
       *[number] eine Zahl
    }{ $bounds ->
        [from-to] {" von "}{ $low } bis { $high }
        [at-least] {" von mindestens "}{ $low }
        [at-most] {" von höchstens "}{ $high }
       *[any] {""}
    }{ $unit ->
        [none] {""}
       *[other] {" "}{ $unit }
    }
possible-day = ein Tag von { OWN($first) } bis { OWN($last) }, etwa 2027-01-31
possible-value = { $kind ->
        [date] ein Tag, etwa 2027-01-31
        [moment] ein Zeitpunkt, etwa 2027-01-31 06:00
        [time] eine Uhrzeit, etwa 06:00
        [weekdays] Wochentage, etwa Mo-Fr oder Mo, Mi
        [yes_no] ja oder nein
        [any] ein Wert
       *[text] ein Text
    }
limit = { QUANTITY($value, $unit) }
one-or-other = { $one } oder { $other }
zone-name = ein IANA-Name wie { $near }
currency-sign = ein Kürzel oder Zeichen ohne Ziffern, etwa { $example }
