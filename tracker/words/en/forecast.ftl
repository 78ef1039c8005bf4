### Warps: why a loom has no forecast.

no-warp-on-loom = no warp is listed as being on the loom (sequence 0)
    .means = The list of warps does not say what is on the loom.
warp-without-date = the warp left has no date (read at)
    .means = A reading of the warp left without its moment.
warp-never-read = the warp left was never read
    .means = Nobody has read what is left of the warp.
warp-value = { $loom ->
        [none] {""}
       *[other] loom { $loom },{" "}
    }warp { $warp }, article { $article }: { $what }
    .means = A value of a warp or its article with which no rate can be worked out.
set-length-missing = a warp that follows needs a set length
    .means = A following warp without its length.
    .hint = give it in metres
set-length-short = set length { QUANTITY($length) } m must be longer than the tail of { QUANTITY($tail) } m
    .means = A warp that is no longer than what is never woven of it.
warp-left-negative = warp left { QUANTITY($left) } m must be at least 0 m
    .means = A reading below nothing.
article-unlisted = the article is not in the list of articles
    .means = A warp of an article that is not listed.
    .hint = add it or correct the warp
take-up-impossible = take-up { QUANTITY($percent) } % must be at least 0 % and below 100 %
    .means = A take-up that no cloth has.
take-up-basis-unknown = take-up basis '{ $basis }' must be crimp or contraction
    .means = It is not said against what the take-up is measured.
rate-value-missing = no { $what ->
        [speed] speed
        [efficiency] efficiency
       *[pick-density] pick density
    } given with the reading, the warp or the loom
    .means = Without this value no rate can be worked out.
    .hint = give one of them
rate-value-impossible = { $what ->
        [speed] speed { QUANTITY($value) } picks/min must be above 0 picks/min
        [efficiency] efficiency { QUANTITY($value) } must be above 0 and at most 1
       *[pick-density] pick density { QUANTITY($value) } picks/cm must be above 0 picks/cm
    }
    .means = A value with which no rate can be worked out.

## What the forecast came to

windows-found = { $windows ->
        [one] 1 window
       *[other] { $windows } windows
    } of { $looms ->
        [one] 1 loom
       *[other] { $looms } looms
    } up to { $until }.
    .means = How many beam-outs and standing times lie within the horizon.
readings-old = { $many ->
        [one] 1 loom has
       *[other] { $many } looms have
    } a reading older than three days; read the warp left again: { $looms }.
    .means = Looms whose warp was read too long ago.
warps-overdue = { $many ->
        [one] 1 loom should have run out by its
       *[other] { $many } looms should have run out by their
    } reading; look whether a new warp is in: { $looms }.
    .means = Looms whose warp should be gone by now.
no-forecast = loom { $loom }: no forecast, { $why }
    .means = Why a loom cannot be forecast.
no-forecast-for-more = no forecast for { $many ->
        [one] 1 more loom
       *[other] { $many } more looms
    }: { $looms }
    .means = The tail of the looms that cannot be forecast.
no-window = loom { $loom }: no window, { $why }
    .means = Why a loom has no window within the horizon.
no-window-for-more = no window for { $many ->
        [one] 1 more loom
       *[other] { $many } more looms
    }: { $looms }
    .means = The tail of the looms that have no window.
reading-ahead = its warp was read on { $read }, later than { $as_of }, and lasts past the horizon; correct the day if it is a slip
    .means = A reading that lies ahead of the moment asked about.
nothing-in-horizon = neither a beam-out nor a standing time falls within the horizon
    .means = A loom weaves on past the horizon.
backtest-nothing = { $beam_outs } beam-outs in the readings, but no reading in time to look back from.
    .means = Past forecasts cannot be held against what happened.
backtest-share = { $beam_outs } beam-outs in the readings; { NUMBER($share, style: "percent") } of the forecasts had them between P10 and P90 (80 % is what they promise).
    .means = How often past beam-outs fell within their forecasts.
backtest-left-out = { $many } of them are left out: used at another rate than the article now on the loom.
    .means = Beam-outs that the forecast could not have known.
