### Einstellungen im Lauf der Zeit, auf ihrem Bildschirm und auf dem einer Webmaschine.

settings-of-loom = Einstellungen im Lauf der Zeit
settings-no-series = Von dieser Webmaschine wurde noch keine Einstellung gelesen.
settings-none-to-record = Hier wurde noch nichts eingestellt; die ersten Werte werden auf ihrer Karte gemeldet.
settings-record = Besuch oder Wert festhalten
settings-record-it = Festhalten
settings-value = Wert
settings-why = Warum gelesen wurde
settings-seen-why = Was dazu zu sagen ist
settings-seen-it = Gesehen
settings-setting = Einstellung
settings-side = Seite
settings-found = Vorgefunden
settings-set = Eingestellt
settings-now = Jetzt
settings-read-at = Gelesen
settings-target = Soll
settings-low = Von
settings-high = Bis
settings-apart = Links weniger rechts
settings-seen = Alarme der Webmaschine { $loom } gesehen
settings-why-says = { $why ->
        [found] vorgefunden, vor dem Umbau
        [set] beim Umbau eingestellt
        [adjusted] seither nachgestellt
        [visit] bei einem Besuch
       *[other] im Vorbeigehen gelesen
    }
screen-settings = Einstellungen
settings-alarms = Alarme
settings-visits-due = Besuche fällig
settings-known = Gelesene Einstellungen
settings-kind = Art des Alarms
settings-all-kinds = alle Arten
settings-no-alarm = ✓ Kein Alarm.
settings-visits = Besuche nach der Abnahme
settings-no-visit = Kein Besuch ist offen.
settings-after = Tage nach der Abnahme
settings-due-on = Fällig
settings-state = Stand
settings-over-time = Eine Einstellung im Lauf der Zeit
settings-which = Welche
settings-article = Artikel
settings-all = Alle Einstellungen
settings-taught = Was abgenommene Webmaschinen lehrten
settings-nothing-taught = Noch nichts: es braucht fünf abgenommene Webmaschinen eines Typs.
settings-family = Artikelfamilie
settings-looms = Webmaschinen
settings-median = In der Mitte
settings-spread = Streuung
settings-proposed = Vorgeschlagen
settings-take-over = Übernehmen
settings-on-looms = { $looms ->
        [one] an { $looms } Webmaschine
       *[other] an { $looms } Webmaschinen
    }
settings-overdue = { $many } überfällig
settings-method = Methode, Fassung { $version }
settings-of-kind = { $kind }: { $many }
settings-visit-state = { $state ->
        [overdue] ■ überfällig
        [due] ▲ fällig
       *[other] ○ kommt noch
    }
settings-chart = Linie: { $setting } im Lauf der Zeit, mit den Grenzen
settings-take-over-asks = Das Soll von { $setting }{ $side ->
        [none] {""}
       *[other] {" "}({ $side })
    } wird { $proposed } statt { $target } für { $type }, die Grenzen gehen mit: eine neue Fassung der Methode.
word-outside = außerhalb
word-moved = verstellt
word-drifting = wandernd
word-read-again = noch einmal lesen
word-rising-or-falling = steigend oder fallend
word-out-of-family = anders als ihre Familie
word-family-unsteady = Familie unruhig
