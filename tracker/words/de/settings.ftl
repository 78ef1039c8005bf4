### Einstellungen über die Zeit: Alarme mit ihren Zahlen, was die Webmaschinen lehrten, Kontrollen.

setting-outside = Webmaschine { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: { QUANTITY($value, $unit) } liegt außerhalb der Grenzen, { $limits }
limits-between = { QUANTITY($low) } bis { QUANTITY($high, $unit) }
limits-least = mindestens { QUANTITY($low, $unit) }
limits-most = höchstens { QUANTITY($high, $unit) }
setting-not-target = Webmaschine { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: es ist { OWN($value) }, die Methode sagt { OWN($target) }
setting-moved = Webmaschine { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: seit { $since } um { QUANTITY($size, $unit) } verstellt, nun { QUANTITY($value, $unit) }; zwei Ablesungen derselben Sache unterscheiden sich in der Regel um weniger als { QUANTITY($repeatability, $unit) }
setting-drifting = Webmaschine { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: wandert um { QUANTITY($per_day, $unit) } am Tag, { QUANTITY($size, $unit) } über { $readings } Ablesungen, nun { QUANTITY($value, $unit) }; { $days_to_limit ->
        [none] keine Grenze liegt voraus
        [0] es ist an seiner Grenze oder darüber hinaus
        [one] es erreicht seine Grenze in etwa einem Tag
       *[other] es erreicht seine Grenze in etwa { $days_to_limit } Tagen
    }
setting-read-again = Webmaschine { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: die letzte Ablesung, { QUANTITY($value, $unit) }, liegt { QUANTITY($size, $unit) } neben den früheren; noch einmal ablesen
setting-rising-or-falling = Webmaschine { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: ändert sich über { $readings } Ablesungen in eine Richtung, zusammen um { QUANTITY($size, $unit) }, nun { QUANTITY($value, $unit) }; wie fein es sich ablesen lässt, ist nicht bekannt
setting-out-of-family = Webmaschine { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: { QUANTITY($value, $unit) } liegt { QUANTITY($size, $unit) } neben der Mitte { QUANTITY($median, $unit) } der { $looms } Webmaschinen ihres Typs und ihrer Artikel
setting-unsteady = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } wird an Webmaschinen wie { $loom } unstet eingestellt: Western-Electric-Regel { $rule } über { $values } Werte, Mitte { QUANTITY($centre, $unit) }, Grenzen { QUANTITY($low) } bis { QUANTITY($high, $unit) }; dies zählt nicht zum Anteil falscher Alarme, der eingehalten wird
setting-taught = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } an { $machine_type }{ $family ->
        [none] {""}
       *[other] {" "}mit Artikeln von { $family }
    }: { $looms } abgenommene Webmaschinen wurden im Mittel auf { QUANTITY($proposed, $unit) } eingestellt, die Methode sagt { QUANTITY($target, $unit) }; eine Änderung der Methode erwägen
settings-read = { $series } Einstellungen von { $looms ->
        [one] einer Webmaschine
       *[other] { $looms } Webmaschinen
    }, Stand { $at }: { $alarms ->
        [0] kein Alarm
        [one] ein Alarm
       *[other] { $alarms } Alarme
    }
alarms-quiet = { $alarms ->
        [one] ein Alarm wurde schon gesehen und bleibt
       *[other] { $alarms } Alarme wurden schon gesehen und bleiben
    } still, bis sich der Wert ändert
alarm-seen = { $alarm }; gesehen von { $who } am { $at }: { OWN($why) }
alarms-marked-seen = { $alarms ->
        [one] Ein Alarm
       *[other] { $alarms } Alarme
    } von Webmaschine { $loom } { $alarms ->
        [one] ist als gesehen vermerkt; er bleibt
       *[other] sind als gesehen vermerkt; sie bleiben
    } still, bis sich der Wert ändert
alarms-none-to-see = Webmaschine { $loom } hat keinen Alarm, den niemand gesehen hat
alarms-seen-without-why = es fehlt, was zu dem Alarm zu sagen ist
    .hint = sagen, was gefunden wurde oder getan wird, etwa: Schraube nachgezogen, Freitag neu ablesen
alarms-seen-alone = Alarme werden für eine Webmaschine zur Zeit als gesehen vermerkt, und nichts anderes wird dabei gefragt
settings-rate = Von den Alarmen, bei denen Zufall mitspielt, ist im Mittel einer von zehn falsch; in einer ruhigen Halle zeigt eine Durchsicht von zehn etwas, in zehn wöchentlichen Durchsichten die Hälfte der ruhigen Hallen. Das gilt, wenn die Wiederholbarkeit in der Methode stimmt.
settings-without-repeatability = die Methode gibt keine Wiederholbarkeit von { $settings } an
    .hint = ohne sie wird ein Wandern spät gesehen; sie im Blatt Sollwerte angeben, Spalte Wiederholbarkeit.
visits-none = keine Kontrolle ist fällig
    .hint = Kontrollen folgen der Abnahme einer Webmaschine
settings-none = noch ist kein Wert einer Einstellung erfasst
visits-unreadable = Vorgabe visits: { OWN($text) } ist keine Liste von Tagen nach der Abnahme
    .hint = als 1, 7, 30 schreiben
proposal-written = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } an { $machine_type }: aus { QUANTITY($target, $unit) } wird { QUANTITY($proposed, $unit) }, die Grenzen gehen mit
proposal-unclear = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } an { $machine_type }: vorgeschlagen ist { QUANTITY($proposed, $unit) }, aber damit ist nicht genau eine Zeile des Blatts Sollwerte gemeint, oder Webmaschinen schlagen Verschiedenes dafür vor
    .hint = die Zeile in der Arbeitsmappe von Hand ändern
proposal-none = keine Änderung der Methode, die eindeutig wäre, ist vorgeschlagen
