### Der Bildschirm Änderungen.

changes-about = Wer was getan hat, in welcher Rolle und womit; hier wird nie etwas geändert oder entfernt.
changes-loom = Webmaschine
changes-hall = Halle
changes-who = Wer
changes-since = Seit
changes-number = Nr.
changes-when = Wann
changes-roles = Rollen
changes-by = Womit
changes-what = Was
changes-through = { $by ->
        [command] Befehl
        [screen] Bildschirm
       *[other] { $by }
    }
changes-told = { $who } (getan von: { $told })
changes-more = Die neuesten { $lines } Zeilen; die Arbeitsmappe hat mehr.
changes-workbook = Alles als Arbeitsmappe
changes-undo = Rückgängig machen
changes-undo-rest = Die anderen rückgängig machen
changes-undo-not = So lassen
changes-undo-left = Seither geändert, darum bleibt es, wie es ist:
