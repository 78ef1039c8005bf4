### Lange Arbeit auf einer Seite: Balken, Anhalten, was daraus wurde.

jobs-begun = Es hat begonnen. Es geht weiter, auch wenn Sie diese Seite verlassen; wer hinsieht, sieht, wie weit es ist.
jobs-at = { $kind ->
        [plan] Der Plan entsteht
        [scenario] Das Szenario wird geplant
        [rehearsal] Der Plan wird durchgespielt
        [tuning] Die Vorgaben werden abgestimmt
       *[reading] Die Listen werden gelesen
    }: { $at }
jobs-began = Begonnen von { $who } am { $at }.
jobs-gaps = Abstand zur Schranke: { $gaps }.
jobs-gap = { NUMBER($gap, maximumFractionDigits: 1) } % nach { NUMBER($seconds, maximumFractionDigits: 0) } s
jobs-stop = Anhalten
jobs-stop-help = Das Beste bis dahin wird behalten.
jobs-stopping = { $who } hat es angehalten; es endet mit dem Besten bis dahin.
jobs-ended = { $kind ->
        [plan] Der Plan
        [scenario] Das Szenario
        [rehearsal] Das Durchspielen
        [tuning] Das Abstimmen
       *[reading] Das Lesen
    }, begonnen von { $who } am { $began }{ $ended ->
        [none] .
       *[other] {", beendet am "}{ $ended }{ $stopped_by ->
            [none] .
           *[other] {", angehalten von "}{ $stopped_by }.
        }
    }
jobs-again = Noch einmal beginnen
