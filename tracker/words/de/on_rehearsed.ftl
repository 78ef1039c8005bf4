### Was mehrere Bildschirme vom Durchspielen zeigen.

rehearsal-kept = der Plan, eingehalten
rehearsal-replanned = der Plan, jeden Montag neu gemacht
rehearsal-never-cut = der Plan, keine Kette je abgeschnitten
rehearsal-rule-of-thumb = kein Plan, Kettabläufe, wie sie kommen
rehearsal-cost-row = Kosten
rehearsal-done-by = { $looms ->
        [one] { $looms } Webmaschine fertig bis
       *[other] { $looms } Webmaschinen fertig bis
    }
rehearsal-sure = sicher
rehearsal-not-settled = nicht geklärt; etwa { $runs ->
        [one] { $runs } Lauf mehr täte es
       *[other] { $runs } Läufe mehr täten es
    }
rehearsal-p50-says = P50 { MONEY($cost, $currency) }
rehearsal-promise = Nicht früher versprechen als
rehearsal-promise-more = { $looms ->
        [one] { $looms } Webmaschine
       *[other] { $looms } Webmaschinen
    }, in 80 von 100 Läufen; { $half } in der Hälfte davon
rehearsal-never = nie
rehearsal-most-done = Fertig vor dem Horizont
rehearsal-some-of = { $some } von { $all }
rehearsal-at-least = mindestens, in 80 von 100 Läufen
rehearsal-cost-p50 = Kosten, P50
rehearsal-cost-range = { MONEY($low) } bis { MONEY($high) } in 80 von 100 Läufen
rehearsal-plan-says = Der Plan sagt
rehearsal-all-by = alle bis { $day }
