### Was auf jedem Bildschirm steht oder auf mehreren.

reading-the-database = Die Datenbank wird gelesen …
screen-failed = Dieser Bildschirm ist gescheitert ({ $kind }); nichts wurde geschrieben. Einzelheiten stehen im Protokoll dessen, der die Bildschirme bedient.

## Noch nichts zu zeigen

empty-no-looms = Noch gibt es keine Webmaschine. Die Maschinenliste der Weberei auf dem Bildschirm **Einlesen** einlesen.
empty-no-plan = Noch ist kein Plan veröffentlicht. Einer wird auf dem Bildschirm **Termine** gemacht und veröffentlicht; { $then }.
empty-lacks = Noch ist kein Plan veröffentlicht, und keiner ist möglich, bevor es { $what } gibt: auf dem Bildschirm **Einlesen** einlesen.
all-of-them = { $first } und { $last }

## Ob der veröffentlichte Plan noch hält

standing-broken = Der veröffentlichte Plan lässt sich so nicht halten: { $findings ->
        [one] { $findings } Befund
       *[other] { $findings } Befunde
    }. Die Daten haben sich seither geändert, und was die Bildschirme vom Plan zeigen, auch sein Beweis, gilt nicht mehr. Auf dem Bildschirm **Termine** neu planen.
standing-what = Was sich nicht halten lässt
standing-more = und { $more } weitere

## Beweis und Kosten des Plans

proof-none = Kein Plan hält alle Grenzen ein. { $reasons }
proof-least = Dieser Plan kostet { MONEY($cost, $currency) }, und bewiesen ist, dass keiner für dieselben Daten weniger kostet.
proof-within = Dieser Plan kostet { MONEY($cost, $currency) }. Bewiesen ist: kein Plan für dieselben Daten kann weniger als { MONEY($bound, $currency) } kosten, ein besserer würde also höchstens { MONEY($saves, $currency) } sparen ({ $share }).
proof-open = Dieser Plan kostet { MONEY($cost, $currency) } und ist noch nicht als bester bewiesen: kein Plan für dieselben Daten kann weniger als { MONEY($bound, $currency) } kosten, ein besserer würde also höchstens { MONEY($saves, $currency) } sparen ({ $share }).{ $how ->
        [stopped] {" "}Die Suche wurde von ihrer Zeitgrenze angehalten.
       *[feasible] {""}
    } Neu zu planen mit mehr Zeit kann das schließen.
share-least = weniger als { $share }
cost-parts = { MONEY($booked, $currency) } für { $bookings ->
        [one] { $bookings } Termin
       *[other] { $bookings } Termine
    }{ $looms ->
        [0] {""}
        [one] {" "}und { MONEY($left, $currency) } für { $looms } übrige Webmaschine
       *[other] {" "}und { MONEY($left, $currency) } für { $looms } übrige Webmaschinen
    }.

## Wörter mehrerer Tabellen

quantity-of-part = { $quantity } { $part }
stage-to-survey = aufzunehmen
beam-out-stale = veraltet
beam-out-overdue = überfällig

table-by = Ordnen nach
table-by-none = wie sie steht
table-down = absteigend
table-page = Seite
table-rows = Zeilen { $first } bis { $last } von { $rows }
value-choose = auswählen
