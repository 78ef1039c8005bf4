### Dateien, die sich gar nicht lesen lassen.

cannot-be-read = { $where }: { $why }
file-refused = { $why }
    .hint = Eine Arbeitsmappe geben, die sich lesen lässt.
file-missing = Diese Datei gibt es nicht.
    .hint = Name und Ordner prüfen.
file-is-folder = Das ist ein Ordner.
    .hint = Die Arbeitsmappe darin nennen.
file-unreadable = { $why ->
        [none] Das ist ein Gerät oder eine Leitung, keine Datei.
       *[other] Die Datei lässt sich nicht lesen ({ $why }).
    }
    .hint = { $why ->
        [none] Eine Arbeitsmappe nennen.
       *[other] Den Namen und die Rechte an der Datei prüfen.
    }
file-empty = { $how ->
        [blanks] Die Datei enthält nichts als Leerzeichen.
       *[bytes] Die Datei ist leer (0 Byte).
    }
    .hint = Die Arbeitsmappe noch einmal speichern oder kopieren.
file-too-large = Die Datei hat { NUMBER($mib, maximumFractionDigits: 0) } MiB; die Grenze ist { $limit_mib } MiB{ $kind ->
        [text] {" "}für Text
       *[any] {""}
    }.
    .hint = { $kind ->
        [text] Nur die Listen speichern, oder sie als .xlsx speichern.
       *[any] Eine Kopie speichern, die nur die Listen enthält, ohne Bilder.
    }
not-a-workbook = Das ist keine Arbeitsmappe, sondern { $kind ->
        [pdf] eine PDF-Datei
        [picture] ein Bild
        [archive] ein Archiv
        [zip] ein Zip-Archiv
        [document] ein Textdokument
        [slides] ein Foliensatz
        [other-document] ein anderes Bürodokument
        [database] eine Datenbank
        [web-page] eine Webseite oder XML
        [markup] eine Auszeichnungsdatei
        [plain-text] einfacher Text unter dem Namen einer Arbeitsmappe
        [binary-workbook] eine binäre Arbeitsmappe (.xlsb)
       *[unknown] eine Datei unbekannter Art
    }.
    .hint = { $kind ->
        [web-page] Sie in einer Tabellenkalkulation öffnen und als .xlsx speichern.
        [markup] Sie in einer Tabellenkalkulation öffnen und als .xlsx speichern.
        [binary-workbook] Sie als .xlsx speichern und das einlesen.
        [zip] Es entpacken und die Arbeitsmappe darin nennen.
       *[other] Eine Datei .xlsx, .xls, .ods oder .csv nennen.
    }
password = Die Arbeitsmappe ist mit einem Passwort geschützt.
    .hint = Eine Kopie ohne Passwort speichern und die einlesen.
truncated = { $how ->
        [compound] Die Arbeitsmappe ist abgeschnitten oder beschädigt.
       *[archive] Die Arbeitsmappe ist abgeschnitten: ihr Archiv hat kein Ende.
    }
    .hint = Sie noch einmal kopieren oder herunterladen.
damaged = { $how ->
        [twice] Das Archiv enthält den Teil { $part } zweimal.
        [unusual] Der Teil { $part } ist auf ungewöhnliche Art gepackt.
        [contradiction] Das Archiv widerspricht sich über den Teil { $part }.
        [part] Die Arbeitsmappe ist in ihrem Teil { $part } beschädigt.
        [xml] Die Arbeitsmappe ist beschädigt ({ $why }).
        [unread] Die Arbeitsmappe lässt sich nicht lesen{ $why ->
            [none] : ihre Teile widersprechen einander
           *[other] {" "}({ $why })
        }.
        [columns] Der Text lässt sich nicht in Spalten teilen ({ $why }).
       *[packing] Die Arbeitsmappe ist beschädigt: ihr Archiv lässt sich nicht entpacken.
    }
    .hint = { $how ->
        [columns] Sie noch einmal als CSV UTF-8 speichern.
        [part] Eine frische Kopie holen.
        [xml] Eine frische Kopie holen.
        [packing] Eine frische Kopie holen.
       *[other] Sie in einer Tabellenkalkulation öffnen und noch einmal speichern.
    }
encoding = Der Text hat eine unbekannte Zeichenkodierung.
    .hint = Ihn als CSV UTF-8 speichern.
entities = Der Teil { $part } vereinbart einen Dokumenttyp oder Entitäten, was keine Arbeitsmappe braucht.
    .hint = Sie in einer Tabellenkalkulation öffnen und noch einmal speichern.
zip-bomb = Das Archiv ist nicht, was eine Arbeitsmappe wäre: { $how ->
        [directory] allein sein Verzeichnis hat { NUMBER($mib, maximumFractionDigits: 0) } MiB
        [parts] es enthält { $parts } Teile; die Grenze ist { $limit }
        [ratio] { $part } entpackt sich { NUMBER($ratio, maximumFractionDigits: 0) } zu 1; die Grenze ist { $limit } zu 1
        [overlap] der Teil { $part } überdeckt einen anderen
       *[undeclared] der Teil { $part } enthält mehr, als er angibt
    }.
    .hint = Sie in einer Tabellenkalkulation öffnen und noch einmal speichern.
too-large-unpacked = Entpackt hat die Arbeitsmappe { NUMBER($mib, maximumFractionDigits: 0) } MiB; die Grenze ist { $limit_mib } MiB.
    .hint = Löschen, was unter und neben den Listen steht, und noch einmal speichern.
cells-far-apart = Die gefüllten Zellen reichen bis { $corner }, { $cells } Zellen; die Grenze ist { $limit }.
    .hint = Löschen, was weit weg von den Listen steht, und noch einmal speichern.
too-much-text = Die Texte der Zellen haben zusammen { $chars } Zeichen; die Grenze ist { $limit }.
    .hint = Die Texte kürzen, die viele Zellen wiederholen.
