### The database: opening it, whose it is, backups.

database-not-named = no database is named
    .means = The address of the database is empty.
    .hint = name one
    .terminal = name one: --db mill.db
database-address = '{ $address }' is no database: it is neither a file nor a URL like { $example }
    .means = The address is neither the path of a file nor a URL.
database-address-at = '{ $address }' has more than one @
    .means = A password with an @ was written as it is.
    .hint = write the @ in the password as %40
database-missing = there is no database { $name }
    .means = The file of the database is not there.
    .terminal = `beamslot load` or `beamslot serve --new` makes it, --db names another
database-gone = the database { $name } is not there any more
    .means = The file of the database vanished while the screens were served.
    .hint = put it back, or end the screens in the terminal and start them with another
database-empty = { $name } holds no mill yet
    .means = The database has no tables yet.
    .terminal = `beamslot load` or `beamslot serve --new` starts one, --db names another
database-is-folder = { $name } is a folder
    .means = A folder was named in place of the database.
    .hint = name the database in it
not-sqlite = { $name } is no SQLite database
    .means = The file holds something else.
    .hint = name another
    .screen = Tell whoever looks after the server.
    .terminal = name another with --db
database-not-ours = { $name } is no database of Beamslot: it holds other tables ({ $tables })
    .means = The database belongs to another program; nothing is read or written there.
    .hint = name another
    .terminal = name another with --db
database-without-version = { $name } does not say which version its tables have
    .means = The mark of the version was lost.
    .hint = restore a backup of it
database-newer = { $name } was made by a newer version of Beamslot (tables { $version }); this one knows them up to { $known }
    .means = A newer version has changed the tables.
    .hint = install the newer version
database-unreleased = { $name } was not made by a released version: its table { $table } is not that of version { $version }
    .means = The tables are those of a version from before the first release.
    .hint = load the mill's workbooks into a new database
database-read-only = the database { $name } can only be read: its file or folder has no write permission; nothing was written
    .means = Something was to be written to a file that may only be read.
database-older-read-only = the database { $name } is of another version and can only be read
    .means = The tables would have to be brought up, and the file may not be written.
    .hint = open it once where it may be written
database-closed = cannot open the database { $name }: { $why }
    .means = The database itself refuses to be opened.
database-silent = the database { $name } does not answer: { $why }; nothing was written
    .means = The database failed while it was worked with.
    .screen = Tell whoever looks after the server, if it stays so.
database-busy = somebody else has been writing to it for { $seconds } s, try again
    .means = The lock was not had in time.
text-not-kept = '{ $text }' is no text that can be kept; nothing was written
    .means = A text holds half a letter.

## Backups

backup-unreadable = { $path } cannot be read: { $why }
    .means = The file of a backup may not or cannot be opened.
backup-newer = { $path } was written by Beamslot { $program } (tables { $version }), this one knows tables up to { $known }
    .means = The backup is of a newer version.
    .hint = install the newer version and restore with that
backup-damaged = { $path } is not restored: { $how ->
        [no-zip] it is no whole backup ({ $why })
        [foreign] it is no backup of Beamslot
        [parts] its parts are not those of tables { $version }: { $parts }
        [length] { $part } has another length than when it was written
       *[content] { $part } is not as it was written
    }
    .means = The backup is not as it was written, or is none.
    .hint = take another backup
restore-failed = cannot restore into { $name }: { $why }; nothing was written
    .means = The new database could not be made.
restore-over-file = { $name } is there already; a backup is restored into a new database only
    .means = A backup is never restored over a database.
    .hint = name a new one
    .terminal = name one with --db
restore-over-tables = { $name } holds { $tables ->
        [one] one table
       *[other] { $tables } tables
    } already; a backup is restored into a new database only
    .means = A backup is never restored over a database.
    .hint = name a new one
    .terminal = name one with --db
history-unguarded = the database no longer guards { $table } against changes
    .means = The triggers that keep a table of history as it is are gone.
history-changed = what was written to { $table } on { $at } does not read as it was written
    .means = Rows of history are not those that were sealed.
history-foreign = { $rows ->
        [one] 1 row of { $table } was
       *[other] { $rows } rows of { $table } were
    } put in by another program
    .means = Rows of history that no unit of work sealed.

## Backups that a server keeps

backup-folder = { $folder } is no folder in which backups can be written
    .means = The folder for nightly backups is missing, is a file, or may not be written to.
    .hint = make it, or name another
backup-stays = { $file } is older than what is kept and cannot be removed: { $why }
    .means = In the log of a server that keeps backups.
backup-kept = Backed up into { $file }: { $rows } rows. Last hash of history: { $hash }
    .means = A backup was made because somebody asked for it.
backup-old = The last backup is of { $at }.
    .means = On the programme's status, where the last backup that a server kept is older than two days.
    .hint = See that the server runs with its folder for backups and that there is room in it.
backup-none = No backup was made yet.
    .means = On the programme's status, where the server is to keep backups and has made none.
    .hint = See that there is room in its folder for backups.
