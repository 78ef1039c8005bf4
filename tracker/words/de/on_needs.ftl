### Der Bildschirm Teilesätze und Bedarf.

## Auf den ersten Blick

needs-then = was er braucht, steht sofort hier
needs-kits-whole = Teilesätze vollständig
needs-kits-waiting = { $reserved } warten auf Zugänge, { $short } lückenhaft
needs-to-place = Zu bestellen
needs-late = { $late ->
        [0] keine zu spät
       *[other] { $late } zu spät
    }
needs-on-order = Bestellt und offen
needs-past-date = { $late ->
        [0] keine überfällig
       *[other] { $late } überfällig
    }
needs-money = Geld, offene Bestellungen eingeschlossen
needs-dearest = am meisten im { $month }: { $most }
needs-overdue = { $many ->
        [one] Noch etwas hätte
       *[other] { $many } weitere Dinge hätten
    } kommen oder zurückkommen sollen
needs-urgent = Bis Ende dieser Woche zu bestellen
needs-urgent-none = Diese Woche muss nichts bestellt werden{ $following ->
        [none] {""}
       *[other] ; das Nächste bis { $following }
    }.
needs-short = Lückenhafte Teilesätze, der früheste Beginn zuerst
needs-short-none = Keinem Teilesatz fehlt etwas, das nicht rechtzeitig bestellt ist.
needs-short-more = und { $more } weitere unten, bei Teilesätze
needs-area = Was zu tun ist
needs-area-orders = Bestellen
needs-area-receipts = Bestellt, Zugänge
needs-area-kits = Teilesätze
needs-area-stock = Bestand
needs-area-weeks = Wochen und Geld

## Was zu bestellen ist

needs-order-list = Was bis wann zu bestellen ist
needs-order-none = Nichts: Bestand und offene Bestellungen decken jeden Bedarf.
no-supplier = kein Lieferant genannt
head-order-by = Bestellen bis
head-in-time = Rechtzeitig?
head-must-be-in = Muss da sein
head-comes = Kommt
head-touched = Webmaschinen, für die es zu spät kommt
head-falls = Webmaschinen, die ohne es ausfallen
in-time = rechtzeitig
late-by = { $days ->
        [one] { $days } Tag
       *[other] { $days } Tage
    } zu spät
touched-by = { $loom } um { $days ->
        [one] { $days } Tag
       *[other] { $days } Tage
    }
order-heading = Bestellung an { $supplier }
order-help = Zeilen ankreuzen, Arbeitsmappe schreiben und senden. Sobald die Bestellung ihre Nummer hat, diese eintragen: dann werden ihre Zeilen erwartet und nicht mehr vorgeschlagen.
order-first = Die ersten { $shown } von { $all } Zeilen, nach dem Tag der Bestellung.
order-line = { $part }{ $description ->
        [none] {""}
       *[other] {", "}{ $description }
    }, bestellen bis { $by }
order-quantity-of = Menge { $part }
order-due-of = { $part } kommt am
order-number = Nummer der Bestellung
order-number-help = Bei mehreren Zeilen bekommt jede ihre eigene Nummer, etwa 4500123-10, 4500123-20.
order-workbook = Die Bestellung als Arbeitsmappe
order-enter = Als bestellt eintragen

## Was bestellt ist

needs-open-lines = Bestellt und offen
needs-open-none = Nichts ist bestellt.
head-due = Fällig
head-late = Verspätet
head-order = Bestellung
head-open = Offen
head-wanted-by = Webmaschinen, denen es fehlt
receive-which = Welche Zeile
receive-line = { $order }: { QUANTITY($quantity, $unit) } { $part }, fällig { $due }
receive-heading = Zugang buchen
receive-quantity = Was gekommen ist
receive-rest = Der Rest
receive-rest-comes = kommt noch
receive-rest-ends = kommt nicht mehr
receive-act = Buchen
receive-without = Etwas kam ohne Bestellung
why = Warum
why-optional = Warum (darf leer bleiben)
expect-heading = Es kommt anders
expect-due = Kommt am
expect-quantity = So viel kommt noch
expect-act = So erwarten
what-if-heading = Wenn es später kommt?
what-if-days = Tage später
what-if-help = Das ändert nichts.
what-if-act = Wer fällt aus?

## Teilesätze

kits-heading = Teilesätze der eingeplanten Webmaschinen
kits-none = Keine Webmaschine ist eingeplant.
kits-state = Zustand
kits-state-count = { $state } ({ $kits })
kits-all-states = alle Zustände
kit-issued = ausgegeben
kit-complete = vollständig
kit-reserved = unterwegs
kit-short = lückenhaft
head-lacks = Fehlt
head-expected = Bestellt, fällig bis
head-reserved = Reserviert
head-issued = Ausgegeben
kit-of = { $loom }, { $start }{ $card ->
        [none] {""}
       *[other] {", Karte "}{ $card }
    }
take-heading = Aus einem anderen Teilesatz nehmen
take-none = Keinem Teilesatz fehlt ein Teil, das für eine andere Webmaschine reserviert ist.
take-for = Für
take-from = Von
take-holds = { $loom }: { QUANTITY($quantity) }, { $start ->
        [none] nicht eingeplant
       *[other] Beginn { $start }
    }
take-quantity = Wie viel
take-act = Nehmen
reserve-heading = Reservieren
reserve-none = Keinem Teilesatz fehlt etwas.
reserve-for = Für
reserve-all = alles, was fehlt
reserve-safety = auch aus dem Sicherheitsbestand
reserve-act = Reservieren
release-heading = Freigeben
release-none = Nichts ist reserviert.
release-of = Von
release-all = alles, was sie hat
release-act = Freigeben
release-asks = Webmaschine { $loom } gibt { $parts } ab; das bleibt frei bis zum nächsten Eingang oder veröffentlichten Plan.
issue-heading = Auf eine Karte ausgeben
issue-none = Nichts ist reserviert, das ausgegeben werden könnte.
issue-to = An
issue-all = den ganzen Teilesatz
issue-incomplete = auch wenn etwas fehlt
issue-act = Ausgeben

## Bestand

stock-heading = Bestand
stock-none = Es gibt noch keine Teile. Das Blatt Teile auf dem Bildschirm Einlesen laden.
head-on-hand = Vorhanden
head-safety = Sicherheitsbestand
head-free = Frei
count-heading = Zählung buchen
count-found = Gezählt
count-act = Zählung buchen

## Wochen und Geld

cash-heading = Geld je Monat
cash-none = Nichts ist bestellt, und nichts ist zu bestellen.
cash-on-order = bestellt
cash-to-order = noch zu bestellen
cash-alt = Balken: Geld je Monat, bestellt und noch zu bestellen
one-part-heading = Ein Teil, Woche für Woche
one-part-none = Kein Teil bewegt sich.
one-part-booked = von Terminen gebraucht
one-part-left-over = von übrigen Webmaschinen gebraucht
one-part-stock = Bestand am Ende der Woche
one-part-alt = Balken: Bedarf an { $part } je Woche; Linie: erwarteter Bestand
one-part-help = Der Bestand rechnet offene Zugänge und die vorgeschlagenen Bestellungen als gekommen.
pieces = Stück
weeks-heading = Nettobedarf je Woche
weeks-parts = Teile
weeks-all-parts = alle Teile
weeks-only = nur was zu bestellen ist
weeks-none = Hier ist nichts zu bestellen.
head-needed = Gebraucht
head-left-over = Von übrigen Webmaschinen
head-receipts = Zugänge
head-stock-end = Bestand am Ende
head-net = Netto
head-to-order = Zu bestellen
