### Lange Arbeit, die weitergeht, während ihre Seite verlassen ist.

job-begins = es beginnt
job-elsewhere = ein anderer Server kümmert sich darum; wie weit es ist, sieht man dort
job-planned = { $how ->
        [scenario] Szenario { $scenario }
       *[made] Plan { $number }
    }: { $booked ->
        [one] 1 Webmaschine
       *[other] { $booked } Webmaschinen
    } eingeplant, { $left_over } nicht untergebracht, { MONEY($cost, $currency) }, Abstand { NUMBER($gap, maximumFractionDigits: 1) } %.{ $stopped ->
        [yes] {" "}Er wurde angehalten; dies ist der beste, der bis dahin gefunden war.
       *[no] {""}
    }{ $how ->
        [published] {" "}Er gilt.
        [scenario] {""}
       *[made] {" "}Er ist nicht veröffentlicht.
    }{ $notes ->
        [none] {""}
       *[other] {" "}{ $notes }
    }
job-rehearsed = Plan { $plan } wurde { $runs ->
        [one] einmal
       *[other] { $runs }-mal
    } durchgespielt{ $stopped ->
        [yes] , dann angehalten
       *[no] {""}
    }; beim Plan abgelegt.
job-runs-already = { $kind ->
        [plan] ein Plan entsteht schon
        [scenario] ein Szenario wird schon geplant
        [rehearsal] der Plan wird schon durchgespielt
        [tuning] die Vorgaben werden abgestimmt
       *[reading] Listen werden schon gelesen
    }, begonnen von { $who } am { $since }
    .hint = warten Sie, bis es fertig ist, oder halten Sie es an
job-process-lost = sein Prozess wurde von außen beendet (Code { $code }); nichts wurde geschrieben
    .hint = beginnen Sie es noch einmal
job-server-lost = den Server, der sich darum kümmerte, gibt es nicht mehr; nichts wurde geschrieben
    .hint = beginnen Sie es noch einmal
job-failed = es ist gescheitert ({ $fault }); nichts wurde geschrieben. Näheres steht in dem Terminal, das die Seiten ausgibt.
job-not-written = was daraus wurde, konnte nicht geschrieben werden; Näheres steht in dem Terminal, das die Seiten ausgibt
    .hint = beginnen Sie es noch einmal
job-not-begun = dafür konnte kein Prozess gestartet werden: { $why }
job-of-another-server = ein anderer Server dieses Rechners kümmert sich darum (Prozess { $process })
    .hint = halten Sie es auf den Seiten jenes Servers an
job-read = { $files } gelesen
reading-stopped = das Lesen wurde angehalten; nichts wurde geschrieben
    .hint = lesen Sie sie noch einmal
