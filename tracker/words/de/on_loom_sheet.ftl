### Alles über eine Webmaschine.

sheet-title = Webmaschine { $loom }{ $hall ->
        [none] {""}
       *[other] {", "}{ $hall }
    }
sheet-row = Reihe { $at }
sheet-place = Platz { $at }
sheet-as-of = Stand { $at }
sheet-since = seit { $at }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
sheet-stage = Stand
sheet-next-beam-out = Nächster Kettablauf, P50
sheet-not-known = nicht bekannt
sheet-kit = Teilesatz
sheet-converted = Umgebaut
sheet-by-nobody = Mannschaft und Minuten wurden nicht festgehalten
sheet-starts = Umbau beginnt
sheet-not-booked = nicht gebucht
sheet-minutes-not-taken = Minuten nicht genommen
sheet-conversion = Umbau
sheet-crew = Mannschaft
sheet-begun = begonnen
sheet-ended = beendet
sheet-not-recorded = nicht festgehalten
sheet-on-loom = an der Maschine
sheet-window = Gelegenheit
sheet-by-method = nach Methode, Fassung
sheet-booking = Termin
sheet-start = Beginn
sheet-end = Ende
sheet-beam-out-then = Kettablauf, als geplant wurde
sheet-none = keiner
sheet-work = Arbeit
sheet-cost = Kosten des Termins
sheet-not-in-plan = Der veröffentlichte Plan kennt diese Webmaschine nicht.
sheet-then = der Termin dieser Webmaschine steht dann hier
sheet-chances = Gelegenheiten zum Umbau
sheet-beam-outs = Kommende Kettabläufe
sheet-no-window = Kein Kettablauf und kein Stillstand vor dem Ende des Horizonts.
sheet-window-head = Gelegenheit
sheet-p10 = P10
sheet-p50 = P50
sheet-p90 = P90
sheet-runs-out = Läuft ab
sheet-comes-in = Kommt
sheet-other-dates = Andere Termine und was sie mehr kosten
sheet-choices = Gewählt
sheet-start-head = Beginn
sheet-end-head = Ende
sheet-more = Mehr
sheet-needs = Was sie braucht und warum
sheet-work-for = Arbeit für
sheet-step = Schritt
sheet-operation = Arbeitsgang
sheet-where = Ort
sheet-minutes = Minuten
sheet-who = Wer
sheet-tool = Werkzeug
sheet-torque = Drehmoment
sheet-caution = Vorsicht
sheet-why = Warum
sheet-part = Teil
sheet-quantity = Menge
sheet-comes-back = Kommt zurück
sheet-target = Soll
sheet-low = Von
sheet-high = Bis
sheet-setting = Einstellung
sheet-side = Seite
sheet-unit = Einheit
sheet-check = Prüfung
sheet-kind = Art
sheet-tab-operations = Arbeitsgänge
sheet-tab-parts = Teile
sheet-tab-settings = Einstellungen
sheet-tab-checks = Prüfungen
sheet-values = Was bekannt ist und woher es kommt
sheet-value-of = Wert von
sheet-value = Wert
sheet-file = Datei
sheet-sheet = Blatt
sheet-cell = Zelle
sheet-entered = Eingetragen
sheet-entered-by = Von
sheet-entered-here = hier eingetragen
sheet-correct = Einen Wert berichtigen
sheet-correct-why = Warum, oder woher man es weiß
sheet-correct-it = Berichtigen
sheet-kit-state = { $state ->
        [complete] vollständig
        [issued] ausgegeben
        [reserved] reserviert
        [short] unvollständig
       *[none] keiner
    }
sheet-by = von { $crew }, { $minutes }
sheet-ends = endet { $at }
sheet-reading = Ablesung von { $at }{ $before ->
        [yes] {", "}vor dem Umbau
       *[no] {""}
    }{ $state ->
        [ok] {""}
        [stale] {", "}veraltet
        [overdue] {", "}überfällig
       *[other] {", "}{ $state }
    }
sheet-lacks = es fehlt { $parts }
sheet-crew-named = Mannschaft { $crew }
sheet-person-hours = { $hours } Personenstunden
sheet-no-booking = Kein Termin im veröffentlichten Plan; die Webmaschine ist { $stage }.
sheet-left-over = Der veröffentlichte Plan lässt diese Webmaschine übrig: { $why }.
sheet-left-over-cost = Sie übrig zu lassen kostet { $cost }.
sheet-window-state = { $kind }{ $state ->
        [ok] {""}
        [stale] , Ablesung veraltet
        [overdue] , Ablesung überfällig
       *[other] , Ablesung { $state }
    }
sheet-more-windows = und { $more } weitere bis zum Ende des Horizonts
sheet-to-survey = Zu besichtigen: { $what } an der Maschine nachsehen und einlesen; davon hängt die Arbeit ab.
sheet-work-says = Maschine steht { $stopped }, vorher an der Werkbank { $bench }, nach dem Wiederanlauf { $after }{ $later ->
        [none] {""}
       *[other] , danach an der Werkbank { $later }
    }; { $labour } Personenstunden (wohl { $low } bis { $high }): { $trades }. Teile { $parts }.
sheet-unknown = Nicht bekannt: { $what }.
sheet-new-value = Was es ist{ $unit ->
        [none] {""}
       *[other] {" "}({ $unit })
    }; leer = nicht bekannt
correct-without-why = Ein Wert wird nur mit Begründung berichtigt
correct-no-heading = Die Maschinenliste hat keine Spalte { $heading }
