### Settings over time, on the screen Settings and on that of a loom.

settings-of-loom = Settings over time
    .means = Heading, field or button of settings.
settings-no-series = No setting has been read of this loom yet.
    .means = Heading, field or button of settings.
settings-none-to-record = Nothing has been set here yet; the first values are told on its card.
    .means = Heading, field or button of settings.
settings-record = Record a visit or a value
    .means = Heading, field or button of settings.
settings-record-it = Record it
    .means = Heading, field or button of settings.
settings-value = Value
    .means = Heading, field or button of settings.
settings-why = Why it was read
    .means = Heading, field or button of settings.
settings-seen-why = What there is to say to them
    .means = Heading, field or button of settings.
settings-seen-it = They were seen
    .means = Heading, field or button of settings.
settings-setting = Setting
    .means = Heading, field or button of settings.
settings-side = Side
    .means = Heading, field or button of settings.
settings-found = Found
    .means = Heading, field or button of settings.
settings-set = Set
    .means = Heading, field or button of settings.
settings-now = Now
    .means = Heading, field or button of settings.
settings-read-at = Read
    .means = Heading, field or button of settings.
settings-target = Target
    .means = Heading, field or button of settings.
settings-low = Low
    .means = Heading, field or button of settings.
settings-high = High
    .means = Heading, field or button of settings.
settings-apart = Left less right
    .means = Heading, field or button of settings.
settings-seen = Alarms of loom { $loom } were seen
    .means = Button: alarms stay quiet until their value changes.
settings-why-says = { $why ->
        [found] found, before the conversion
        [set] set by the conversion
        [adjusted] adjusted since
        [visit] at a follow-up visit
       *[other] read out in passing
    }
    .means = Why a setting was read.
screen-settings = Settings
    .means = Heading, field or button of the screen Settings.
settings-alarms = Alarms
    .means = Heading, field or button of the screen Settings.
settings-visits-due = Visits due
    .means = Heading, field or button of the screen Settings.
settings-known = Settings read
    .means = Heading, field or button of the screen Settings.
settings-kind = Kind of alarm
    .means = Heading, field or button of the screen Settings.
settings-all-kinds = all kinds
    .means = Heading, field or button of the screen Settings.
settings-no-alarm = ✓ No alarm.
    .means = Heading, field or button of the screen Settings.
settings-visits = Follow-up visits
    .means = Heading, field or button of the screen Settings.
settings-no-visit = No visit is open.
    .means = Heading, field or button of the screen Settings.
settings-after = Days after sign-off
    .means = Heading, field or button of the screen Settings.
settings-due-on = Due
    .means = Heading, field or button of the screen Settings.
settings-state = State
    .means = Heading, field or button of the screen Settings.
settings-over-time = One setting over time
    .means = Heading, field or button of the screen Settings.
settings-which = Which
    .means = Heading, field or button of the screen Settings.
settings-article = Article
    .means = Heading, field or button of the screen Settings.
settings-all = All settings
    .means = Heading, field or button of the screen Settings.
settings-taught = What signed-off looms taught
    .means = Heading, field or button of the screen Settings.
settings-nothing-taught = Nothing yet: it takes five signed-off looms of a type.
    .means = Heading, field or button of the screen Settings.
settings-family = Article family
    .means = Heading, field or button of the screen Settings.
settings-looms = Looms
    .means = Heading, field or button of the screen Settings.
settings-median = In the middle
    .means = Heading, field or button of the screen Settings.
settings-spread = Spread
    .means = Heading, field or button of the screen Settings.
settings-proposed = Proposed
    .means = Heading, field or button of the screen Settings.
settings-take-over = Take it over
    .means = Heading, field or button of the screen Settings.
settings-on-looms = { $looms ->
        [one] on { $looms } loom
       *[other] on { $looms } looms
    }
    .means = How many looms have alarms.
settings-overdue = { $many } overdue
    .means = How many visits are overdue.
settings-method = method version { $version }
    .means = By which method.
settings-of-kind = { $kind }: { $many }
    .means = Heading of the alarms of one kind.
settings-visit-state = { $state ->
        [overdue] ■ overdue
        [due] ▲ due
       *[other] ○ to come
    }
    .means = How a visit stands.
settings-chart = Line: { $setting } over time, with its limits
    .means = What a picture shows, for who hears it.
settings-take-over-asks = The setpoint of { $setting }{ $side ->
        [none] {""}
       *[other] {" "}({ $side })
    } becomes { $proposed } instead of { $target } for { $type }, its limits move with it: a new version of the method.
    .means = What taking over does; asked before.
word-outside = outside
    .means = A kind of alarm of a setting.
word-moved = moved
    .means = A kind of alarm of a setting.
word-drifting = drifting
    .means = A kind of alarm of a setting.
word-read-again = read again
    .means = A kind of alarm of a setting.
word-rising-or-falling = rising or falling
    .means = A kind of alarm of a setting.
word-out-of-family = out of family
    .means = A kind of alarm of a setting.
word-family-unsteady = family unsteady
    .means = A kind of alarm of a setting.
