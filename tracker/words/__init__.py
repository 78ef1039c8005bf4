"""The words of every message, by language, and the one place that writes numbers, days and lists.

Logic never writes a sentence that a user reads: it makes a `Message` (tracker/errors) of a code and plain parameters, and
whoever stands at the edge says it:

    speaker = Speaker("en", terms.zone, Edge.TERMINAL)
    speaker.say(message("loom-unknown", loom="A-07", halls=("H1", "H2")))
    speaker.advice(message(...))          # what to do, in the words of that edge; empty where there is none

The catalogue is a folder a language (`en/`), a file a kind (`floor.ftl`, `reading.ftl`, …) in the Fluent format
(projectfluent.org). A code is declared once, in the file of its kind, with

    loom-unknown = there is no loom { $loom } in { $halls }
        .means = The loom number asked for stands in no hall, or not in the hall named.
        .hint = Look for it under its hall.                       (what to do, wherever the reader sits)
        .terminal = `beamslot scope` lists the looms.             (what to do at a terminal, instead of the hint)
        .screen = Choose it from the list.                        (what to do at a screen, instead of the hint)

`.means` stands in English only: it says what the code means to whoever works with the JSON. A parameter is written by
its kind: a day as `Mon 4 Jan 2027`, a moment with its time in the mill's zone, a number with its groups (decimals:
`{ NUMBER($metres, maximumFractionDigits: 1) }`), money by `{ MONEY($amount, $currency) }`, what is counted or
weighed by `{ QUANTITY($quantity, $unit) }`, a figure as the mill has it by `{ OWN($value) }` (`1998`, without groups),
a list as `001, 002 and 3 more`, a nested message by its own words, `None` as the word `none`. Choices and plurals stand
on lines of their own:

    looms-found = { $looms ->
            [one] one loom
           *[other] { $looms } looms
        } found{ $hall ->
            [none] {""}
           *[other] {" in "}{ $hall }
        }

Advice that begins small carries the sentence on after a semicolon; with a capital it is a sentence of its own.

A code in use without words, words without use and a code without its meaning fail the tests.
"""

from tracker.words.catalogue import LANGUAGES, codes
from tracker.words.speaker import ENGLISH, Edge, Speaker

__all__ = ["ENGLISH", "LANGUAGES", "Edge", "Speaker", "codes"]
