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
calendar-of = Buchungen von { $crew }
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
