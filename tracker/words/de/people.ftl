### Leute: Rollen und was sie dürfen, Konten, Passwörter.

## Rollen, und was erlaubt ist

word-viewer = Betrachter
word-fitter = Monteur
word-electrician = Elektrofachkraft
word-purchasing = Einkauf
word-planner = Planer
word-administrator = Verwalter
word-record-work = Arbeit erfassen
word-sign-electrical-hold-points = elektrische Haltepunkte unterschreiben
word-waive = eine Prüfung oder Einstellung erlassen
word-book-stock = im Lager buchen
word-load-lists = Listen einlesen
word-plan = planen
word-manage-people = Konten verwalten
word-back-up = sichern
not-allowed = { $who } darf das nicht ({ $what }): das ist Sache von { $roles }. Nichts wurde geschrieben.
    .hint = Bitten Sie einen Verwalter um die Rolle, oder jemanden, der sie hat.

## Konten

person-changed = { $how ->
        [added] { $person } hat nun ein Konto, als { $roles }.
        [again] { $person } hat das Konto wieder, als { $roles }.
        [roles] { $person } ist nun { $roles }; offene Seiten von { $person } sind beendet.
        [password] Das Passwort von { $person } ist geändert; offene Seiten von { $person } sind beendet.
        [provider] { $person } meldet sich von nun an über den Anmeldedienst des Betriebs an, mit den Rollen, die er gibt; offene Seiten von { $person } sind beendet.
       *[ended] { $person } kann sich nicht mehr anmelden; offene Seiten von { $person } sind beendet.
    }
own-password-wrong = das ist nicht Ihr Passwort
    .hint = geben Sie das ein, mit dem Sie sich angemeldet haben; nach fünf falschen endet die Sitzung
own-password-by-provider = Sie melden sich über den Anmeldedienst des Betriebs an; er verwahrt Ihr Passwort
    .hint = ändern Sie es dort
person-known = { $person } hat schon ein Konto
    .hint = wählen Sie einen anderen Namen
person-unknown = niemand hat ein Konto unter dem Namen { $person }
person-name = ein Name hat 1 bis { $most } Buchstaben, Ziffern, Leerzeichen und Zeichen
role-unknown = { $role ->
        [none] ein Konto hat mindestens eine Rolle
       *[other] es gibt keine Rolle { $role }
    }; die Rollen sind { $roles }
password-length = das Passwort hat { $characters } Zeichen; es braucht { $least } bis { $most }
    .hint = mehrere Wörter, die nicht zusammengehören, lassen sich leicht merken
password-common = dieses Passwort gehört zu denen, die zuerst probiert werden
    .hint = wählen Sie ein anderes; mehrere Wörter, die nicht zusammengehören, lassen sich leicht merken

## Anmelden

signed-out = diese Sitzung ist zu Ende
    .hint = Melden Sie sich wieder an; was hier eingegeben wurde, ist noch da, solange diese Seite offen bleibt.
sign-in-again = Wieder anmelden
session-over = Ihre Sitzung ist zu Ende. Was Sie hier eingegeben haben, ist noch da.
signed-in-again = Sie sind angemeldet. Schließen Sie diesen Reiter und machen Sie weiter, wo Sie waren.
sign-in-title = Anmelden
sign-in-name = Name
sign-in-password = Passwort
sign-in-button = Anmelden
sign-in-wrong = Name oder Passwort ist falsch.
sign-in-wait = Name oder Passwort war zu oft falsch. Der nächste Versuch ist in { $seconds ->
        [one] einer Sekunde
       *[other] { $seconds } Sekunden
    } möglich.
form-not-ours = Dieses Formular kam nicht von hier, oder es ist zu alt.
    .hint = Öffnen Sie die Seite neu.
sign-out-title = Abmelden?
sign-out-button = Abmelden
sign-out-back = Zurück zu den Bildschirmen

## Über diesen Rechner hinaus

share-without-people = noch hat niemand ein Konto, und über diesen Rechner hinaus wird ohne Anmeldung nichts gezeigt
    .hint = geben Sie erst jemandem ein Konto
share-unprotected = ohne Zertifikat gehen Passwörter und alles andere ungeschützt durch das Netz: wer dort mithört, kann sie lesen und benutzen
certificate-and-key = ein Zertifikat und sein Schlüssel werden zusammen angegeben
certificate-missing = es gibt keine Datei { $file }
certificate-not-of-key = das Zertifikat { $certificate } passt nicht zum Schlüssel { $key }
    .hint = geben Sie den Schlüssel an, mit dem dieses Zertifikat beantragt wurde
certificate-unusable = { $certificate } und { $key } sind kein brauchbares Paar aus Zertifikat und Schlüssel
    .hint = beide sind PEM-Dateien, der Schlüssel ohne Passwort
proxy-no-address = { $proxy } ist keine Adresse eines Proxys; gemeint ist eine wie 127.0.0.1, von der er fragt
proxy-without-name = hinter einem Proxy müssen die Bildschirme wissen, unter welchem Namen sie gefragt werden

## Wer was getan hat

session-ended = Die Sitzung von { $person } ist beendet; ihre Seiten schließen sich.
session-over-already = diese Sitzung ist schon beendet
    .hint = es ist nichts zu tun

deed-row = { $table ->
        [reservations] Teile vorgehalten für Webmaschine
       *[other] { $table }
    } { $key }{ $how ->
        [added] {" hinzugefügt"}
        [retired] {" beendet"}
       *[other] {""}
    }{ $fields ->
        [none] {""}
       *[other] : { $fields }
    }
deed-field = { $field } { $old ->
        [none] { $new }
       *[other] { $old } → { $new }
    }
deed-none = nichts
deed-stock = Lager: { $kind }, { OWN($quantity) } { $part }{ $loom ->
        [none] {""}
       *[other] , Webmaschine { $loom }
    }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
deed-stage = Webmaschine { $loom } { $stage } ab { $at }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
deed-plan = { $how ->
        [published] Plan { $number } veröffentlicht
        [scenario] Plan { $number } für das Szenario { $scenario } erstellt
       *[made] Plan { $number } erstellt
    }
deed-rehearsal = Plan { $plan } durchgespielt
deed-job = begonnen: { $kind ->
        [scenario] der Plan eines Szenarios
        [rehearsal] ein Durchspielen
        [reading] das Lesen von Listen
       *[plan] ein Plan
    }
deed-backup = in { $file } gesichert
deed-scenario-aside = Szenario { $scenario } { $aside ->
        [yes] beiseitegelegt
       *[no] wieder gezeigt
    }
deed-load = { $files ->
        [none] { $scenario ->
            [none] von Hand eingegeben
           *[other] Szenario { $scenario } in Kraft gesetzt
        }
       *[other] { $files } eingelesen
    }
deed-method = Fassung { $version } der Methode gilt
deed-alarm = Webmaschine { $loom }: Alarm von { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } erledigt: { $why }
deed-photo = Webmaschine { $loom }: Foto zu { $about ->
        [none] ganzem Umbau
       *[other] { $about }
    }: { $remark }
deed-withdrawn = Webmaschine { $loom }: eine Zeile von { $table } zurückgenommen: { $why }
deed-answer = { $question } beantwortet: { $answer }
deed-person = { $how ->
        [added] Konto von { $person } angelegt, als { $roles }
        [roles] { $person } ist nun { $roles }
        [password] Passwort von { $person } geändert
        [provider] Anmeldung von { $person } dem Anmeldedienst überlassen
        [token] Schlüssel vergeben ({ $roles }): { $person }
        [token-ended] Schlüssel { $person } eingezogen
        [session-ended] Sitzung von { $person } beendet
       *[ended] Konto von { $person } beendet
    }
deed-door = { $what ->
        [signed-in] angemeldet von { $address }{ $by ->
            [provider] {" "}über den Anmeldedienst, als { $roles }
           *[none] {""}
        }
        [signed-out] abgemeldet
        [own-password] hat das eigene Passwort geändert
        [own-password-refused] wollte das eigene Passwort ändern und gab ein falsches bisheriges an
       *[sign-in-refused] { $why ->
            [provider-silent] der Anmeldedienst hat nicht geantwortet
            [provider-state] eine Antwort des Anmeldedienstes, nach der niemand gefragt hat oder die zu spät kam
            [provider-refused] vom Anmeldedienst abgewiesen
            [provider-token] eine Antwort des Anmeldedienstes, die nicht hält
            [provider-role] hat beim Anmeldedienst keine Rolle
            [provider-name] ist dem Anmeldedienst unter einem Namen bekannt, der vergeben ist
            [provider-ended] kam über den Anmeldedienst mit einem Konto, das beendet ist
           *[none] Name oder Passwort falsch
        }, von { $address }
    }
every-role = jede Rolle
deeds-none = Niemand hat etwas getan, das dazu passt.
deeds-cut = Dies sind die neuesten { $most } Zeilen.
history-whole = Der Verlauf liest sich, wie er geschrieben wurde: { $seals } Siegel{ $hash ->
        [none] {""}
       *[other] , das letzte { $hash }
    }.{ $known_at ->
        [none] {""}
       *[other] {" "}Was am { $known_at } dastand, als das gefragte Siegel das letzte war, steht unverändert da.
    }
audit-touched = am Verlauf wurde gerührt: { $touched }
    .hint = vergleichen Sie ihn mit einer Sicherung
hash-unknown = { $hash } ist keines der Siegel dieses Verlaufs: er wurde seither neu geschrieben, oder das Siegel gehört zu einem anderen Programm
    .hint = vergleichen Sie ihn mit jener Sicherung
