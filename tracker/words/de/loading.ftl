### Einlesen: warum nichts geschrieben wurde.

load-question = 1 Frage ist offen, nichts wurde geschrieben: { $where }{ $what }
load-questions = { $many } Fragen sind offen, nichts wurde geschrieben: { $places }.
    .screen = Sie unten beantworten.
load-refusal = 1 Ablehnung, nichts wurde geschrieben: { $where }{ $what }
    .screen = Oder die Zeile weglassen und den Rest einlesen.
load-refusals = { $many } Ablehnungen, nichts wurde geschrieben: { $places }.
    .screen = Sie ausbessern, oder die Zeilen weglassen und den Rest einlesen.
method-refused = die Methode ist abgelehnt; die geltende Fassung bleibt
demo-not-loaded = die Arbeitsmappen des Musters lassen sich nicht in { $database } einlesen: { $why }
demo-not-alone = { $database } enthält mehr als die Musterweberei
    .hint = einen anderen Ordner nennen

## Was eingelesen wurde

loaded = Eingelesen: { $added ->
        [one] 1 Zeile
       *[other] { $added } Zeilen
    } hinzugefügt, { $changed } geändert{ $retired ->
        [0] .{ $added ->
            [0] { $changed ->
                [0] {" "}Nichts hatte sich geändert.
               *[other] {""}
            }
           *[other] {""}
        }
       *[other] , { $retired } aus der Liste genommen.
    }
would-load = Würde einlesen: { $added ->
        [one] 1 Zeile
       *[other] { $added } Zeilen
    } hinzugefügt, { $changed } geändert{ $retired ->
        [0] {""}
       *[other] , { $retired } aus der Liste genommen
    }. Nichts wurde geschrieben.
value-changed = { $sheet } { $row }: { $heading } { $old } → { $new }
more-values-changed = … und { $many ->
        [one] 1 weiterer Wert
       *[other] { $many } weitere Werte
    } geändert
row-retired = { $sheet } { $row }: { $done ->
        [yes] herausgenommen
       *[no] würde herausgenommen
    }; in der Liste steht sie nicht mehr.
rows-not-in-files = { $sheet }: { $many ->
        [one] 1 Zeile
       *[other] { $many } Zeilen
    } der Datenbank stehen nicht in diesen Dateien; sie bleiben.
method-version-first = Fassung { $version } der Methode{ $version ->
        [1] {" "}ist die erste.
       *[other] .
    }
method-version = Fassung { $version } der Methode ändert den Umfang von { $looms ->
        [0] keiner Webmaschine
        [one] 1 Webmaschine
       *[other] { $looms } Webmaschinen
    }:
method-changes = {"  "}{ $what }
stock-given-up = Es ist weniger da, als vorgehalten war: { $looms }.
    .hint = Die Teilesätze zeigen, was jeder Webmaschine fehlt.
loom-gives-up = Webmaschine { $loom } gibt { $parts } ab
marked-none = Keine gekennzeichnete Kopie wurde geschrieben: es gibt keine Befunde.
marked-written = Die gekennzeichnete Kopie { $file } wurde geschrieben.
still-to-load = { $table ->
        [looms] eine Maschinenliste
        [operations] eine Methode
       *[other] { $table }
    } (Blatt { $sheet })
