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
