### Was Achsen, Balken, Linien und Hinweise der Bilder sagen.

chart-stage = Stand
chart-looms = Webmaschinen
chart-iso-week = ISO-Woche
chart-looms-converted = umgebaute Webmaschinen
chart-planned = geplant
chart-done = getan
chart-expected = erwartet
chart-in-week = in der Woche
chart-up-to-end = bis zu ihrem Ende
chart-cost = Kosten
chart-cost-in = Kosten ({ $currency })
chart-amount = Betrag
chart-amount-in = Betrag ({ $currency })
chart-month = Monat
chart-money = Geld
chart-money-in = Geld ({ $currency })
chart-on-order = bestellt
chart-still-to-order = noch zu bestellen
chart-needed = von Terminen gebraucht
chart-needed-left-over = von übrigen Webmaschinen
chart-stock-at-end = Bestand am Ende
chart-to-order = zu bestellen
chart-needed-in-stock = gebraucht, im Lager{ $unit ->
        [none] {""}
       *[other] {" "}({ $unit })
    }
chart-plan = Plan
chart-left-over = übrige Webmaschinen
chart-played = gespielt
chart-loom = Webmaschine
chart-machine-type = Maschinentyp
chart-window = Gelegenheit
chart-conversion = Umbau
chart-beam-out = Kettablauf P10 bis P90
chart-work = Arbeit
chart-new-warp = { $span }, neue Kette { $pause }
chart-person-hours = Arbeitsstunden

## Woraus die Kosten eines Plans bestehen

term-lost-production = verlorene Produktion
term-late-beam-outs = späte Kettabläufe
term-labour = Arbeit
term-parts = Teile
term-saving-foregone = entgangene Ersparnis
term-moved-bookings = verschobene Termine
term-surviving = damit er übersteht (nur gerechnet)

## Was einen Termin auszeichnet

mark-firm = fest
mark-pilot = Pilot
mark-kept = gehalten

## Was Formen und Linien der Zeitachse bedeuten

legend-warp-between = dazwischen kommt die Kette hinein
legend-beam-out = Kettablauf nach heutiger Vorhersage: P10, P50, P90
legend-nobody = niemand baut um
legend-now = jetzt
