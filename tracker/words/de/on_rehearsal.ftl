### Die Seite Durchspielen.

rehearsal-play = Durchspielen
rehearsal-play-help = Es geht weiter, während diese Seite verlassen ist, und wer hinsieht, sieht, wie weit es ist. Beim Anhalten bleibt, was fertig ist; was daraus wird, wird beim Plan abgelegt. Der Plan, der jeden Montag neu gemacht wird, braucht je Lauf eine halbe Minute: gegen eine andere Weise wird er höchstens { $most }-mal gespielt, und wo er zuerst gespielt wird, wird keine Sorge gewogen.
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
rehearsal-grounds = Worauf es beruht
rehearsal-head-varies = Was schwankt, und wie sehr
rehearsal-head-whose = Genommen für
rehearsal-head-from = Kommt aus
rehearsal-head-records = Aufzeichnungen

## Damit er übersteht

surviving = Damit der Plan übersteht
surviving-about = Vorgaben, mit denen ein Plan Platz lässt für das, was in einer Halle geschieht, in denselben Welten ausprobiert: einzeln, zusammen, und unter Plänen, die gleich viel kosten. Das Beste wird in Welten beurteilt, die nicht mitgeredet haben. Nichts ändert sich, bis Sie es übernehmen.
surviving-made = Abgestimmt { $at } von { $who }
surviving-ways = Geplant mit
surviving-paper = Auf dem Papier ({ $currency })
surviving-hall = In der Halle ({ $currency })
surviving-more = Mehr als ohne ({ $currency })
surviving-from = Von ({ $currency })
surviving-to = Bis ({ $currency })
surviving-tune-on = Welten zum Ausprobieren
surviving-judge = Andere Welten zum Beurteilen
surviving-tune = Abstimmen
surviving-tune-help = Etwa zwanzig Pläne werden gemacht und durchgespielt; so lange dauert es. Es geht weiter, auch wenn Sie diese Seite verlassen; wer anhält, behält, was verglichen wurde.
surviving-accept = Übernehmen
surviving-accept-asks = Die Vorgaben werden { $ways }, und der Plan damit wird gemacht, was so lange dauert wie ein Plan. Er gilt erst, wenn Sie ihn unter Termine veröffentlichen.
