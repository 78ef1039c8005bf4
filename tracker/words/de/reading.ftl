### Was beim Lesen der Blätter einer Weberei gefunden wird. Antworten stehen da, wie man sie gibt: as written, ignore, each.

## Stücke

or = { " " }oder{ " " }
with-unit = { NUMBER($number, maximumFractionDigits: 6) }{ $unit ->
        [none] {""}
       *[other] {" "}{ $unit }
    }
answer-option = { $answer }
    .screen = „{ $answer }“ für { $about }{ $meaning ->
        [none] {""}
       *[other] {" ("}{ $meaning })
    }
answer-one = Die Frage beantworten.
    .screen = { $options } antworten.
answer-unknown = die Antwort { $heading }={ $answer } ist nicht bekannt; möglich sind eine Einheit ({ $units }), day first, month first, ein Feld wie speed, ignore oder as written
answer-about-nothing = keine Überschrift und kein Blatt heißt „{ $heading }“; es gibt { $names }
answer-about-several = „{ $heading }“ ist eine Zelle mehrerer Blätter; eine nennen von { $names }
understood-empty = leer
understood-serial = fortlaufende Tageszahlen
understood-mixed = bis 1 als Anteil, darüber als Prozent
understood-whole = ganze Zahlen
understood-put-back = zurückgesetzt { $order }
record-differs = { $table } { $row }: { $heading } ist hier { $understood }, im Erfassten { $stored }; was erfasst wurde, wird nicht überschrieben.
    .hint = Die Zelle ausbessern, oder sie leer lassen, damit das Erfasste bleibt. Was neu abgelesen wurde, ist eine Zeile mit eigenem Zeitpunkt.
value-differs = { $heading } hier { $here }, dort { $there }
hall-without-name = eine Halle ohne Namen

## Textdateien

code-page-doubt = Die Buchstaben von { $file } lassen sich verschieden lesen: { $meanings }.
lost-letters = Ein Byte in diesen Zellen ist im Zeichensatz der übrigen kein Buchstabe; es steht hier als �: { $raw }
    .hint = Die Zellen berichtigen und die Datei als CSV UTF-8 speichern.

## Blätter und Tabellen

no-table-known = { $file }: { $how ->
        [empty] die Datei ist leer
       *[unknown] keine Überschriftenzeile einer hier bekannten Tabelle gefunden
    } (Blätter: { $sheets }){ $headings ->
        [none] {""}
       *[other] ; eine Zeile, die Überschriften sein könnten, ist { $headings }
    }. Eine Maschinenliste braucht Überschriften wie Webmaschine, Halle, Maschinentyp.
    .screen = { $headings ->
        [none] Mit der Vorlage beginnen.
       *[other] Unten angeben, was ihre Überschriften sind (ÜBERSCHRIFT=loom, ÜBERSCHRIFT=machine type und so weiter), oder mit der Vorlage beginnen.
    }
no-table = Das Blatt { $sheet } enthält keine Tabelle, die hier bekannt ist; es wird übergangen.{ $headings ->
        [none] {""}
       *[other] {" "}Eine Zeile, die Überschriften sein könnten, ist { $headings }.
    }
    .hint = { $headings ->
        [none] Ist es eine, { $options } antworten.
       *[other] Ist es eine Maschinenliste, zu jeder Überschrift angeben, was sie ist, wie { $options } es tut.
    }
foreign-table = Das Blatt { $sheet } sieht aus wie { $table }, liest sich aber nicht so; es wird übergangen.
    .hint = Um es einzulesen, es ausbessern und { $options } antworten.
sheet-ignored = Das Blatt { $sheet } wird weggelassen, wie geantwortet.
hidden-sheet = Das verborgene Blatt { $sheet } enthält eine Tabelle ({ $tables }): soll sie eingelesen werden?
gone-sheet = Der Name des Blatts { $sheet } sagt, dass seine Webmaschinen nicht mehr in der Weberei sind: soll es eingelesen werden?
not-the-loom-list = Die Tabelle auf dem Blatt { $sheet } nennt Webmaschinen, ist aber nicht die Maschinenliste; sie wird übergangen.
    .hint = Ist sie es doch, { $options } antworten.
empty-table = Das Blatt { $sheet } hat keine Zeilen; die geltenden Zeilen bleiben.
method-without-operation = { $how ->
        [sheet] Das Blatt { $sheet } hat keinen Arbeitsgang, und andere Blätter der Methode haben Zeilen.
       *[method] Die Methode hat keinen Arbeitsgang.
    }
    .hint = { $how ->
        [sheet] Es ausfüllen, oder es weglassen, damit die geltenden Arbeitsgänge bleiben.
       *[method] Mindestens eine Zeile ausfüllen: Schritt, Arbeitsgang, Minuten, Beruf, Leute.
    }

## Spalten

heading-understood = { $heading } wird als { $understood } gelesen.
    .hint = Ist es das nicht, { $options } antworten.
values-do-not-fit = { $heading } ist wie { $field } überschrieben, aber die Werte sind keine solchen: was ist es?
which-column = { $field } kann { $subjects } sein.
may-be-field = Keine Spalte ist { $fields }; ist { $heading } die gesuchte?
several-in-one-cell = { $heading } enthält mehrere Werte in einer Zelle, darunter { $fields }; die Spalte bleibt, wie sie dasteht, und { $fields } bleibt leer.
    .hint = Jedem Wert eine eigene Spalte geben, damit er gelesen wird.
type-spellings = Die Maschinentypen { $types } unterscheiden sich nur in der Schreibweise; jeder zählt als eigener Typ.
    .hint = Durchgehend einen davon schreiben, wenn es ein Typ ist: dann hat er einen Piloten und lernt als einer.
no-machine-type = Keine Spalte ist der Maschinentyp, den jede Webmaschine braucht.
looms-or-count = Nennt { $heading } die Webmaschinen ({ $raw } …), oder sagt es, wie viele es von jeder Art gibt?
    .screen = Sind es Nummern von Webmaschinen, oder soll das Blatt weggelassen werden, { $options } antworten.
rows-above-headings = { $rows ->
        [one] Eine Zeile steht
       *[other] { $rows } Zeilen stehen
    } über den Überschriften; als Zeilen der Tabelle gelesen wie die darunter.
beside-the-table = Diese Zellen stehen neben der Tabelle { $table } und gehören zu keiner; sie werden nicht eingelesen.
    .hint = Die leere Spalte herausnehmen, wenn sie zur Tabelle gehören.
joined-table = Das Blatt { $sheet } sagt mehr über die Webmaschinen der Liste: { $headings }; es wird in ihre Zeilen gesetzt.
    .hint = Soll es nicht eingelesen werden, { $options } antworten.
several-to-a-row = Jede Zeile enthält { $groups } Webmaschinen nebeneinander; { $headings } wird für jede von ihnen gelesen.
units-beside = Die Spalte { $heading } gibt die Einheiten von { $field }.
column-not-loaded = Die Spalte { $heading } hat keinen Platz in der Tabelle { $table }; sie wird nicht eingelesen.
no-heading = Diese Zellen stehen unter keiner Überschrift; sie werden nicht eingelesen.
    .hint = Der Spalte eine Überschrift geben, wenn sie wichtig ist.
answer-remembered = { $heading }: die Antwort eines früheren Einlesens galt: { $understood }.
    .hint = { $options ->
        [none] {""}
       *[other] Anders antworten mit { $options }.
    }

no-rows-below = Die Überschriften des Blatts { $sheet } haben keine Zeilen unter sich, darüber stehen welche; nichts wird daraus eingelesen.
    .screen = Die Überschriften nach oben setzen, oder { $options } antworten.
looms-twice = { $count } Webmaschinen stehen zweimal im Blatt { $sheet }, etwa { $looms }: beginnen ihre Nummern in einer anderen Halle von vorn?
    .screen = Die Hallen in einer Spalte oder einer Zeile darüber nennen; sind es dieselben Webmaschinen, { $options } antworten.

## Zeilen

row-passed-over = Die Zeile „{ $raw }“ { $how ->
        [total] zählt Zeilen zusammen
        [heads] steht über Zeilen, und kein Wort sagt, was sie von ihnen aussagt
       *[note] ist keine Zeile der Tabelle
    }; sie wird übergangen.
    .hint = { $options ->
        [none] {""}
       *[other] Nennt sie etwas von den Zeilen darunter, { $options } antworten.
    }
gone-line = Die Zeile „{ $raw }“ sagt, dass die Webmaschinen darunter nicht mehr in der Weberei sind: sollen sie eingelesen werden?
rows-left-out = Die Webmaschinen unter „{ $raw }“ werden weggelassen, wie geantwortet.
hidden-rows = { $hidden } von { $rows } Zeilen sind verborgen{ $filter ->
        [none] {""}
       *[other] {" durch den Filter auf "}{ $filter }
    }; sie werden wie alle anderen gelesen.
hidden-columns = Im Blatt verborgen: { $headings }; gelesen wie jede andere Spalte.
struck-through = Zellen von { $struck } der { $rows } Zeilen sind durchgestrichen; sie werden wie alle anderen gelesen. Aus der Liste nehmen, was nicht mehr gilt.
missing-value = { $line } hat { $field ->
        [loom] keine Nummer der Webmaschine
       *[other] nichts unter { $field }
    }.
    .hint = Die Zelle ausfüllen oder die Zeile löschen.
type-says-gone = „{ $raw }“ ist kein Maschinentyp, sondern sagt, dass die Webmaschine nicht mehr da ist.
    .hint = Die Zeile löschen oder den Maschinentyp schreiben.
says-gone = { $heading } sagt von { $rows } Webmaschinen, dass sie nicht mehr da sind („{ $raw }“); sie werden wie alle anderen eingelesen. Aus der Liste nehmen, was nicht in der Weberei ist.
values-contradict = { $name } { $how ->
        [same] und { $other } sind beide { $first }
        [later] { $first } ist später als { $other } { $second }
       *[more] { $first } ist mehr als { $other } { $second }
    }
contradiction = { $why }.
    .hint = Eine der beiden Zellen berichtigen oder die Zeile löschen.
double-differs = { $table }: { $raw } steht in { $places } noch einmal mit anderen Werten: { $values }.
    .hint = Eine der Zeilen berichtigen oder löschen, oder ein Blatt weglassen.
double-same = { $table }: { $raw } steht in { $places } noch einmal mit denselben Werten; es wird einmal eingelesen.
unknown-term = Es gibt keine Vorgabe „{ $raw }“; die Vorgaben sind { $terms }, pilot of TYP.
    .hint = Eines dieser Wörter verwenden oder die Zeile löschen.

## Hallen und Webmaschinen

hall-from-sheet = Keine Spalte nennt die Halle; sie wird aus dem Namen des Blatts gelesen: { $understood }.
hall-beside = Keine Überschrift nennt die Halle; sie wird aus den Zellen neben den Webmaschinen gelesen.
section-lines = { $how ->
        [untyped] Keine Spalte ist der Maschinentyp; was nennen die Zeilen { $raw }?
        [hallless] Keine Spalte ist die Halle; nennen die Zeilen { $raw } Hallen?
       *[again] Unter den Zeilen { $raw } beginnen die Nummern von vorn: sind das Hallen?
    }
type-from-line = Die Zeile „{ $raw }“ nennt den Maschinentyp der Webmaschinen darunter: { $understood }.
    .hint = Ist es keiner, den Maschinentyp in eine eigene Spalte schreiben.
type-from-above = Der Maschinentyp ist leer; gelesen als der der Zeilen darüber, { $understood }.
hall-from-above = Die Halle ist leer; gelesen als die der Zeilen darüber, { $understood }.
no-hall = Das Blatt { $sheet } nennt keine Halle; seine Webmaschinen gelten als in einer Halle ohne Namen stehend.
    .hint = Eine Spalte Halle hinzufügen, wo die Nummern in jeder Halle von vorn beginnen.
sheet-is-type = Keine Spalte ist der Maschinentyp: sind { $sheets } die Typen der Webmaschinen auf den Blättern dieser Namen?
type-from-sheet = Keine Spalte ist der Maschinentyp; er wird aus dem Namen des Blatts gelesen: { $understood }.
type-beside-number = Nummer und Maschinentyp stehen in einer Zelle: { $raw } ist Webmaschine { $number } vom Typ { $machine_type }.
    .hint = Ist es nicht so, dem Maschinentyp eine eigene Spalte geben.
sheet-is-hall = Keine Halle ist genannt, und andere Blätter haben Hallen oder dieselben Nummern: ist { $sheet } eine eigene Halle?
hall-spelling = Die Halle „{ $raw }“ gilt als „{ $understood }“.
look-alike = „{ $raw }“ hat einen Buchstaben, der wie ein anderes Zeichen aussieht; { $like } { $how ->
        [listed] steht auch in der Liste
       *[other] war vielleicht gemeint
    }. Gelesen wird, wie es dasteht.
    .hint = Die Zelle berichtigen, wenn es ein Versehen ist.
number-mark = „{ $raw }“ wird als Webmaschine { $understood } gelesen; das Zeichen entfällt.
number-of-several = Ist „{ $raw }“ eine Webmaschine dieser Nummer, oder steht es für mehrere{ $first ->
        [none] {""}
       *[other] {" "}({ $many }, { $first } bis { $last })
    }?
    .screen = { $first ->
        [none] Ist es eine, „as written“ antworten; sonst jeder Webmaschine eine eigene Zeile geben.
       *[other] „each“ antworten, und jede von ihnen ist eine Webmaschine mit den Werten der Zeile; oder „as written“, wenn es eine ist.
    }
number-with-words = Ist „{ $raw }“ die Webmaschine { $understood } mit einer Bemerkung, oder ist das ihre Nummer?
number-without-figure = Ist „{ $raw }“ eine Webmaschine? Die anderen Nummern haben Ziffern.
    .screen = Ist es eine, „as written“ antworten; sonst die Zeile löschen oder sie unter die Liste schreiben.
number-spelt-twice = Ist „{ $number }“ dieselbe Webmaschine wie „{ $other }“, anders geschrieben, oder eine eigene?
looks-like-known-loom = Webmaschine „{ $raw }“ ist neu und unterscheidet sich von { $twin } der Datenbank nur durch Zeichen, die gleich aussehen; sie wäre eine eigene Webmaschine.
    .hint = Die Zelle berichtigen, wenn es ein Versehen ist.
ambiguous-hall = Webmaschine { $loom } steht in { $halls }; welche Halle, ist nicht gesagt.
    .hint = Die Halle daneben schreiben.
unknown-loom = Webmaschine { $loom } { $how ->
        [hall] steht in { $halls }, nicht in { $hall }
       *[number] steht nicht in der Maschinenliste{ $near ->
            [none] {""}
           *[other] ; die ähnlichste ist { $near }
        }
    }.
    .hint = { $how ->
        [hall] Die Halle schreiben wie die Maschinenliste; eine Nummer, die es nur in einer Halle gibt, braucht keine.
       *[number] Die Nummer berichtigen, oder die Maschinenliste mit ihr einlesen.
    }

## Zellen

ditto = „{ $raw }“ wiederholt die Zelle darüber.
cell-comment = Ein Kommentar sagt: „{ $raw }“. Der Wert wird gelesen, wie er dasteht.
    .hint = Die Zelle berichtigen, wenn der Kommentar sagt, dass sie falsch ist.
placeholder = „{ $raw }“ wird als leer gelesen.
read-as-empty = „{ $raw }“ sagt, dass nichts bekannt ist; als leer gelesen.
empty-text = Die Formel in dieser Zelle ergibt nichts; als leer gelesen.
error-cell = Der Fehler { $raw } wird als leer gelesen.
    .hint = Die Formel ausbessern, wenn der Wert gebraucht wird.
formula-without-value = { $field }: die Formel in dieser Zelle hat keinen gespeicherten Wert.
    .hint = Die Datei in einer Tabellenkalkulation öffnen, rechnen lassen und speichern.
in-brackets = {" "}({ $what })
impossible-value = { $field }{ $how ->
        [below] {" "}{ $raw }{ $meant } liegt unter dem kleinsten möglichen Wert, { $limit }
        [above] {" "}{ $raw }{ $meant } liegt über dem größten möglichen Wert, { $limit }
        [to-come] {" "}{ $understood } steht noch bevor; der späteste mögliche Zeitpunkt ist { $limit }
        [too-early] {" "}{ $understood } liegt vor { $limit }, dem frühesten möglichen
       *[term] : „{ $raw }“ ist hier nicht möglich
    }.
    .hint = { $how ->
        [term] { $possible } schreiben, oder die Zeile löschen.
       *[other] Die Zelle berichtigen oder leer lassen.
    }
not-whole = { $field } { $raw } ist keine ganze Zahl.
    .hint = Die Zelle berichtigen oder leer lassen.
not-a-number = { $field } „{ $raw }“ lässt sich nicht als Zahl lesen.
    .hint = Die Zelle berichtigen oder leer lassen.
unit-unknown = { $field } „{ $raw }“: „{ $unit }“ ist keine Einheit davon.
    .hint = Die Zahl allein schreiben{ $units ->
        [none] {""}
       *[other] , oder mit einer von: { $units }
    }.
other-currency = { $field } „{ $raw }“ steht in einer anderen Währung als { $most }, in der das meiste dieser Spalte steht.
    .hint = Die ganze Spalte in der Währung der Weberei schreiben.
not-a-date = { $field } „{ $raw }“ lässt sich nicht als Datum lesen.
    .hint = Als 2027-01-31 schreiben.
not-a-time = { $field } „{ $raw }“ lässt sich nicht als Uhrzeit lesen.
    .hint = Als 06:00 schreiben.
not-a-year = { $field } „{ $raw }“ lässt sich nicht als Jahr lesen.
    .hint = Vier Ziffern schreiben.
not-weekdays = { $field } „{ $raw }“ lässt sich nicht als Wochentage lesen.
    .hint = Mo-Fr schreiben, oder Mo, Mi.
not-yes-or-no = { $field } „{ $raw }“ ist weder ja noch nein.
    .hint = Ja oder nein schreiben.
unknown-word = { $field } „{ $raw }“ ist keines von: { $words }.
    .hint = Eines schreiben von: { $words }.
number-turned = { $field }: die Tabellenkalkulation hat aus einer Nummer wie 10E2 { $raw } gemacht.
    .hint = Die Zelle als Text formatieren und die Nummer noch einmal eingeben.
number-turned-into-date = { $field }: die Tabellenkalkulation hat aus einer Nummer ein Datum gemacht.

## Wie eine Spalte gelesen wurde

remark-left-out = „{ $raw }“ wird als { $understood } gelesen; die Wörter „{ $remark }“ entfallen.
    .hint = Sie in eine Spalte für Bemerkungen setzen, wenn sie wichtig sind.
month-or-day = { $field } „{ $raw }“: ein Monat mit seinem Jahr, oder ein Tag ohne Jahr?
    .screen = { $options } antworten; oder die Tage ganz schreiben, als 2027-01-31.
day-without-year = { $field } „{ $raw }“ nennt kein Jahr: ist das nächste gemeint?
    .screen = { $options } antworten; oder die Tage ganz schreiben, als 2027-01-31.
day-meant = { $day }
date-of-span = { $field } „{ $raw }“ wird gelesen als { $how ->
        [last] sein letzter Tag,
        [day] der Tag
       *[first] sein erster Tag,
    } { $day }.
serial-date = { $field } enthält fortlaufende Tageszahlen; { $raw } ist { $day }.
point-zero = { $field } endet in jeder Zeile auf .0, wie Programme ganze Zahlen schreiben; das .0 entfällt.
unit-understood = { $field } hat keine Einheit; gelesen in { $understood }{ $how ->
        [types] , denn die Maschinentypen sagen dieselbe Breite
        [values] , der Werte { $span } wegen
       *[usual] {""}
    }.
percent-mixed = { $field } steht als Prozent und als Anteil da: Werte bis 1 sind als Anteil gelesen.
percent-understood = { $field } ist mit % überschrieben, und doch sind { $span } Anteile: 0,88 ist 88 %.

## Was aus Spalten und Zellen wurde

table-meaning = { $file } { $sheet }: { $ours ->
        [yes] { $table }, { $columns } Spalten unter unseren eigenen Überschriften
       *[no] { $table }
    }
column-meaning = { $how ->
        [asked] { $field ->
            [none] gefragt
           *[other] { $field }? (gefragt)
        }
        [field] { $field }{ $unit ->
            [none] {""}
           *[other] , in { $unit }
        }{ $sure ->
            [no] {" "}(vielleicht)
           *[yes] {""}
        }
        [own] unter eigener Überschrift behalten
       *[left] weggelassen
    }
column-taken-for = {"  "}{ $cell } { $heading }: { $what }
account-of-sheet = { $file } { $sheet }: { $cells ->
        [one] 1 Zelle
       *[other] { $cells } Zellen
    }: { $headings } in Überschriften, { $taken } übernommen, { $own } unter eigenen Überschriften, { $refused } abgelehnt, { $aside } beiseite gelegt{ $parts ->
        [none] {""}
       *[other] : { $parts }
    }.
cells-set-aside = { $cells } { $reason ->
        [title] über der Tabelle
        [heading-again] Überschriften noch einmal
        [section] { $cells ->
            [one] Zeile, die eine Halle, Reihe oder einen Typ nennt
           *[other] Zeilen, die eine Halle, Reihe oder einen Typ nennen
        }
        [total] { $cells ->
            [one] Summe
           *[other] Summen
        }
        [note] { $cells ->
            [one] Bemerkung
           *[other] Bemerkungen
        }
        [number] { $cells ->
            [one] Nummer allein
           *[other] Nummern allein
        }
        [empty-value] { $cells ->
            [one] sagt, dass nichts da ist
           *[other] sagen, dass nichts da ist
        }
        [no-heading] ohne Überschrift
        [column] aus weggelassenen Spalten
        [beside] neben der Tabelle
        [below] unter der Tabelle
        [same-again] aus einer Zeile, die zweimal dasteht
        [table] aus einer übergangenen Tabelle
        [left-out] aus einem weggelassenen Blatt
        [own-report] aus einem Bericht von uns
        [unfilled] aus Zeilen, die niemand ausgefüllt hat
       *[sheet] aus einem Blatt, das keine Tabelle von uns ist
    } ({ $where })

## Fragen zu einer Spalte

unit-doubt = { $field } { $headed ->
        [none] hat keine Einheit, und { $raw } kann { $answers } sein
       *[other] ist mit { $headed } überschrieben, doch { $raw } wäre ungewöhnlich
    }.
value-doubt = { $field } { $raw } steht zwischen Prozenten: es kann { $meanings } sein.
odd-value = { $field } { $raw }{ $who ->
        [none] {""}
       *[other] {" "}von { $who }
    } steht abseits der anderen, { $low } bis { $high }{ $how ->
        [inch] , wie Zoll unter Zentimetern
        [tenth] , wie ein Versehen um ein Zehntel
        [far] {""}
       *[ten] , wie ein Versehen um das Zehnfache
    }: stimmt es so?
    .screen = Wenn ja, „as written“ antworten; sonst die Zelle berichtigen.
decimals-doubt = { $field } „{ $raw }“ kann { $meanings } sein.
order-doubt = { $how ->
        [turned] { $field }: { $raw } blieb Text, während kein Datum nach dem 12. seines Monats liegt, als hätte die Tabellenkalkulation Tag und Monat vertauscht: { $month_first } ist vielleicht { $day_first }.
        [number] { $field }: die Tabellenkalkulation hat aus einer Nummer das Datum { $day } gemacht; sie war { $day_first } oder { $month_first }.
        [both] { $field } enthält Daten in beiden Reihenfolgen; { $raw } kann { $day_first } oder { $month_first } sein.
       *[either] { $field } { $raw } kann { $day_first } oder { $month_first } sein.
    }

## Blätter, die die ganze Wahrheit sind

cannot-replace = „{ $name }“ kann nicht zur ganzen Wahrheit erklärt werden; { $sheets } kann es
replaces-nothing = die Dateien enthalten keine Tabelle { $sheet }, die etwas ersetzen könnte
list-not-whole = { $table } hat abgelehnte Zeilen, ist also nicht die ganze Liste; keine Zeile der Datenbank wird ihretwegen herausgenommen.
    .hint = Die abgelehnten Zeilen ausbessern und sie noch einmal einlesen.
no-longer-listed = { $table }: { $rows ->
        [one] eine Zeile
       *[other] { $rows } Zeilen
    } der Datenbank { $of ->
        [loom] von Webmaschinen
        [crew] von Mannschaften
       *[other] von Lieferanten
    }, die die Liste nicht mehr nennt ({ $who }): gibt es sie nicht mehr, oder bleiben sie?

## Was nicht zum Rest der Weberei passt

unknown-article = Artikel { $article } steht nicht in der Artikelliste{ $near ->
        [none] {""}
       *[other] ; der ähnlichste ist { $near }
    }.
    .hint = Die Zelle berichtigen, oder das Blatt Artikel mit ihm einlesen.
hall-without-looms = In { $hall } steht keine Webmaschine; die Hallen mit Webmaschinen sind { $halls }. Die Zeile ändert nichts.
    .hint = Die Halle berichtigen, wenn es ein Versehen ist.
pilot-of-no-type = { $term }: keine Webmaschine hat den Maschinentyp { $type }; es gibt { $types }.
    .hint = Ihn berichtigen, sonst wird der Pilot allein nach den Kosten gewählt.
pilot-unknown = { $term }: Webmaschine { $loom } steht nicht in der Maschinenliste.
    .hint = Sie berichtigen, sonst wird der Pilot allein nach den Kosten gewählt.
pilot-of-other-type = { $term }: Webmaschine { $loom } hat den Maschinentyp { $types }, nicht { $type }.
    .hint = Sie berichtigen, sonst wird der Pilot allein nach den Kosten gewählt.
finish-before-start = Das Zielende { $finish } liegt vor dem Beginn { $start }; bis dahin kann keine Webmaschine fertig sein.
    .hint = Eines der beiden berichtigen.
reading-to-come = Webmaschine { $loom }: die Kette wurde { $at } abgelesen{ $others ->
        [0] {""}
       *[other] , und { $others } weitere dieses Blatts
    }, später als { $day }.
    .hint = Den Tag berichtigen, wenn es ein Versehen ist.

unreadable-break = Mannschaft { $crew }: die Pause „{ $text }“ lässt sich nicht lesen.
    .hint = Als 10:00-10:15, 12:00-12:30 schreiben.
break-outside-shift = Mannschaft { $crew }: die Pause { $begin }-{ $until } liegt nicht in der Schicht { $start }-{ $end }.
    .hint = Die Pause oder die Schicht berichtigen.
unknown-crew = Es gibt keine Mannschaft { $crew }{ $near ->
        [none] {""}
       *[other] ; die ähnlichste ist { $near }
    }.
    .hint = Die Zelle berichtigen, oder das Blatt Mannschaften mit ihr einlesen.
crew-dates = { $first ->
        [none] immer
       *[other] { $first }
    } bis { $last ->
        [none] offen
       *[other] { $last }
    }
outside-crew-dates = Mannschaft { $crew } ist nach dem Blatt Mannschaften am { $day } nicht da ({ $dates }).
    .hint = Den Tag oder die Daten der Mannschaft berichtigen.
more-heads-than-crew = Mannschaft { $crew } hat { $heads ->
        [one] einen Kopf
       *[other] { $heads } Leute
    }, und { $away } sollen fehlen.
    .hint = Weniger schreiben, oder die Zelle leer lassen für alle.
absences-overlap = Mannschaft { $crew } fehlt von { $first } bis { $last }, und noch einmal von { $again } bis { $until }.
    .hint = Jedem Zeitraum eine Zeile geben, mit den Leuten, die zusammen fehlen.

## Teile und Zugänge

part-not-listed = Teil { $part } steht nicht in der Teileliste.
    .hint = { $near ->
        [none] {""}
       *[other] Ist { $near } gemeint?{" "}
    }Es in das Blatt Teile aufnehmen oder ausbessern.
unit-mismatch = { $how ->
        [ledger] Teil { $part } hat Lagerbewegungen in { $kept }; es kann nicht auf { $unit } wechseln.
       *[receipt] Teil { $part } wird in { $kept ->
            [none] keiner Einheit
           *[other] { $kept }
        } geführt, nicht in { $unit }.
    }
    .hint = { $how ->
        [ledger] Die Einheit behalten, oder das Teil in der neuen Einheit unter einem anderen Namen führen.
       *[receipt] Die Menge in der Einheit des Teils angeben.
    }
order-line-twice = Bestellzeile { $order } gilt für Teil { $other } und für Teil { $part }.
    .hint = Jeder Zeile eine eigene Nummer geben, wie { $order }-10 und { $order }-20.
received-already = Bestellzeile { $order }: { $received } von Teil { $part } sind zugegangen und { $open_quantity } offen; { $quantity } zählte sie doppelt.
    .hint = Angeben, was noch offen ist, oder eine neue Zeilennummer für das, was daneben kommt.
quantity-impossible = Teil { $part }: { QUANTITY($quantity) } { $wrong }.
    .hint = Die Zelle berichtigen, oder das Teil in der Einheit führen, in der es gezählt wird.

## Während Listen gelesen werden

reading-file = { $file } wird gelesen
reading-tables = die Tabellen werden gelesen
