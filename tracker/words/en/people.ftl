### People: roles and what they may do, accounts, passwords.

## Roles, and what is allowed

word-viewer = viewer
    .means = Sees everything.
word-fitter = fitter
    .means = Records work.
word-electrician = electrician
    .means = Records work and signs electrical hold points.
word-purchasing = purchasing
    .means = Books in the stockroom.
word-planner = planner
    .means = Loads, plans, publishes, and does what fitters and purchasing do.
word-administrator = administrator
    .means = Looks after accounts and backups.
word-record-work = record work
    .means = What a role may do: work, settings, checks, stops.
word-sign-electrical-hold-points = sign electrical hold points
    .means = What a role may do: put a name to a step of another trade that nothing waives.
word-waive = waive a check or setting
    .means = What a role may do.
word-book-stock = book in the stockroom
    .means = What a role may do: receipts, counts, issues, reservations.
word-load-lists = load lists
    .means = What a role may do.
word-plan = plan
    .means = What a role may do: plan, publish, put off, change terms.
word-manage-people = manage people
    .means = What a role may do: accounts, roles, sessions.
word-back-up = back up
    .means = What a role may do: backup and restore.
not-allowed = { $who } may not { $what }: that is for { $roles }. Nothing was written.
    .means = None of the roles of who asks may do it.
    .hint = Ask an administrator for the role, or somebody who has it.

## Accounts

person-changed = { $how ->
        [added] { $person } has an account now, as { $roles }.
        [again] { $person } has the account again, as { $roles }.
        [roles] { $person } is { $roles } now; open pages of { $person } have ended.
        [password] The password of { $person } is changed; open pages of { $person } have ended.
        [provider] { $person } signs in by the mill's identity provider from now on, in the roles that it gives; open pages of { $person } have ended.
       *[ended] { $person } can no longer sign in; open pages of { $person } have ended.
    }
    .means = What became of an account.
own-password-wrong = this is not your password
    .means = The password before was wrong; after five times the session ends.
    .hint = type the one with which you signed in; after five wrong ones the session ends
own-password-by-provider = you sign in by the mill's identity provider, which keeps your password
    .means = Somebody without a password here wants to change it.
    .hint = change it there
person-known = { $person } has an account already
    .means = Of names that differ only by case or accents there is one account.
    .hint = choose another name
    .terminal = choose another name, or change it: `beamslot people roles` or `beamslot people password`
person-unknown = nobody has an account under the name { $person }
    .means = The account asked for is not there, or it ended.
    .terminal = `beamslot people list` shows them
person-name = a name has 1 to { $most } letters, digits, spaces and signs
    .means = What was given cannot be the name of an account.
role-unknown = { $role ->
        [none] an account has at least one role
       *[other] there is no role { $role }
    }; the roles are { $roles }
    .means = The roles given cannot be.
password-length = the password has { $characters } characters; it takes { $least } to { $most }
    .means = A password that was given is too short or too long.
    .hint = several words that do not belong together are easy to keep in mind
password-common = this password is among those that are tried first
    .means = The password is the name, or one of the commonest.
    .hint = choose another; several words that do not belong together are easy to keep in mind

## Signing in

signed-out = this session has ended
    .means = A screen is open whose session is over.
    .hint = Sign in again; what was typed here is still there as long as this page stays open.
sign-in-again = Sign in again
    .means = Leads to the page for signing in, in another tab.
session-over = Your session has ended. What you typed here is still here.
    .means = A bar over a page whose session is over.
signed-in-again = You are signed in. Close this tab and go on where you were.
    .means = What a tab says in which somebody signed in again.
sign-in-title = Sign in
    .means = Heading of the page for signing in.
sign-in-name = Name
    .means = Label of a field of that page.
sign-in-password = Password
    .means = Label of a field of that page.
sign-in-button = Sign in
    .means = The button of that page.
sign-in-wrong = Name or password is wrong.
    .means = Said in the same words whether there is such a name or not.
sign-in-wait = Name or password was wrong too often. The next try is possible in { $seconds ->
        [one] one second
       *[other] { $seconds } seconds
    }.
    .means = Somebody guesses, or has forgotten; the password was not looked at.
form-not-ours = This form did not come from here, or is too old.
    .means = A form without the token that this server put into it.
    .hint = Open the page anew.
sign-out-title = Sign out?
    .means = Heading of the page for signing out.
sign-out-button = Sign out
    .means = The button of that page; all open pages of the session end.
sign-out-back = Back to the screens
    .means = Leaves the page without signing out.

## Beyond this machine

share-without-people = nobody has an account yet, and beyond this machine nothing is shown without signing in
    .means = The screens were to be served in the network before there are accounts.
    .hint = give somebody an account first
    .terminal = `beamslot people add NAME --role planner` gives one
share-unprotected = without a certificate passwords and everything else travel through the network unprotected: whoever listens there can read and use them
    .means = The screens were to be served in the network without encryption.
    .terminal = give --certificate and --key, put it --behind-proxy, or accept it with --plain
certificate-and-key = a certificate and its key are given together
    .means = Only one of the two was given.
    .terminal = --certificate FILE --key FILE
certificate-missing = there is no file { $file }
    .means = The file of the certificate or of its key is not there.
certificate-not-of-key = the certificate { $certificate } does not fit the key { $key }
    .means = The two files do not belong together.
    .hint = give the key with which that certificate was asked for
certificate-unusable = { $certificate } and { $key } are no certificate and key that can be used
    .means = One of the two files is no PEM file, or the key has a password.
    .hint = both are PEM files, the key without a password
proxy-no-address = { $proxy } is no address of a proxy; it is one such as 127.0.0.1, from which the proxy asks
    .means = What was given for the proxy is a name, or nothing that could be an address.
proxy-without-name = behind a proxy the screens have to know under which name they are asked
    .means = No name was told.
    .terminal = --name planning.mill.example

session-ended = The session of { $person } has ended; its pages close.
    .means = An administrator has signed somebody out.
session-over-already = this session is over already
    .means = A session is ended that ended meanwhile.
    .hint = there is nothing to do

## Who did what

deed-row = { $table ->
        [reservations] parts held for loom
       *[other] { $table }
    } { $key }{ $how ->
        [added] {" added"}
        [retired] {" has ended"}
       *[other] {""}
    }{ $fields ->
        [none] {""}
       *[other] : { $fields }
    }
    .means = A row of a table was added, changed or has ended.
deed-field = { $field } { $old ->
        [none] { $new }
       *[other] { $old } → { $new }
    }
    .means = What a value was and what it is since.
deed-none = none
    .means = A value that is no longer there.
deed-stock = stock: { $kind } of { OWN($quantity) } { $part }{ $loom ->
        [none] {""}
       *[other] , loom { $loom }
    }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
    .means = An entry in the stockroom's book.
deed-stage = loom { $loom } { $stage } from { $at } on{ $why ->
        [none] {""}
       *[other] : { $why }
    }
    .means = A stage of a loom was recorded.
deed-plan = { $how ->
        [published] plan { $number } published
        [scenario] plan { $number } made for the scenario { $scenario }
       *[made] plan { $number } made
    }
    .means = A plan was made.
deed-rehearsal = plan { $plan } rehearsed
    .means = A rehearsal was kept.
deed-job = began: { $kind ->
        [scenario] a plan of a scenario
        [rehearsal] a rehearsal
        [reading] reading lists
       *[plan] a plan
    }
    .means = Long work that somebody began.
deed-backup = backed up into { $file }
    .means = A server kept a backup.
deed-scenario-aside = scenario { $scenario } { $aside ->
        [yes] set aside
       *[no] listed again
    }
    .means = A scenario is shown among the others no more, or is again.
deed-load = { $files ->
        [none] { $scenario ->
            [none] entered by hand
           *[other] put scenario { $scenario } in force
        }
       *[other] loaded { $files }
    }
    .means = A load, or an entry or a scenario in force that is written like one.
deed-method = version { $version } of the method in force
    .means = A method was loaded.
deed-alarm = loom { $loom }: alarm of { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } put to rest: { $why }
    .means = An alarm was looked at.
deed-photo = loom { $loom }: photo of { $about ->
        [none] the whole conversion
       *[other] { $about }
    }: { $remark }
    .means = A photo was told with a remark.
deed-withdrawn = loom { $loom }: a row of { $table } withdrawn: { $why }
    .means = Something that was recorded by mistake counts no more.
deed-answer = answered { $question }: { $answer }
    .means = A doubt about a column was answered.
deed-person = { $how ->
        [added] account of { $person } added, as { $roles }
        [roles] { $person } is { $roles } now
        [password] password of { $person } changed
        [provider] sign-in of { $person } left to the identity provider
        [token] token for { $roles } given: { $person }
        [token-ended] token { $person } withdrawn
        [session-ended] session of { $person } ended
       *[ended] account of { $person } ended
    }
    .means = An account was added or changed.
deed-door = { $what ->
        [signed-in] signed in from { $address }{ $by ->
            [provider] {" "}by the identity provider, as { $roles }
           *[none] {""}
        }
        [signed-out] signed out
        [own-password] changed the own password
        [own-password-refused] wanted to change the own password with a wrong one before
       *[sign-in-refused] { $why ->
            [provider-silent] the identity provider did not answer
            [provider-state] an answer of the identity provider that was not asked for, or too late
            [provider-refused] refused by the identity provider
            [provider-token] an answer of the identity provider that does not hold
            [provider-role] has no role by the identity provider
            [provider-name] is known to the identity provider under a name that is in use
            [provider-ended] came by the identity provider with an account that has ended
           *[none] wrong name or password
        } from { $address }
    }
    .means = Something happened at the sign-in.
every-role = every role
    .means = Who acts at the terminal, or on screens without accounts.
deeds-none = Nobody has done anything that fits.
    .means = The account of who did what has no line of what was asked for.
deeds-cut = These are the newest { $most } lines.
    .means = There are more than a workbook takes.
history-whole = History reads as it was written: { $seals } seals{ $hash ->
        [none] {""}
       *[other] , the last { $hash }
    }.{ $known_at ->
        [none] {""}
       *[other] {" "}What stood on { $known_at }, when the hash asked for was the last, stands unchanged.
    }
    .means = Nothing was changed or removed behind the program's back.
audit-touched = history was touched: { $touched }
    .means = Rows of history were changed, removed or put in behind the program's back.
    .hint = compare it with a backup
hash-unknown = { $hash } is none of the seals of this history: it was written anew since, or the hash is of another programme
    .means = The hash from a backup is not found.
    .hint = compare it with that backup
