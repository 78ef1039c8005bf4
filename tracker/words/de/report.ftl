### Der Bericht einer Woche für die Leitung, auf einer Seite.

week-not-begun = Woche { $week } beginnt am { $first } und hat noch nicht begonnen
report-week = Woche { $week }: { $first } bis { $last }{ $over ->
        [yes] {""}
       *[no] , Stand { $at }
    }
report-done = Abgenommen
report-done-week = { $done } in dieser Woche, geplant { $planned }
report-finish = Ende wie geplant
report-pace = Im Tempo von vier Wochen
report-spent = Teile und Arbeit
report-spent-more = geplant { $planned }; { $week } in dieser Woche
report-on-order = Bestellt
report-on-order-past = von einer vergangenen Woche nicht bewahrt
report-on-order-all = mit dem Ausgegebenen { $both }
report-saved = Erspart im Monat
report-progress = Abgenommene Webmaschinen am Ende jeder Woche
report-months = Je Monat ({ $currency })
report-planned = Geplant
report-so-far = Ausgegeben
report-open = Bestellt
report-line-planned = geplant
report-line-done = getan
report-line-expected = erwartet
report-late = Zu spät
report-risks = In den nächsten vierzehn Tagen in Gefahr
report-none = Nichts ist bekannt.
report-missed = Für diese Woche geplant und nicht abgenommen
report-missed-none = Nichts, was in dieser Woche bis dahin fertig sein sollte, ist offen.
report-missed-loom = { $loom }, fertig { $end }{ $stage ->
        [none] {""}
       *[other] {" "}({ $stage })
    }
report-and-more = und { $more } weitere
report-made = Erstellt am { $at }; Plan { $plan }. Die Geschichte bis dahin ist besiegelt durch
report-no-history = noch kein Siegel
