### Unsere Blätter und was in ihre Spalten gehört.

own-sheet-looms = Webmaschinen
about-sheet-looms = Die Webmaschinen der Halle. Jede andere Spalte wird als Merkmal unter ihrer eigenen Überschrift behalten.
own-sheet-warps = Ketten
about-sheet-warps = Die Ketten auf den Webmaschinen und die danach kommen.
own-sheet-readings = Ablesungen
about-sheet-readings = Ablesungen der übrigen Kette, neuer als die Kettenliste.
own-sheet-articles = Artikel
about-sheet-articles = Was gewebt wird.
own-sheet-changes = Wechselzeiten
about-sheet-changes = Wie lange ein gewöhnlicher Kettwechsel eine Webmaschine anhält.
own-sheet-standing = Stillstand
about-sheet-standing = Webmaschinen, die ohnehin warten.
own-sheet-parts = Teile
about-sheet-parts = Die Teile der Teilesätze.
own-sheet-receipts = Bestellungen
about-sheet-receipts = Offene Bestellzeilen.
own-sheet-crews = Mannschaften
about-sheet-crews = Mannschaften und ihre Schichten; wer fehlt oder länger bleibt, steht in Abwesenheiten und Überstunden.
own-sheet-absences = Abwesenheiten
about-sheet-absences = Ganze Tage, an denen eine Mannschaft oder ein Teil von ihr nicht da ist.
own-sheet-overtime = Überstunden
about-sheet-overtime = Stunden, die eine Mannschaft neben ihren Schichten arbeitet.
own-sheet-running = Laufzeiten
about-sheet-running = Wann eine Halle webt; fehlt sie, immer.
own-sheet-closures = Schließtage
about-sheet-closures = Tage oder Stunden, in denen eine Halle nicht webt oder niemand umbaut.
own-sheet-tools = Werkzeuge
about-sheet-tools = Werkzeuge, die sich die Umbauten teilen.
own-sheet-operations = Arbeitsgänge
about-sheet-operations = Die Schritte eines Umbaus, mit Bedingungsspalten.
own-sheet-kit-lines = Teilesatz
about-sheet-kit-lines = Die Teile eines Umbaus, mit Bedingungsspalten.
own-sheet-choices = Wahl
about-sheet-choices = Wozwischen der Planer wählen darf, mit Bedingungsspalten.
own-sheet-setpoints = Sollwerte
about-sheet-setpoints = Die Einstellungen, die eingestellt, festgehalten und gehalten werden, mit Bedingungsspalten.
own-sheet-checks = Prüfungen
about-sheet-checks = Die Prüfungen vor der Abnahme, mit Bedingungsspalten.
own-sheet-terms = Vorgaben
about-sheet-terms = Die Vorgaben des Umbaus.
own-sheet-work-done = Geleistete Arbeit
about-sheet-work-done = Umbauten und ihre Arbeitsgänge, wie sie getan wurden.
own-sheet-set-values = Eingestellte Werte
about-sheet-set-values = Einstellungen, wie sie vorgefunden, eingestellt und gelesen wurden, ein Wert je Zeile.
own-sheet-check-results = Prüfergebnisse
about-sheet-check-results = Was die Prüfungen vor der Abnahme ergaben.
own-sheet-parts-used = Verbrauchte Teile
about-sheet-parts-used = Was aus einem Teilesatz wurde.
own-sheet-stops = Stillstände
about-sheet-stops = Wie oft Webmaschinen in einem Zeitraum standen.
own-sheet-waste = Abfall
about-sheet-waste = Wie breit die Abfallkante in einem Zeitraum war.
own-sheet-bobbins = Dreherspulen
about-sheet-bobbins = Was auf den Dreherspulen übrig ist.

## Was in eine Spalte gehört

about-loom = Die Nummer der Webmaschine, als Text.
about-looms-section = Die Webmaschinen, die ein Weber bedient.
about-looms-machine-type = Die Bezeichnung der Weberei für Fabrikat und Modell.
about-looms-year = Baujahr; nicht in der Zukunft.
about-looms-saving-per-day = Geld am Tag, sobald sie umgebaut ist.
about-looms-capacity-unsold = Ja: eine Stunde Stillstand kostet keinen Deckungsbeitrag.
about-looms-protected-until = Kein Umbau vor oder an diesem Tag.
about-hall = Nötig, wo die Nummern der Webmaschinen in jeder Halle neu beginnen.
about-warps-sequence = 0 = jetzt auf der Webmaschine.
about-warps-read-at = Wann die übrige Kette abgelesen wurde; Ortszeit.
about-warps-tail = Die letzten Meter, die nicht gewebt werden können.
about-warps-change = Wie diese Kette hineinkommt.
about-articles-take-up-basis = Auf Ware: (Kette - Ware)/Ware; auf Kette: (Kette - Ware)/Kette. Leer = auf Ware.
about-articles-contribution-per-metre = Geld je Meter Ware.
about-articles-warp-value-per-metre = Geld je Meter Kette.
about-articles-family = Artikel, deren Einstellungen miteinander verglichen werden.
about-articles-weft-tex = Feinheit des Schussgarns.
about-articles-weft-price-per-kg = Geld je Kilogramm.
about-changes-machine-type = Leer = jeder Typ.
about-changes-meanwhile = Was von diesen Stunden andere tun, während umgebaut wird; nicht länger als der Wechsel. Leer = 0.
about-changes-trade = Wer den Wechsel macht, wo die Weberei ihn einplant.
about-changes-heads = Wie viele dieses Berufs.
about-parts-on-hand = Gezählter Bestand; eine Änderung wird als Zählung gebucht.
about-parts-price = Geld je Einheit.
about-parts-location = Wo im Lager.
about-receipts-order = Nummer der Bestellung und der Zeile.
about-receipts-unit = Muss die Einheit des Teils sein, wo sie angegeben ist.
about-crews-weekdays = Leer = Montag bis Freitag.
about-crews-breaks = Innerhalb der Schicht. Eine halbe Stunde, die eine Pause berührt, wird nicht gearbeitet.
about-crews-hall = Leer = jede Halle.
about-crews-from = Erster Tag dieser Zeile; leer = immer.
about-crews-to = Letzter Tag dieser Zeile, eingeschlossen.
about-crews-language = Worin die Karten dieser Mannschaft sprechen (ISO 639-1). Leer = wie die Vorgabe Sprache der Karten sagt.
about-absences-to = Letzter Tag, eingeschlossen.
about-absences-heads = Wie viele fehlen; leer = alle, 0 = zurückgenommen.
about-closures-hall = Leer = alle Hallen.
about-closures-start = Leer = ab Mitternacht.
about-closures-end = Leer = bis Mitternacht.
about-closures-stops = Leer = beides.
about-operations-step = Zeilen mit demselben Schritt werden nebeneinander getan.
about-operations-minutes-low = Schätzung mit drei Werten, wo es sie gibt.
about-operations-place = Leer = an der Maschine. Arbeit an der Werkbank, vorher oder danach, braucht Stunden und hält keine Webmaschine auf.
about-operations-warp = Draußen: die alte Kette muss heraus und die neue noch nicht hinein; drin: die Kette muss hinein. Leer = gleich. Bei einem Kettwechsel kommt die neue Kette dazwischen hinein.
about-operations-learns = Nein: dauert, solange es dauert, wie oft es auch getan wurde. Leer = ja.
about-operations-stops-neighbours = Ja: die Webmaschinen daneben (nach Reihe und Platz) stehen so lange; was sie verlieren, zählt.
about-operations-waivable = Nein: ohne ihn wird nichts abgenommen. Leer = ja. Wird behalten; die Abnahme fragt noch nicht danach.
about-kit-lines-comes-back = Ja: kommt danach ins Lager zurück.
about-setpoints-repeatability = Zwei Ablesungen derselben Sache liegen in 95 von 100 Fällen näher beieinander (ISO 5725).
about-checks-kind = Leer = ja/nein.
about-checks-safety = Ja: jemand könnte verletzt werden.
about-checks-waivable = Nein: ohne sie wird nichts abgenommen. Leer = nein für eine Prüfung der Sicherheit, sonst ja.
about-work-done-card = Die Nummer der Arbeitskarte.
about-work-done-operation = Leer = der ganze Umbau.
about-work-done-started = Wann die Webmaschine dafür angehalten wurde; bei einem Arbeitsgang nicht nötig.
about-work-done-ended = Nötig, wenn sie nicht mehr in Arbeit ist.
about-work-done-stage-reached = Bei einem Arbeitsgang nicht nötig. Abgebrochen: der Umbau ist fehlgeschlagen, und die Bemerkung sagt, warum.
about-work-done-minutes = Vergangen an der Maschine. Darf leer bleiben: dann werden die sechs Zeiten auf die Arbeitsgänge verteilt.
about-work-done-done-by = Wer es tat; ein Schritt, der nie erlassen wird, braucht den Namen.
about-work-done-hand-over = Wer übernimmt, wo eine Schicht vor der Arbeit endet.
about-set-values-side = Von der Weberseite aus gesehen; leer = die ganze Webmaschine.
about-set-values-why = Leer = im Vorbeigehen gelesen.
about-set-values-article = Was gewebt wurde.
about-set-values-waived-because = Warum sie so abgenommen werden darf, wie sie ist.
about-set-values-waived-by = Wer dafür einsteht; mit einem Grund nötig.
about-set-values-waived-at = Wann das beschlossen wurde; mit einem Grund nötig.
about-check-results-result = Ja, nein oder eine Zahl.
about-parts-used-used = Was in der Webmaschine bleibt.
about-parts-used-left-over = Geht ins Lager zurück.
about-parts-used-broken = Ist Ausschuss.
about-stops-cause = Leer = alle Ursachen zusammen.
about-stops-picks = In dieser Zeit gewebt, was auch die Ursache war.
about-stops-hours = So lange stand sie deswegen.
about-bobbins-tex = Leer = die Vorgabe Drehergarn.
