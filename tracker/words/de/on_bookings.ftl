### Der Bildschirm Termine.

bookings-plan-empty = Der veröffentlichte Plan hat keinen Termin. Stand des Programms sagt, warum jede Webmaschine übrig bleibt.
bookings-first-plan = Alles, was ein Plan braucht, ist geladen. Unten den ersten machen.
bookings-publish-it = Noch ist kein Plan in Kraft. Den Plan oben ansehen, dann veröffentlichen.
bookings-then = er steht dann gleich hier
bookings-about = { $booked } von { $looms } · Stand { $as_of } · Ortszeit der Weberei ({ $zone })
bookings-none-fit = Kein Termin passt zu diesen Filtern. Andere Halle, anderen Maschinentyp oder andere Woche wählen: Wochen mit Terminen sagen, wie viele.
bookings-table = Dieselben Termine als Tabelle
bookings-acts = Was zu entscheiden ist
tab-plan = Planen
tab-one = Ein Termin
tab-absence = Wer fehlt
tab-earlier = Frühere Pläne
hours-heading = Stunden je Woche
hours-about = Gefüllt: an den Webmaschinen gebucht; Rahmen: vorhanden. Eine Mannschaft zählt mit allen Leuten; Arbeit an der Werkbank fehlt.
hours-figure = Stunden von { $trade } je Woche, gebucht und vorhanden; die Tabelle darunter sagt dasselbe
hours-table = Die Stunden als Tabelle
hours-week = Kalenderwoche
hours-title = Stunden
hours-of = { $booked } von { $there } h
filter-type = Maschinentyp
filter-all-types = alle Maschinentypen
filter-all-looms = alle Webmaschinen
bookings-rows = Zeilen
bookings-by-hall = je Halle
bookings-by-crew = je Mannschaft
bookings-show = Zeigen
bookings-one-week = 1 Woche
bookings-four-weeks = 4 Wochen
bookings-from-week = Ab Woche
bookings-sought = Webmaschine, in jeder Woche
bookings-no-such = Keine Webmaschine hat { $number } in ihrer Nummer.
bookings-without = Ohne Termin:
bookings-unbooked = Webmaschine { $loom }: { $why }
bookings-page = Seite, nach Beginn
bookings-figure = Zeitachse der Termine in { $hall }; die Tabelle darunter sagt dasselbe
bookings-crew-figure = Zeitachse der Mannschaften; die Tabelle darunter sagt dasselbe
bookings-no-crews = Kein gezeigter Termin nennt eine Mannschaft.
bookings-conversion = Umbau
bookings-loom = Webmaschine
bookings-hall = Halle
bookings-start = Beginn
bookings-end = Ende
bookings-window = Gelegenheit
bookings-crew = Mannschaft
bookings-kit = Teilesatz
bookings-stage = Stand
bookings-hours = Personenstunden
bookings-cost = Kosten
bookings-type = Typ
bookings-p10 = Kettablauf P10
bookings-p90 = Kettablauf P90
bookings-who-when = Wer von wann bis wann
bookings-choices = Gewählt
bookings-reading-overdue = Ablesung überfällig
bookings-reading-stale = Ablesung alt
proposed-plan = Plan { $number }, gemacht und nicht veröffentlicht
proposed-costs = Kostet, ohne Verschiebungen
proposed-against = { NUMBER($much, maximumFractionDigits: 0) } { $currency } { $which ->
        [less] weniger
       *[more] mehr
    }, als der Plan in Kraft kosten sollte
proposed-booked = Gebucht
proposed-left = { $many } bleiben übrig
proposed-moved = Würden wandern
proposed-move-cost = { MONEY($cost, $currency) } nach dem Wert move cost
proposed-proof = Beweis
proposed-gap = { NUMBER($gap, maximumFractionDigits: 2) } % offen
proposed-moves = Was er verschiebt und warum
proposed-moves-none = Er verschiebt keinen Termin des Plans in Kraft.
proposed-overtaken = Inzwischen ist ein anderer Plan in Kraft: { $other }. Was Sie vor sich haben, wurde davor gemacht: { $plan }. Er bleibt hier, mit dem, was er am Plan in Kraft verschieben würde, bis Sie weitergehen.
proposed-newer = Es gibt einen neueren Plan, auch er nicht veröffentlicht: { $other }. Vor sich haben Sie noch { $plan }.
proposed-own = Aufgehoben: { $other }. Vor sich haben Sie { $plan }.
plan-named = Plan { $number } von { $who } vom { $at }, der ohne Verschiebungen { MONEY($cost, $currency) } kostet
proposed-go = Zu Plan { $number }
moves-before = Bisher
moves-now = In diesem Plan
moves-why = Warum
moves-dearer = Teurer um
moves-staying = Bleiben würde kosten
moves-about = Beträge in { $currency }. Nichts davon ist schon in Kraft.
proposed-order = Er baut auf eine Bestellung von { QUANTITY($quantity, "") } { $part }, aufzugeben bis { $by }.
publish-plan = Plan { $number } veröffentlichen
publish-asks = { $overtaken ->
        [yes] Plan { $number } wurde vor dem in Kraft gemacht und tritt an seine Stelle. Was voraus liegt, bleibt, wo er es hat, der Rest wird neu geplant
       *[no] Plan { $number } tritt in Kraft
    }: { $booked } mit Termin; von den jetzigen Terminen werden { $moves } andere; seine Teilesätze werden reserviert.
plan-now-in-force = Plan { $number } ist in Kraft: { $booked } mit Termin; von den Terminen zuvor sind { $moves } andere; seine Teilesätze sind reserviert.
plan-about = Was im Rahmen des Beweises gleich gut ist, bleibt, wo es ist. Ein gemachter Plan steht oben mit dem, was er verschiebt; in Kraft ist er erst, wenn er veröffentlicht ist.
plan-hold = Bleiben, wo sie sind
plan-release = Freigeben, obwohl fest
plan-rule-out = Ausgeschlossene Gelegenheiten
plan-calm = Höchstens so viele Verschiebungen mehr als nötig
plan-calm-none = so viele, wie sich lohnen
plan-seconds = Suche beenden nach (s)
plan-make = Einen Plan machen
wishes-none = keine
wishes-forget = Diese Wünsche vergessen
span-says = Webmaschine { $loom }: { $first } bis { $last }
earlier-about = Jeder Plan, der gemacht wurde. Einer kann wieder in Kraft gesetzt werden: Was voraus liegt und noch geht, behält seinen Platz, der Rest wird neu geplant.
plans-number = Plan
plans-made = Gemacht
plans-who = Von
plans-what = Was
plans-cost = Kosten
plans-booked = Gebucht
plans-left = Übrig
plans-in-force = in Kraft
plans-published = war in Kraft
plans-only-made = gemacht, nicht veröffentlicht
earlier-which = Welcher
earlier-publish = In Kraft setzen
earlier-asks = Plan { $number } tritt an die Stelle des jetzigen.
one-about = Wo ein Termin ist, wo er sonst sein könnte und zu welchem Preis.
one-left-over = Webmaschine { $loom } bleibt übrig: { $why }
one-keep = Bleibt, wo er ist
one-rule-out = Diese Gelegenheit ausschließen
one-release = Freigeben
one-wishes = Das zählt beim nächsten Plan; bis dahin steht es unter Planen.
one-dates = Andere Termine
one-no-dates = Der Plan kennt keinen anderen Termin dafür.
one-dates-about = Ein Klick macht und veröffentlicht einen Plan, in dem nur dieser Termin ein anderer ist; der Wert move cost kommt dazu.
one-take = { $start } bis { $end }, { $kind }: { NUMBER($cost, maximumFractionDigits: 0) } { $currency } mehr
absence-about = Ganze Tage. Der nächste Plan rechnet damit; Termine von Fehlenden stehen oben als nicht zu halten.
absence-no-crews = Noch ist keine Mannschaft geladen: zuerst das Blatt Mannschaften laden.
absence-crew = Mannschaft
absence-from = Von
absence-to = Bis einschließlich
absence-heads = Leute, die fehlen
absence-all = alle
absence-enter = Eintragen
absence-which = Früher zurück oder nie weg
absence-choose = wählen, wer
absence-back = Zurück am
absence-end = Festhalten
absence-says = { $crew }: { $first } bis { $last }
absence-no-day = kein erster Tag angegeben
absence-not-chosen = wählen, wer an welchem Tag zurück ist
week-says = { $week }, ab { $monday }: { $bookings ->
        [one] 1 Termin
       *[other] { $bookings } Termine
    }
one-booked = Webmaschine { $loom }: { $start } bis { $end }, { $kind }{ $crew ->
        [none] {""}
       *[other] , { $crew }
    }; kostet { MONEY($cost, $currency) }{ $firm ->
        [yes] . Er ist fest: Er bleibt, außer er wird freigegeben
       *[no] {""}
    }.
