### Die Vorgaben: wie sie heißen, was sie bedeuten und worauf sie wirken.

heading-term-programme = Name des Umbaus
about-term-programme = Wie der Umbau im Ganzen heißt.
acts-programme = Titel von Listen, Dateien und Bildschirmen
heading-term-time-zone = Zeitzone
about-term-time-zone = Die Ortszeit der Weberei, mit ihrem IANA-Namen.
acts-time-zone = jeden Zeitpunkt, der gelesen, getippt oder gezeigt wird
heading-term-currency = Währung
about-term-currency = Kürzel oder Zeichen der Währung, in der alle Preise sind.
acts-currency = jeden Betrag; keiner wird umgerechnet
heading-term-start = Beginn
about-term-start = Erster Tag des Umbaus. Leer = der Tag, an dem geplant wird.
acts-start = Plan: kein Termin davor; der Horizont zählt ab hier
heading-term-horizon = Horizont
about-term-horizon = So viele Tage vom Beginn an werden geplant.
acts-horizon = Vorhersage und Plan
heading-term-target-finish = Ziel
about-term-target-finish = Der Tag, an dem die Weberei fertig sein will.
acts-target-finish = Stand: Tage davor oder danach; Bedarf: wann übrige Webmaschinen ihre Teilesätze brauchen
heading-term-firm = fest
about-term-firm = Ein Termin, der innerhalb von so vielen laufenden Stunden beginnt, ist fest.
acts-firm = Plan: neues Planen lässt feste Termine, wie sie sind; Kosten eines späten Kettablaufs
heading-term-patience = Geduld
about-term-patience = So lange wartet eine Mannschaft auf einen späten Kettablauf, bevor der Rest der Kette abgeschnitten wird.
acts-patience = Plan: Kosten eines späten Kettablaufs
heading-term-allowance = Zuschlag
about-term-allowance = Kommt zu den Minuten der Methode hinzu.
acts-allowance = Umfang: Stunden; Plan: wie lange ein Umbau dauert
heading-term-learning-rate = Lernrate
about-term-learning-rate = Jede Verdopplung der Umbauten eines Maschinentyps braucht diesen Anteil der Zeit. 100 = nichts wird gelernt.
acts-learning-rate = Umfang und Plan: wie lange der nächste Umbau eines Maschinentyps dauert
heading-term-learning-floor = Untergrenze des Lernens
about-term-learning-floor = Wie viele es auch werden, ein Umbau braucht nicht weniger als diesen Anteil der Minuten der Methode.
acts-learning-floor = Umfang und Plan, wie die Lernrate
heading-term-left-over-penalty = Preis einer übrigen Webmaschine
about-term-left-over-penalty = Was eine Webmaschine kostet, die nicht umgebaut wird, neben der Ersparnis, die ihr entgeht. In der Währung.
acts-left-over-penalty = Plan: welche Webmaschinen eingeplant werden
heading-term-move-cost = Preis einer Verschiebung
about-term-move-cost = Was es kostet, einen veröffentlichten Termin innerhalb von 14 Tagen zu verschieben; spätere ein Viertel. In der Währung.
acts-move-cost = Plan: welche Termine verschoben werden
heading-term-soak = Wartezeit nach dem Piloten
about-term-soak = Vom Ende eines Piloten bis zur nächsten Webmaschine seines Typs. 0 = keine Piloten.
acts-soak = Plan: Piloten
heading-term-lead-trade = führender Beruf
about-term-lead-trade = Der Beruf, dessen Mannschaften einen Umbau von Anfang bis Ende tragen.
acts-lead-trade = Plan: Mannschaften; Bedarf: Arbeitstage für Bestellungen
heading-term-with-the-pilot-throughout = durchgehend beim Piloten
about-term-with-the-pilot-throughout = Jemand dieses Berufs bleibt bei der ersten Webmaschine eines Typs von Anfang bis Ende dabei. Leer = electrician; ein Beruf, den kein Arbeitsgang verlangt = niemand.
acts-with-the-pilot-throughout = Plan: Piloten
heading-term-looms-stopped-at-once = Webmaschinen, die zugleich stehen
about-term-looms-stopped-at-once = Höchstens so viele in einer Halle. Keine Zeile = keine Grenze.
acts-looms-stopped-at-once = Plan
heading-term-day-to-day-variation = Schwankung von Tag zu Tag
about-term-day-to-day-variation = Wie weit die an einem Tag gewebte Kette vom Mittel abweicht (Variationskoeffizient).
acts-day-to-day-variation = Vorhersage: Spanne eines Kettablaufs; Plan: Kosten eines späten Kettablaufs
heading-term-days-to-order = Tage bis zur Bestellung
about-term-days-to-order = Vom Tag des Planens bis zu dem Tag, an dem bestellt wird, was fehlt.
acts-days-to-order = Plan: ab wann ein Teil da sein kann, das bestellt wird
heading-term-lead-time-where-none-is-given = Lieferzeit, wo keine angegeben ist
about-term-lead-time-where-none-is-given = Für Teile ohne eigene Lieferzeit. 0 = ein solches Teil kann nicht bestellt werden.
acts-lead-time-where-none-is-given = Plan: ab wann ein solches Teil da sein kann
heading-term-plan-with-orders-not-yet-placed = mit Bestellungen planen, die noch nicht gemacht sind
about-term-plan-with-orders-not-yet-placed = Ja: eine Webmaschine darf auf Teile warten, die noch bestellt werden können. Nein: nur Bestand und offene Bestellungen zählen.
acts-plan-with-orders-not-yet-placed = Plan: ob Webmaschinen auf Bestellungen warten dürfen, die noch nicht gemacht sind
heading-term-open-over-closed-days = offen über geschlossene Tage
about-term-open-over-closed-days = Ja: eine Webmaschine darf über einen Tag offen stehen, an dem niemand umbaut. Nein oder leer: nur, wo sie ohnehin steht.
acts-open-over-closed-days = Plan: welche Anfänge es gibt
heading-term-watch = Beobachten
about-term-watch = So lange nach dem Wiederanlauf muss noch eine Mannschaft des führenden Berufs bei der Arbeit sein.
acts-watch = Plan: welche Anfänge es gibt
heading-term-stopped-per-section = zugleich stehend je Weberbereich
about-term-stopped-per-section = Höchstens so viele Webmaschinen eines Weberbereichs. Keine Zeile = keine Grenze.
acts-stopped-per-section = Plan
heading-term-room-between-bookings = Abstand zwischen Terminen
about-term-room-between-bookings = So viel Mal die übliche Streuung ihrer Arbeit und ihres Wartens bleibt eine Mannschaft nach jedem Umbau frei. 0 oder leer = kein Abstand.
acts-room-between-bookings = Plan: wie dicht Termine aufeinander folgen
heading-term-no-second-chance = keine zweite Gelegenheit
about-term-no-second-chance = Was für einen Termin gerechnet wird, damit keine Webmaschine an einer letzten Gelegenheit hängt: so viel Mal, was sie kostet, wenn sie übrig bleibt, × die Wahrscheinlichkeit, dass dieser und alle späteren Kettabläufe vor dem Horizont verpasst werden. Niemand zahlt es. 0 oder leer = nichts.
acts-no-second-chance = Plan: welche Termine nahe am Horizont liegen; ein eigener Kostenteil
heading-term-usual-absence = übliche Abwesenheit
about-term-usual-absence = In diesem Anteil der Mannschaftsstunden jeder Woche wird nichts eingeplant. 0 oder leer = alle werden verplant.
acts-usual-absence = Plan: wie voll eine Woche ist
heading-term-receipts-later = Lieferungen später
about-term-receipts-later = Der Plan rechnet mit allem, was bestellt ist oder noch wird, so viele Tage später als zugesagt. Leer = 0.
acts-receipts-later = Plan: ab wann auf Teile Verlass ist
heading-term-pilots-for-their-type = Piloten für ihren Typ
about-term-pilots-for-their-type = Ja: ein Pilot wird danach gewählt und eingeplant, was er und alle Webmaschinen, die auf ihn warten, zusammen kosten. Nein oder leer: nur nach seinen eigenen Kosten.
acts-pilots-for-their-type = Plan: Piloten, die noch nicht veröffentlicht sind
heading-term-reference-plan = Bezugsplan
about-term-reference-plan = Nummer des veröffentlichten Plans, an dem der Fortschritt gemessen wird. Leer = der erste, der veröffentlicht wurde.
acts-reference-plan = Stand: was geplant war
heading-term-language-of-cards = Sprache der Karten
about-term-language-of-cards = Worin die festen Wörter einer Karte stehen (ISO 639-1), wo das Blatt Mannschaften nichts anderes sagt. Leer = en.
acts-language-of-cards = Karten und Zettel für Weber
heading-term-address-of-the-screens = Adresse der Bildschirme
about-term-address-of-the-screens = Unter der die Bildschirme in der Halle erreicht werden; das quadratische Zeichen einer Karte führt dann zu ihrer Webmaschine.
acts-address-of-the-screens = Karten: wohin das quadratische Zeichen führt
heading-term-leno-yarn = Drehergarn
about-term-leno-yarn = Feinheit des Drehergarns.
acts-leno-yarn = Spulen und Ersparnis
heading-term-leno-yarn-price = Preis des Drehergarns
about-term-leno-yarn-price = Für ein Kilogramm. In der Währung.
acts-leno-yarn-price = Ersparnis
heading-term-minutes-per-stop = Minuten je Stillstand
about-term-minutes-per-stop = Wie lange eine Webmaschine bei einem Stillstand steht, wo ihre Stunden nicht erfasst wurden.
acts-minutes-per-stop = Ersparnis
heading-term-worth-knowing = der Mühe wert
about-term-worth-knowing = Die kleinste Änderung einer Rate, auf die es ankommt.
acts-worth-knowing = was die Stillstände sagen
heading-term-settling = Beruhigung
about-term-settling = So lange nach einem Umbau zählen die Zahlen einer Webmaschine noch nicht.
acts-settling = was die Stillstände sagen
heading-term-visits = Besuche
about-term-visits = Tage nach der Abnahme, an denen die Einstellungen wieder gelesen werden.
acts-visits = Besuche nach der Abnahme
heading-term-order-decided = Reihenfolge beschlossen
about-term-order-decided = Der Tag, an dem die Reihenfolge der Webmaschinen beschlossen wurde. Leer = der des ersten veröffentlichten Plans.
acts-order-decided = was die Stillstände sagen: ob Webmaschinen nach ihren letzten Zahlen gewählt wurden
heading-term-share-of-saving = Anteil der Ersparnis
about-term-share-of-saving = Mit so viel der Ersparnis pro Tag, die die Maschinenliste angibt, wird gerechnet. Leer = 100.
acts-share-of-saving = Plan: die Ersparnis, die durch Warten entgeht
term-pilot = Pilot von { $machine_type }
about-term-pilot = Die Webmaschine dieses Maschinentyps, die zuerst umgebaut wird. Leer = nach Kosten gewählt.
acts-pilot = Plan: Piloten
