### Die Seite Durchspielen.

rehearsal-play = Durchspielen
rehearsal-play-help = Es geht weiter, während diese Seite verlassen ist, und wer hinsieht, sieht, wie weit es ist. Beim Anhalten bleibt, was fertig ist; was daraus wird, wird beim Plan abgelegt.
rehearsal-runs-asked = Durchläufe
rehearsal-played = Gespielt wird
rehearsal-held-against = Verglichen mit
rehearsal-worries-asked = Herausfinden, was jede Sorge wert ist (dauert etwa viermal so lang)
rehearsal-about = Der veröffentlichte Plan, von heute bis zum Horizont viele Male durchgespielt; Kettabläufe, Arbeit, Leute, Lieferungen, Fehlschläge und Aufträge werden jedes Mal neu gezogen. Schätzungen, keine Versprechen.
rehearsal-then = dann lässt er sich hier durchspielen
rehearsal-none-yet = Der geltende Plan wurde noch nicht durchgespielt. { $may ->
        [yes] Unten angeben, wie oft er gespielt werden soll.
       *[no] Ein Planer kann ihn durchspielen lassen.
    }
rehearsal-made = Durchgespielt { $at } von { $who }, { $runs ->
        [one] { $runs } Lauf
       *[other] { $runs } Läufe
    }{ $stopped ->
        [yes] , vor dem Ende angehalten
       *[no] {""}
    }
rehearsal-workbook = Alles davon als Arbeitsmappe

## Was dabei herauskam

rehearsal-milestones = Wann so viele Webmaschinen fertig sind
rehearsal-head-looms = Webmaschinen
rehearsal-head-reached = Erreicht
rehearsal-costs = Was es kostet
rehearsal-costs-alt = Linien: Kosten jeder Weise von P10 bis P90; die Tabelle sagt dasselbe
rehearsal-costs-help = Eine Linie geht von P10 bis P90, ihr Punkt ist P50; die gestrichelte Linie ist, was der Plan selbst sagt.
rehearsal-head-mean = Mittel ({ $currency })
rehearsal-head-lost-looms = Davon nicht begonnene ({ $currency })
rehearsal-head-idle = Mannschaften untätig (h)
rehearsal-worries = Was jede Sorge wert ist
rehearsal-head-certain = Wäre es sicher
rehearsal-head-saves = Spart ({ $currency })
rehearsal-head-least = Mindestens ({ $currency })
rehearsal-head-most = Höchstens ({ $currency })
rehearsal-head-sure = Zu 95 % sicher
rehearsal-risks = Gefährdete Termine
rehearsal-head-on-time = Innerhalb eines Tages
rehearsal-head-lost = Verloren
rehearsal-head-held-up = Am meisten aufgehalten durch
rehearsal-others = Die anderen { $many }
