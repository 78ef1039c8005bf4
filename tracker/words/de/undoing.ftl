### Rückgängig machen, was geladen oder aufgeschrieben wurde, und Änderungen, deren Grund sich verschoben hat.

## Rückgängig machen

word-undo = rückgängig machen
undone = { $number } ist rückgängig gemacht: { $back }{ $left ->
        [0] {""}
        [one] ; eines bleibt, da es seither geändert wurde
       *[other] ; { $left } andere bleiben, da sie seither geändert wurden
    }.
    .terminal = `beamslot undo { $by }` nimmt das zurück.
undo-question = { $number } rückgängig machen, von { $who } am { $at }: { $back }?
undo-so-many = { $what ->
        [values] { $n ->
            [one] ein Wert wie vorher
           *[other] { $n } Werte wie vorher
        }
        [rows-in] { $n ->
            [one] eine Zeile wieder eingesetzt
           *[other] { $n } Zeilen wieder eingesetzt
        }
        [rows-out] { $n ->
            [one] eine Zeile herausgenommen
           *[other] { $n } Zeilen herausgenommen
        }
        [withdrawn] { $n ->
            [one] eine Zeile der Aufzeichnungen zurückgezogen
           *[other] { $n } Zeilen der Aufzeichnungen zurückgezogen
        }
        [counting] { $n ->
            [one] eine zurückgezogene Zeile gilt wieder
           *[other] { $n } zurückgezogene Zeilen gelten wieder
        }
        [entries] { $n ->
            [one] eine Gegenbuchung im Lager
           *[other] { $n } Gegenbuchungen im Lager
        }
        [held] { $n ->
            [one] ein Teil zurückgelegt wie vorher
           *[other] { $n } Teile zurückgelegt wie vorher
        }
       *[answers] { $n ->
            [one] eine Antwort wie vorher
           *[other] { $n } Antworten wie vorher
        }
    } ({ $of }{ $more ->
        [0] {""}
       *[other] {" "}…
    })
undo-method-back = die Methode wie in Fassung { $version }
undo-why = { $number } rückgängig gemacht
undo-unknown = unter der Nummer { $number } wurde nichts getan
    .hint = die Nummern stehen in der Liste der Änderungen
    .terminal = `beamslot audit` zeigt die Nummern
undone-already = { $number } wurde schon rückgängig gemacht: von { $who } am { $at }, unter der Nummer { $by }
    .hint = { $by } rückgängig machen bringt es zurück
undo-never = { $kind ->
        [plan] { $number } hat einen Plan gemacht oder veröffentlicht; das wird nicht rückgängig gemacht: Leute, Teile und Bestellungen richten sich danach
        [rehearsal] { $number } hat einen Plan durchgespielt und nichts geändert
        [person] { $number } hat ein Konto geändert; das wird nicht rückgängig gemacht: wer ausgesperrt war, käme wieder herein
        [door] { $number } ist jemand an der Anmeldung und hat nichts geändert
       *[nothing] { $number } hat nichts geändert, was zurückkommen könnte
    }
    .hint = { $kind ->
        [plan] einen früheren Plan wieder veröffentlichen oder neu planen
        [person] das Konto neu ändern
       *[nothing] es ist nichts zu tun
    }
    .terminal = { $kind ->
        [plan] `beamslot plan --number N --publish` veröffentlicht einen früheren wieder
        [person] `beamslot people` ändert Konten
       *[nothing] es ist nichts zu tun
    }
undo-nothing-left = von { $number } ist nichts mehr rückgängig zu machen{ $moved ->
        [none] {""}
       *[other] : { $moved }
    }
undo-changed-since = { $number } ist nicht rückgängig gemacht, da { $many ->
        [one] eines davon seither geändert wurde
       *[other] { $many } davon seither geändert wurden
    }: { $first }{ $more ->
        [0] {""}
       *[other] {" "}(und { $more } weitere)
    }. Es wurde nichts geschrieben.
    .hint = Die anderen können ohne das rückgängig gemacht werden.
    .terminal = `beamslot undo { $number } --rest` macht die anderen rückgängig.
undo-moved = { $what }: damals { $then }, jetzt { $now }{ $who ->
        [none] {""}
       *[other] {" "}(von { $who } am { $at })
    }
undo-value = { $sheet } ({ $row }){ $field ->
        [none] {""}
       *[other] {" "}{ $field }
    }
undo-there = da
undo-gone = weg
undo-there-again = wieder da
undo-rested-on = gebraucht von { $by }
undo-history = dem, was damit getan wurde
undo-recorded-since = seither aufgeschrieben
undo-withdrawn = zurückgezogen
undo-stage = Stand der Webmaschine { $loom }
undo-stock = Bestand von { $part }
undo-held = { $part }, zurückgelegt für Webmaschine { $loom }
undo-method = Fassung der Methode
undo-answer = Antwort auf { $question }
undo-parts-stay = { $parts } bleibt ohne Bestand in der Teileliste, da das Lagerbuch es nennt
undo-method-stays = die Methode bleibt, da es vorher keine gab
    .hint = eine andere laden
undo-plan-again = Plan { $plan } wurde seither veröffentlicht, nach dem, was jetzt rückgängig gemacht ist
    .hint = neu planen
deed-undone = { $number } rückgängig gemacht

## Änderungen, deren Grund sich verschoben hat

ground-moved = nicht gespeichert, da sich inzwischen geändert hat, was hier zu sehen war: { $first }{ $more ->
        [0] {""}
       *[other] {" "}(und { $more } weitere)
    }. Es wurde nichts geschrieben.
    .hint = Was getippt wurde, steht noch da; noch einmal abgeschickt, tritt es an die Stelle des anderen.
ground-roles = Rollen von { $person }
ground-plan = veröffentlichter Plan
