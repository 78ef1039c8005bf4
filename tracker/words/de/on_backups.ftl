### Sicherungen auf den Seiten.

backups = Sicherungen
backups-last = Die letzte ist { $file }, gemacht am { $at } von { $who }. Letzte Prüfsumme der Geschichte: { $hash }
backups-none = Es wurde noch keine gemacht.
backups-not-kept = Dieser Server hebt keine Sicherungen auf: wer ihn startet, nennt einen Ordner dafür.
backups-now = Jetzt sichern
