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
