### Was die Prüfung ohne den Löser an einem Plan auszusetzen hat. Ein Befund mit einem Parameter `loom` betrifft diese Webmaschine.

## Jede Webmaschine einmal

booked-again = Webmaschine { $loom } ist { $times } mal eingeplant
left-over-again = Webmaschine { $loom } ist { $times } mal übrig
booked-and-left-over = Webmaschine { $loom } ist eingeplant und übrig
neither-booked-nor-left-over = Webmaschine { $loom } ist weder eingeplant noch übrig
booked-unlisted = Webmaschine { $loom } ist eingeplant, steht aber nicht in der Maschinenliste
not-to-plan = Webmaschine { $loom } ist { $answer ->
        [booked] eingeplant
       *[left-over] übrig
    }, obwohl sie { $why ->
        [put-off] zurückgestellt ist
        [left-out] aus dem Programm genommen ist
        [converted] schon umgebaut ist
        [in-work] in Arbeit ist
       *[unlisted] nicht in der Maschinenliste steht
    }

## Wann

starts-too-early = Webmaschine { $loom } beginnt { $start }, vor { $earliest }
ends-past-horizon = Webmaschine { $loom } endet { $end }, nach dem Horizont { $horizon }
starts-protected = Webmaschine { $loom } beginnt { $start }, ist aber bis einschließlich { $until } geschützt
starts-ruled-out = Webmaschine { $loom } beginnt { $start }, aber { $first } bis { $last } wurde für sie ausgeschlossen
booked-unplannable = Webmaschine { $loom } ist eingeplant, obwohl: { $why }
no-such-conversion = Webmaschine { $loom }: die Methode hat keinen Umbau bei der Gelegenheit „{ $kind }“ mit { $choices ->
        [none] keiner Wahl
       *[other] { $choices }
    }
other-parts-booked = Webmaschine { $loom }: die eingeplanten Teile sind nicht die ihres Umfangs
other-labour-booked = Webmaschine { $loom }: { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2) } Arbeitsstunden eingeplant, ihr Umfang hat { NUMBER($scope, minimumFractionDigits: 2, maximumFractionDigits: 2) }
no-such-window = Webmaschine { $loom }: es gibt keine Gelegenheit „{ $kind }“ { $window }
other-beam-out = Webmaschine { $loom }: der Termin nennt einen anderen Kettablauf als seine Gelegenheit { $window }
starts-off-grid = Webmaschine { $loom } beginnt { $start }, nicht zu einer halben Stunde
starts-without-crew = Webmaschine { $loom } beginnt { $start }, wenn keine Mannschaft ({ $trade }) arbeitet
other-length = Webmaschine { $loom }: { $booked } halbe Stunden eingeplant, ihr Umfang hat { $scope }
other-pause = Webmaschine { $loom }: eingeplant { $booked }; nach ihrem Umfang und dem gewöhnlichen Kettwechsel wäre es { $due }
with-pause = mit einer Pause von { $start } bis { $end }
in-one-piece = in einem Stück
ends-otherwise = Webmaschine { $loom } endet { $end }, aber { $due ->
        [none] die Zeit der Mannschaften endet, bevor sie fertig ist
       *[other] { $slots } halbe Arbeitsstunden enden { $due }
    }
open-over-closed-day = Webmaschine { $loom } steht über { $day } offen, an dem niemand umbaut
restart-unwatched = Webmaschine { $loom } endet { $end }, und niemand ({ $trade }) ist so lange bei der Arbeit, wie ihr Wiederanlauf es braucht
outside-window = Webmaschine { $loom } beginnt { $start }, { $how ->
        [span] außerhalb ihrer Gelegenheit „{ $kind }“ von { $opens } bis { $closes }
        [before-beam-out] mehr als 4 h vor ihrem Kettablauf { $beam_out }
        [after-beam-out] nach der { $slots }. halben Arbeitsstunde ab ihrem Kettablauf { $beam_out }
        [full-hour] nicht zu einer vollen Stunde, bei einer Gelegenheit in mehr als 14 Tagen
       *[first-of-day] nicht in der ersten halben Arbeitsstunde des Tages, wie es ein Halt mitten in der Kette tut
    }

## Wer und was geteilt wird

too-few-crews = { $start } bis { $end }: mehr Mannschaften ({ $trade }) gebraucht, als da sind
too-little-room = { $start } bis { $end }: mehr Mannschaften ({ $trade }) gebraucht, als die Vorgabe „room between bookings“ übrig lässt
week-too-full = { $week }: { NUMBER($hours) } h von Mannschaften ({ $trade }) sind verplant, abzüglich der Vorgabe „usual absence“ gibt es { NUMBER($limit) } h
too-few-heads = { $start } bis { $end }: mehr Leute ({ $trade }) gebraucht, als da sind
too-few-tools = { $start } bis { $end }: mehr als { $limit } des Werkzeugs { $tool } in Gebrauch
too-many-stopped = { $hall }: { $stopped } Webmaschinen stehen um { $at }, die Grenze ist { $limit }
too-many-stopped-in-section = Abschnitt { $section } von { $hall }: { $stopped } Webmaschinen stehen um { $at }, die Grenze ist { $limit }
part-short = Teil { $part }: { QUANTITY($needed) } bis { $day } gebraucht, { QUANTITY($usable) } verwendbar

## Was zuerst kommt

before-pilot = Webmaschine { $loom } beginnt { $start }, bevor der Pilot von { $type } { $days } Tage gelaufen ist ({ $until })
pilots-booked = { $type }: { $pilots ->
        [0] kein Pilot
       *[other] { $pilots } Piloten
    } eingeplant, einer ist nötig vor { $bookings ->
        [one] 1 Termin
       *[other] { $bookings } Terminen
    }
other-pilot = { $type }: Webmaschine { $pilot } ist der Pilot, die Weberei nennt { $named }
pilot-alone = Webmaschine { $loom } ist ein Pilot, bei dem niemand des Berufs „{ $trade }“ durchgehend dabei ist, und der Plan sagt nicht, warum
firm-moved = Webmaschine { $loom }: der feste Termin vom { $start } { $now ->
        [none] ist weg
       *[other] wurde auf { $now } verschoben
    }, obwohl er bleiben könnte
held-moved = Webmaschine { $loom }: der Termin vom { $start }, der zu halten war, { $now ->
        [none] ist weg
       *[other] { $choices ->
            [yes] hat eine andere Wahl
           *[no] wurde auf { $now } verschoben
        }
    }
moves-not-stated = der Plan sollte Termine halten und sagt nicht, wie viele er verschiebt
moves-otherwise = { $moves ->
        [one] 1 Termin ist verschoben
       *[other] { $moves } Termine sind verschoben
    }, der Plan nennt { $stated }{ $fewest ->
        [none] {""}
       *[other] {" "}und dass kein Plan weniger als { $fewest } verschiebt
    }
too-many-moves = { $moves ->
        [one] 1 Termin ist verschoben
       *[other] { $moves } Termine sind verschoben
    }, wo { $most ->
        [none] die Höchstzahl zu nennen war
       *[other] es höchstens { $most } sein sollten
    } ({ $more } mehr als nötig)
firm-length = Webmaschine { $loom }: der feste Termin hat { $slots } halbe Stunden, fällig sind { $due }
firm-labour = Webmaschine { $loom }: der feste Termin hat { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2) } Arbeitsstunden, veröffentlicht waren { NUMBER($due, minimumFractionDigits: 2, maximumFractionDigits: 2) }
firm-end = Webmaschine { $loom }: der feste Termin endet { $end }, fällig ist { $due }

## Namen

crew-changes-stated = { $changes } Wechsel der Mannschaft innerhalb einer Schicht, der Plan nennt { $stated }
crew-changes-needless = { $changes } Wechsel der Mannschaft innerhalb einer Schicht, wo jede Mannschaft bei ihrer Webmaschine bleiben kann
nobody-named = Webmaschine { $loom }: um { $at } ist keine Mannschaft genannt
turn-outside = Webmaschine { $loom }: Mannschaft { $crew } ist von { $start } bis { $end } genannt, außerhalb des Termins oder während eine andere da ist
needs-otherwise = Webmaschine { $loom }: um { $at } steht { $listed } × { $what } im Termin, seine Arbeit hält dann { $held }
crew-not-at-work = Webmaschine { $loom }: Mannschaft { $crew } ist um { $at } genannt, wenn sie dort nicht arbeitet
crew-on-several-looms = Mannschaft { $crew } ist um { $at } an mehreren Webmaschinen genannt: { $looms }
other-crew = Webmaschine { $loom }: um { $at } war Mannschaft { $published } veröffentlicht, genannt ist { $crew }

## Kosten und Beweis

other-cost = Webmaschine { $loom }: { $term } mit { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency } gerechnet, die Daten ergeben { NUMBER($due, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
other-left-over-cost = Webmaschine { $loom }: übrig zu { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency }, die Daten ergeben { NUMBER($due, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
dearer-than-leaving = Webmaschine { $loom } ist zu { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency } eingeplant, sie übrig zu lassen kostet { NUMBER($left, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency }
infeasible-but-booked = das Ergebnis ist „{ $status }“, und doch { $bookings ->
        [one] ist 1 Webmaschine
       *[other] sind { $bookings } Webmaschinen
    } eingeplant
gap-and-status = das Ergebnis ist „{ $status }“, aber der Abstand von { $gap } liegt { $how ->
        [above] über { $limit }
       *[within] nicht über { $limit }
    }
other-objective = als Kosten stehen { NUMBER($objective, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } da, Termine und übrige Webmaschinen ergeben zusammen { NUMBER($total, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
bound-above-objective = die Untergrenze { NUMBER($bound, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } liegt über den Kosten { NUMBER($objective, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
