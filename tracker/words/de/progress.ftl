### Wie weit das Programm ist, und was sich verspätet.

late-start = Webmaschine { $loom } sollte am { $start } beginnen und ist nicht als begonnen erfasst.
late-start-follows = Ihre Mannschaft gilt als frei. Sie als in Arbeit erfassen, oder neu planen.
late-end = Webmaschine { $loom } ist in Arbeit; fertig sein sollte sie am { $end }.
late-end-follows = Ihre Mannschaft ist noch gebunden, und die Webmaschine steht. Ihr Ende erfassen, oder warum es weitergeht.
late-beam-out = Die Kette von Webmaschine { $loom } müsste nach ihrer Ablesung vom { $read } am { $out } abgelaufen sein.
late-beam-out-follows = Nachsehen, ob sie es ist, und eine neue Ablesung einlesen; bis dahin ist von dieser Webmaschine nichts sicher.
late-warps-more = { $more ->
        [one] 1 weitere Kette müsste
       *[other] { $more } weitere Ketten müssten
    } nach den Ablesungen abgelaufen sein.
    .hint = Neue Ablesungen einlesen.
late-receipt = Bestellung { $order }: { QUANTITY($quantity, $unit) } von { $part } waren am { $due } fällig und sind nicht gekommen.
late-receipt-follows = { $reckoned ->
        [no] Sie lassen sich nicht bestellen, also darf sich niemand auf sie verlassen.
       *[yes] Gerechnet wird mit ihnen am { $comes }, als würden sie heute bestellt.
    } { $many ->
        [0] Kein eingeplanter Teilesatz braucht das Teil.
        [one] Der Teilesatz von Webmaschine { $looms } braucht das Teil.
       *[other] Die Teilesätze der Webmaschinen { $looms } brauchen das Teil.
    } Den Zugang buchen oder den Tag berichtigen.
pace = { $how ->
        [ahead] Das Programm hat nicht begonnen, also gibt es noch kein Tempo.
        [soon] Das Tempo zeigt sich, wenn das Programm eine Woche gelaufen ist.
        [never] In den letzten { $days } Tagen wurde nichts abgenommen; bei diesem Tempo endet es nie.
       *[told] { $done ->
            [one] { $done } Webmaschine wurde
           *[other] { $done } Webmaschinen wurden
        } in den letzten { $days } Tagen abgenommen; bei diesem Tempo { $to_come ->
            [one] ist die eine, die noch kommt,
           *[other] sind die { $to_come }, die noch kommen,
        } am { $finish } fertig.
    }
pace-done = Alle Webmaschinen des Plans sind abgenommen.
reference-plan = Geplant heißt, was Plan { $number } vom { $made } sagt, der erste, der veröffentlicht wurde{ $how ->
        [chosen] , wie die Vorgabe ihn wählt
       *[first] {""}
    }.
reference-not-there = Die Vorgabe reference plan nennt Plan { $asked }, der nie veröffentlicht wurde.
    .hint = { $numbers ->
        [none] Noch ist kein Plan veröffentlicht; die Vorgabe leer lassen.
       *[other] Veröffentlicht sind { $numbers }; leer heißt der erste davon.
    }
labour-untimed = { $many ->
        [one] 1 Umbau wurde
       *[other] { $many } Umbauten wurden
    } ohne Zeit erfasst und nicht gezählt.
finish-without-plan = Noch ist kein Plan veröffentlicht.
finish-without-booking = Keine Webmaschine ist eingeplant.
finish = Der letzte eingeplante Umbau endet am { $on }{ $how ->
        [none] {""}
        [on] , am Ziel
        [after] , { $days ->
            [one] 1 Tag
           *[other] { $days } Tage
        } nach dem Ziel
       *[before] , { $days ->
            [one] 1 Tag
           *[other] { $days } Tage
        } vor dem Ziel
    }{ $left_over ->
        [0] {""}
        [one] ; 1 Webmaschine ist übrig und nicht in diesem Datum
       *[other] ; { $left_over } Webmaschinen sind übrig und nicht in diesem Datum
    }.
unbooked-stage = { $stage } am { $since }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
unbooked-left-over = übrig: { $why }
unbooked = nicht im veröffentlichten Plan

## Was schiefgehen kann

risk-kit = Webmaschine { $loom }, Beginn { $start }: ihrem Teilesatz fehlt { $parts }, und nichts Bestelltes bringt das rechtzeitig.
risk-reading = Webmaschine { $loom }, Beginn { $start }: wann ihre Kette abläuft, sagt eine Ablesung vom { $read }.
    .hint = Neu ablesen.
risk-rehearsed = Webmaschine { $loom }, Beginn { $start }: beginnt in { $percent } von 100 durchgespielten Läufen wie geplant ({ $cause }).
risk-order = { QUANTITY($quantity, $unit) } { $part } bis { $by } bestellen; sonst { $many ->
        [one] fällt ein Termin aus
       *[other] fallen { $many } Termine aus
    }: { $looms }.
