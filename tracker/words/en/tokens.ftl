### Tokens for programs and for the calendars of phones, and what a calendar says.

word-read = read
    .means = What a token is for: to read.
word-post = read and post
    .means = What a token is for: to read, and post readings, set values and stops.
word-calendar = a crew's calendar
    .means = What a token is for: the bookings of one crew.
token-given = { $name } has a token: { $may }, until { $until }. It is shown this once:
    .means = A token was given.
token-shown-so = { $token } (below { $path }, as the header `Authorization: Bearer TOKEN`)
    .means = The token of a program, and how it is shown.
token-calendar-at = { $path } (put the address of the screens before it, and subscribe to that in the phone)
    .means = The address of a crew's calendar, with its token in it.
token-ended = The token { $number }, { $name }, opens nothing any more.
    .means = A token was withdrawn.
token-unknown = there is no token { $number } that could be withdrawn
    .means = No token has that number, or it was withdrawn already.
    .terminal = `beamslot people tokens` shows them
token-may = { $may } is nothing that a token is for; it may be { $known }
    .means = What was given is no kind of token.
token-days = a token lasts 1 to { $most } days, not { $days }
    .means = What was given for its days cannot be.
token-crew = a token for { $may } { $may ->
        [calendar] names the crew
       *[other] names no crew
    }
    .means = The crew and the kind of token do not go together.
    .terminal = `--may calendar --crew CREW`
token-crew-unknown = there is no crew { $crew }; the crews are { $crews }
    .means = The crew is in no sheet.
calendar-of = Bookings of { $crew }
    .means = The name of a calendar.
calendar-title = Convert loom { $loom }
    .means = The title of an entry in a crew's calendar.
calendar-about = { $machine_type ->
        [none] {""}
       *[other] { $machine_type }.{" "}
    }{ $turn ->
        [1] {""}
       *[other] Turn { $turn } of the crew at this loom.{" "}
    }Plan { $plan }{ $firm ->
        [yes] , firm.
       *[no] ; the next plan may move it.
    }
    .means = What stands below the title of an entry in a crew's calendar.
calendar-none = There is no calendar here, or its token has ended.
    .means = The address of a calendar opens nothing.
    .hint = Ask an administrator for a new one.

## The interface for programs

token-needed = a token has to be shown that opens this: Authorization: Bearer TOKEN
    .means = A program showed no token, or one that has ended, was withdrawn, or is for something else.
    .hint = an administrator gives one
token-reads-only = the token { $name } may read and not post
    .means = A program posted by a token that is only for reading.
    .hint = ask an administrator for one that may post
request-unreadable = { $what } cannot be read: { $why }
    .means = A parameter, a header or the body of a request is missing or of a wrong kind.
moment-unreadable = { $text } is no moment like 2027-01-04 or 2027-01-04T06:00
    .means = A program asked for a moment that is none.
post-table = nothing is posted to { $table }; there are { $tables }
    .means = Rows of a table that programs may not add to.
post-key = the key of a post has 1 to { $most } signs
    .means = The key by which a program knows its post cannot be.
post-key-used = something else was posted under the key { $key }
    .means = A program used a key again for another post.
    .hint = give each post a key of its own
post-rows = { $rows } rows in one post; it takes 1 to { $most }
    .means = A post is empty or too large.
post-field = row { $row } has { $field }, which is no field of it; the fields are { $fields }
    .means = A field of a posted row is unknown.
post-too-large = a post has to say its length and has at most { $bytes } bytes
    .means = The body of a request is too large.
