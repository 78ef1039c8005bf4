### Das Lagerbuch: was sich nicht annehmen, ausgeben, vorhalten oder zählen lässt.

part-unknown = unbekanntes Teil { $part }
    .hint = eines der Teileliste wählen
part-unlisted = unbekanntes Teil { $part }{ $where ->
        [kit] {" "}im Teilesatz von Webmaschine { $loom }
        [order] {" "}in einer offenen Bestellzeile
       *[book] {""}
    }
    .hint = es in das Blatt Teile aufnehmen und das einlesen
unit-differs = Teil { $part } wird in { $kept ->
        [none] keiner Einheit
       *[other] { $kept }
    } geführt, nicht in { $unit }
    .hint = die Menge darin angeben
entry-kind-unknown = Bewegung { $number } des Lagerbuchs, von Teil { $part }, ist von der Art „{ $kind }“; diese Fassung kennt { $known }
    .hint = Beamslot erneuern

## Mengen

quantity-no-number = ist keine Zahl
quantity-above-most = ist mehr als { QUANTITY($most, $unit) }
quantity-not-whole = ist keine ganze Zahl von { $unit }
quantity-too-fine = ist feiner als { QUANTITY($step, $unit) }
quantity-wrong = Teil { $part }: { QUANTITY($quantity) } { $wrong }
    .hint = sie angeben, wie gezählt wurde
entry-quantity = Teil { $part }: { QUANTITY($quantity) } ist keine Menge für eine Bewegung der Art „{ $kind }“
    .hint = eine über 0 angeben
reason-needed = Teil { $part }: { $how ->
        [receipt] ein Zugang ohne Bestellzeile
       *[adjustment] eine Berichtigung um { QUANTITY($quantity, signed: "yes") }
    } braucht einen Grund
    .hint = den Grund sagen
stock-above-most = Teil { $part }: mit { QUANTITY($quantity) } mehr wären mehr als { QUANTITY($most, $unit) } da
    .hint = sie angeben, wie gezählt wurde
stock-too-little = Teil { $part }: { QUANTITY($asked) } verlangt, { QUANTITY($on_hand) } da
    .hint = erst den Bestand zählen oder den Zugang buchen
count-below-zero = Teil { $part }: { QUANTITY($quantity) } lassen sich nicht zählen
    .hint = eine Zählung ist 0 oder mehr

## Was hereinkommt

receipt-of-what = sagen, was kam: eine Bestellzeile, oder ein Teil und seine Menge
order-of-several-parts = Bestellung { $order } hat Zeilen für { $parts }
    .hint = sagen, welches Teil
order-unknown = keine offene Bestellzeile { $order }{ $part ->
        [none] {""}
       *[other] {" "}für Teil { $part }
    }; offen sind { $open }
short-delivery-impossible = Bestellzeile { $order }: { QUANTITY($quantity) } ist keine Minderlieferung von { QUANTITY($ordered) }
    .hint = angeben, was käme, von 0 bis zum Offenen

## Was bestellt ist

order-of-nothing = keine Zeile wurde gewählt
    .hint = mindestens eine wählen
order-number-needed = die Bestellzeile von Teil { $part } hat keine Nummer
    .hint = die Nummer der Bestellung und ihrer Zeile angeben, etwa 4500123-10
order-number-taken = es gibt schon eine Bestellzeile { $order }
    .hint = jeder Zeile eine eigene Nummer geben, etwa { $order }-2
order-quantity = Teil { $part }: { QUANTITY($quantity) } können nicht bestellt sein
    .hint = eine Menge über 0 angeben
order-due-past = Bestellzeile { $order }: { $due } ist vorbei, heute ist { $today }
    .hint = den Tag angeben, an dem sie kommt; was gekommen ist, wird als Zugang gebucht
expect-what = sagen, was sich geändert hat: der Tag oder die Menge
line-ordered = bestellt
line-expected-anew = neu erwartet
order-expected = Bestellung { $order }: { QUANTITY($quantity, $unit) } von { $part } werden am { $due } erwartet.
order-closed = Bestellung { $order }: von { $part } wird nichts mehr erwartet.
kit-is-now = Der Teilesatz von Webmaschine { $loom } ist nun { $state ->
        [issued] ausgegeben
        [complete] vollständig
        [reserved] vorgehalten
       *[short] lückenhaft
    }.

## Was hinausgeht und zurückkommt

loom-without-booking = Webmaschine { $loom } ist im veröffentlichten Plan nicht eingeplant
    .hint = { $then ->
        [issue] Teil für Teil ausgeben
        [reserve] sagen, welches Teil und wie viel
       *[kit] sie hat noch keinen Teilesatz
    }
kit-incomplete = dem Teilesatz von Webmaschine { $loom } fehlt { $short }
    .hint = ihn lückenhaft ausgeben oder Teil für Teil
part-quantity = { QUANTITY($quantity) } { $part }
nothing-reserved = nichts{ $part ->
        [none] {""}
       *[other] {" "}von Teil { $part }
    } ist für Webmaschine { $loom } vorgehalten{ $issued ->
        [yes] ; ihr Teilesatz wurde ausgegeben
       *[no] {""}
    }
issue-quantity = Teil { $part }: { QUANTITY($quantity) } lassen sich nicht an Webmaschine { $loom } ausgeben
    .hint = sagen, wie viel, über 0
not-free = Teil { $part }: { QUANTITY($asked) } für Webmaschine { $loom } verlangt, { QUANTITY($free) } frei von { QUANTITY($on_hand) }, die da sind{ $held ->
        [none] {""}
       *[other] {" "}({ $held })
    }
    .hint = es einem anderen Teilesatz nehmen oder auf einen Zugang warten
held-for-looms = { $looms } vorgehalten
quantity-for-loom = { QUANTITY($quantity) } für Webmaschine { $loom }
held-as-safety = { QUANTITY($quantity) } Sicherheitsbestand
return-without-loom = Teil { $part }: eine Rückgabe braucht die Webmaschine, aus deren Teilesatz sie kommt
return-above-issued = Teil { $part }: { QUANTITY($quantity) } von Webmaschine { $loom } zurückzugeben, die { QUANTITY($held) } von dem hat, was ihr ausgegeben wurde
    .hint = mehr als Zugang oder als Zählung buchen
nothing-issued = Webmaschine { $loom } hat nichts{ $part ->
        [none] {""}
       *[other] {" "}von Teil { $part }
    } von dem, was ihr ausgegeben wurde
scrap-above-issued = Teil { $part }: { QUANTITY($quantity) } lassen sich nicht als Ausschuss von Webmaschine { $loom } buchen, die { QUANTITY($held) } von dem hat, was ihr ausgegeben wurde
    .hint = was im Regal zerbricht, ist eine Berichtigung
scrap-above-stock = Teil { $part }: { QUANTITY($quantity) } lassen sich nicht als Ausschuss buchen, { QUANTITY($on_hand) } sind da
nothing-to-recover = bei Webmaschine { $loom } ist nichts draußen, das nach der Methode zurückkommt
part-stays = Teil { $part } kommt nach der Methode nicht von Webmaschine { $loom } zurück
    .hint = wurde es nicht gebraucht, es zurückgeben

## Was vorgehalten ist

kit-not-needed = Webmaschine { $loom } ist { $stage }, also wird nichts für sie vorgehalten
    .hint = sie erst als „Umfang bekannt“ erfassen
kit-lacks-nothing = dem Teilesatz von Webmaschine { $loom } fehlt nichts
part-not-lacking = Teil { $part }: Webmaschine { $loom } fehlt nichts davon
    .hint = sagen, wie viel vorzuhalten ist, über 0
taken-from-itself = Webmaschine { $loom } kann sich nicht selbst etwas nehmen
taken-above-reserved = Teil { $part }: { QUANTITY($quantity) } sollen Webmaschine { $loom } genommen werden, für die { QUANTITY($held) } vorgehalten sind
taking-costs = Webmaschine { $giver } gibt { QUANTITY($quantity, $unit) } { $part } an Webmaschine { $taker }{ $lacks ->
        [none] . Sie ist nicht eingeplant, also bestellt es niemand neu.
       *[other] {" "}und ihr fehlt dann { QUANTITY($lacks, $unit) } für ihren Umbau am { $start }. { $expected ->
            [none] Nichts Bestelltes bringt das rechtzeitig.
           *[other] Was bestellt ist, bringt es bis { $expected }.
        }
    }
reservation-below-zero = Teil { $part }: { QUANTITY($quantity) } lassen sich nicht für Webmaschine { $loom } vorhalten
    .hint = eine Menge über 0 angeben
reservations-above-stock = Teil { $part }: { QUANTITY($reserved) } wären vorgehalten, { QUANTITY($on_hand) } sind da
    .hint = es einem anderen Teilesatz nehmen oder auf einen Zugang warten
no-kits-yet = kein Plan ist veröffentlicht, also gibt es noch keine Teilesätze
    .screen = einen veröffentlichen

## Teilesätze, Wahl und Bedarf

kits-counted = { $kits ->
        [one] 1 Teilesatz
       *[other] { $kits } Teilesätze
    }: { $issued } ausgegeben, { $complete } vollständig, { $reserved } vorgehalten, { $short } lückenhaft.
kits-to-pick = { $first }{ $last ->
        [none] {""}
       *[other] {" "}bis { $last }
    }: { $kits ->
        [one] 1 Teilesatz
       *[other] { $kits } Teilesätze
    } zusammenzustellen, { $short ->
        [0] keiner lückenhaft
       *[other] davon { $short } lückenhaft
    }.
choice-taken = { $taken } für { $looms ->
        [one] 1 Webmaschine
       *[other] { $looms } Webmaschinen
    } gewählt; stattdessen { $other }: Teile { $parts }, Arbeit { $labour }
money-against = { $how ->
        [same] gleich
        [dearer] { MONEY($amount, $currency) } teurer
       *[cheaper] { MONEY($amount, $currency) } billiger
    }
no-choices = Keine eingeplante Webmaschine hatte eine Wahl.
stock-of-part = { $part }: { QUANTITY($on_hand, $unit) } da, { QUANTITY($reserved) } vorgehalten, { QUANTITY($free) } frei.
kit-lacks = Webmaschine { $loom } fehlt { $parts } ({ $state ->
        [issued] ausgegeben
        [complete] vollständig
        [reserved] vorgehalten
       *[short] lückenhaft
    }).
held-by-hand = von Hand vorgehalten
released-by-hand = von Hand freigegeben
taken-for-loom = Webmaschine { $giver } genommen für Webmaschine { $taker }
needs-of = Dies ist der Bedarf für: { $basis }.
    .screen = Ein Planer macht und veröffentlicht einen auf dem Bildschirm Termine: dann stehen hier seine Teilesätze.
needs-of-published = der veröffentlichte Plan
needs-of-plan = Plan { $number }, der nicht veröffentlicht ist
needs-as-they-come = jeder Kettablauf, wie er kommt, denn es gibt noch keinen Plan
nothing-to-order = Nichts ist zu bestellen: Lager und offene Bestellungen decken jeden Bedarf.
order-lines = { $many ->
        [one] 1 Bestellzeile
       *[other] { $many } Bestellzeilen
    }, { MONEY($amount, $currency) }.
order-lines-late = { $many ->
        [one] 1 Zeile ist
       *[other] { $many } Zeilen sind
    } zu spät: der Tag, bis zu dem zu bestellen war, ist vorbei. Das trifft { $looms ->
        [one] 1 Webmaschine
       *[other] { $looms } Webmaschinen
    }.
money-in-all = Mit den offenen Bestellungen im Ganzen { MONEY($total, $currency) }, das meiste in { $month }: { MONEY($most, $currency) }, gerechnet bei Lieferung.
overdue = { $what } { $follows }
still-out = Webmaschine { $loom } hat noch { QUANTITY($quantity, $unit) } von { $part }, die am { $due } hätten zurückkommen sollen; als da gezählt, sie zurückholen.
