### Was die Durchsicht einer Methode findet.

looms-named = { $many ->
        [one] Webmaschine
       *[other] Webmaschinen
    } { $looms }
kind-number = Zahl
kind-date = Datum
kind-text = Text
unchecked = { $how ->
        [looms] Keine Webmaschinen sind eingelesen: Bedingungen werden nicht an ihnen geprüft.
       *[crews] Keine Mannschaften sind eingelesen: Berufe und Leute werden nicht geprüft.
    }

## Bedingungen

condition-unreadable = { $why }
    .hint = Eine Bedingung ist ein Wert, eine Liste, eine Grenze, ein Bereich, not(…) oder - für alles.
condition-in-cell = { $place ->
        [none] Methode
       *[other] { $place }
    }, Spalte { $heading }: { $why }
cell-too-long = Die Bedingung ist { $length } Zeichen lang; die Grenze ist { $most }.
cell-empty-item = „{ $cell }“ hat einen leeren Eintrag: das Komma herausnehmen oder den Wert schreiben.
cell-mixed-interval = „{ $cell }“: beide Enden eines Bereichs müssen Zahlen, Daten oder Texte sein.
cell-without-order = „{ $cell }“: yes und no haben keine Reihenfolge.
cell-no-day = „{ $cell }“: „{ $day }“ ist kein Tag; date("2027-01-04") schreiben.
cell-no-value = „{ $cell }“: „{ $item }“ ist kein Wert, der sich vergleichen lässt.
cell-unequal-sign = „{ $cell }“: für alles andere not({ $item }) schreiben.
cell-equals-sign = „{ $cell }“: den Wert allein schreiben, ohne Gleichheitszeichen.
cell-decimal-comma = „{ $cell }“: Dezimalen haben hier einen Punkt, wie in [2.5..3.5]; ein Komma trennt Werte.
cell-limit-of-what = „{ $cell }“: nach < <= > >= kommt eine Zahl, ein Datum oder ein Text in Anführungszeichen, ohne Einheit.
cell-not-inside = „{ $cell }“: not(…) muss die ganze Zelle umschließen, wie in not(left, right).
cell-unreadable = „{ $cell }“: „{ $item }“ lässt sich nicht lesen. Einen Wert schreiben, eine Liste (left, both), eine Grenze (<= 12), einen Bereich ([8..16]), not(…) um eines davon, oder den Text in Anführungszeichen setzen.
decimal-comma = { $raw } wird als { $first } oder { $second } gelesen.
    .hint = { $options ->
        [none] Beantwortet: wie geschrieben.
       *[other] Für eine Dezimale { $point } schreiben; oder { $options } antworten.
    }
unknown-attribute = { $heading } ist keine Spalte der Maschinenliste, keine Wahl und nicht window.
    .hint = { $options ->
        [none] Beantwortet: wie geschrieben.
       *[other] { $near ->
            [none] {""}
           *[other] Ist { $near } gemeint?{" "}
        }Muss es noch aufgenommen werden, { $options } antworten.
    }
value-unknown = { $raw } ist keines von: { $known }.
    .hint = { $near ->
        [none] {""}
       *[other] Ist { $near } gemeint?{" "}
    }Eines davon schreiben.
value-on-no-loom = Keine Webmaschine hat { $heading } = { $raw }{ $missing ->
        [0] .
       *[other] ; { $missing } haben noch nichts.
    }
    .hint = { $near ->
        [none] {""}
       *[other] Ist { $near } gemeint?{" "}
    }{ $known ->
        [none] Die Maschinenliste hat in dieser Spalte keinen Wert.
       *[other] Die Webmaschinen haben: { $known }.
    }{ $options ->
        [none] {""}
       *[other] {" "}Ist es richtig, { $options } antworten.
    }
row-never-holds = { $test } gilt für gar keinen Wert.
    .hint = { $how ->
        [turned] Die Enden sind vertauscht oder schließen einander aus.{" "}
       *[empty] {""}
    }Die Zeile würde nie genommen.
unlike-limits = { $asks } verlangt { $kind }; { $other } verlangt { $other_kind }.
    .hint = { $heading } auf eine Art verlangen.

## Schritte

step-missing = Schritt { $step } hat Zeilen für { $heading } = { $asked } und keine für { $raw }, das { $looms } haben.
    .hint = { $options ->
        [none] Beantwortet: wie geschrieben.
       *[other] Eine Zeile hinzufügen oder eine Bedingung erweitern; brauchen sie keine, { $options } antworten.
    }
step-doubled = Schritt { $step } { $raw }: diese Zeile und { $other } gelten beide für { $looms }.
    .hint = Die Bedingungen der einen enger fassen oder sie herausnehmen.
step-needs-too-much = Schritt { $step } nimmt für { $looms } { $need } × { $what } nebeneinander; da sind { $have }.
    .hint = Einer der Zeilen eine andere Schrittnummer geben.
step-repeated = Schritt { $step } kommt nach Schritt { $before } noch einmal; er stand schon in { $first }.
    .hint = Zeilen eines Schritts geschehen nebeneinander: sie zusammensetzen, oder dieser eine eigene Nummer geben.
step-in-two-places = Schritt { $step } ist { $place } in Zeile { $line } und hier { $raw }.
    .hint = Zeilen eines Schritts geschehen nebeneinander: einer davon eine andere Nummer geben.
warp-out-after-in = Schritt { $step } { $operation } braucht die Kette heraus, aber Schritt { $other } { $other_operation } ({ $there }) braucht sie drin.
    .hint = Die neue Kette kommt einmal hinein: alle Schritte, die sie heraus brauchen, vor die setzen, die sie drin brauchen.
no-work = Die Methode gibt { $looms } keinen Arbeitsgang.
    .hint = Sie aus dem Programm lassen oder die Bedingungen ausbessern.
row-on-no-loom = Keine Webmaschine der Liste bekommt diese Zeile.
    .hint = Sie bleibt für kommende Webmaschinen.

## Wahl

choice-is-attribute = { $raw } ist auch { $how ->
        [window] die Art der Gelegenheit
       *[column] eine Spalte der Maschinenliste
    }.
    .hint = Der Wahl einen anderen Namen geben, hier und über den Spalten der Bedingungen.
choice-circular = { $raw } führt auf sich selbst zurück.
    .hint = Die Bedingung herausnehmen, die darauf zurückführt.
choice-without-alternative = { $choice }: für { $looms } bleibt keine Möglichkeit{ $why ->
        [none] {""}
       *[other] {" "}({ $why })
    }.
    .hint = Für sie eine Möglichkeit hinzufügen, wie `as it is`, oder die Bedingungen ausbessern.
choice-unused = Keine Zeile fragt nach der Wahl { $raw }.
    .hint = Nach ihr wird nie gefragt.

## Zahlen und Vorräte

impossible-figure = { $field } ist { $value }.
    .hint = Es muss { $how ->
        [above] eine Zahl über 0
       *[least] eine Zahl, 0 oder mehr,
    } sein.
three-point-incomplete = Schritt { $step } { $operation }: eine Schätzung mit drei Werten braucht den niedrigen und den hohen.
    .hint = Den anderen ausfüllen oder beide leeren.
three-point-order = Schritt { $step } { $operation }: niedrig { $low }, wahrscheinlich { $likely }, hoch { $high } min.
    .hint = Sie müssen steigen.
low-above-high = { $name }: der niedrige Wert { $low } liegt über dem hohen { $high }.
    .hint = Sie vertauschen.
target-outside-limits = { $name }: das Soll { $target } liegt nicht zwischen { $low ->
        [none] …
       *[other] { $low }
    } und { $high ->
        [none] …
       *[other] { $high }
    }.
    .hint = Das Soll oder die Grenzen ändern.
setpoint-doubled = { $name }: diese Zeile und { $other } gelten beide für { $looms }.
    .hint = Die Bedingungen der einen enger fassen oder sie herausnehmen.
tool-not-listed = Werkzeug { $raw } steht nicht in der Werkzeugliste.
    .hint = { $near ->
        [none] {""}
       *[other] Ist { $near } gemeint?{" "}
    }Es in das Blatt Werkzeuge aufnehmen oder ausbessern.
trade-without-crew = Keine Mannschaft hat den Beruf { $raw }.
    .hint = { $near ->
        [none] {""}
       *[other] Ist { $near } gemeint?{" "}
    }Die Mannschaften sind: { $trades }.
too-many-heads = Schritt { $step } { $operation } verlangt { $heads } × { $trade }; { $how ->
        [lead] die größte Mannschaft des führenden Berufs hat { $most }
       *[other] insgesamt gibt es { $most }
    }.
    .hint = Weniger verlangen oder die Mannschaft vergrößern.
trade-never-together = Schritt { $step } { $operation } braucht { $raw }, während eine Mannschaft ({ $lead }) an der Webmaschine ist, und nach ihren Schichten sind die beiden nie zusammen bei der Arbeit.
    .hint = Die Schichten im Blatt Mannschaften oder den Beruf berichtigen.
