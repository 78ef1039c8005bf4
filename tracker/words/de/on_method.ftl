### Der Bildschirm Methode.

method-about = Fassung { $version }, in Kraft seit { $since }. Was vor einer neuen Fassung begonnen wurde, behält seine.
method-not-loaded = Noch ist keine Methode geladen: Arbeitsgänge, Teile, Einstellungen und Prüfungen eines Umbaus. Die Blätter Arbeitsgänge, Teilesatz, Sollwerte und Prüfungen der leeren Arbeitsmappe unter Einlesen ausfüllen oder eine eigene unten ablegen.
method-sheet-empty = { $sheet } hat keine Zeilen.
method-review = Prüfung
method-review-none = Die Prüfung findet nichts, nach den Maschinen, Teilen und Mannschaften von heute.
method-review-about = Was die Prüfung der Methode nach den Maschinen, Teilen, Werkzeugen und Mannschaften von heute findet.
method-versions = Fassungen
method-version-head = Fassung
method-since = In Kraft seit
method-change = Eine andere Fassung
method-change-about = Herunterladen, in einer Tabelle ändern und hier ablegen. Bevor etwas zählt, ist zu sehen, was sich ändert: Zeile für Zeile und für welche Maschinen in Stunden und Teilen.
method-download = Die Methode als Arbeitsmappe
method-upload = Eine neue Fassung der Methode
