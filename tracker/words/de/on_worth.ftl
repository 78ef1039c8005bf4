### Der Bildschirm Was es gebracht hat.

worth-cause = Grund der Stillstände
worth-all-causes = alle Gründe
head-article = Artikel
worth-all-articles = alle Artikel
worth-from = Zeiträume ab
worth-to = Zeiträume bis
worth-saved = Erspart im Monat, gemessen
worth-claimed-figure = Angegeben im Monat
worth-of-looms = von { $looms ->
        [one] { $looms } Webmaschine
       *[other] { $looms } Webmaschinen
    }
worth-pays-back = Zahlt sich aus in
worth-months = { $months } Monaten
worth-never = nie
worth-counted-on = Pläne rechnen mit
worth-share = { $percent } %
worth-counted-on-help = der Ersparnis, die die Maschinenliste angibt
worth-verdicts = Urteile
worth-changes = Änderungen mit ihrem 95-%-Bereich
worth-changes-alt = Punkte mit Bereichen: Änderung jeder Größe, verglichen und schlicht vorher und nachher
worth-stepped = gegen dieselben Wochen noch nicht umgebauter Webmaschinen
worth-plain-figure = schlicht vorher und nachher, nicht zu glauben
worth-change-axis = Änderung (%)
head-figure = Größe
head-stepped = Gegen dieselben Wochen
head-by-loom = Jede für sich, ohne die Jahreszeit
head-plain = Schlicht vorher und nachher
worth-savings = Was es erspart
worth-believe = Wie weit man es glauben darf
worth-loom-by-loom = Jede Webmaschine für sich: { $what }
head-before = Vorher
head-after = Nachher
head-change = Änderung, 95-%-Bereich
worth-report = Bericht auf zwei Seiten (PDF)
worth-take-over = Pläne damit rechnen lassen
worth-would-take-over = Pläne rechnen mit { $before } % der angegebenen Ersparnis. Gemessen sind { $share } %.
worth-take-over-act = Gemessene Ersparnis übernehmen
worth-take-over-sure = Die Vorgabe share of saving wird { $share } %, und jeder Plan rechnet von da an damit; die Änderung wird festgehalten.
