### Die Datenbank: sie öffnen, wem sie gehört, Sicherungen.

database-not-named = keine Datenbank ist genannt
    .hint = eine nennen
database-address = „{ $address }“ ist keine Datenbank: es ist weder eine Datei noch eine Adresse wie { $example }
database-address-at = „{ $address }“ hat mehr als ein @
    .hint = das @ im Passwort als %40 schreiben
database-missing = es gibt keine Datenbank { $name }
database-gone = die Datenbank { $name } ist nicht mehr da
    .hint = sie zurücklegen, oder die Bildschirme am Terminal beenden und mit einer anderen starten
database-empty = { $name } enthält noch keine Weberei
database-is-folder = { $name } ist ein Ordner
    .hint = die Datenbank darin nennen
not-sqlite = { $name } ist keine SQLite-Datenbank
    .hint = eine andere nennen
    .screen = Der Betreuung des Servers sagen.
database-not-ours = { $name } ist keine Datenbank von Beamslot: sie enthält andere Tabellen ({ $tables })
    .hint = eine andere nennen
database-without-version = { $name } sagt nicht, welche Fassung ihre Tabellen haben
    .hint = eine Sicherung davon zurückspielen
database-newer = { $name } stammt von einer neueren Fassung von Beamslot (Tabellen { $version }); diese kennt sie bis { $known }
    .hint = die neuere Fassung einrichten
database-unreleased = { $name } stammt von keiner herausgegebenen Fassung: ihre Tabelle { $table } ist nicht die der Fassung { $version }
    .hint = die Arbeitsmappen der Weberei in eine neue Datenbank einlesen
database-read-only = die Datenbank { $name } lässt sich nur lesen: ihre Datei oder ihr Ordner darf nicht beschrieben werden; nichts wurde geschrieben
database-older-read-only = die Datenbank { $name } hat eine andere Fassung und lässt sich nur lesen
    .hint = sie einmal öffnen, wo sie beschrieben werden darf
database-closed = die Datenbank { $name } lässt sich nicht öffnen: { $why }
database-silent = die Datenbank { $name } antwortet nicht: { $why }; nichts wurde geschrieben
    .screen = Bleibt es dabei, der Betreuung des Servers sagen.
database-busy = jemand anders schreibt seit { $seconds } s hinein, noch einmal versuchen
text-not-kept = „{ $text }“ ist kein Text, der sich behalten lässt; nichts wurde geschrieben

## Sicherungen

backup-unreadable = { $path } lässt sich nicht lesen: { $why }
backup-newer = { $path } wurde von Beamslot { $program } geschrieben (Tabellen { $version }), dieses kennt Tabellen bis { $known }
    .hint = die neuere Fassung einrichten und damit zurückspielen
backup-damaged = { $path } wird nicht zurückgespielt: { $how ->
        [no-zip] es ist keine ganze Sicherung ({ $why })
        [foreign] es ist keine Sicherung von Beamslot
        [parts] seine Teile sind nicht die der Tabellen { $version }: { $parts }
        [length] { $part } hat eine andere Länge als beim Schreiben
       *[content] { $part } ist nicht, wie es geschrieben wurde
    }
    .hint = eine andere Sicherung nehmen
restore-failed = in { $name } lässt sich nicht zurückspielen: { $why }; nichts wurde geschrieben
restore-over-file = { $name } ist schon da; eine Sicherung wird nur in eine neue Datenbank zurückgespielt
    .hint = eine neue nennen
restore-over-tables = { $name } enthält schon { $tables ->
        [one] eine Tabelle
       *[other] { $tables } Tabellen
    }; eine Sicherung wird nur in eine neue Datenbank zurückgespielt
    .hint = eine neue nennen
history-unguarded = die Datenbank schützt { $table } nicht mehr vor Änderungen
history-changed = was am { $at } in { $table } geschrieben wurde, liest sich nicht mehr so
history-foreign = { $rows ->
        [one] 1 Zeile von { $table } wurde
       *[other] { $rows } Zeilen von { $table } wurden
    } von einem anderen Programm hineingesetzt

## Sicherungen, die ein Server aufhebt

backup-folder = { $folder } ist kein Ordner, in den Sicherungen geschrieben werden können
    .hint = legen Sie ihn an oder nennen Sie einen anderen
backup-stays = { $file } ist älter als das, was aufgehoben wird, und lässt sich nicht entfernen: { $why }
backup-kept = Gesichert in { $file }: { $rows } Zeilen. Letzte Prüfsumme der Geschichte: { $hash }
backup-old = Die letzte Sicherung ist vom { $at }.
    .hint = Sehen Sie nach, ob der Server mit seinem Ordner für Sicherungen läuft und ob darin Platz ist.
backup-none = Es wurde noch keine Sicherung gemacht.
    .hint = Sehen Sie nach, ob im Ordner für Sicherungen Platz ist.
