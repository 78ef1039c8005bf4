### Ketten: warum eine Webmaschine keine Vorhersage hat.

no-warp-on-loom = keine Kette ist als auf der Webmaschine liegend aufgeführt (Folge 0)
warp-without-date = die Restkette hat kein Datum (abgelesen am)
warp-never-read = die Restkette wurde nie abgelesen
warp-value = { $loom ->
        [none] {""}
       *[other] Webmaschine { $loom },{" "}
    }Kette { $warp }, Artikel { $article }: { $what }
set-length-missing = eine Kette, die folgt, braucht eine Schärlänge
    .hint = sie in Metern angeben
set-length-short = die Schärlänge { QUANTITY($length) } m muss größer sein als das Kettende von { QUANTITY($tail) } m
warp-left-negative = die Restkette { QUANTITY($left) } m muss mindestens 0 m sein
article-unlisted = der Artikel steht nicht in der Artikelliste
    .hint = ihn aufnehmen oder die Kette berichtigen
take-up-impossible = die Einwebung { QUANTITY($percent) } % muss mindestens 0 % und unter 100 % sein
take-up-basis-unknown = die Bezugsart der Einwebung „{ $basis }“ muss crimp oder contraction sein
rate-value-missing = { $what ->
        [speed] keine Drehzahl
        [efficiency] kein Nutzeffekt
       *[pick-density] keine Schussdichte
    } bei der Ablesung, der Kette oder der Webmaschine angegeben
    .hint = eines davon angeben
rate-value-impossible = { $what ->
        [speed] die Drehzahl { QUANTITY($value) } Schuss/min muss über 0 Schuss/min liegen
        [efficiency] der Nutzeffekt { QUANTITY($value) } muss über 0 und höchstens 1 sein
       *[pick-density] die Schussdichte { QUANTITY($value) } Schuss/cm muss über 0 Schuss/cm liegen
    }

## Was die Vorhersage ergab

windows-found = { $windows ->
        [one] 1 Gelegenheit
       *[other] { $windows } Gelegenheiten
    } an { $looms ->
        [one] 1 Webmaschine
       *[other] { $looms } Webmaschinen
    } bis { $until }.
readings-old = { $many ->
        [one] 1 Webmaschine hat
       *[other] { $many } Webmaschinen haben
    } eine Ablesung, die älter als drei Tage ist; die Restkette neu ablesen: { $looms }.
warps-overdue = { $many ->
        [one] 1 Webmaschine müsste nach ihrer
       *[other] { $many } Webmaschinen müssten nach ihrer
    } Ablesung abgelaufen sein; nachsehen, ob eine neue Kette drauf ist: { $looms }.
no-forecast = Webmaschine { $loom }: keine Vorhersage, { $why }
no-forecast-for-more = keine Vorhersage für { $many ->
        [one] 1 weitere Webmaschine
       *[other] { $many } weitere Webmaschinen
    }: { $looms }
no-window = Webmaschine { $loom }: keine Gelegenheit, { $why }
no-window-for-more = keine Gelegenheit für { $many ->
        [one] 1 weitere Webmaschine
       *[other] { $many } weitere Webmaschinen
    }: { $looms }
reading-ahead = ihre Kette wurde am { $read } abgelesen, später als { $as_of }, und reicht über den Horizont hinaus; den Tag berichtigen, wenn er ein Versehen ist
nothing-in-horizon = weder ein Kettablauf noch eine Stehzeit fällt in den Horizont
backtest-nothing = { $beam_outs } Kettabläufe in den Ablesungen, aber keine Ablesung rechtzeitig genug, um von ihr aus zurückzublicken.
backtest-share = { $beam_outs } Kettabläufe in den Ablesungen; { NUMBER($share, style: "percent") } der Vorhersagen hatten sie zwischen P10 und P90 (80 % ist, was sie versprechen).
backtest-left-out = { $many } davon sind weggelassen: mit anderem Verbrauch als beim Artikel, der nun auf der Webmaschine ist.
