### Was ein Plan von sich sagt: warum Webmaschinen übrig sind, was aus festen Terminen wurde, was angenommen wurde.

as-it-stands = { $text }

## Warum eine Webmaschine übrig ist

left-put-off = zurückgestellt: { $reason }
left-no-window = kein Kettablauf, keine Stehzeit und keine anzuhaltende Kette vor dem Horizont
left-no-working-time = keine Arbeitszeit einer Mannschaft in ihren Gelegenheiten
left-no-kit = kein Teilesatz vor dem Horizont: Teil { $part }, { QUANTITY($needed) } gebraucht und { QUANTITY($had) } zu haben{ $usable ->
        [none] {""}
       *[other] {" vor "}{ $usable }, wenn eine Bestellung von jetzt verwendbar wäre
    }
left-kit-late = kein Teilesatz vor dem Horizont: ihre Teile kommen zu spät für ihre Gelegenheiten
left-protected = geschützt bis { $until }
left-ruled-out = ihre Gelegenheiten wurden ausgeschlossen
left-never-there = vor dem Horizont ist { $what } nie da
left-not-then = { $what } nicht da zu den Stunden, in denen ihre Arbeit es braucht
never-nor = { $one } noch { $other }
both-and = { $one } und { $other }
so-many-of = { $amount } × { $what }
place-among-stopped = ein Platz unter den zugleich stehenden Webmaschinen (eine Vorgabe)
left-no-pilot = { $machine_type } hat keinen Piloten, der vor dem Horizont eingeplant werden kann, und die anderen ihres Typs warten auf einen
left-behind-pilot = keine Gelegenheit nach { $opens }, wenn der Pilot von { $machine_type } { NUMBER($days) } Tage gelaufen ist (soak)
left-past-horizon = keine Gelegenheit, in der sie vor dem Horizont fertig würde
left-open-closed = sie stünde über einen Tag offen, an dem niemand umbaut (Vorgabe „open over closed days“)
left-unwatched = die Leute, die ihr Wiederanlauf danach braucht, wären nicht bei der Arbeit (Schritte nach dem Wiederanlauf, Vorgabe „watch“)
left-dearer = jeder Termin kostet mehr, als sie übrig zu lassen
left-cheaper = sie übrig zu lassen kostet die Weberei weniger als jeder freie Termin
left-taken = { $limit ->
        [part] kein Teilesatz: Teil { $what } ist
        [crews] keine Mannschaft: jede Mannschaft ({ $what }) ist
        [stopped] die Plätze für zugleich stehende Webmaschinen sind
        [section] die Plätze für zugleich stehende Webmaschinen ihres Abschnitts sind
        [week] die Mannschaftsstunden ({ $what }), die in einer Woche verplant werden dürfen (Vorgabe „usual absence“), sind
       *[other] kein { $what }: alle sind
    } in ihren Gelegenheiten von Webmaschinen belegt, für die das mehr spart
left-no-beam-out = kein Kettablauf, zu dem alles rechtzeitig frei ist

## Was ein ganzer Plan sagt

surviving-reckoned = Von seinen Kosten sind { MONEY($reckoned, $currency) } nur gerechnet, damit er übersteht (Vorgabe „no second chance“), und niemand zahlt sie: ohne sie kostet er { MONEY($paid, $currency) }.
no-loom-booked = Keine Webmaschine lässt sich einplanen; für { $looms } von { $of } ist der Grund: { $why }. Diese Grenze aufheben (späterer Horizont, mehr Leute, früherer Zugang) und neu planen.
taken-as-they-come = Jeder Kettablauf, wie er kommt, nach höchstens { NUMBER($limit_h) } h Warten.
late-pushes = Wo die Kette so spät abläuft wie eine von fünf, schiebt das Warten das Ende über die Schicht hinaus, bei { $looms }; Überstunden beendeten es am selben Tag.
loom-and-moment = { $loom } ({ $at })
loom-on-moment = { $loom } am { $at }
planned-as-used-up = Teil { $part } kommt nach dem Gebrauch zurück, ist aber als verbraucht geplant: die eingeplanten Webmaschinen brauchen zusammen { QUANTITY($needed) }, da oder bestellt sind { QUANTITY($there) }; { $left ->
        [0] keine Webmaschine ist
        [one] 1 Webmaschine ist
       *[other] { $left } Webmaschinen sind
    } deshalb übrig.

## Feste Termine

firm-let-go = Der feste Termin von Webmaschine { $loom } am { $start } kann nicht bleiben: { $why }; { $now ->
        [none] sie ist übrig
       *[other] sie ist neu eingeplant am { $now }
    }.
firm-astray = Der feste Termin von Webmaschine { $loom } bleibt am { $start }, obwohl ihr Kettablauf nun am { $beam_out } erwartet wird: später Kettablauf und verlorene Produktion { MONEY($cost, $currency) }.
    .hint = Ihn freigeben, und er folgt.
firm-no-crew = keine Mannschaft des Berufs „{ $trade }“ arbeitet zu ihrem Beginn in { $hall }
firm-hours-end = die Zeit ihrer Mannschaften endet, bevor sie fertig ist
firm-protected = die Webmaschine ist bis einschließlich { $until } geschützt
firm-ruled-out = ihre Gelegenheit wurde ausgeschlossen
firm-part = sie braucht { QUANTITY($needed) } von Teil { $part }, { QUANTITY($there) } können da sein
too-little = zu wenig { $kind ->
        [stopped] Platz unter den zugleich stehenden Webmaschinen
        [section] Platz unter den zugleich stehenden Webmaschinen eines Abschnitts
        [week] von den Stunden der Woche ({ $what }), die verplant werden dürfen
       *[other] { $what }
    } ab { $at }
firm-as-published = Der feste Termin von Webmaschine { $loom } bleibt wie veröffentlicht: { $why }.
    .hint = Ihn freigeben, und sie wird neu eingeplant.
no-such-work = die Methode hat keinen Umbau mit ihrer Wahl mehr
firm-other-end = Der feste Termin von Webmaschine { $loom } endet am { $end } statt am { $booked }: { $why ->
        [longer] ihre Arbeit dauert inzwischen { NUMBER($takes_h) } h, eingeplant waren { NUMBER($booked_h) } h
       *[hours] die Stunden der Mannschaften haben sich geändert
    }.
firm-shorter = Der feste Termin von Webmaschine { $loom } bleibt wie veröffentlicht, { NUMBER($booked_h) } h, obwohl ihre Arbeit inzwischen { NUMBER($takes_h) } h dauert.
firm-overruns = Der feste Termin von Webmaschine { $loom } läuft über: es gibt { $short }; er gilt trotzdem als fortgesetzt.
in-work-overruns = Für die Webmaschinen in Arbeit gibt es { $short }; sie gelten trotzdem als fortgesetzt.
pilot-not-named = Webmaschine { $named }, als Pilot von { $machine_type } genannt, lässt sich nicht einplanen: { $why }; { $instead ->
        [none] und auch keine andere davon
       *[other] ihr Pilot ist stattdessen Webmaschine { $instead }
    }.
pilot-unattended = Webmaschine { $loom }, der Pilot von { $machine_type }, wird umgebaut, ohne dass durchgehend jemand des Berufs „{ $trade }“ dabei ist: bei keinem möglichen Beginn ist einer von Anfang bis Ende da. Überstunden dieses Berufs würden es erlauben.
not-of-its-type = sie gehört nicht zu den Webmaschinen des Typs { $machine_type }, die zu planen sind

## Was angenommen wurde

passed-unrecorded = Eingeplant, vorbei und nicht erfasst: { $looms }. Erfassen, was getan wurde (in Arbeit, Einlauf, abgenommen); hier werden sie neu eingeplant.
crew-rows-overlap = Mannschaft { $crew } steht in zwei Zeilen, deren Stunden sich überschneiden, zuerst { $at }; sie zählt dort als eine Mannschaft{ $hall ->
        [none] {""}
       *[other] , in { $hall }
    }.
crew-short-of-heads = Mannschaft { $crew } hat am { $days } weniger als { $heads ->
        [one] den 1 Kopf
       *[other] die { $heads } Leute
    }, die die Methode verlangt; dann übernimmt sie keinen Umbau.
rateless-trade = Keine Mannschaft des Berufs „{ $trade }“ ist aufgeführt: ihre Stunden kosten hier nichts, und was sie an der Webmaschine braucht, lässt sich nicht einplanen.
rates-missing = Für { $crews } ist kein Stundensatz angegeben: ihre Stunden kosten hier nichts.
prices-missing = Für { $parts } ist kein Preis angegeben: was davon verbraucht wird, kostet hier nichts.
named-part = Teil { $part }
order-overdue = Bestellung { $order }: { QUANTITY($quantity) } von { $part } waren am { $due } fällig und sind nicht gekommen; sie { $comes ->
        [none] zählen an keinem Tag
       *[other] zählen wie eine Bestellung von heute, fällig am { $comes }
    }. Den Zugang buchen, oder ihm sein neues Datum geben.
lead-times-taken = Für { $parts } ist keine Lieferzeit angegeben: angenommen { $days ->
        [one] wird 1 Tag
       *[other] werden { $days } Tage
    } (Vorgabe „lead time where none is given“).
lead-times-none = Für { $parts } ist keine Lieferzeit angegeben: nach der Vorgabe „lead time where none is given“ lassen sie sich nicht bestellen.

## Preise der Knappheit

scarce-crew-hour = Mannschaftsstunde ({ $trade })
scarce-hour = Stunde ({ $what })
scarce-stopped = Stunde einer weiteren stehenden Webmaschine
scarce-section = Stunde einer weiteren stehenden Webmaschine eines Abschnitts
scarce-week = Mannschaftsstunde ({ $trade }), die verplant werden darf
scarce-part = { $part }

## Während ein Plan entsteht

planning-step = { $beside ->
        [yes] der Plan, der alles verschieben darf,{" "}
       *[no] {""}
    }{ $step ->
        [bound] wie billig ein Plan sein könnte
        [start] ein erster Plan
        [search] er wird verbessert
        [stay] Termine bleiben, wo sie sind
        [price] was es kostete, jeden verschobenen zu lassen
       *[proof] der Beweis
    }: { $cost ->
        [none] {""}
       *[other] { MONEY($cost, $currency) },{" "}
    }Abstand { NUMBER($gap, minimumFractionDigits: 2, maximumFractionDigits: 2) } %
