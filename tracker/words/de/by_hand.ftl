### Zeilen, die an einem Bildschirm eingetippt werden.

typed-lacks = { $heading } ist leer
    .hint = nötig ist { $possible }
typed-impossible = { $heading } „{ $given }“ ist nicht möglich
    .hint = möglich ist { $possible }
typed-row = { $row }: { $what }
typed-refused = { $rows ->
        [one] 1 Zeile passt nicht
       *[other] { $rows } Zeilen passen nicht
    }; nichts wurde geschrieben
    .hint = berichtigen oder leeren, was genannt ist
row-gone = { $sheet } hat keine Zeile { $row } mehr
cannot-take-out = Zeilen von { $sheet } werden nicht herausgenommen
told-without-forecast = für Webmaschine { $loom } gibt es keine Vorhersage, also kann kein Kettablauf gemeldet werden: { $why }
    .hint = zuerst eine Ablesung ihrer Kette eintragen
told-too-late = die { NUMBER($left, maximumFractionDigits: 0) } m auf Webmaschine { $loom } reichen nicht bis { $at }, außer sie steht
    .hint = die Zeit eintragen, in der sie steht, oder eine Ablesung, wenn eine neue Kette drauf ist
