### Pläne: was sich nicht planen und nicht veröffentlichen lässt.

no-published-plan = noch ist kein Plan veröffentlicht
    .hint = einen veröffentlichen
nothing-can-fall = kein Plan ist veröffentlicht, also kann nichts ausfallen
    .hint = einen veröffentlichen
no-published-plan-touched = am Verlauf wurde gerührt ({ $touched }), und noch ist kein Plan veröffentlicht
    .hint = einen veröffentlichen
loom-not-planned = Webmaschine { $loom } war nicht zu planen, als der veröffentlichte Plan entstand
no-such-plan = es gibt keinen Plan { $number }
plan-of-scenario = Plan { $number } gehört zum Szenario { $scenario }
    .hint = das Szenario in Kraft setzen, dann neu planen
plan-published-already = Plan { $number } gilt schon
plan-past = Plan { $number } beginnt Webmaschine { $loom } am { $start }, und das ist vorbei
    .hint = neu planen
scenario-not-published = ein Szenario wird nicht veröffentlicht
    .hint = es in Kraft setzen, dann neu planen
plan-impossible = es gibt keinen Plan: { $reasons }{ $more ->
        [0] {""}
       *[other] {" "}(und { $more } weitere)
    }
one-after-another = { $one } { $other }
plan-fails-check = der Plan besteht die Prüfung nicht: { $finding }{ $more ->
        [0] {""}
       *[other] {" "}(und { $more } weitere)
    }; nichts wurde gespeichert
plan-overtaken = während dieser Plan entstand, wurde ein anderer veröffentlicht{ $who ->
        [none] {""}
       *[other] , Plan { $number } von { $who }
    }; nichts wurde gespeichert{ $differ ->
        [0] ; beide planen dasselbe ein
        [one] ; er plant Webmaschine { $looms } anders ein
       *[other] ; er plant { $differ } Webmaschinen anders ein: { $looms }
    }
    .hint = neu planen
booked-otherwise = Webmaschine { $loom }: { $theirs ->
        [none] dort nicht eingeplant
       *[other] dort { $theirs }
    }, { $mine ->
        [none] hier nicht eingeplant
       *[other] hier { $mine }
    }
placed-not-ahead = Webmaschine { $loom } hat keinen Termin, der noch bevorsteht und verlegt werden könnte
date-not-listed = der geltende Plan nennt für Webmaschine { $loom } keinen anderen Termin am { $start }{ $listed ->
        [none] {""}
       *[other] ; er nennt { $listed }
    }
nothing-ruled-out = Webmaschine { $loom } ist nirgends ausgeschlossen
ruled-out-ends-first = Webmaschine { $loom } soll von { $first } bis { $until } ausgeschlossen sein, und das endet, bevor es beginnt
    .hint = eines davon berichtigen
of-scenario = { $name }: { $why }

## Was ein Plan braucht

no-looms = es gibt keine Webmaschinen
    .hint = erst die Maschinenliste einlesen
no-method = es gibt noch keine Methode
    .hint = eine Arbeitsmappe mit dem Blatt Arbeitsgänge einlesen
horizon-past = der Horizont von { $days ->
        [one] einem Tag
       *[other] { $days } Tagen
    } endet am { $end }, und geplant wird zum { $as_of }
    .hint = die Vorgabe „Horizont (Tage)“ erhöhen
crews-too-small = die größte Mannschaft, { $crew }, hat { $heads ->
        [one] 1 Kopf
       *[other] { $heads } Leute
    }, und Schritt { $step } { $operation } verlangt { $need } × { $trade }
    .hint = einer Mannschaft mehr Leute geben
no-crew-in-horizon = vor dem Horizont arbeitet keine Mannschaft des Berufs „{ $trade }“
    .hint = in den Blättern Mannschaften und Schließtage nachsehen
no-lead-crew = keine Mannschaft des führenden Berufs „{ $trade }“ ist aufgeführt
    .hint = eine in das Blatt Mannschaften aufnehmen oder die Vorgabe ändern
as-of-without-zone = der Zeitpunkt { $at } hat keine Zeitzone
    .hint = ihn in UTC oder mit seiner Abweichung angeben
loom-not-listed = es gibt keine Webmaschine { $loom } in der Liste
    .hint = sie einlesen oder aus den Daten des Plans nehmen
remaining-slots = Webmaschine { $loom }: { $slots } halbe Arbeitsstunden, die noch bleiben, müssen 0 oder mehr sein
crew-in-two-halls = Mannschaft { $crew } ist { $at } in { $hall } und in { $other }
    .hint = die Stunden einer Zeile im Blatt Mannschaften ändern, oder die Halle leer lassen, wo die Mannschaft in jeder arbeitet
kit-part-unlisted = Webmaschine { $loom } braucht Teil { $part }, das nicht im Blatt Teile steht
    .hint = es aufnehmen
kit-quantity = Webmaschine { $loom } braucht { QUANTITY($quantity) } von Teil { $part }
    .hint = eine Menge muss 0 oder mehr sein

## Was das Planen wert ist, was hält, was ausfällt

baseline-found = Jeden Kettablauf nehmen, wie er kommt, und höchstens { $limit_h } h warten, der besten solchen Grenze: { $bookings ->
        [one] 1 Termin
       *[other] { $bookings } Termine
    }, { $left_over } übrig, { MONEY($cost, $currency) }.
baseline-worth = Der veröffentlichte Plan kostet { MONEY($published, $currency) }: das Planen ist { MONEY($worth, $currency) } wert.
plan-holds = Der veröffentlichte Plan hält: { $bookings ->
        [one] 1 Termin
       *[other] { $bookings } Termine
    } und { $left_over ->
        [one] 1 übrige Webmaschine
       *[other] { $left_over } übrige Webmaschinen
    } haben { $checks } Prüfungen bestanden; sie kosten { NUMBER($cost, minimumFractionDigits: 2, maximumFractionDigits: 2) } { $currency }.
plan-fails = Der veröffentlichte Plan hält nicht mehr: { $many ->
        [one] 1 Befund
       *[other] { $many } Befunde
    }.
plan-again = Neu planen; dort steht, was sich geändert hat und was verschoben werden muss.
history-touched = Am Verlauf wurde gerührt: { $many ->
        [one] 1 Befund
       *[other] { $many } Befunde
    }.
history-restore = Eine Sicherung von vorher in eine neue Datenbank zurückspielen und vergleichen.
booking-falls = Webmaschine { $loom }, { $start }, fällt aus: es fehlt { $parts }; { $usable ->
        [none] nach Lager und offenen Bestellungen nie vollständig
       *[other] vollständig ab { $usable }
    }.
no-booking-falls = Kein Termin fällt aus.
lacked-before = { $many ->
        [one] 1 Termin
       *[other] { $many } Terminen
    } fehlten schon vor der Änderung Teile.
plan-that-follows = Der Plan, der folgt, verschiebt { $moves ->
        [one] 1 Termin
       *[other] { $moves } Termine
    }, lässt { $left_over ->
        [one] 1 Webmaschine
       *[other] { $left_over } Webmaschinen
    } übrig und kostet { MONEY($cost, $currency) }; der veröffentlichte kostete { MONEY($before, $currency) }. Nichts wurde gespeichert.

## Warum ein Termin verschoben wurde

moved-new = { $left ->
        [none] war vorher nicht eingeplant
       *[other] war vorher übrig: { $left }
    }
moved-away = nicht mehr unter den Webmaschinen, die zu planen sind
moved-stage = { $stage }
moved-since = { $what } ({ $since })
moved-cheaper = { $forecast ->
        [none] { $window ->
            [none] so kostet der Plan im Ganzen weniger
           *[other] { $window }, denn so kostet der Plan im Ganzen weniger
        }
       *[other] { $forecast }
    }
moved-missed = ihr Beginn am { $start } verging, und nichts wurde erfasst
moved-broken-off = ihr Umbau wurde abgebrochen: { $why }
moved-at-a-price = { $forecast ->
        [none] {""}
       *[other] { $forecast }
    }{ $how ->
        [follows] {""}
       *[other] { $forecast ->
            [none] {""}
           *[other] ;{" "}
        }
    }{ $how ->
        [follows] {""}
        [free] ihr Platz ist noch frei; der Plan im Ganzen kostet weniger, wenn sie anderswo ist
        [place] nimmt den Platz von { $looms }{ $more ->
            [0] {""}
           *[other] {" "}und { $more } weiteren
        }
       *[room] macht Platz{ $looms ->
            [none] {""}
           *[other] {" "}für { $looms }{ $more ->
                [0] {""}
               *[other] {" "}und { $more } weitere
            }
        }: mit ihr gäbe es { $short }
    }{ $since ->
        [none] {""}
       *[other] {" "}({ $since })
    }{ $root ->
        [none] {""}
       *[other] ; es begann mit { $root }
    }{ $news ->
        [none] {""}
       *[other] ; neu seit dem geltenden Plan: { $news }
    }{ $window ->
        [none] {""}
       *[other] ; nun { $window }
    }{ $instead ->
        [none] {""}
        [one] ; bliebe sie, wo sie war, würde stattdessen 1 andere verschoben
       *[other] ; bliebe sie, wo sie war, würden stattdessen { $instead } andere verschoben
    }{ $found ->
        [no] ; kein Plan wurde gefunden, der sie lässt, wo sie war
       *[yes] {""}
    }
moved-root = Webmaschine { $loom }: { $why }
moved-window = { $after } statt { $before }
moved-beam-out = { $when ->
        [later] bei einem späteren Kettablauf
       *[earlier] bei einem früheren Kettablauf
    }
moved-forecast = ihr Kettablauf wird { NUMBER($hours, maximumFractionDigits: 0) } h { $when ->
        [later] später
       *[earlier] früher
    } erwartet
became-pilot = sie wurde der Pilot von { $machine_type }{ $first ->
        [none] {""}
       *[other] , anstelle von Webmaschine { $first }{ $root ->
            [none] , die nicht bleiben oder nicht die erste sein kann
           *[other] : { $root }
        }
    }
waits-for-pilot = sie wartet bis { $at }, damit der Pilot von { $machine_type }, Webmaschine { $pilot }, { QUANTITY($days) } Tage gelaufen ist{ $root ->
        [none] {""}
       *[other] ; es begann mit Webmaschine { $first }: { $root }
    }
as-things-stand = wie die Dinge stehen

## Was seit dem geltenden Plan geschah

happened-away = { $how ->
        [back] { $crew } ist doch da{" "}
       *[away] { $crew } fehlt{" "}
    }{ $last ->
        [none] am { $first }
       *[other] von { $first } bis { $last }
    }{ $heads ->
        [none] {""}
       *[other] , { $heads } davon
    }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
happened-overtime = die Überstunden von { $crew } am { $on }, { $start } bis { $end }, wurden { $how ->
        [given] gegeben
        [changed] geändert
       *[taken] zurückgenommen
    }
happened-closed = { $hall ->
        [none] die Weberei
       *[other] { $hall }
    } { $how ->
        [shut] { $stops ->
            [weaving] webt nicht
            [work] hat keine Umbauten
           *[both] ist geschlossen
        }
       *[open] ist doch offen
    } am { $on }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
happened-order = { $how ->
        [new] ein Zugang von { QUANTITY($quantity, $unit) } { $part } ist für { $due } zugesagt
        [gone] der für { $due } zugesagte Zugang von { QUANTITY($quantity, $unit) } { $part } ist nicht mehr bestellt
        [moved] der für { $due } zugesagte Zugang von { QUANTITY($quantity, $unit) } { $part } ist nun für { $now } zugesagt
       *[other] der für { $due } zugesagte Zugang von { QUANTITY($quantity, $unit) } { $part } beträgt nun { QUANTITY($less, $unit) }
    } (Bestellung { $order })
happened-came-late = der für { $due } zugesagte Zugang von { QUANTITY($quantity, $unit) } { $part } kam am { $came }
happened-not-come = der für { $due } zugesagte Zugang von { QUANTITY($quantity, $unit) } { $part } ist nicht gekommen (Bestellung { $order })
happened-not-ordered = { $part } wurde nicht nachbestellt: eine Bestellung von jetzt kommt am { $now }, eine vom Zeitpunkt des Plans am { $was }
happened-fewer = { QUANTITY($quantity, $unit) } { $part } weniger: { $how ->
        [count] nach einer Zählung
       *[loss] { $why ->
            [none] aus dem Bestand genommen
           *[other] { $why }
        }
    }{ $loom ->
        [none] {""}
       *[other] {" "}(Webmaschine { $loom })
    }
happened-issued = { QUANTITY($quantity, $unit) } { $part } ausgegeben{ $loom ->
        [none] {""}
       *[other] {" "}für Webmaschine { $loom }
    }
happened-method = die Methode hat nun Fassung { $version }
happened-term = die Vorgabe { $term } wurde von { $was } auf { $now } geändert
happened-row = { $what } ist { $how ->
        [new] neu in
       *[gone] nicht mehr in
    } { $sheet }
happened-field = { $heading } von { $what } wurde von { $was } auf { $now } geändert
