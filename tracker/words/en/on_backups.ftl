### Backups on the screens.

backups = Backups
    .means = Heading on the screen People.
backups-last = The last one is { $file }, made { $at } by { $who }. Last hash of history: { $hash }
    .means = Below it: the newest backup that a server kept.
backups-none = None was made yet.
    .means = In its place where there is none.
backups-not-kept = This server keeps no backups: whoever starts it names a folder for them.
    .means = In place of the button.
backups-now = Back up now
    .means = The button.
