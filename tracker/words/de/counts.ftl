### Wie viele es sind von dem, was in Zellen, Überschriften und Kennzahlen steht. Ein Satz, dessen Verb der Zahl folgt, hat unten
### seinen eigenen Code.

so-many-beam-outs = { $n ->
        [one] { $n } Kettablauf
       *[other] { $n } Kettabläufe
    }
so-many-bookings = { $n ->
        [one] { $n } Termin
       *[other] { $n } Termine
    }
so-many-cells = { $n ->
        [one] { $n } Zelle
       *[other] { $n } Zellen
    }
so-many-days = { $n ->
        [one] { $n } Tag
       *[other] { $n } Tage
    }
so-many-doubts = { $n ->
        [one] { $n } Zweifel
       *[other] { $n } Zweifel
    }
so-many-findings = { $n ->
        [one] { $n } Befund
       *[other] { $n } Befunde
    }
so-many-lines = { $n ->
        [one] { $n } Zeile
       *[other] { $n } Zeilen
    }
so-many-looms = { $n ->
        [one] { $n } Webmaschine
       *[other] { $n } Webmaschinen
    }
so-many-notes = { $n ->
        [one] { $n } Hinweis
       *[other] { $n } Hinweise
    }
so-many-parts = { $n ->
        [one] { $n } Teil
       *[other] { $n } Teile
    }
so-many-questions = { $n ->
        [one] { $n } Frage
       *[other] { $n } Fragen
    }
so-many-reasons = { $n ->
        [one] { $n } Grund
       *[other] { $n } Gründe
    }
so-many-rows = { $n ->
        [one] { $n } Zeile
       *[other] { $n } Zeilen
    }
so-many-runs = { $n ->
        [one] { $n } Lauf
       *[other] { $n } Läufe
    }
so-many-tables = { $n ->
        [one] { $n } Tabelle
       *[other] { $n } Tabellen
    }
so-many-times = { $n ->
        [one] { $n } Mal
       *[other] { $n } Male
    }
so-many-refused = { $n } abgelehnt

## Sätze, deren Verb der Zahl folgt

looms-fall = { $looms ->
        [one] { $looms } Webmaschine fällt aus
       *[other] { $looms } Webmaschinen fallen aus
    }
bookings-rely = { $bookings ->
        [one] { $bookings } Termin verlässt sich
       *[other] { $bookings } Termine verlassen sich
    } auf { $orders ->
        [one] { $orders } Bestellung
       *[other] { $orders } Bestellungen
    }, die noch nicht aufgegeben sind, die erste bis { $first }
picks-listed = { $kits ->
        [one] { $kits } Teilesatz
       *[other] { $kits } Teilesätze
    }, { $lines ->
        [one] { $lines } Zeile
       *[other] { $lines } Zeilen
    }; { $short ->
        [one] { $short } Teilesatz ist
       *[other] { $short } Teilesätze sind
    } lückenhaft.
left-over-since = { $looms ->
        [one] { $looms } Webmaschine, die der Plan übrig lässt, wurde seither begonnen, zurückgestellt oder ausgenommen; ein neuer Plan nimmt sie aus seinen Kosten.
       *[other] { $looms } Webmaschinen, die der Plan übrig lässt, wurden seither begonnen, zurückgestellt oder ausgenommen; ein neuer Plan nimmt sie aus seinen Kosten.
    }
nothing-refused = Nichts: { $rows ->
        [one] { $rows } Zeile ist
       *[other] { $rows } Zeilen sind
    } abgelehnt, und { $others ->
        [yes] von den übrigen sagt die Datenbank schon dasselbe
       *[no] andere gibt es nicht
    }.
refusals-stand = { $refusals ->
        [one] { $refusals } Ablehnung steht
       *[other] { $refusals } Ablehnungen stehen
    } dagegen. Bessern Sie die Zellen aus und geben Sie die Datei noch einmal, oder lassen Sie diese Zeilen weg.
backup-holds = { $rows ->
        [one] { $rows } Zeile
       *[other] { $rows } Zeilen
    } in { $tables ->
        [one] { $tables } Tabelle
       *[other] { $tables } Tabellen
    }
