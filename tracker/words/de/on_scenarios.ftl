### Die Seite Szenarien.

scenarios-about = Pläne, die gemacht sind, als wäre etwas anders. Der veröffentlichte Plan bleibt, wie er ist.
scenarios-then = dann ist er hier mit anderen zu vergleichen
scenarios-only-one = Bisher gibt es nur einen Plan.{ $may ->
        [yes] {" "}Unten wird ein Szenario gemacht.
       *[no] {""}
    }
scenarios-chart = Balken: Kosten jedes Plans nach Posten; die Tabelle sagt dasselbe
scenarios-what = Was
scenarios-unlike = Die Pläne reichen nicht gleich weit: Was übrig bleibt, zählt bei jedem bis zu seinem Ende, die Kosten sind daher nur zum Teil zu vergleichen.
scenarios-published = veröffentlichter Plan
scenarios-made = { $name }, erstellt { $at }
scenarios-cost = Kosten ohne Verschiebungen
scenarios-against = gegen { $name }
scenarios-moves = für sich: verschobene Termine
scenarios-surviving = für sich: gerechnet, damit er übersteht
scenarios-booked = eingeplant
scenarios-left-over = übrig
scenarios-ends = letzter Umbau endet
scenarios-none = keiner
scenarios-stopped = stillstehende Webstunden
scenarios-gap = Abstand im Beweis

## Ein neues

scenarios-new = Ein neues Szenario
scenarios-seconds = Suche beenden nach (s)
scenarios-plan = Planen
scenarios-plan-help = Es geht weiter, während diese Seite verlassen ist, und wer hinsieht, sieht, wie weit es ist. Nach dieser Zeit, und beim Anhalten, wird der beste Plan behalten, der bis dahin gefunden ist.
scenario-unnamed = das Szenario hat keinen Namen
    .hint = geben Sie ihm einen
scenario-name-taken = es gibt schon ein Szenario { $name }
    .hint = wählen Sie einen anderen Namen
scenarios-new-about = Eintrag für Eintrag sagen, was anders sein soll, dann planen. Die Daten der Weberei bleiben, wie sie sind.
scenarios-entry = Was anders sein soll
scenarios-kind = { $kind ->
        [terms] Eine Vorgabe
        [heads] Leute einer Mannschaft
        [tools] Zahl eines Werkzeugs
        [crew] Eine Mannschaft mehr
        [absent] Eine Mannschaft ist weg
        [receipt] Eine Bestellzeile
        [closure] Ein geschlossener Tag
       *[protect] Eine Webmaschine bleibt in Ruhe
    }
scenarios-whose = { $kind ->
        [terms] Vorgabe
        [heads] Mannschaft
       *[tools] Werkzeug
    }
scenarios-instead = Stattdessen
scenarios-possible = Möglich: { $possible }.
scenarios-line = Bestellzeile, die anders kommt
scenarios-line-new = keine: eine neue
scenarios-order = { $order }: { $what }, fällig { $due }
scenarios-needed = * nötig; was leer bleibt, ist wie bisher.
scenarios-add = Hinzufügen
scenarios-take-out = Herausnehmen
scenarios-says = { $kind }: { $values }
scenarios-value = { $field } { $value }
scenarios-added = Hinzugefügt: { $entry }
scenarios-taken-out = Herausgenommen: { $entry }
scenario-entry-refused = { $how ->
        [lacks] der Eintrag { $what }
       *[wrong] { $field ->
            [none] {""}
           *[other] { $field }:{" "}
        }{ $what }
    }
scenarios-name = Name
scenarios-name-such-as = Schienen eine Woche später

## Was aus einem wird

scenarios-in-force = Ein Szenario in Kraft setzen
scenarios-in-force-about = Was es anders hat, wird zu den eigenen Daten der Weberei, alles durch eine Änderung, die sich auf dem Bildschirm Änderungen zurücknehmen lässt. Dann wird daraus ein Plan gemacht, der auf dem Bildschirm Termine anzusehen und zu veröffentlichen ist.
scenarios-entries-unknown = Was { $name } anders hat, ist bei seinem Plan nicht behalten: Den hat eine frühere Fassung gemacht. Es neu planen, oder es dort eingeben, wo es hingehört:
scenarios-said = Bestellung { $order } von { $part }: der Lieferant hat es gesagt, oder sie ist so bestellt
scenarios-put = In Kraft setzen
scenarios-put-asks = { $values ->
        [one] Ein Wert des Szenarios { $scenario } wird
       *[other] { $values } Werte des Szenarios { $scenario } werden
    } zu den eigenen Daten der Weberei, für alle, durch eine Änderung, die sich auf dem Bildschirm Änderungen zurücknehmen lässt. { $left ->
        [none] {""}
       *[other] Bestellung { $left } bleibt, wie sie ist: auf dem Bildschirm Teilesätze und Bedarf eingeben, sobald der Lieferant es gesagt hat.{" "}
    }Dann wird ein Plan gemacht.
scenarios-put-done = Das Szenario { $scenario } gilt: { $values ->
        [one] ein Wert steht
       *[other] { $values } Werte stehen
    } in den Daten der Weberei, durch Änderung { $number }. { $why ->
        [none] Der Plan wird gemacht; er ist auf dem Bildschirm Termine anzusehen und zu veröffentlichen.
       *[other] Der Plan ließ sich nicht beginnen: { $why }. Ihn auf dem Bildschirm Termine machen.
    }
scenarios-where = Eingegeben auf
scenarios-sheet = { $screen }, Blatt { $sheet }
scenarios-aside = Ein Szenario beiseitelegen
scenarios-aside-about = Es wird nicht mehr unter den anderen gezeigt. Seine Pläne bleiben in der Liste aller Pläne, und es lässt sich wieder zeigen.
scenarios-which = Szenario
scenarios-set-aside = Beiseitelegen
scenarios-list-again = Wieder zeigen
scenario-aside = { $aside ->
        [yes] Das Szenario { $scenario } ist beiseitegelegt.
       *[no] Das Szenario { $scenario } wird wieder gezeigt.
    }
scenario-not-listed = { $aside ->
        [yes] kein Szenario { $scenario } wird gezeigt
       *[no] kein Szenario { $scenario } ist beiseitegelegt
    }
    .hint = Wählen Sie eines aus der Liste.
