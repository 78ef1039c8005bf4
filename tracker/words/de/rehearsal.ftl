### Das Durchspielen: was sich nicht spielen lässt, was ihm gesagt wird.

spread-out-of-range = { $name } ist { $value }; es muss zwischen { $least } und { $most } liegen
nothing-to-rehearse = kein Termin des veröffentlichten Plans steht noch bevor
    .hint = erst einen neuen Plan machen
no-rehearsal = der veröffentlichte Plan wurde noch nicht durchgespielt
    .hint = ihn erst durchspielen
rehearsal-stopped-early = angehalten, bevor der erste Lauf fertig war; nichts wurde behalten
rehearsal-process-lost = einer von { $jobs } Prozessen wurde vom Rechner beendet; nichts wurde behalten
    .hint = mit weniger Prozessen durchspielen
cluster-not-installed = ein Rechnerverbund lässt sich nicht fragen: seine Bibliothek ist hier nicht eingerichtet
    .hint = die Zugabe einrichten: pip install 'beamslot[cluster]'
cluster-no-address = { $address } ist keine Adresse eines Rechnerverbunds
    .hint = sie als tcp://10.0.0.5:8786 angeben
cluster-not-there = unter { $address } antwortete in { $seconds } s kein Rechnerverbund; nichts wurde geschrieben
    .hint = ihn starten oder diesen Rechner arbeiten lassen
cluster-without-workers = der Rechnerverbund unter { $address } hat keinen Arbeiter; nichts wurde geschrieben
    .hint = einen Arbeiter starten
cluster-lost = der Rechnerverbund unter { $address } ging verloren; nichts wurde geschrieben
    .hint = in dessen Protokoll nachsehen oder diesen Rechner arbeiten lassen
rehearsal-runs = ein Durchspielen hat 1 bis { $most } Läufe, nicht { $runs }
rehearsal-no-policy = eine Weise { $name } gibt es nicht; es gibt { $names }
rehearsal-no-spread = unter dem Namen { $name } schwankt nichts; es gibt { $names }
rehearsal-no-source = { $name } schwankt nicht; es gibt { $names }

## Während es läuft

runs-played = { $done }-mal von { $of } durchgespielt

## Was es sagt

tuning-worlds = ein Abstimmen spielt { $least } bis { $most } Welten durch
tuning-tried = { $tried ->
        [one] eine Art zu planen
       *[other] { $tried } Arten zu planen
    } versucht; die beste bisher kostet in der Halle { MONEY($saves, $currency) } weniger
tuning-judged = die beste wird in anderen Welten beurteilt, { $done } von { $of }
tuning-stopped-early = angehalten, bevor zwei Arten zu planen verglichen waren; nichts wurde behalten
not-tuned = noch hat niemand nach Vorgaben gesucht, mit denen der geltende Plan übersteht
    .hint = zuerst danach suchen
tuning-helps-nothing = von allem, was versucht wurde, hilft nichts mit Sicherheit; die Vorgaben bleiben, wie sie sind
    .hint = mit mehr Welten noch einmal abstimmen
tuning-overtaken = das Abstimmen ist überholt: nach heutigem Stand kostet der Plan { MONEY($now, $currency) }, nicht { MONEY($then, $currency) }
    .hint = noch einmal abstimmen
tuning-basis = { $tried ->
        [one] Eine Art
       *[other] { $tried } Arten
    } zu planen, in denselben { $worlds } Welten durchgespielt; die beste neben einem Plan, der nichts tut, um zu überstehen, in { $runs } anderen Welten.{ $light ->
        [judged] {" "}Bei so vielen Webmaschinen wurde, was versucht wurde, mit leichter Suche geplant; der beste und der Plan, der nichts tut, um zu überstehen, wurden beide mit der ganzen geplant, bevor sie beurteilt wurden.
        [only] {" "}Bei so vielen Webmaschinen wurde, was versucht wurde, mit leichter Suche geplant.
       *[no] {""}
    }{ $stopped ->
        [yes] {" "}Es wurde vor dem Ende angehalten.
       *[no] {""}
    }
tuning-helps = Geplant mit { $ways }, kostet er auf dem Papier { MONEY($by, $currency) } { $paper ->
        [dearer] mehr
       *[cheaper] weniger
    } und spart in der Halle { MONEY($saves, $currency) }, zwischen { MONEY($low, $currency) } und { MONEY($high, $currency) } (zu 95 % sicher): dort kostet er { MONEY($kept, $currency) } statt { MONEY($without, $currency) }.
tuning-open = Nichts hilft mit Sicherheit; die Vorgaben bleiben am besten auf nichts. Das Beste, { $ways }, kostet auf dem Papier { MONEY($by, $currency) } { $paper ->
        [dearer] mehr
       *[cheaper] weniger
    } und in der Halle zwischen { MONEY($low, $currency) } und { MONEY($high, $currency) } mehr (unter 0: weniger; zu 95 % sicher).
tuning-unjudged = Das Beste bisher, { $ways }, wurde nicht in anderen Welten durchgespielt; ob es hilft, weiß man nicht.
tuning-term = { $name } { $kind ->
        [share] { NUMBER($value, maximumFractionDigits: 1) } %
        [days] { $value ->
            [one] 1 Tag
           *[other] { $value } Tage
        }
        [hours] { NUMBER($value) } h
        [yes] ja
       *[times] { NUMBER($value) }
    }
tuning-ways = { $ways }
tuning-variant = Plan { $variant } von denen, die gleich gut sind
tuning-without = nichts
tuning-accepted = Die Vorgaben sind gesetzt. Plan { $plan } ist damit gemacht: { $looms ->
        [one] eine Webmaschine
       *[other] { $looms } Webmaschinen
    } eingeplant, { MONEY($cost, $currency) }. Er gilt erst, wenn er veröffentlicht ist.
rehearsal-basis = Plan { OWN($plan) } wurde { $runs ->
        [one] einmal
       *[other] { $runs } mal
    } durchgespielt, Stand { $as_of }{ $how ->
        [stopped] {" "}(angehalten; verlangt waren { $asked })
       *[whole] {""}
    }; { $to_do } Termine stehen noch bevor.
rehearsal-done = In 80 von 100 Läufen sind vor dem Horizont mindestens { $looms } der { $to_do } umgebaut. Der Plan selbst sagt: alle { $to_do } bis { $end }.
rehearsal-date = { $looms } sind in der Hälfte der Läufe bis { $half } fertig und in 80 von 100 bis { $sure }: mehr nicht versprechen.
rehearsal-target = Bis zum Ziel, { $day }, sind in 80 von 100 Läufen mindestens { $looms } der { $to_do } fertig, alle in { $percent } von 100.
rehearsal-cost = Es kostet { MONEY($middle, $currency) } ebenso wahrscheinlich wie nicht, zwischen { MONEY($low, $currency) } und { MONEY($high, $currency) } in 80 von 100 Läufen, { MONEY($mean, $currency) } im Mittel; der Plan sagt { MONEY($says, $currency) }.
rehearsal-lost = { MONEY($cost, $currency) } davon sind im Mittel der Preis von Webmaschinen, die eingeplant waren und vor dem Horizont nicht begonnen wurden: { $looms }, ebenso wahrscheinlich wie nicht.
rehearsal-against = { $other ->
        [rule-of-thumb] Kein Plan, jeder Kettablauf, wie er kommt (nach höchstens { OWN($limit) } h Warten, der besten solchen Grenze),
        [replanned] Der Plan, jeden Montag neu gemacht nach dem, was dann bekannt ist,
        [never-cut] Der Plan eingehalten, aber keine Kette je abgeschnitten,
       *[kept] Der Plan eingehalten, wie er ist,
    } { $how ->
        [dearer] kostet { MONEY($by, $currency) } mehr als der Plan, { $policy ->
            [rule-of-thumb] beiseite gelassen
            [replanned] jeden Montag neu gemacht
           *[kept] eingehalten
        }, zwischen { MONEY($low, $currency) } und { MONEY($high, $currency) } (zu 95 % sicher, je { $runs } Läufe).
        [cheaper] kostet { MONEY($by, $currency) } weniger als der Plan, { $policy ->
            [rule-of-thumb] beiseite gelassen
            [replanned] jeden Montag neu gemacht
           *[kept] eingehalten
        }, zwischen { MONEY($low, $currency) } und { MONEY($high, $currency) } (zu 95 % sicher, je { $runs } Läufe).
       *[open] lässt sich vom Plan, { $policy ->
            [rule-of-thumb] beiseite gelassen
            [replanned] jeden Montag neu gemacht
           *[kept] eingehalten
        }, in je { $runs } Läufen nicht unterscheiden; etwa { $more } weitere würden es klären.
    }
rehearsal-worry = { $source ->
        [beam-outs] Kettabläufe, die kommen wie vorhergesagt, sind
        [work] Arbeit, die so lange dauert wie geplant, ist
        [people] { $crew ->
            [none] Ersatz für alle, die unvorhergesehen fehlen, ist
           *[other] Ersatz für { $crew } ist
        }
        [receipts] Lieferungen, vollständig und an ihrem Tag, sind
        [failures] Kein Umbau, der auf halbem Weg scheitert, ist
       *[orders] Keine kurzfristig geschützte Webmaschine ist
    } etwa { MONEY($worth, $currency) } wert, zwischen { MONEY($low, $currency) } und { MONEY($high, $currency) } (zu 95 % sicher).
rehearsal-worries-open = In so vielen Läufen nicht sicher etwas wert: { $names }.
rehearsal-rests-on = Genommen wie üblich, weil die Weberei keine eigenen Zahlen dafür hat: { $names }.
rehearsal-rests-on-records = Aus den eigenen Aufzeichnungen der Weberei: { $names }. Wie sehr, aus wie vielen Aufzeichnungen und seit wann, steht in der Tabelle, worauf es beruht.
rehearsal-varies = { $source ->
        [beam-outs] Kettverbrauch
        [work] Arbeit
        [people] Abwesenheiten
        [receipts] Lieferungen
        [failures] misslungene Umbauten
       *[orders] kurzfristig geschützte Webmaschinen
    }
rehearsal-rests-on-asked = Wie verlangt, oder wie die Vorgaben sagen: { $names }.
rehearsal-usual = { $name ->
        [day-to-day-variation] Kettverbrauch schwankt um { NUMBER($value, maximumFractionDigits: 1) } % von Tag zu Tag, wo eine Webmaschine zu wenige tägliche Ablesungen hat
        [day-to-day-variation-own] Kettverbrauch schwankt um { NUMBER($value, maximumFractionDigits: 1) } % von Tag zu Tag
        [work-cv] Arbeit schwankt um { NUMBER($value, maximumFractionDigits: 1) } %, wo die Methode kein Kürzestes und Längstes nennt
        [work-cv-own] Arbeit schwankt um { NUMBER($value, maximumFractionDigits: 1) } %
        [away-share] { NUMBER($value, maximumFractionDigits: 1) } % der Tage unvorhergesehen abwesend
        [away-days] Abwesenheiten von { NUMBER($value, maximumFractionDigits: 1) } Tagen
        [late-share] { NUMBER($value, maximumFractionDigits: 1) } % der Lieferungen verspätet
        [late-days] verspätete Lieferungen um { NUMBER($value, maximumFractionDigits: 1) } Tage
        [short-share] { NUMBER($value, maximumFractionDigits: 1) } % der Lieferungen unvollständig
        [fail-share] { NUMBER($value, maximumFractionDigits: 1) } % der Umbauten misslingen
        [protected-per-week] kurzfristig geschützte Webmaschinen: { NUMBER($value, maximumFractionDigits: 1) } je Woche
        [protected-days] geschützt für { NUMBER($value, maximumFractionDigits: 1) } Tage
       *[reading-error] Ablesungen der Ketten um { NUMBER($value, maximumFractionDigits: 1) } % falsch
    }
rehearsal-usual-of = { $figure } ({ $names })
rehearsal-records = { $what ->
        [day-to-day-variation] { $count ->
            [one] 1 Ablesung
           *[other] { $count } Ablesungen
        }
        [work-cv] { $count ->
            [one] 1 Umbau
           *[other] { $count } Umbauten
        }
        [fail-share] { $count ->
            [one] 1 Umbau
           *[other] { $count } Umbauten
        }
        [away-share] { $count ->
            [one] 1 Abwesenheit
           *[other] { $count } Abwesenheiten
        }
        [away-days] { $count ->
            [one] 1 Abwesenheit
           *[other] { $count } Abwesenheiten
        }
        [late-days] { $count ->
            [one] 1 verspätete Lieferung
           *[other] { $count } verspätete Lieferungen
        }
        [protected-per-week] { $count ->
            [one] 1 Webmaschine
           *[other] { $count } Webmaschinen
        }
        [protected-days] { $count ->
            [one] 1 Webmaschine
           *[other] { $count } Webmaschinen
        }
       *[late-share] { $count ->
            [one] 1 Lieferung
           *[other] { $count } Lieferungen
        }
    } seit { $since }
rehearsal-from = { $by ->
        [records] eigene Aufzeichnungen
        [together] eigene Aufzeichnungen, alle zusammen
        [asked] wie verlangt, oder nach den Vorgaben
       *[usual] üblich
    }
rehearsal-whose = { $names ->
        [none] { $kind ->
            [type] alle Typen
            [crew] alle
            [supplier] alle Lieferanten
           *[mill] die Weberei
        }
       *[other] { $names }
    }
rehearsal-source = { $source ->
        [beam-outs] Kettabläufe wie vorhergesagt
        [work] Arbeit so lang wie geplant
        [people] { $crew ->
            [none] Ersatz für alle
           *[other] Ersatz für { $crew }
        }
        [receipts] Lieferungen vollständig und an ihrem Tag
        [failures] kein Umbau, der scheitert
       *[orders] keine kurzfristig geschützte Webmaschine
    }
rehearsal-cause = { $cause ->
        [beam-out] ihr Kettablauf
        [crew-away] eine Mannschaft fehlt
        [crew-busy] Mannschaften mit anderen beschäftigt
        [other-trades] ein anderer Beruf beschäftigt oder nicht da
        [tools] ein Werkzeug in Gebrauch
        [protected] kurzfristig geschützt
        [pilot] der Pilot ihres Typs
        [parts] Teile fehlen
        [looms-stopped] zu viele Webmaschinen stehen
        [horizon] keine Zeit vor dem Horizont
        [hours] kein Ende, das die Regeln erlauben
        [failed] gescheitert und noch einmal gemacht
       *[nothing] nichts Besonderes
    }
rehearsed = Durchgespielt am { $made } ({ $runs } Läufe): { $looms ->
        [none] kein Viertel der { $to_do } eingeplanten Webmaschinen ist vor dem Horizont sicher fertig
       *[other] { $looms } der { $to_do } eingeplanten Webmaschinen sind bis { $half } fertig (P50), bis { $sure } (P80)
    }; in 80 von 100 Läufen mindestens { $done } vor dem Horizont, für höchstens { MONEY($most, $currency) } (P50 { MONEY($cost, $currency) }).
