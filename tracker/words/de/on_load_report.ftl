### Was der Bildschirm Einlesen von Dateien zeigt. Antworten gibt man in den englischen Wörtern, die in der Liste stehen.

load-recognised = Erkannt
load-passed-over = { $rows ->
        [one] { $rows } Zeile übergangen: Titel, Summen, Bemerkungen
       *[other] { $rows } Zeilen übergangen: Titel, Summen, Bemerkungen
    }
load-changes = Würde sich ändern
load-new-and-changed = { $added } neu, { $changed } geändert
load-unchanged = { $unchanged } unverändert
load-to-answer = Zu beantworten
load-not-before = vorher wird nichts geschrieben
load-refused = Abgelehnt

## Befunde

load-findings = Befunde
load-no-findings = Keine: jede Zelle ließ sich ohne Zweifel lesen.
load-show = Zeigen
load-severity = { $severity ->
        [refused] ✕ abgelehnt
        [doubt] ? Zweifel
       *[note] i Hinweis
    }
load-severity-count = { $severity } ({ $many })
load-head-severity = Schwere
load-head-file = Datei
load-head-sheet = Blatt
load-head-cell = Zelle
load-head-heading = Überschrift
load-head-raw = Steht da
load-head-understood = Verstanden
load-head-what = Was
load-head-to-do = Was tun
load-answer-above = Oben beantworten.

## Erkannte Tabellen

load-tables = Erkannte Tabellen
load-table-named = { $table }: { $file }, Blatt { $sheet }
load-table-rows = ({ $added } neu, { $changed } geändert, { $unchanged } unverändert)
load-headings-in = { $way ->
        [column] Überschriften in Spalte { $place }.
       *[row] Überschriften in Zeile { $place }.
    }
load-head-is = Ist
load-head-unit = Einheit
load-head-certainty = Sicherheit
load-account = Jede Zelle belegt
load-head-cells = Zellen
load-head-in-headings = In Überschriften
load-head-taken = Übernommen
load-head-own = Eigene Überschriften
load-head-aside = Beiseite
load-head-aside-why = Beiseite gelegt, warum und wo

## Was sich ändern würde

load-would-change = Was sich ändern würde
load-new-rows = Neue Zeilen: { $rows }.
load-rows-of = { $many } × { $sheet }
load-head-row = Zeile
load-head-value-of = Wert von
load-head-old = Alt
load-head-new = Neu
load-would-end = { $sheet }: würde herausgenommen: { $rows }.
load-same-already = Nichts: die Datenbank sagt schon dasselbe.
load-no-rows = Nichts: es gibt keine Zeilen.
load-new-looms = Neue Webmaschinen: { $looms }.
load-new-method = Eine neue Fassung der Methode{ $version ->
        [none] {""}
       *[other] {" "}{ $version }
    }:
load-head-method-row = Zeile der Methode
load-head-method-looms = Was sie für welche Webmaschinen ändert

## Antworten

load-questions-title = Fragen
load-use-answers = Diese Antworten verwenden
load-something-else = etwas anderes
load-answer-other = Etwas anderes beantworten
load-heading-or-sheet = Überschrift oder Blatt
load-choose-or-write = wählen oder schreiben
load-answer = Antwort
load-answer-such-as = inch, day first, own column, ignore, as written …
load-use-answer = Diese Antwort verwenden
load-answers-given = Gegebene Antworten: { $answers }.
load-answer-for = „{ $answer }“ für { $about }
load-forget-answers = Diese Antworten vergessen
load-no-answer = Noch ist keine Antwort gegeben: erst eine wählen oder schreiben.
load-write-answer = Etwas anderes: eine Einheit, eine Reihenfolge, das Feld, das die Spalte ist, oder ignore
load-only-where = nur wo keine der Antworten oben passt
