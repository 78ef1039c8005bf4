### Der Bildschirm Laden, neben dem, was ein Laden gefunden hat.

load-about = Nichts wird geschrieben, bevor zu sehen war, was sich ändert. Dieselbe Datei noch einmal geladen ändert nichts.
load-files = Tabellen der Weberei: Webmaschinen, Ketten, Ablesungen, Artikel, Teile, Mannschaften, die Methode …
load-drop = Die eigene Maschinenliste der Weberei hier ablegen: jede Anordnung, Sprache und Einheit. Was ein Plan sonst braucht, kann in die Vorlage unten eingetragen werden.
load-whole = Das sind vollständige Listen: Zeilen der Datenbank, die sie nicht mehr haben, sind zu Ende
load-whole-none = keine: fehlende Zeilen bleiben
load-marked = Kopie von { $file } mit diesen Zellen markiert
load-write-title = Schreiben
load-answer-first = Zuerst die Fragen oben beantworten; vorher wird nichts geschrieben.
load-write = In die Datenbank schreiben
load-leave-out = abgelehnte Zeilen weglassen und den Rest laden
load-templates = Zum Ausfüllen
load-templates-about = Die leere Arbeitsmappe hat jedes Blatt, das geladen werden kann, mit Hinweisen und Auswahl in den Zellen; was nicht gebraucht wird, bleibt leer. Die andere ist, was jetzt geladen ist: ändern und wieder laden.
load-template = Leere Arbeitsmappe mit jedem Blatt
load-export = Alles Geladene als Arbeitsmappe
load-history = Was schon geladen wurde
load-history-none = Noch nichts.
load-history-number = Nummer
load-history-when = Wann
load-history-who = Wer
load-history-what = Was
load-history-undo = Rückgängig
load-undo = rückgängig machen
load-next-plan = Alles für einen Plan ist da: einen auf dem Bildschirm Termine machen.
load-next-lacks = Ein Plan braucht noch { $what }.
load-read-again = Noch einmal lesen
