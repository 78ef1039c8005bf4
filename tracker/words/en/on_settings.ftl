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
