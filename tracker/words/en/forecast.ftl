### Warps: why a loom has no forecast.

no-warp-on-loom = no warp is listed as being on the loom (sequence 0)
    .means = The list of warps does not say what is on the loom.
warp-without-date = the warp left has no date (read at)
    .means = A reading of the warp left without its moment.
warp-never-read = the warp left was never read
    .means = Nobody has read what is left of the warp.
warp-value = loom { $loom }, warp { $warp }, article { $article }: { $what }
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
