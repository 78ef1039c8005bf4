word-read = lesen
word-post = lesen und melden
word-calendar = Kalender einer Mannschaft
token-given = { $name } hat einen Schlüssel: { $may }, bis { $until }. Er wird nur dieses eine Mal gezeigt:
token-shown-so = { $token } (unter { $path }, als Kopfzeile `Authorization: Bearer SCHLÜSSEL`)
token-calendar-at = { $path } (setzen Sie die Adresse der Bildschirme davor und abonnieren Sie das im Telefon)
token-ended = Der Schlüssel { $number }, { $name }, öffnet nichts mehr.
token-unknown = es gibt keinen Schlüssel { $number }, der eingezogen werden könnte
token-may = { $may } ist nichts, wofür es einen Schlüssel gibt; es gibt { $known }
token-days = ein Schlüssel gilt 1 bis { $most } Tage, nicht { $days }
token-crew = ein Schlüssel für { $may } { $may ->
        [calendar] nennt die Mannschaft
       *[other] nennt keine Mannschaft
    }
token-crew-unknown = es gibt keine Mannschaft { $crew }; die Mannschaften sind { $crews }
calendar-of = Termine von { $crew }
calendar-title = Webmaschine { $loom } umbauen
calendar-about = { $machine_type ->
        [none] {""}
       *[other] { $machine_type }.{" "}
    }{ $turn ->
        [1] {""}
       *[other] { $turn }. Einsatz der Mannschaft an dieser Maschine.{" "}
    }Plan { $plan }{ $firm ->
        [yes] , fest.
       *[no] ; der nächste Plan darf es verschieben.
    }
calendar-none = Hier ist kein Kalender, oder sein Schlüssel gilt nicht mehr.
    .hint = Bitten Sie die Verwaltung um einen neuen.

## Die Schnittstelle für Programme

token-needed = es ist ein Schlüssel zu zeigen, der das hier öffnet: Authorization: Bearer SCHLÜSSEL
    .hint = die Verwaltung gibt einen
token-reads-only = der Schlüssel { $name } darf lesen und nicht melden
    .hint = bitten Sie die Verwaltung um einen, der melden darf
request-unreadable = { $what } ist nicht zu lesen: { $why }
moment-unreadable = { $text } ist kein Zeitpunkt wie 2027-01-04 oder 2027-01-04T06:00
post-table = an { $table } wird nichts gemeldet; es gibt { $tables }
post-key = der Name einer Meldung hat 1 bis { $most } Zeichen
post-key-used = unter dem Namen { $key } wurde schon etwas anderes gemeldet
    .hint = geben Sie jeder Meldung einen eigenen Namen
post-rows = { $rows } Zeilen in einer Meldung; es gehen 1 bis { $most }
post-field = Zeile { $row } hat { $field }, das kein Feld davon ist; die Felder sind { $fields }
post-too-large = eine Meldung sagt ihre Länge und hat höchstens { $bytes } Bytes
