provider-button = Mit dem Konto des Betriebs anmelden
provider-silent = Der Anmeldedienst des Betriebs antwortet nicht.
    .hint = Versuchen Sie es gleich noch einmal; bleibt es so, sagen Sie es dem, der ihn betreut.
provider-state = Diese Anmeldung wurde nicht hier begonnen oder dauerte länger als { $minutes } Minuten.
    .hint = Beginnen Sie neu.
provider-refused = Der Anmeldedienst des Betriebs hat Sie nicht eingelassen.
    .hint = Beginnen Sie neu.
provider-token = Was der Anmeldedienst des Betriebs von Ihnen sagt, hält nicht; niemand wurde angemeldet.
    .hint = Beginnen Sie neu; bleibt es so, sagen Sie es dem, der den Dienst betreut.
provider-role = { $person }, Ihr Konto des Betriebs hat hier keine Rolle.
    .hint = Bitten Sie die Verwaltung um die Gruppe, die eine hat.
provider-name = Der Name { $person } gehört hier einem anderen Konto.
    .hint = Ist es Ihres, bitten Sie die Verwaltung, es dem Anmeldedienst zu überlassen.
provider-ended = Das Konto von { $person } ist beendet.
    .hint = Fragen Sie die Verwaltung.
provider-wait = Von hier ging die Anmeldung zu oft schief. Der nächste Versuch ist in { $seconds ->
        [one] einer Sekunde
       *[other] { $seconds } Sekunden
    } möglich.
roles-by-provider = die Rollen von { $person } kommen vom Anmeldedienst des Betriebs
    .hint = ändern Sie dort die Gruppen; sie gelten ab der nächsten Anmeldung
provider-file = { $file } ist nicht als Angaben zu einem Anmeldedienst zu lesen: { $why }
provider-setting = { $file }: { $key } { $problem ->
        [missing] fehlt
        [text] ist kein Text
        [groups] ist keine Liste von Gruppen
        [unknown] ist keine Angabe; es gibt { $known }
        [role] ist keine Rolle; es gibt { $known }
       *[address] muss mit https:// beginnen, weil dort Passwörter und Namen unterwegs sind
    }
provider-file-open = { $file } enthält ein Geheimnis und kann von allen auf diesem Rechner gelesen werden
    .terminal = `chmod o-r FILE` ändert das
provider-library = die Anmeldung über einen Anmeldedienst braucht die Bibliothek Authlib, die nicht installiert ist
    .terminal = `pip install 'beamslot[provider]'` holt sie
