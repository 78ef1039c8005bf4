### Blätter und Papiere für Leser: ihre Namen, Überschriften, Hinweise und Sätze.

## Namen von Blättern und Dateien

book-plan = Plan
book-bookings = Termine
book-crew = Mannschaft { $crew }
book-days = Tage { $trade }
book-bench = Werkbank
book-findings = Befunde
book-stops = Kommende Halte
book-kit-needs = Bedarf nach Wochen
book-net-needs = Nettobedarf
book-booked-hours = Eingeplante Stunden nach Typ
book-costs = Kosten
book-left-over = Übrig
book-other-dates = Andere Termine
book-prices = Preise der Knappheit
book-hours-by-type = Stunden nach Typ
book-hours-by-variant = Stunden nach Ausführung
book-late = Zu spät
book-changes = Änderungen
book-settings = Einstellungen
book-alarms = Alarme
book-visits = Besuche nach der Abnahme
book-bobbins = Meter auf den Spulen
book-taught = Was Webmaschinen lehrten
book-done-by = Fertig bis
book-worries = Sorgen
book-at-risk = Gefährdete Termine
book-rests-on = Beruht auf
book-orders = Bestellungen
book-order = Bestellung
book-cash = Geld nach Monaten
book-picks = Pickliste
book-order-list = Bestellliste
book-order-file = Bestellung

## Was jedes Blatt sagt

book-total = Summe
book-page = Seite &P von &N
book-allowed = Erlaubt
book-usual = Üblich
book-or-more = oder mehr
book-day = dd.mm.yyyy

## Der Plan

book-plan-of = { $programme }: Plan, Stand { $at }
book-plan-booked = Eingeplant: { $booked }; übrig: { $left_over }. Der Plan ist { $status }.
book-plan-times = Zeiten sind Ortszeit ({ $zone }), Geld ist in { $currency }. Vorhersagen sind Schätzungen, keine Versprechen.
book-status = Ergebnis
book-objective = Kosten des Plans
book-bound = Kein Plan kann weniger kosten als
book-gap = Abstand zwischen beiden
book-seconds = Dauer des Planens
book-of-them-firm = davon fest
book-of-them-pilots = davon Piloten
book-crew-changes = Wechsel der Mannschaft in einer Schicht
book-first-start = Erster Umbau beginnt
book-last-end = Letzter Umbau endet
book-horizon-ends = Horizont endet
book-target-finish = Ziel
book-labour = Arbeit
book-left-over-cost = Kosten der übrigen Webmaschinen
book-none-left-over = Keine: jede Webmaschine, die geplant werden kann, ist eingeplant.
book-unit-looms = Webmaschinen
book-unit-times = mal
book-unit-person-hours = Personenstunden
book-firm = fest
book-pilot = Pilot

## Mannschaften, Berufe, Werkbank, Halte

book-crews-as-of = Plan, Stand { $at }. Zeiten sind Ortszeit ({ $zone }).
book-crew-about = Mannschaft { $crew }: Umbauten nach Wochen
book-days-about = { $trade }: wo und wann, Tag für Tag
book-bench-about = Werkbank: was fertig sein muss, wenn der Umbau beginnt, und was danach zu tun bleibt
book-after-restart = nach dem Wiederanlauf: { $work }
book-stops-about = Webmaschinen, die für einen Umbau stehen
book-and = {" und "}

## Bedarf und Bestellungen

book-kit-needs-by-week = Bedarf der Teilesätze nach ISO-Wochen
book-kit-needs-about = Was die Termine brauchen, die in der Woche beginnen, ohne das, was schon für sie ausgegeben ist.
book-late-by = um { $days } zu spät
book-touched = { $loom } um { $days }
book-no-supplier = ohne Lieferant
book-orders-title = Bestellliste
book-orders-about = { $lines } für { MONEY($amount, $currency) }; { $late } zu spät: der Tag, bis zu dem zu bestellen war, ist vorbei.
book-cash-about = Geld nach dem Monat der Lieferung
book-cash-peak = Zusammen { MONEY($total, $currency) }; am meisten im Monat { $month }: { MONEY($most, $currency) }.
book-per-unit = { $currency } je Einheit
book-order-to = { $programme }: Bestellung an { $supplier }
book-order-sum = { $lines }, { MONEY($amount, $currency) }.
book-order-please = Bitte in Menge und Fällig eintragen, was Sie bestätigen, die anderen Spalten lassen, wie sie sind, und die Datei zurücksenden.

## Picklisten

book-picks-of = { $programme }: Pickliste
book-picks-for = Pickliste für { $on }
book-picks-none = Es ist nichts herauszusuchen.
book-short-of = es fehlen { $quantity }
book-no-location = ohne Lagerplatz

## Stunden, Einstellungen, Durchspielen

book-hours-about = { $looms } nach Fassung { $version } der Methode; das Mittel über die Webmaschinen einer Zeile, mit Zuschlag, bei der Wahl, die am wenigsten dauert.
book-rehearsal-about = Der Plan, von heute bis zu seinem Horizont viele Male durchgespielt: Schätzungen, keine Versprechen.
book-plan-itself = Der Plan selbst sagt { NUMBER($cost, minimumFractionDigits: 2, maximumFractionDigits: 2) } { $currency }.
book-worries-about = Was der Umbau weniger kosten würde, mit dem 95-%-Bereich.
book-at-risk-about = Was am ehesten schiefgeht, zuerst.
book-rests-on-about = Woher jede Zahl kommt, nach der gezogen wurde: aus den eigenen Aufzeichnungen der Weberei, wie verlangt, oder wie üblich.

## Überschriften

col-what = Was
col-mark = Zeichen
col-week = Woche
col-day = Tag
col-days = Tage
col-window = Gelegenheit
col-window-number = Nummer der Gelegenheit
col-warp-runs-out = Kette läuft ab etwa
col-working-time = Arbeitszeit
col-labour = Arbeit
col-total-cost = Kosten zusammen
col-pause-from = Pause von
col-pause-to = Pause bis
col-lost-production = Verlorene Produktion
col-late-beam-outs = Späte Kettabläufe
col-labour-cost = Kosten der Arbeit
col-saving-foregone = Entgangene Ersparnis
col-moves = Verschiebungen
col-surviving = Damit er übersteht (gerechnet, nicht gezahlt)
col-cost-lost = Ausgefallene Umbauten
col-cost-of-left-over = Übrige Webmaschinen
col-looms-booked = Webmaschinen eingeplant
col-looms-left-over = Webmaschinen übrig
col-labour-per-loom = Arbeit je Webmaschine
col-labour-first = Arbeit der ersten Webmaschine
col-labour-last = Arbeit der letzten Webmaschine
col-working-time-per-loom = Arbeitszeit je Webmaschine
col-why-left-over = Warum sie übrig ist
col-cost-left-over = Kosten, wenn sie bleibt
col-other-start = Anderer Beginn
col-other-end = Anderes Ende
col-dearer = Teurer als der Termin um
col-scarce = Was knapp ist
col-one-more-saves = Eins mehr würde sparen
col-needs = Außerdem nötig
col-crew-at-loom = Mannschaft an der Webmaschine
col-all-its-work = Ihre ganze Arbeit an der Webmaschine
col-ready-by = Fertig um
col-from-then = Von da an
col-then-after-restart = Dann, nach dem Wiederanlauf
col-trades = Berufe
col-bench-time = Zeit an der Werkbank
col-beam-out-p10 = Kettablauf P10
col-beam-out-p50 = Kettablauf P50
col-beam-out-p90 = Kettablauf P90
col-stops-from = Steht von
col-stops-to = Steht bis
col-article-next = Artikel, der kommt
col-new-warp-from = Neue Kette ab
col-new-warp-by = Neue Kette bis
col-all-weeks = Alle Wochen
col-needed-by-bookings = Für Termine nötig
col-needed-by-left-over = Für übrige Webmaschinen nötig
col-receipts-due = Erwartete Zugänge
col-in-stock-at-end = Am Ende im Lager
col-net-need = Nettobedarf
col-to-order = Zu bestellen
col-on-order = Bestellt
col-both = Beides
col-month = Monat
col-order-by = Bestellen bis
col-late = Zu spät
col-looms-touched = Betroffene Webmaschinen
col-looms-that-fall = Webmaschinen, die ohne die Bestellung ausfallen
col-looms-touched-if-late = Webmaschinen, für die es zu spät kommt
col-looms-that-fall-without = Webmaschinen, die ohne es ausfallen
col-needed-in-store = Muss da sein
col-expected = Kommt
col-amount = Betrag
col-short = Fehlt
col-to-pick = Herauszusuchen
col-picked = Herausgesucht
col-since = Seit
col-what-follows = Was daraus folgt
col-when = Wann
col-told = Getan haben soll es
col-roles = Rollen
col-by = Von
col-through = Womit
col-variant = Ausführung
col-first-loom = Erste Webmaschine
col-next-loom = Nächste Webmaschine
col-next-loom-trade = Nächste Webmaschine: { $trade } ({ $unit })
col-last-loom = Letzte Webmaschine
col-number-of-last = Nummer der letzten
col-p10 = P10
col-p50 = P50
col-p80 = P80
col-p90 = P90
col-on-the-loom = An der Webmaschine
col-on-the-bench = Vorher an der Werkbank
col-after-restart = Nach dem Wiederanlauf
col-hours-are = Stunden sind
col-found = Vorgefunden
col-set = Eingestellt
col-now = Jetzt
col-left = Links
col-right = Rechts
col-left-less-right = Links minus rechts
col-last-read = Zuletzt gelesen
col-read = Gelesen
col-in-words = In Worten
col-seen = Gesehen
col-what-was-said = Was dazu gesagt wurde
col-days-after = Tage nach der Abnahme
col-done = Getan
col-state = Stand
col-cloth-to-change = Ware bis zum nächsten Wechsel
col-median = Mitte
col-spread = Streuung
col-method-says = Methode sagt
col-proposed = Vorgeschlagen
col-looms-done = Webmaschinen fertig
col-reached = Erreicht (% der Durchläufe)
col-played = Gespielt
col-runs = Durchläufe
col-mean = Mittel
col-of-it = Davon { $term } ({ $currency })
col-crews-waiting = Mannschaften warten auf Ketten
col-crews-idle = Mannschaften ohne Arbeit
col-if-certain = Wäre es gewiss
col-saves = Spart
col-at-least = Mindestens
col-at-most = Höchstens
col-sure = Sicher
col-within-a-day = Auf den Tag genau (% der Durchläufe)
col-lost = Ausgefallen (% der Durchläufe)
col-held-up-by = Am meisten aufgehalten durch
col-that-in = Das in (% davon)
col-varies = Was schwankt, und wie sehr
col-taken-for = Genommen für
col-comes-from = Kommt aus
col-records = Aufzeichnungen
remark-asked-for = Erbeten
remark-asked-by = Erbeten bis
remark-total-price = Gesamtpreis

## Hinweise zu Überschriften

hint-mark = Fest: neues Planen lässt ihn, wie er ist. Pilot: die erste ihres Typs.
hint-mark-firm = Fest: beginnt in der festen Zeit, neues Planen lässt ihn, wie er ist. Pilot: die erste ihres Typs.
hint-window = Die Gelegenheit, die genommen wird: ein Kettwechsel (gleicher oder anderer Artikel), eine Maschine, die ohnehin steht, oder mitten in der Kette.
hint-windows = Die Arten von Gelegenheiten, für die die Zahlen gelten.
hint-p50 = P50: ebenso wahrscheinlich früher wie später.
hint-p10 = Eine von zehn läuft vorher ab.
hint-p90 = Eine von zehn läuft danach ab.
hint-booking-crew = Wer es tut, der Reihe nach; die Stunden stehen auf dem Blatt jeder Mannschaft.
hint-working-time = Arbeitsstunden vom Beginn bis zum Ende.
hint-pause-from = Der erste Teil ist fertig; die neue Kette kommt hinein, und niemand ist gebunden.
hint-pause-to = Der zweite Teil beginnt.
hint-one-more-saves = Was eines mehr in dieser Woche sparen würde, nach den Preisen des gelockerten Plans: ein Anhalt, kein Angebot.
hint-needs = Andere Berufe und Werkzeuge, von wann bis wann.
hint-from-then = Arbeit, die für die Werkbank bleibt, wenn die Webmaschine wieder läuft.
hint-then-after-restart = Was die Mannschaft an der Webmaschine tut, sobald sie läuft. Dafür wird sie nicht frei gehalten: sie kann dann schon an ihrer nächsten sein.
hint-all-its-work = Einmal gesagt, wo er zuerst an die Webmaschine kommt.
hint-new-warp-from = Der erste Teil ist fertig; die Kette kann hinein.
hint-new-warp-by = Die Mannschaft geht weiter; die Kette muss drin sein.
hint-in-stock-at-end = Vorausgerechnet, als wären die vorgeschlagenen Bestellungen gekommen.
hint-net-need = Was fehlt, um nicht unter den Sicherheitsbestand zu kommen.
hint-to-order = Der Nettobedarf in ganzen Losen, mindestens die Mindestbestellmenge.
hint-order-line = Nummer der Zeile; die Antwort des Lieferanten trägt sie zurück.
hint-expected = Der Tag, an dem es nötig ist; bei einer späten Zeile der, an dem es kommt, wenn heute bestellt wird.
hint-please-quantity = Bitte eintragen: die Menge, die Sie bestätigen; 0 = keine.
hint-please-due = Bitte eintragen: der Tag, an dem es hier ankommt.
hint-start-of-conversion = Beginn des Umbaus, Ortszeit.
hint-variant = Was diese Webmaschinen unterscheidet.
hint-first-loom = Die erste des Typs für eine Mannschaft.
hint-next-loom = Wie der nächste Plan sie rechnet.
hint-last-loom = Wenn eine Mannschaft alle Webmaschinen des Typs umbaute.
hint-of-the-next = Der nächsten, nach den Schätzungen der Methode mit drei Werten.
hint-on-the-loom = Verstrichene Stunden der nächsten, während sie steht.
hint-hours-are = Nach Vorgabe: die Lernkurve der Vorgaben. Angepasst: nach erfassten Umbauten.
hint-left-less-right = Winkel auf dem kürzeren Weg.
hint-not-before-horizon = Leer: nicht vor dem Horizont.

## Der Bericht, ob es sich gelohnt hat

pdf-page = Seite { $page }
pdf-changes = Änderung in Prozent mit ihrem 95-%-Bereich: gegen dieselben Wochen noch nicht umgebauter Webmaschinen und schlicht vorher und nachher (braun), was nicht zu glauben ist
pdf-saves = Was es im Monat erspart
pdf-money = Gemessen und angegeben, { $currency } im Monat
pdf-weeks = Stillstände nach Wochen seit dem Wiederanlauf, Änderung in Prozent
pdf-believe = Wie weit man es glauben darf
pdf-range = { $middle } ({ $low } bis { $high })
pdf-before = Vorher
pdf-after = Nachher
pdf-change = Änderung, 95-%-Bereich
pdf-more-looms = und { $looms } weitere Webmaschinen
pdf-loom-by-loom = Jede Webmaschine auf ihrem eigenen Artikel, { $figure }; die Jahreszeit steckt darin

## Arbeitsmappen zum Ausfüllen und Einlesen

book-guide = Anleitung
book-guide-title = Anleitung zu dieser Arbeitsmappe von beamslot
book-guide-nothing-deleted = Die Blätter ausfüllen, die es gibt, und die anderen leer lassen; ein leereres Blatt löscht beim Einlesen nichts.
book-guide-needed = Dunklere Überschriften sind nötig. Der Zeiger über einer Überschrift zeigt, was dort hingehört.
book-guide-numbers = Nummern von Webmaschinen sind Text: 007, 3/12 und A-07 bleiben, wie sie sind. Einheiten stehen in den Überschriften.
book-guide-terms = Eine Vorgabe ohne Wert behält, was von Anfang an gilt oder vorher eingelesen wurde.
book-guide-method = Die Blätter Arbeitsgänge, Teilesatz, Wahl, Sollwerte und Prüfungen sind eine Methode: wird eines eingelesen, ersetzt es alle seine Zeilen.
book-guide-where = Wo
book-guide-what = Was dort hingehört
book-guide-sheet = Blatt { $sheet }
book-guide-open-attributes = Jede andere Spalte wird unter ihrer eigenen Überschrift behalten, und die Methode darf nach ihr fragen.
book-guide-open-conditions = Jede andere Spalte ist eine Bedingung: ihre Überschrift ist eine Spalte der Webmaschinen, „window“ oder der Name einer Wahl; ihre Zellen sagen, für welchen Wert die Zeile gilt: undrilled; left, both; <= 12; [8..16]; not(none); - oder leer für jeden.
book-needed = nötig
book-one-of = eines von: { $words }
book-example = Zum Beispiel: { $example }
book-from-to = { $low } bis { $high }
book-from = { $low } oder mehr
holds-text = Text
holds-identifier = Text, auch wo er wie eine Zahl aussieht
holds-number = Zahl
holds-integer = ganze Zahl
holds-percent = Prozent
holds-yes-no = ja oder nein
holds-date = Datum
holds-moment = Datum und Uhrzeit, Ortszeit
holds-time = Uhrzeit
holds-weekdays = Wochentage, etwa Mo-Fr
holds-any = Text, Zahl oder Datum
remark-default = Von Anfang an
remark-meaning = Bedeutung
remark-acts = Wirkt auf
book-none = nichts
book-type = TYP
unit-currency = Währung
unit-day = Tag
unit-looms = Webmaschinen
unit-text = Text
unit-yes-no = ja oder nein
unit-loom-number = Nummer der Webmaschine

## Karten zum Ausfüllen, und die Liste für den Gang durch die Halle

book-cards = Karten
book-cards-title = Karten in dieser Arbeitsmappe von beamslot
book-cards-fill = Die umrandeten Zellen der nächsten Blätter ausfüllen; eine Zeile darf bleiben, wie sie ist, wo nichts zu sagen ist.
book-cards-times = Zeitpunkte sind Ortszeiten von { $zone }. Die erste Zeile einer Webmaschine im Blatt Geleistete Arbeit ist ihr ganzer Umbau.
col-plan = Plan
col-method-version = Fassung der Methode
book-survey-of = { $programme }: Webmaschinen, die in der Halle anzusehen sind
book-survey = Webmaschinen, die in der Halle anzusehen sind
book-survey-fill = { $looms }, { $cells } auszufüllen. Die umrandeten Zellen ausfüllen; die anderen sind bekannt oder für diese Webmaschine gleichgültig.
book-survey-load = Die Auswahl in den Zellen hat die Werte, die die Methode kennt. Die Liste speichern und einlesen: sonst ändert sich nichts.
hint-one-of = Eines von: { $words }
hint-matters = Es kommt darauf an, ob: { $what }

## Nach Fällen

book-turn = { $begins ->
        [begin] beginnen
        [go-on] weitermachen
       *[take-over] übernehmen von { $before }
    }{ $ends ->
        [finish] , fertig machen
        [warp] , dann die neue Kette
       *[open] {""}
    }{ $follows ->
        [none] {""}
       *[other] ; { $follows } macht weiter
    }
book-picks-kit = Webmaschine { $loom }{ $machine_type ->
        [none] {""}
       *[other] , { $machine_type }
    }: der Umbau beginnt { $at }
book-hours-of = { $programme }: Stunden für eine Webmaschine, nach { $by ->
        [variant] Ausführung
       *[type] Maschinentyp
    }
book-hours-source = { $source ->
        [fitted] angepasst
       *[standard] nach Vorgabe
    }
visit-state = { $state ->
        [overdue] überfällig
        [due] fällig
        [done] getan
       *[other] kommt noch
    }

## Die gekennzeichnete Kopie einer Arbeitsmappe

book-findings-title = Befunde in dieser Arbeitsmappe von beamslot
book-findings-counted = { $many }: { $each ->
        [none] nichts zu berichtigen
       *[other] { $each }
    }. Gekennzeichnete Zellen sind gefärbt und haben einen Kommentar, der mit der Schwere beginnt.
book-findings-mend = Die Zellen in dieser Kopie berichtigen und sie einlesen: dieses Blatt wird übergangen, alles andere ist, wie es war.
book-findings-unnoted = Zellen mit einer Unterhaltung nehmen keinen Kommentar an; sie sind gefärbt und aufgeführt: { $cells }
finding-severity = { $severity ->
        [refused] abgelehnt
        [doubt] Zweifel
       *[note] Hinweis
    }
note-read-as = Gelesen als: { $understood }
note-to-do = Was tun: { $hint }
note-more = mehr im Blatt { $sheet }
col-severity = Schwere
col-sheet = Blatt
col-cell = Zelle
col-heading = Überschrift
col-in-the-cell = In der Zelle
col-understood-as = Verstanden als
col-what-was-found = Was gefunden wurde
col-what-to-do = Was tun
col-code = Kennung
