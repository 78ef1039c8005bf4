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
       *[ended] { $person } can no longer sign in; open pages of { $person } have ended.
    }
    .means = What became of an account.
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
