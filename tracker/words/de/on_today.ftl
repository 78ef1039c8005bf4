### Der Bildschirm Heute: was eine Mannschaft jetzt tut und was sie an der Webmaschine meldet.

screen-today = Heute
today-crew = Mannschaft
today-choose-crew = Mannschaft wählen; die Adresse merkt sie sich.
today-who = Wer meldet
today-nothing = Für { $crew } ist heute und morgen nichts gebucht, und nichts ist in Arbeit.
today-no-crew = Der veröffentlichte Plan nennt keine Mannschaft.
word-under-way = in Arbeit
word-beam-out-early = Kettablauf zu früh
word-overdue = überfällig
word-today = heute
word-tomorrow = morgen
today-line = Webmaschine { $loom } · { $due }
today-booked = { $window }, { $start } bis { $end } · { $type }
today-beam-out = Kettablauf etwa { $at }
today-ready = ✓ Teilesatz ausgegeben, Leute und Werkzeug da wie gebucht
today-kit-not-issued = ▲ Teilesatz vollständig, aber noch nicht ausgegeben
today-lacks = ■ Im Teilesatz fehlt { $parts }
today-tool-missing = { $tool }: { $wanted } gebraucht, { $there } da
today-away = { $heads ->
        [none] { $crew } ist weg,
       *[other] { $heads } von { $crew } weg,
    } { $first } bis { $last }
today-warp = ◆ { $state ->
        [out] Die alte Kette muss heraus sein, die neue noch nicht drin
       *[in] Die Kette muss drin sein
    }
today-mark = ■ { $what }
today-then = jede Mannschaft findet dann hier ihre Karten
today-print = Karte drucken
today-holds = Haltepunkte: { $done } von { $all } unterschrieben; { $electrical } gehören der Elektrofachkraft
today-tab-times = Zeiten
today-tab-operations = Arbeitsgänge
today-tab-settings = Einstellungen
today-tab-checks = Prüfungen
today-tab-parts = Verbrauchte Teile
today-parts-none = Für diese Maschine wurden keine Teile ausgegeben.
today-part-used = Verbraucht
today-part-left-over = Übrig
today-part-broken = Zerbrochen
today-part-told = ✓ verbraucht { $used }, übrig { $left }, zerbrochen { $broken }
today-part-note = Notieren
today-tab-end = Bemerkungen, Ende
today-part = Was zu melden ist
today-start = Beginn: die Maschine ist jetzt angehalten
today-start-why = Warum begonnen wird, obwohl der Teilesatz nicht ausgegeben ist
today-reason = Grund
today-before = Erst beginnen; dann lassen sich Zeiten, Arbeitsgänge, Einstellungen und Prüfungen melden.
today-time-now = { $name }: jetzt
today-time-told = ✓ { $name } { $at }
today-time-other = Andere Zeit
today-time-day = Tag
today-time-clock = Uhrzeit
today-time-note = { $name } eintragen
today-noted-anew = an der Maschine neu eingetragen
today-operation = { $step } · { $operation }
today-operation-more = { $heads } × { $trade }, { $minutes } min{ $tool ->
        [none] {""}
       *[other] {" · "}{ $tool }
    }
today-hold = ◆ HALT: ohne ihn keine Abnahme
today-neighbours = ◆ Die Maschinen daneben müssen stehen
today-caution = ▲ { $caution }
today-done = Fertig
today-done-by = ✓ fertig, { $who }{ $torque ->
        [none] {""}
       *[other] {", "}{ NUMBER($torque, maximumFractionDigits: 1) } N·m
    }
today-torque = Drehmoment gelesen, N·m (verlangt: { NUMBER($target, maximumFractionDigits: 1) })
today-for-electrician = für die Elektrofachkraft
today-setting = { $setting }{ $side ->
        [none] {""}
       *[other] , { $side }
    }{ $unit ->
        [none] {""}
       *[other] {" "}({ $unit })
    }
today-target = Soll { $target ->
        [none] keines
       *[other] { $target }
    }{ $low ->
        [none] {""}
       *[other] ; { $low } bis { $high }
    }
today-limits = { $low } bis { $high }
today-found = So vorgefunden
today-set = So eingestellt
today-was-found = vorgefunden { $value }
today-within = ✓ eingestellt { $value }
today-outside = ■ { $value } liegt außerhalb der Grenzen
today-passed = ✓ { $value }
today-failed = ■ { $value }: nicht bestanden
today-waived = ◆ erlassen von { $by }: { $why }
today-waive = Erlassen
today-waive-why = Warum es so bleiben darf
today-waive-by = Wer dafür einsteht
today-yes = Ja
today-no = Nein
today-note-value = Wert eintragen
today-value = Wert
today-remark = Bemerkung
today-remark-about = Zu
today-remark-whole = der ganze Umbau
today-remark-note = Bemerkung eintragen
today-remark-line = { $about ->
        [none] {""}
       *[other] { $about }: {""}
    }{ $text }
bobbins = Dreherspulen
bobbins-weighed = Wiegen, sobald die Webmaschine läuft: Von da an wird der nächste Wechsel gerechnet.
bobbins-grams = Gramm übrig, { $side ->
        [left] links
       *[right] rechts
    }
bobbins-told = ✓ { $side ->
        [left] links
       *[right] rechts
    }: { $grams }
today-kit-where = Wo
today-kit-part = Teil
today-kit-what = Was es ist
today-kit-quantity = Menge
today-kit-mark = Vermerk
today-needed = Gebraucht: { $heads } × { $trade }, { $at }
today-photo = Foto (JPEG, PNG oder WebP, bis 20 MB)
today-photo-help = Es gehört zur Bemerkung. Ort und Gerät werden daraus entfernt; es soll niemand darauf sein, denn es wird aufbewahrt.
today-photo-by = { $who }, { $at }{ $remark ->
        [none] {""}
       *[other] : { $remark }
    }
today-earlier = Bemerkungen der letzten drei Umbauten dieses Typs
today-earlier-none = Keiner von ihnen hat eine Bemerkung.
today-earlier-line = Webmaschine { $loom }, { $at }{ $about ->
        [none] {""}
       *[other] {", "}{ $about }
    }: { $text }
today-hand-over = Übergeben
today-hand-over-to = Wer weitermacht
today-handed-over = ✓ übergeben an { $who }
today-finish = Volle Drehzahl: der Einlauf beginnt
today-sign-off = Abnehmen
today-sign-off-asks = Webmaschine { $loom } wird von { $who } abgenommen: alles auf ihrer Karte gilt als getan, und was für sie zurückgelegt war, ist wieder frei.
today-open-points = Offen vor der Abnahme
today-open-point = □ { $what }
today-nothing-open = ✓ Nichts ist offen.
today-break-off = Umbau abbrechen
today-break-off-asks = Der Umbau der Webmaschine { $loom } wird abgebrochen und so festgehalten; der nächste Plan bucht ihn neu.
today-is-signed-off = ✓ Webmaschine { $loom } ist abgenommen.
told = Webmaschine { $loom }: { $what }.
told-begun = begonnen
told-time = { $name } eingetragen
told-of = { $name }{ $side ->
        [none] {""}
       *[other] {" "}({ $side })
    }{ $value ->
        [none] {" "}fertig
       *[other] : { $value }
    }
told-remark = { $photo ->
        [yes] Bemerkung und Foto eingetragen
       *[no] Bemerkung eingetragen
    }
told-hand-over = übergeben an { $to }
told-bobbin = { $side ->
        [left] linke
       *[right] rechte
    } Spule: { $grams } g übrig
told-waived = { $what } erlassen
told-run-in = volle Drehzahl, der Einlauf beginnt
told-stopped = Umbau abgebrochen
