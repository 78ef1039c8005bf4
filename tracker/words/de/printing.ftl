no-plan-no-cards = kein Plan ist veröffentlicht, also gibt es noch keine Karten
    .hint = Erst einen Plan veröffentlichen.
not-booked-no-card = Webmaschine { $loom } ist im veröffentlichten Plan nicht eingeplant, also hat sie keine Karte
    .hint = Erst ihre Termine ansehen.
card-not-as-booked = Webmaschine { $loom } lässt sich nicht mehr umbauen, wie sie eingeplant war: ihre Liste oder die Methode hat sich seither geändert
    .hint = Neu planen.
no-cards-of-crew = Mannschaft { $crew } hat in Woche { $week } keinen Umbau; { $crews } haben einen
no-cards = in Woche { $week } beginnt kein Umbau
    .hint = Eine andere Woche wählen.
no-week = { $text } ist keine Woche wie 2027-W02
cards-made = { $cards ->
        [one] eine Karte
       *[other] { $cards } Karten
    }{ $week ->
        [none] {""}
       *[other] {" "}der Woche { $week }
    }
cards-without = keine Karte für { $looms }: ihre Liste oder die Methode hat sich geändert, seit sie eingeplant wurden
    .hint = Neu planen.
