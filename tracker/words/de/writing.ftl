### Was geschrieben wird: Dateien, Arbeitsmappen, Standardausgabe, der Port der Bildschirme.

target-ending = { $target }: der Name muss auf { $endings } enden
cannot-write = { $target } lässt sich nicht schreiben: { $why }{ $where ->
        [none] {""}
       *[other] {" "}in { $where }, wo es zuerst entsteht
    }
target-is-database = es ist die Datenbank
    .hint = eine andere Datei nennen
folder-missing = es gibt keinen Ordner { $folder }
target-is-folder = es ist ein Ordner
target-no-file = es ist keine gewöhnliche Datei
target-denied = keine Berechtigung
target-there = { $name } ist schon da{ $how ->
        [changed] , und nicht, wie dieses Programm es geschrieben hat
       *[unmarked] {""}
    }
    .hint = eine andere Datei nennen
cannot-make-folder = der Ordner { $folder } lässt sich nicht anlegen: { $why }
not-told = { $what }; alles andere ist getan
output-refused = auf die Standardausgabe lässt sich nicht schreiben: { $why }

## Arbeitsmappen

sheet-too-large = Blatt { $sheet }: { $rows } Zeilen × { $columns } Spalten sind mehr, als eine Arbeitsmappe fasst ({ $most_rows } × { $most_columns })
number-not-held = { QUANTITY($value) } ist keine Zahl, die eine Arbeitsmappe fasst
text-too-long = der Text „{ $begins }“… hat { $length } Zeichen; eine Zelle fasst { $most }
    .hint = ihn kürzen
one-table-to-csv = { $target }: eine .csv fasst eine Tabelle
    .hint = eine von { $tables } nennen, oder eine .xlsx schreiben
marked-over-itself = { $target }: die gekennzeichnete Kopie würde { $what ->
        [workbook] die Arbeitsmappe selbst
       *[file] die Datei selbst
    } überschreiben
    .hint = ihr einen anderen Namen geben
marked-values-only = { $target } enthält eine Kopie der Werte von { $file } mit den Kennzeichen: eine solche Datei lässt sich selbst nicht kennzeichnen, also bleiben Formate und Formeln zurück.
marked-impossible = { $file }: von dieser Arbeitsmappe lässt sich keine gekennzeichnete Kopie machen ({ $why })
marked-ending = { $target }: der Name der gekennzeichneten Kopie von { $file } muss auf { $ending } enden
marked-endings = { $target }: der Name der gekennzeichneten Kopien muss auf .xlsx enden
report-alone = „{ $name }“ ist ein Bericht für sich
    .hint = ihn allein ausgeben
table-unknown = es gibt keine Tabelle „{ $name }“; die Tabellen sind { $tables }, die Berichte { $reports }
loom-field-unknown = Webmaschinen haben kein „{ $name }“; sie haben { $names }

## Die Bildschirme

port-impossible = Port { $port } liegt nicht zwischen 1 und 65535
port-denied = Port { $port } an { $address } darf dieser Benutzer nicht verwenden
port-taken = Port { $port } an { $address } ist belegt
screens-missing = die Bildschirme sind nicht eingerichtet
    .hint = das Paket noch einmal einrichten
screens-ended = die Bildschirme endeten beim Starten
    .hint = was darüber steht, sagt, warum
screens-slow = die Bildschirme starteten nicht innerhalb von { $seconds } s
