### Die Vorführung: was sie tut und was sie am Ende sagt.

demo-reading = die Arbeitsmappen werden eingelesen
demo-forecasting = die Kettabläufe werden vorhergesagt
demo-playing = sechs Wochen werden durchlebt
demo-writing = die Arbeitsmappen werden geschrieben
demo-read = { NUMBER($rows, useGrouping: 0) } Zeilen in { $tables } Tabellen von { $workbooks } Arbeitsmappen eingelesen; { $findings ->
        [one] 1 Befund
       *[other] { $findings } Befunde
    }, nichts abgelehnt.
demo-scoped = Umfang von { $looms } Webmaschinen bestimmt; { $survey } müssen erst in der Halle angesehen werden.
demo-booked = { $many } Umbauten von { $first } bis { $last } eingeplant; { $left_over ->
        [one] 1 Webmaschine bleibt
       *[other] { $left_over } Webmaschinen bleiben
    } übrig.
demo-proof = Beweis: { $status }; Kosten { MONEY($cost, $currency) }, kein Plan kann weniger als { MONEY($bound, $currency) } kosten (Abstand { NUMBER($gap, style: "percent", minimumFractionDigits: 3, maximumFractionDigits: 3) }); gefunden in { NUMBER($seconds, minimumFractionDigits: 1, maximumFractionDigits: 1) } s.
demo-weeks = Sechs Wochen weiter, { $now }: { $signed_off } Webmaschinen abgenommen, { $run_in } im Einlauf, { $in_work } in Arbeit, { $stopped } abgebrochen; { NUMBER($rows, useGrouping: 0) } Zeilen erfasster Arbeit und Ablesungen eingelesen. Neu geplant:
demo-there = Die Vorführung ist schon in { $database } und steht auf { $now }; nichts wurde noch einmal eingelesen oder geplant.
demo-wrote = { $files } geschrieben; die Datenbank ist { $database }.
