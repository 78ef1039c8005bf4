### Umfang: warum eine Webmaschine noch keine Arbeit hat, was eine geänderte Methode ändert, was erfasste Umbauten lehren.

to-survey = aufzunehmen: { $unknown }
attribute-unknown = { $heading } unbekannt
attribute-not-comparable = { $heading } = { $value } nicht vergleichbar
attributes-unknown = unbekannt: { $headings }
no-work-on-loom = die Methode gibt ihr keinen Arbeitsgang an der Webmaschine
no-alternative-left = keine Möglichkeit bleibt von { $choices }
choice-in-windows = { $choice } ({ $windows ->
        [none] jede Gelegenheit
       *[other] window = { $windows }
    })
scope-found = { $looms ->
        [one] 1 Webmaschine
       *[other] { $looms } Webmaschinen
    } in { $variants ->
        [one] 1 Ausführung
       *[other] { $variants } Ausführungen
    } nach Fassung { $version } der Methode.
looms-to-survey = { $many ->
        [one] 1 ist
       *[other] { $many } sind
    } noch aufzunehmen ({ $columns }).
    .hint = Die Liste schreiben, mit ihr durch die Halle gehen, sie ausfüllen und einlesen.
loom-obstacle = Webmaschine { $loom }: { $why }
loom-left-done = Webmaschine { $loom }: { $operations ->
        [one] 1 Arbeitsgang blieb
       *[other] { $operations } Arbeitsgänge blieben
    } vom abgebrochenen Umbau getan, und { $operations ->
        [one] ist
       *[other] sind
    } von ihrer Arbeit genommen; was trennt, prüft oder Haltepunkt ist, wird noch einmal getan.
survey-the-loom = Was unbekannt ist, muss in der Halle nachgesehen werden.

## Eine geänderte Methode

field-changed = { $field } { $old } → { $new }
method-row-changed = { $name }: { $changes ->
        [none] { $what ->
            [added] hinzugekommen
           *[removed] weggefallen
        }
       *[other] { $changes }
    }
looms-changed = { $many ->
        [one] Webmaschine { $looms }
       *[other] { $many } Webmaschinen ({ $looms }{ $cut ->
            [yes] , …
           *[no] {""}
        })
    }: { $changes }
operation-added = + { $name }
operation-removed = − { $name }
part-changed = { $part } { QUANTITY($old) } → { QUANTITY($new) }
labour-changed = je { QUANTITY($hours, signed: "yes") } Arbeitsstunden
looms-can-be-planned = lassen sich planen
method-details-change = Wahl, Einstellungen oder Prüfungen ändern sich
more-of-the-method = … und { $many } weitere { $what ->
        [rows] Zeilen der Methode
       *[changes] Arten von Änderungen
    }

## Was das Erfasste lehrt

learning-of-type = { $machine_type }: { $conversions ->
        [one] 1 Umbau
       *[other] { $conversions } Umbauten
    } erfasst; { $curve }; der nächste ist auf { NUMBER($factor, style: "percent") } der Minuten der Methode geschätzt ({ $source }).{ $biases ->
        [none] {""}
       *[other] {" "}Gegen die Methode: { $biases }.
    }
learning-by-the-terms = eine Anpassung braucht { $missing } mehr mit ihren Minuten, also gilt die Kurve der Vorgaben ({ NUMBER($rate, style: "percent") })
learning-not-seen = kein Lernen zu sehen, sie brauchten { NUMBER($level, style: "percent") } der Minuten der Methode
learning-fitted = jede Verdopplung braucht { NUMBER($rate, style: "percent") } der Zeit, der erste brauchte { NUMBER($level, style: "percent") } der Minuten der Methode
operation-bias = { $operation } { QUANTITY($percent, signed: "yes") } %
