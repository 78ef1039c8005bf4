"""The stepped comparison and its word, on programmes made up with the truth known."""

from dataclasses import replace

import numpy as np
import pytest
from made_programmes import programme

from tracker.commissioning.worth.panel import AFTER, BEFORE, Panel
from tracker.commissioning.worth.stepped import CannotTell, Stepped, stepped
from tracker.commissioning.worth.verdict import Word, judged
from tracker.domain.mill import LoomKey

RATES = np.array([10.0, 20, 30, 40, 50, 60])


def exact(ratio: float, looms: int = 6, weeks: int = 8, converted: int = 2) -> Panel:
    """Looms of fixed rates, weeks that rise by a tenth each, no chance; the first `converted` looms from week 4 on at `ratio`."""
    loom, week = (part.ravel() for part in np.meshgrid(np.arange(looms), np.arange(weeks), indexing="ij"))
    after = (loom < converted) & (week >= 4)
    value = RATES[loom % 6] * 1.1**week * np.where(after, ratio, 1)
    zeros = np.zeros(len(loom), dtype=int)
    return Panel(
        tuple(LoomKey("H", str(i)) for i in range(looms)), ("A",), loom, week, zeros, 740_000 + 7 * week, value,
        np.full(len(loom), 1e5), np.where(after, AFTER, BEFORE), np.where(after, week - 4, -1),
        np.where(loom < converted, 3.5 - week, np.inf),
    )  # fmt: skip


def compared(panel: Panel, counts: bool = True) -> Stepped:
    found = stepped(panel, counts)
    assert isinstance(found, Stepped), found
    return found


@pytest.mark.parametrize("ratio", [0.7, 1.0, 1.3])
def test_a_season_does_not_bend_it(ratio):
    """Without chance the expectation is exact: seen ÷ expected is the ratio put in. Expected of looms 0 and 1 in weeks 4 to 7:
    (10 + 20) × (1.1⁴ + 1.1⁵ + 1.1⁶ + 1.1⁷) = 30 × 6.7948881 = 203.8466."""
    found = compared(exact(ratio))
    assert found.told.estimate == pytest.approx(ratio, rel=1e-6)
    assert found.expected == pytest.approx(203.8466, abs=0.001)


def test_what_is_measured_is_compared_by_difference():
    """Widths of 60 + the loom's number + the week, 5 less after: the difference is −5."""
    panel = exact(1.0)
    widths = 60.0 + panel.loom + (panel.week - 740_000) / 7 - 5.0 * panel.after
    assert compared(replace(panel, value=widths), counts=False).told.estimate == pytest.approx(-5)


def test_a_loom_without_a_stop_cannot_speak_and_is_counted():
    panel = exact(0.8)
    found = compared(replace(panel, value=np.where(panel.loom == 0, 0.0, panel.value)))
    assert found.silent == 1 and found.told.estimate == pytest.approx(0.8, rel=1e-6)


def test_a_hall_converted_whole_cannot_be_told():
    assert stepped(exact(0.8, converted=4)) is CannotTell.NOBODY_LEFT


def test_an_article_first_woven_at_conversion_cannot_be_told():
    panel = exact(0.8)
    assert stepped(replace(panel, articles=("A", "B"), article=panel.after.astype(int))) is CannotTell.NEW_ARTICLE


def test_nothing_after_the_conversions_cannot_be_told():
    panel = exact(0.8)
    assert stepped(panel.only(panel.before)) is CannotTell.NOTHING_AFTER


def test_the_word_is_given_where_all_comparisons_agree():
    """Twenty-four looms, a fifth fewer stops, nothing but Poisson's chance."""
    made = programme(3, looms=24, weeks=26, last=22, overdispersion=1.0)
    verdict = judged(made.panel, True, 0.1, made.decided_at.date())
    assert verdict.word is Word.LESS and verdict.whole is not None
    assert verdict.whole.told.low < 0.8 < verdict.whole.told.high


def test_no_difference_says_how_much_more_is_needed():
    made = programme(5, looms=12, weeks=26, last=22, ratio=1.0, halls=1)
    verdict = judged(made.panel, True, 0.1, None)
    assert verdict.word is Word.NOT_YET and verdict.more_picks is not None and verdict.more_picks > 0
    assert judged(made.panel, True, 0.9, None).more_picks == 0


def test_looms_chosen_by_their_latest_stops_are_found_out():
    """Nothing changes; each of the first six looms has three times its stops in the four weeks before its conversion."""
    panel = exact(1.0, looms=12, weeks=14, converted=0)
    mine = panel.loom < 6
    at = np.where(mine, 9, 99)
    week = (panel.week - 740_000) // 7
    after = week > at
    rng = np.random.default_rng(1)
    high = np.where(mine & (week < at) & (week >= at - 4), 3.0, 1.0)
    panel = replace(
        panel, value=rng.poisson(panel.value * high).astype(float), phase=np.where(after, AFTER, BEFORE),
        since=np.where(after, week - at - 1, -1), to_conversion=np.where(mine, at - week - 0.5, np.inf),
    )  # fmt: skip
    verdict = judged(panel.only(week != at), True, 0.1, None)
    assert (verdict.word, verdict.why) == (Word.CANNOT_TELL, CannotTell.CHOSEN)
