### Was von der Halle und den Leuten gesagt wird: Stände, Umbauten, Abwesenheiten, Zeitpunkte.

before-programme = { $at } liegt vor dem Programm, das am { $start } begann
    .hint = sagen, warum es hier gebucht wird

## Stände

stage-unknown = „{ $stage }“ ist kein Stand; es gibt: { $stages }
stage-without-reason = eine Webmaschine im Stand „{ $stage }“ braucht einen Grund
    .hint = den Grund sagen
stage-later-known = Webmaschine { $loom } ist { $stage } seit { $at }
    .hint = einen späteren Zeitpunkt erfassen
stage-needs-reason = Webmaschine { $loom } wird nur mit einem Grund als { $stage } erfasst, denn { $odd }
    .hint = den Grund sagen
odd-before-programme = { $on } liegt vor dem Programm, das am { $first } begann
odd-beside = sie ist { $stage } und wurde nicht mit „Umfang bekannt“ zurückgenommen
odd-already = sie ist schon { $stage }
odd-back = sie ist { $stage } und geht zurück
odd-skipped = { $first }{ $second ->
        [none] {" "}wurde
       *[other] {" "}und { $second } wurden
    } übersprungen
odd-not-booked = sie ist nicht eingeplant
odd-no-kit = ihr Teilesatz ist nicht ausgegeben

## Fertige Umbauten

conversion-not-finished = ein fertiger Umbau wird mit { $first } oder { $second } erfasst, nicht mit { $stage }
conversion-without-start = ein Umbau braucht seinen Beginn, vor seinem Ende
    .hint = sagen, wann er begann
conversion-recorded = der Umbau von Webmaschine { $loom } ist schon erfasst: durch { $crew }, begonnen { $at }
no-such-crew = es gibt keine Mannschaft { $crew }; die Mannschaften sind { $crews }
no-such-operation = der Arbeitsgang „{ $operation }“ steht nicht in der geltenden Methode
operation-minutes = Arbeitsgang „{ $operation }“: { QUANTITY($minutes) } Minuten kann er nicht dauern
total-minutes = { NUMBER($total, maximumFractionDigits: 1) } min im Ganzen können nicht sein: es müssen mehr als 0 sein und nicht mehr als von Beginn bis Ende, { NUMBER($elapsed, maximumFractionDigits: 1) } min
no-such-choice = die Methode hat keine Wahl { $choice }={ $alternative }; sie hat { $offered }

## Abwesenheiten

absence-ends-first = der letzte Tag, { $last }, liegt vor dem ersten, { $first }
    .hint = sie vertauschen
absent-already = Mannschaft { $crew } fehlt schon von { $first } bis { $last }
    .hint = das erst beenden
not-absent = Mannschaft { $crew } fehlt nach dem Erfassten am { $on } nicht

## Was erfasst wurde

stage-recorded = Webmaschine { $loom } ist { $stage }{ $before ->
        [none] {""}
       *[other] {" "}(war { $before })
    }{ $crew ->
        [none] {""}
       *[other] ; ihr Umbau durch { $crew } ist erfasst
    }.{ $freed ->
        [none] {""}
       *[other] {" "}Was für sie vorgehalten war, ist wieder frei: { $freed }.
    }
absence-recorded = { $how ->
        [taken-back] Mannschaft { $crew } fehlte von { $first } bis { $last } nie: zurückgenommen.
       *[other] { $heads ->
            [none] Mannschaft { $crew } fehlt
            [one] 1 Kopf der Mannschaft { $crew } fehlt
           *[other] { $heads } Leute der Mannschaft { $crew } fehlen
        } von { $first } bis { $last }{ $how ->
            [ended] , länger nicht
           *[begun] {""}
        }.{ $short ->
            [none] {""}
           *[other] {" "}{ $short }
        }
    }
    .hint = Der nächste Plan rechnet damit.
crew-takes-none = Für einen Umbau bleiben zu wenige: die Mannschaft übernimmt an diesen Tagen keinen.

## Erfasstes: was so nicht gewesen sein kann

record-ahead = { $at } steht noch bevor; jetzt ist { $now }.
    .hint = Den Zeitpunkt ausbessern.
card-mistyped = { $card } ist keine Kartennummer: ihr Prüfzeichen passt nicht.
    .hint = Sie oben von der Karte ablesen.
card-never-given = Es gibt keine Karte { $card }: kein veröffentlichter Plan { $plan } plant eine Webmaschine unter dieser Nummer ein.
    .hint = Sie oben von der Karte ablesen.
card-of-another = Karte { $card } gehört zu Webmaschine { $of }, nicht zu { $loom }.
    .hint = Die Webmaschine oder die Kartennummer ausbessern.
operation-not-known = Die Methode (Fassung { $version }) hat keinen Arbeitsgang { $operation }{ $near ->
        [none] {""}
       *[other] ; der ähnlichste ist { $near }
    }.
    .hint = Ihn schreiben, wie die Methode ihn hat; bei einer Karte einer älteren Fassung die Zeile weglassen und den ganzen Umbau erfassen.
record-not-in-work = Webmaschine { $loom } ist nicht in Arbeit, und keine vollständige Zeile des Blatts Geleistete Arbeit sagt, dass sie es war{ $more ->
        [none] {""}
        [one] ; 1 weitere Zeile von ihr wartet auf diese Zeile
       *[other] ; { $more } weitere Zeilen von ihr warten auf diese Zeile
    }.
    .hint = Die erste Zeile ihrer Karte ausbessern (Started, Stage reached), oder die Webmaschine: die anderen Zeilen werden dann mit ihr eingelesen.
torque-impossible = { NUMBER($torque, maximumFractionDigits: 1) } N·m kann nicht sein{ $most ->
        [none] {""}
       *[other] : die Methode verlangt { NUMBER($target, maximumFractionDigits: 1) } N·m, und eine Schraube erträgt nicht mehr als { NUMBER($most, maximumFractionDigits: 1) } N·m
    }.
    .hint = Noch einmal ablesen; eine Schraube, die so fest angezogen wurde, wechseln.
record-without-end = Ein Umbau im Stand „{ $stage }“ ist zu Ende; sein Ende fehlt.
    .hint = Ended ausfüllen.
stopped-without-reason = Ein abgebrochener Umbau braucht seinen Grund.
    .hint = Ihn unter Remark schreiben.
minutes-longer = { NUMBER($minutes, maximumFractionDigits: 1) } Minuten können nicht sein{ $stop ->
        [none] {""}
       *[other] : von Beginn bis Ende waren es { NUMBER($stop, maximumFractionDigits: 1) } Minuten
    }.
    .hint = Die Minuten ausbessern, oder Beginn und Ende.
crew-not-known = Es gibt keine Mannschaft { $crew }; die Mannschaften sind { $crews }.
    .hint = Sie schreiben, wie das Blatt Mannschaften sie hat.
two-crews = Webmaschine { $loom } hat hier Mannschaft { $crew } und zur selben Zeit in einer anderen Zeile Mannschaft { $other }.
    .hint = Einen Umbau unter der Mannschaft erfassen, die ihn führte; wer half, steht unter Done by.
setting-not-known = Die Methode hat keine Einstellung { $setting }{ $near ->
        [none] {""}
       *[other] ; die ähnlichste ist { $near }
    }.
    .hint = Sie schreiben, wie das Blatt Sollwerte sie hat.
value-no-number = { $setting } ist eine Zahl{ $unit ->
        [none] {""}
       *[other] {" "}in { $unit }
    }, und { $value } ist keine.
    .hint = Die Zahl allein schreiben.
value-impossible = { $setting } kann nicht { NUMBER($value, maximumFractionDigits: 3) } { $unit } sein.
    .hint = Noch einmal ablesen: ein Winkel liegt zwischen 0 und 360 deg, eine Kraft oder ein Strom nicht unter 0.
check-not-known = Die Methode hat keine Prüfung { $check }{ $near ->
        [none] {""}
       *[other] ; die ähnlichste ist { $near }
    }.
    .hint = Sie schreiben, wie das Blatt Prüfungen sie hat.
result-of-other-kind = { $check } wird beantwortet mit { $kind ->
        [number] einer Zahl
       *[yes] ja oder nein
    }.
    .hint = Es schreiben, wie die Prüfung fragt.
never-waived = { $check } wird nie erlassen: ohne das wird nichts abgenommen.
    .hint = Tun, was die Prüfung verlangt, und ihr Ergebnis schreiben.
side-not-known = { $name } hat { $sides ->
        [none] keine Seite
       *[other] die Seiten { $sides }
    }{ $side ->
        [none] ; hier ist keine geschrieben
       *[other] , und nicht { $side }
    }.
    .hint = Die Seite schreiben, wie die Methode sie hat.
waiver-incomplete = Ein Erlass braucht seinen Grund, wer dafür einsteht und wann das entschieden wurde.
    .hint = Waived because, Waived by und Waived at ausfüllen.
more-than-issued = { QUANTITY($told) } von { $part } sind gemeldet, und { QUANTITY($issued) } wurden an Webmaschine { $loom } ausgegeben.
    .hint = Die Mengen ausbessern, oder erst die Ausgabe buchen.
period-overlaps = Der Zeitraum überschneidet sich mit einem anderen derselben Webmaschine: { $begin } bis { $end }.
    .hint = From oder To ausbessern, oder die Zeile löschen.
picks-differ = { NUMBER($picks) } Schuss hier, und { NUMBER($other) } in der Zeile derselben Webmaschine und Zeit für { $cause ->
        [none] alle Ursachen
       *[other] { $cause }
    }.
    .hint = Bei jeder Ursache dieselbe Schusszahl schreiben.
record-needs-remark = Webmaschine { $loom } wird nur mit einem Grund als { $stage } erfasst, denn { $odd }.
    .hint = Unter Remark den Grund sagen, oder erst erfassen, was fehlt.
record-lacks = eine Zeile im Blatt { $table } braucht { $field }
record-beyond = { $field } im Blatt { $table } kann nicht { NUMBER($value) } sein: es ist { $possible }
photo-no-picture = das Foto ist kein Bild einer Art, die gelesen werden kann ({ $formats })
    .hint = als eine davon senden
photo-broken = das Foto lässt sich nicht bis zum Ende lesen
    .hint = noch einmal aufnehmen
photo-too-large = das Foto hat { NUMBER($megabytes, maximumFractionDigits: 1) } MB; angenommen werden höchstens { NUMBER($most) } MB
    .hint = mit geringerer Auflösung aufnehmen
photo-too-fine = das Foto hat { NUMBER($width) } × { NUMBER($height) } Bildpunkte; angenommen werden höchstens { NUMBER($most) } Millionen
    .hint = mit geringerer Auflösung aufnehmen
photo-without-remark = ein Foto braucht eine Bemerkung
    .hint = sagen, was darauf ist
photo-unreadable = { $path } lässt sich nicht lesen: { $why }
photo-gone = das Foto ist nicht mehr da
remark-not-begun = der Umbau der Webmaschine { $loom } hat nicht begonnen
    .hint = zuerst beginnen
not-yes-no-number = { $text } ist weder ja noch nein noch eine Zahl
sheets-of-records = Das Blatt { $sheet } ist { $table }, und das ist nichts, was getan wurde.
    .hint = Es unter „Einlesen“ einlesen.

stopped-not-begun = Webmaschine { $loom } ist { $stage }: kein Umbau von ihr ist im Gang, der sich abbrechen ließe.
    .hint = Die Webmaschine bis zu einem Tag zurückstellen oder ausnehmen, jeweils mit dem Grund; von einem Umbau, der begonnen hatte, erst sagen, wann.
record-corrected = { $table } { $row }: { $heading } wird von { $stored } auf { $understood } berichtigt ({ $why }).
records-refusal = 1 Ablehnung, nichts wurde geschrieben: { $where }{ $what }
records-refusals = { $many } Ablehnungen, nichts wurde geschrieben: { $places }.
    .hint = Sie ausbessern und es noch einmal erfassen.

## Abnahme

sign-off-open = Webmaschine { $loom } lässt sich nicht abnehmen: { $many ->
        [one] ein Punkt ist offen
       *[other] { $many } Punkte sind offen
    }: { $points }{ $more ->
        [none] {""}
       *[other] {" "}und { $more } weitere
    }.
    .hint = Sie erfassen, oder mit Grund, Person und Zeitpunkt erlassen, was sich erlassen lässt.
open-hold-point = Haltepunkt { $operation } hat keinen Namen
open-check = Prüfung { $check }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } { $result ->
        [none] ist nicht erfasst
       *[other] ist { $result }
    }{ $held ->
        [yes] {" "}und wird nie erlassen
       *[no] {""}
    }
open-setting = Einstellung { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } { $value ->
        [none] ist nicht erfasst
       *[other] ist { $value }
    }{ $low ->
        [none] {""}
       *[other] {" "}(Grenzen { $low } bis { $high } { $unit })
    }{ $target ->
        [none] {""}
       *[other] {" "}(Soll { $target })
    }

## Zurücknehmen

withdraw-without-reason = Erfasstes wird nur mit einem Grund zurückgenommen
    .hint = den Grund sagen
withdraw-nothing = von Webmaschine { $loom } ist nichts erfasst, also gibt es nichts zurückzunehmen
withdraw-no-stage = Webmaschine { $loom } wurde nie als { $stage } erfasst; erfasst sind: { $stages }
withdraw-later-first = Webmaschine { $loom } ist { $later } seit { $at }, und das baut auf „{ $stage }“ auf: erst „{ $later }“ zurücknehmen
withdraw-no-row = eine solche Zeile von Webmaschine { $loom } gibt es in { $table } nicht
withdraw-several = mehrere Zeilen von Webmaschine { $loom } in { $table } sind gemeint: { $rows }
    .hint = Seite und Zeitpunkt sagen
withdraw-row = ({ $row })
withdraw-sign-off-first = die Abnahme von Webmaschine { $loom } baut darauf auf: erst den Stand „abgenommen“ zurücknehmen
withdrawn = Webmaschine { $loom }: { $what } zurückgenommen, im Ganzen { $rows ->
        [one] 1 Zeile
       *[other] { $rows } Zeilen
    } des Verlaufs; sie bleiben darin und zählen nicht mehr. { $stage ->
        [none] Von der Webmaschine ist nichts mehr erfasst, und der nächste Plan nimmt sie so.
       *[other] Die Webmaschine ist { $stage }, und der nächste Plan nimmt sie so.
    }
withdrawn-stage = der Stand „{ $stage }“ und was daran hing
withdrawn-row = { $row } aus { $table }
