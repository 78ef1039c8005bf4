### Der Bildschirm Stand des Umbaus.

status-of = { $programme } · Stand { $at } · { $looms }
status-then = er steht sofort hier

## Kennzahlen

status-worked-out = wird ausgerechnet …
status-not-known = nicht bekannt
status-done = Abgenommen
status-done-share = { $share } der Webmaschinen
status-finish = Ende wie geplant
status-no-target = kein Ziel gesetzt
status-target = { $how ->
        [open] Ziel { $target }
        [on] am Ziel { $target }
       *[other] { $days ->
            [one] { $days } Tag
           *[other] { $days } Tage
        } { $how ->
            [after] nach
           *[before] vor
        } dem Ziel { $target }
    }
status-pace = Im Tempo der letzten vier Wochen
status-pace-of = { $done } in { $days } Tagen abgenommen
status-rehearsed = durchgespielt: { $looms } Webmaschinen bis { $half } (P50), { $sure } (P80)
status-spent = Bisher ausgegeben
status-spent-more = geplant bis zu diesem Monat { $planned }; bestellt { $committed }
status-saved = Erspart, gemessen
status-saved-not = dafür ist zu wenig gemessen
status-a-month = { $money } im Monat
status-between = { $low } bis { $high }
status-week = Woche
status-report = Bericht auf einer Seite (PDF)

## Zu spät und in Gefahr

status-late = Zu spät
head-since = Seit
head-days = Tage
head-what = Was
head-follows = Was daraus folgt
status-risks = In den nächsten vierzehn Tagen in Gefahr
status-risks-none = Von keinem Termin der nächsten vierzehn Tage ist eine Gefahr bekannt.
head-when = Wann
head-risk = Was schiefgehen kann
head-more = Mehr
status-to-kits = Teilesätze
status-to-orders = Bestellungen
status-to-loom = die Webmaschine
status-to-rehearsal = Durchspielen

## Fortschritt und Geld

status-progress = Geplant und getan
status-progress-none = Noch ist nichts eingeplant oder getan.
status-planned = geplant: { $looms }
status-done-so-far = getan: { $looms }
status-expected = erwartet: { $looms }
status-all = alle { $looms ->
        [one] { $looms } Webmaschine
       *[other] { $looms } Webmaschinen
    }
status-progress-alt = Linien: Webmaschinen geplant, getan und erwartet, zusammengezählt je ISO-Woche
status-months = Teile und Arbeit je Monat
status-months-none = Noch ist nichts geplant, ausgegeben oder bestellt.
head-month = Monat
head-planned = Geplant ({ $currency })
head-spent = Ausgegeben ({ $currency })
head-on-order = Bestellt ({ $currency })
head-planned-by-then = Geplant bis dahin ({ $currency })
head-both-by-then = Ausgegeben und bestellt bis dahin ({ $currency })
status-months-help = Geplant nach dem Bezugsplan, im Monat, in dem jeder Termin endet; bestellt im Monat der Fälligkeit.

## Webmaschinen

status-stages = Webmaschinen nach Stand
status-stages-alt = Balken: Webmaschinen in jedem Stand
status-next = Die nächsten sieben Tage
status-next-none = In den sieben Tagen ab jetzt beginnt oder läuft kein Umbau.
head-end = Ende
head-window = Gelegenheit
head-firm = Fest
head-kit = Teilesatz
head-person-hours = Personenstunden
head-cost = Kosten ({ $currency })
status-pilot = Pilot
status-firm = fest
status-left-over = Übrig
status-left-over-none = Keine Webmaschine wartet ohne Termin.
status-left-over-many = { $looms ->
        [one] { $looms } Webmaschine
       *[other] { $looms } Webmaschinen
    } nicht in diesem Plan:
head-why = Warum
head-left-over-cost = Kosten, wenn sie bleibt ({ $currency })

## Weiter unten

status-as-rehearsed = Wie durchgespielt
status-cost = Kosten nach Art
status-cost-alt = Balken: geplante und erwartete Kosten nach Art
status-cost-so-far = Bisher: Teile ausgegeben { MONEY($parts, $currency) }, Arbeit erfasst { MONEY($labour, $currency) } ({ NUMBER($hours, maximumFractionDigits: 1) } Personenstunden).
status-cost-expected = Erwartet ist, was erfasst wurde, und was der geltende Plan für den Rest schätzt.
status-proof = Wie gut der Plan ist
status-cost-of = Seine Kosten sind { $parts }
status-proof-cost = Kosten des Plans
status-proof-bound = kein Plan kostet weniger als
status-proof-gap = Abstand
status-proof-found = gefunden in
status-proof-made = gemacht für
