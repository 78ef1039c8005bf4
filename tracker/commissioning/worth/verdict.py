"""The word that is said of a stepped comparison, and whether it stands without the weeks by which looms may have been chosen
(MODEL.md 5.4)."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

import numpy as np

from tracker.commissioning.worth.panel import Panel
from tracker.commissioning.worth.plain import as_log, picks_still_needed
from tracker.commissioning.worth.stepped import CannotTell, Stepped, SteppedEstimate, stepped

LATEST_WEEKS = 4
"""Weeks before a conversion, and before the day on which the order was decided, by which looms may have been chosen."""


class Word(StrEnum):
    LESS = "less"
    MORE = "more"
    NOT_YET = "not yet"
    """No difference to be seen."""
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True, slots=True)
class Verdict:
    word: Word
    why: CannotTell | None
    """Where it cannot be told."""
    whole: Stepped | None
    """All weeks."""
    without_latest: Stepped | CannotTell | None
    """Without the four weeks before each conversion; None where it was not asked."""
    without_deciding: Stepped | CannotTell | None
    """Without the four weeks before the order was decided; None where nobody knows when, or none of them was loaded."""
    more_picks: float | None
    """Still to be woven by converted looms (periods, for what is measured) until what is worth knowing would be seen; 0 where
    it would have been seen."""


def judged(panel: Panel, counts: bool, worth_knowing: float, decided_on: date | None) -> Verdict:
    """`worth_knowing`: the smallest change that matters, as a share of what was expected."""
    whole = stepped(panel, counts)
    if isinstance(whole, CannotTell):
        return Verdict(Word.CANNOT_TELL, whole, None, None, None, None)
    latest = stepped(panel.only(~_latest(panel)), counts, by_weeks=False)
    deciding = _deciding(panel, decided_on)
    decided = stepped(panel.only(~deciding), counts, by_weeks=False) if deciding.any() else None
    word, why = _word(whole, [one for one in (latest, decided) if one is not None], counts)
    told = [one for one in (whole, latest, decided) if isinstance(one, Stepped)]
    more = _more(whole, told, counts, worth_knowing) if word is Word.NOT_YET else None
    return Verdict(word, why, whole, latest, decided, more)


def word_of(told: SteppedEstimate, counts: bool) -> Word:
    nothing = 1.0 if counts else 0.0
    return Word.LESS if told.high < nothing else Word.MORE if told.low > nothing else Word.NOT_YET


def _word(whole: Stepped, others: list[Stepped | CannotTell], counts: bool) -> tuple[Word, CannotTell | None]:
    """A verdict stands where all agree. Where a comparison of fewer weeks is only less sure, there is none yet; where it says
    something else than all weeks do, or the looms that are left cannot say, nothing can be told."""
    told = [one.told for one in others if isinstance(one, Stepped)]
    word = word_of(whole.told, counts)
    words = {word_of(one, counts) for one in told}
    if any(_differ(whole.told, one, same=word_of(one, counts) is word) for one in told):
        return Word.CANNOT_TELL, CannotTell.CHOSEN
    if word is Word.NOT_YET or (words == {word} and len(told) == len(others)):
        return word, None
    return (Word.CANNOT_TELL, CannotTell.TOO_SHORT) if len(told) < len(others) else (Word.NOT_YET, None)


def _differ(whole: SteppedEstimate, one: SteppedEstimate, same: bool) -> bool:
    """Of one word: where their intervals have nothing in common. Of two: where the estimate lies outside all weeks' interval."""
    if same:
        return one.low > whole.high or one.high < whole.low
    return not whole.low <= one.estimate <= whole.high


def _latest(panel: Panel) -> np.ndarray:
    return panel.before & (panel.to_conversion < LATEST_WEEKS)


def _deciding(panel: Panel, decided_on: date | None) -> np.ndarray:
    if decided_on is None:
        return np.zeros(len(panel.loom), dtype=bool)
    day = decided_on.toordinal()
    return panel.before & (panel.week < day) & (panel.week >= day - 7 * LATEST_WEEKS)


def _more(whole: Stepped, told: list[Stepped], counts: bool, worth_knowing: float) -> float | None:
    """By the least sure of the comparisons, since all must agree; None where nothing was expected."""
    share = as_log(worth_knowing) if counts else worth_knowing * abs(whole.expected)
    se = max(one.told.se for one in told)
    return picks_still_needed(whole.picks, se, share) if share else None
