### Hat es sich gelohnt? Urteile, was neben ihnen steht, Ersparnis und Rückfluss.

worth-nothing = keine Stillstände und keine Abfallbreiten sind eingelesen{ $article ->
        [none] {""}
       *[other] , von Artikel { $article }
    }
    .hint = die Blätter Stillstände und Abfall Woche für Woche einlesen, auch von noch nicht umgebauten Webmaschinen
cause-unknown = kein Stillstand der Ursache { $cause } ist erfasst; { $causes ->
        [none] keine Zeile nennt eine Ursache
       *[other] Ursachen sind { $causes }
    }
worth-stops-of = { $cause ->
        [none] Stillstände
       *[other] Stillstände durch { $cause }
    }
worth-width = Abfallbreite
worth-efficiency = Nutzeffekt
worth-change = { QUANTITY($middle, signed: "yes") } % ({ QUANTITY($low, signed: "yes") } bis { QUANTITY($high, signed: "yes") } %)
worth-difference = { QUANTITY($middle, signed: "yes") } ({ QUANTITY($low, signed: "yes") } bis { QUANTITY($high, signed: "yes") }) { $figure ->
        [efficiency] Prozentpunkte
       *[other] mm
    }
worth-amount = { QUANTITY($middle) } ({ QUANTITY($low) } bis { QUANTITY($high) })
worth-stops-told = { $what }: { $word ->
        [less] weniger, sicher
        [more] mehr, sicher
       *[other] noch kein Unterschied zu sehen
    }: { $observed } gesehen an { $looms ->
        [one] einer umgebauten Webmaschine
       *[other] { $looms } umgebauten Webmaschinen
    }, wo { $expected } zu erwarten waren, { $change }{ $more ->
        [none] {""}
       *[other] ; { $more }
    }
worth-measured-told = { $what }: { $word ->
        [less] { $figure ->
            [efficiency] niedriger
           *[other] schmaler
        }, sicher
        [more] { $figure ->
            [efficiency] höher
           *[other] breiter
        }, sicher
       *[other] noch kein Unterschied zu sehen
    }: { QUANTITY($observed) } { $figure ->
        [efficiency] %
       *[other] mm
    } an { $looms ->
        [one] einer umgebauten Webmaschine
       *[other] { $looms } umgebauten Webmaschinen
    }, wo { QUANTITY($expected) } zu erwarten waren, { $change }{ $more ->
        [none] {""}
       *[other] ; { $more }
    }
worth-more-picks = etwa { QUANTITY($millions) } Millionen Schuss mehr würden zeigen, ob es { QUANTITY($share) } % sind
worth-more-periods = etwa { $periods } Maschinenwochen mehr würden zeigen, ob es { QUANTITY($share) } % sind
worth-would-have-shown = { QUANTITY($share) } % hätten sich höchstwahrscheinlich gezeigt
worth-cannot-tell = { $what }: nicht zu sagen: { $why }
worth-nothing-after = noch hat keine umgebaute Webmaschine einen Zeitraum nach ihrer Einlaufzeit
worth-nobody-left = in keiner dieser Wochen liefen noch drei Webmaschinen der Halle ohne Umbau
worth-new-article = was die umgebauten Webmaschinen weben, wurde erst gewebt, als sie umgebaut wurden
worth-not-tied = diese Wochen und Artikel haben mit der Zeit der Webmaschinen davor nichts gemeinsam
worth-too-few = weniger als vier Webmaschinen, oder es war nichts zu erwarten
worth-chosen = Webmaschinen wurden nach ihren letzten Stillständen gewählt
worth-too-short = ohne die vier Wochen vor den Umbauten, oder bevor die Reihenfolge beschlossen war, bleibt nichts zu vergleichen
worth-order-decided = { $on ->
        [none] niemand hat gesagt, wann die Reihenfolge der Webmaschinen beschlossen wurde
       *[other] die Reihenfolge der Webmaschinen wurde am { $on } beschlossen
    }; ein Urteil gilt nur, wenn es ohne die Wochen dasselbe ist, nach denen Webmaschinen gewählt worden sein können
    .hint = die Vorgabe „Reihenfolge beschlossen“ hält den Tag
worth-without-weeks = { $what } ohne die vier Wochen vor { $which ->
        [latest] jedem Umbau
       *[other] diesem Tag
    }: { $change }
worth-silent = { $looms ->
        [one] eine Webmaschine
       *[other] { $looms } Webmaschinen
    } ohne Stillstand vor dem Umbau können nichts sagen
worth-plain = schlicht vorher und nachher, { $what }: { $change }; sich nicht danach richten: Jahreszeit, Artikel und Reihenfolge der Webmaschinen stecken darin, und von 500 simulierten Programmen enthält es die Wahrheit in höchstens 3, mit 12 Webmaschinen in 63
worth-picks = { $looms ->
        [one] eine umgebaute Webmaschine webt
       *[other] { $looms } umgebaute Webmaschinen weben
    } { QUANTITY($millions) } Millionen Schuss im Monat
worth-hours = { $hours } h weniger Stehen im Monat, bei { QUANTITY($minutes) } min je Stillstand{ $money ->
        [none] {""}
       *[other] , { $money } { $currency } wert
    }
worth-weft = { $kg } kg weniger Schussabfall im Monat{ $money ->
        [none] {""}
       *[other] , { $money } { $currency } wert
    }
worth-leno = { QUANTITY($kg) } kg Drehergarn werden im Monat verbraucht; was vorher verbraucht wurde, ist nicht erfasst, also ist es hier keine Ersparnis
worth-without-stops = bei den Stillständen zählt keine Ersparnis, denn von ihnen ist nichts zu sagen
worth-without-contribution = die Stunden sind hier nichts wert, denn ein Artikel hat keinen Deckungsbeitrag je Meter oder eine Webmaschine keine Drehzahl
    .hint = es im Blatt Artikel angeben, und im Blatt Ketten, was auf jeder Webmaschine ist
worth-without-weft = beim Schussabfall zählt keine Ersparnis: kein Urteil über die Abfallbreite, oder ein Artikel ohne Schussfeinheit oder Preis
    .hint = das Blatt Abfall einlesen, und im Blatt Artikel Schuss tex und Schussgarnpreis je kg
worth-measured = gemessen: { $amount } { $currency } im Monat
worth-claimed = angegeben: { MONEY($claimed, $currency) } im Monat für dieselben Webmaschinen{ $unclaimed ->
        [0] {""}
        [one] ; für eine Webmaschine gibt die Liste nichts an
       *[other] ; für { $unclaimed } Webmaschinen gibt die Liste nichts an
    }
worth-payback = die Umbauten kosten { MONEY($cost, $currency) }; nach dem Gemessenen { $middle ->
        [none] ist kein Rückfluss zu sehen
       *[other] fließt es in { QUANTITY($middle) } Monaten zurück ({ QUANTITY($low) } bis { $high ->
            [none] nie
           *[other] { QUANTITY($high) }
        })
    }
worth-taken-over-now = Pläne rechnen mit { QUANTITY($share) } % von dem, was die Liste angibt, wie übernommen
saving-taken-over = Pläne rechnen von nun an mit { QUANTITY($share) } % der Ersparnis, die die Maschinenliste angibt, wie gemessen; vorher waren es { QUANTITY($before) } %
take-over-unmeasured = keine Ersparnis wurde gemessen, also gibt es keine zu übernehmen
take-over-unclaimed = die Maschinenliste gibt für die gemessenen Webmaschinen keine Ersparnis an, also gibt es nichts, woran sie sich messen ließe
    .hint = Ersparnis pro Tag im Blatt Webmaschinen angeben
take-over-beyond = gemessen sind { QUANTITY($share) } % der angegebenen Ersparnis; ein Plan nimmt 0 bis { QUANTITY($most) } %
    .hint = Ersparnis pro Tag im Blatt Webmaschinen ausbessern, wenn die Weberei danach planen will
worth-take-over-whole = was übernommen wird, ist an allem gemessen, was jetzt bekannt ist
worth-title = { $programme }: hat es sich gelohnt?
worth-plainly = { $what }, vorher/nachher
worth-week = { $first ->
        [0] die erste Woche
       *[other] Woche { $first }{ $last ->
            [none] {""}
           *[other] {" "}bis { $last }
        }
    } seit dem Wiederanlauf
worth-bar = { $which ->
        [measured] gemessen
       *[other] von der Maschinenliste angegeben
    }
worth-looms-figure = { $figure ->
        [stops] Stillstände je 100.000 Schuss
        [efficiency] Nutzeffekt in %
       *[other] Abfallbreite in mm
    }
