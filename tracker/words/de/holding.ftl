### Termine lassen, wo sie sind: was sich halten lässt und was das Halten kostet.

holds-refused = { $first }{ $more ->
        [0] {""}
       *[other] {" "}(und { $more } weitere, unten genannt)
    }; nichts wurde gespeichert
    .hint = sie weglassen, oder die genannte Grenze aufheben
cannot-hold = Webmaschine { $loom } kann nicht bleiben{ $start ->
        [none] {""}
       *[other] {" "}am { $start }
    }: { $why }
hold-not-booked = der veröffentlichte Plan hat keinen Termin für sie
hold-not-to-plan = sie ist nicht zu planen: nach dem Erfassten ist sie fertig, in Arbeit, zurückgestellt oder ausgenommen
hold-firm = ihr fester Termin ist am { $start }
hold-past = dieser Zeitpunkt ist vorbei
hold-no-work = ihre Arbeit ist nicht mehr bekannt{ $why ->
        [none] {""}
       *[other] : { $why }
    }
hold-no-choice = die Methode hat keinen Umbau mit ihrer Wahl mehr
hold-no-crew = keine Mannschaft des Berufs „{ $trade }“ arbeitet dann in { $hall }
hold-hours-end = die Zeit der Mannschaften endet, bevor sie fertig ist
hold-protected = die Webmaschine ist bis einschließlich { $until } geschützt
hold-ruled-out = ihre Gelegenheit wurde ausgeschlossen
    .hint = sie wieder zulassen oder sie nicht halten
hold-closed = sie stünde über einen geschlossenen Tag offen (Vorgabe „open over closed days“)
hold-unwatched = jemand, den ihr Wiederanlauf danach braucht, wäre nicht bei der Arbeit (Schritte nach dem Wiederanlauf, Vorgabe „watch“)
hold-short = { $short }
stay-dearer = sie übrig zu lassen würde weniger kosten
hold-no-window = { $expected ->
        [none] kein Kettablauf, keine Stehzeit und keine anzuhaltende Kette ist für sie vor dem Horizont bekannt
       *[other] { $beam ->
            [yes] ihr Kettablauf wird nun am { $expected } erwartet, zu weit weg von diesem Beginn
           *[no] ihre nächste Gelegenheit beginnt nun am { $expected }
        }
    }
hold-pilot = { $at ->
        [none] ihr Typ, { $type }, hat keinen Piloten, der bis dahin { $days } Tage gelaufen sein kann (soak)
       *[other] der Pilot von { $type } ist erst am { $at } { $days } Tage gelaufen (soak)
    }
nothing-to-keep = kein Plan ist veröffentlicht, also gibt es keinen Termin zu halten
    .hint = einen veröffentlichen
hold-and-release = Webmaschine { $loom } kann nicht zugleich gehalten und freigegeben werden
calm-below-0 = { $moves } Verschiebungen mehr als nötig: gemeint sind 0 oder mehr

## Was das Halten kostet

moves-fewest = { $moves ->
        [0] Kein Termin wird verschoben
        [one] 1 Termin wird verschoben
       *[other] { $moves } Termine werden verschoben
    }; { $fewest ->
        [0] nach den Daten, wie sie sind, muss es keiner
       *[other] kein Plan nach diesen Daten verschiebt weniger als { $fewest }
    }.
moves-made = { $moves ->
        [0] Kein Termin wird verschoben.
        [one] 1 Termin wird verschoben.
       *[other] { $moves } Termine werden verschoben.
    }
keeping-costs = Der Plan, der alles verschieben darf, verschiebt { $moves } und kostet { MONEY($costs, $currency) } weniger, den Preis der Verschiebungen nicht gerechnet; jeder liegt höchstens { MONEY($open, $currency) } über dem besten, den es geben kann.
keeping-free = Der Plan, der alles verschieben darf, verschiebt { $moves } und würde nicht weniger kosten.
keeping-unknown = Die Suche wurde angehalten, bevor der Plan gefunden war, der alles verschieben darf; was das Halten kostet, ist also nicht bekannt.
keeping-leaves = Der wenigen Verschiebungen wegen übrig gelassen, vom Plan, der alles verschieben darf, aber eingeplant: { $looms }.
