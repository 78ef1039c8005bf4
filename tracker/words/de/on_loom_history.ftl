### Was an einer Webmaschine geschah und wie es gemeldet wird.

history = Was geschah
history-stage = Stand
history-since = Seit
history-who = Wer
history-reason = Grund
history-card = Auf ihrer Karte melden →
history-record = Festhalten, wo sie steht
history-why = Warum (nötig für abgebrochen, aufgeschoben, ausgelassen und außer der Reihe)
history-record-it = Festhalten
history-withdraw = Zuletzt Festgehaltenes zurücknehmen
history-withdraw-why = Warum es ein Irrtum war
history-withdraw-it = Zurücknehmen
history-day = Tag; leer = jetzt
history-time = Uhrzeit
history-stops = Stillstände
history-from = Von
history-to = Bis
history-cause = Ursache
history-stops-many = Stillstände
history-picks = Schüsse
history-all-causes = alle Ursachen
history-remarks = Bemerkungen zu ihren Umbauten
history-remark-line = { $at ->
        [none] {""}
       *[other] { $at }, {""}
    }{ $about ->
        [none] ganzer Umbau
       *[other] { $about }
    }: { $text }
history-no-stops = Von dieser Webmaschine sind keine Stillstände festgehalten.
history-waste = Abfallkante
history-no-waste = Von dieser Webmaschine ist keine Abfallbreite festgehalten.
history-record-waste = Abfallbreite festhalten
history-width = Abfallbreite (mm)
history-side = Seite
history-side-says = { $side ->
        [left] links
        [right] rechts
       *[none] beide Seiten
    }
history-no-bobbins = An dieser Webmaschine wurde keine Dreherspule gewogen.
history-record-bobbins = Festhalten, was auf einer Dreherspule übrig ist
history-grams = Gramm übrig
history-at = Wann
history-record-stops = Stillstände einer Zeit festhalten
history-deeds = Wer was tat
history-when = Wann
history-what = Was
history-undo = Rückgängig
history-more = Alles →
history-stopped-asks = Der Umbau der Webmaschine { $loom } wird abgebrochen; der nächste Plan bucht ihn neu.
history-withdraw-asks = Dass Webmaschine { $loom } { $stage } ist, zählt nicht mehr, auch nicht, was mit ihm festgehalten wurde; es bleibt als zurückgenommen in der Geschichte.
