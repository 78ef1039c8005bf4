### Was zu einem Szenario zu sagen ist.

heads-change-nothing = { $crew } übernimmt einen Umbau zur Zeit, und dafür { $heads ->
        [one] reicht ein Kopf
       *[other] reichen die { $heads } Leute
    }: mehr Leute ändern nur, was eine Stunde kostet.
    .hint = Eine weitere Mannschaft würde etwas ändern: [[crew]] in einer Szenariodatei.

## Was nicht passt

scenario-missing = es gibt keine Szenariodatei { $file }
scenario-encoding = Szenario { $file } ist kein Text in UTF-8
    .hint = es als TOML-Datei in UTF-8 speichern
scenario-unreadable = Szenario { $file } lässt sich nicht lesen: { $why }
scenario-not-toml = Szenario { $file } lässt sich nicht lesen: { $why }
    .hint = diese Zeile ausbessern
scenario-named-twice = Szenario { $file }: ein anderes heißt auch „{ $name }“
    .hint = ihm einen eigenen Namen geben
scenario-refused = Szenario{ $file ->
        [none] {""}
       *[other] {" "}{ $file }
    }{ $place ->
        [none] {""}
       *[other] : { $place }
    }{ $where ->
        [none] {""}
       *[other] {" "}{ $where }
    }{ $how ->
        [lacks] {" "}
       *[wrong] :{" "}
    }{ $what }
scenario-entry-unknown = „{ $name }“ ist keines von name, { $entries }
scenario-entry-shape = { $name } { $value } ist nicht möglich
    .hint = es als Zeilen unter { $place } schreiben
scenario-name = name { $value } ist nicht möglich
    .hint = einen Text von einer Zeile mit 1 bis { $most } Zeichen angeben
scenario-value = { $value } ist nicht möglich
    .hint = möglich ist { $possible }
scenario-twice = { $field } ist zweimal angegeben
    .hint = eines davon weglassen
scenario-lacks = hat kein { $field }
    .hint = nötig ist { $possible }
scenario-contradicts = { $what }
    .hint = eines davon berichtigen
scenario-field-unknown = { $kind ->
        [term] es gibt keine Vorgabe „{ $name }“; die Vorgaben sind { $names }
       *[field] es gibt kein Feld „{ $name }“; die Felder sind { $names }
    }
scenario-nobody = { $kind ->
        [crew] es gibt keine Mannschaft
        [tool] es gibt kein Werkzeug
        [trade] es gibt keinen Beruf
       *[part] es gibt kein Teil
    } „{ $name }“; es gibt { $names }
scenario-new-order = Bestellung { $order } von { $part } ist neu und hat keine Menge
    .hint = eine Zahl von mindestens 0 angeben
scenario-shift = { $crew }: Schichtbeginn und Schichtende sind beide { $at }
    .hint = eines davon berichtigen

## Ein Szenario in Kraft gesetzt

scenario-put-in-force = Das Szenario { $scenario } gilt: { $values ->
        [one] ein Wert steht
       *[other] { $values } Werte stehen
    } in den Daten der Weberei, durch Änderung { $number }.
    .hint = *Änderungen* nimmt es zurück.
scenario-order-left = Bestellung { $order } von { $part } bleibt, wie sie ist: die Daten der Weberei haben von einer Bestellzeile, was ihr Lieferant gesagt hat
    .hint = Auf *Teilesätze und Bedarf* eingeben, sobald es gesagt oder bestellt ist.
scenario-leaves-out = vom Szenario { $scenario } bliebe Bestellzeile { $orders } draußen
    .hint = sagen, dass der Lieferant es gesagt hat, oder hinnehmen, dass sie draußen bleibt
scenario-in-force-already = { $left ->
        [none] die Daten der Weberei haben schon alles vom Szenario { $scenario }
       *[other] vom Szenario { $scenario } bleibt nichts zu schreiben: zu Bestellzeile { $left } hat der Lieferant nicht gesagt, was es annimmt
    }
scenario-no-order = das Szenario hat keine Bestellung { $order }; es hat { $orders }
