"""Each answer of whether it was worth it, as messages."""

from collections.abc import Iterator
from math import isinf
from typing import Any

from tracker.commissioning.worth.plain import Estimated, OneLoom
from tracker.commissioning.worth.savings import Savings
from tracker.commissioning.worth.stepped import CannotTell, Stepped
from tracker.commissioning.worth.verdict import Verdict, Word
from tracker.errors import Message, message
from tracker.services.work.worth import EFFICIENCY, WIDTH, Measure, WorthReport
from tracker.words.formats import number

WHY = {
    CannotTell.NOTHING_AFTER: "worth-nothing-after", CannotTell.NOBODY_LEFT: "worth-nobody-left",
    CannotTell.NEW_ARTICLE: "worth-new-article", CannotTell.NOT_TIED: "worth-not-tied", CannotTell.TOO_FEW: "worth-too-few",
    CannotTell.CHOSEN: "worth-chosen", CannotTell.TOO_SHORT: "worth-too-short",
}  # fmt: skip
WORDS = {Word.LESS: "less", Word.MORE: "more", Word.NOT_YET: "not-yet"}
TIMES = {WIDTH: 1.0, EFFICIENCY: 100.0}
"""Figure as it is kept → as it is told: millimetres, percent."""


def verdicts(report: WorthReport) -> list[Message]:
    """A line a figure, in their order."""
    return [verdict_message(measure, report.terms.worth_knowing) for measure in report.measures]


def verdict_message(measure: Measure, worth_knowing: float) -> Message:
    verdict, what = measure.verdict, what_of(measure)
    if verdict.word is Word.CANNOT_TELL or verdict.whole is None:
        return message("worth-cannot-tell", what=what, why=message(WHY[verdict.why or CannotTell.TOO_FEW]))
    whole, word = verdict.whole, WORDS[verdict.word]
    if measure.counts:
        return message(
            "worth-stops-told", what=what, word=word, observed=round(whole.observed), expected=round(whole.expected),
            change=as_change(whole.told), looms=whole.converted, more=more_of(verdict, worth_knowing),
        )  # fmt: skip
    times = TIMES[measure.name]
    return message(
        "worth-measured-told", what=what, word=word, figure=measure.name, observed=round(whole.observed * times, 1),
        expected=round(whole.expected * times, 1), change=as_difference(whole.told, measure.name), looms=whole.converted,
        more=more_of(verdict, worth_knowing, periods=True),
    )  # fmt: skip


def what_of(measure: Measure) -> Message:
    if measure.counts:
        return message("worth-stops-of", cause=measure.cause)
    return message("worth-width") if measure.name == WIDTH else message("worth-efficiency")


def changes_of(measure: Measure) -> list[Message | None]:
    """What it is about; the change by the stepped comparison, by the looms each for itself, plainly before and after."""
    whole = measure.verdict.whole
    told = [whole and whole.told, measure.strata, measure.plain]
    says = as_change if measure.counts else lambda one: as_difference(one, measure.name)
    return [what_of(measure), *(one and says(one) for one in told)]


def in_percent(measure: Measure) -> Iterator[tuple[str, Estimated]]:
    """The change by the stepped comparison (`stepped`) and plainly before and after (`plain`), percent of what was to be
    expected; nothing where no comparison can be made."""
    whole = measure.verdict.whole
    if whole is None:
        return
    base = 1.0 if measure.counts else whole.expected
    for how, told in (("stepped", whole.told), ("plain", measure.plain)):
        if told:
            low, middle, high = (
                (one - 1) * 100 if measure.counts else one / base * 100 for one in (told.low, told.estimate, told.high)
            )
            yield how, Estimated(middle, low, high)


def loom_figures(measure: Measure, one: OneLoom, language: str = "en") -> tuple[str, str]:
    """Before and after: stops per 100,000 picks, millimetres, percent."""
    if measure.counts:
        both = one.before / one.picks_before * 1e5, one.after / one.picks_after * 1e5
    else:
        both = one.before * TIMES[measure.name], one.after * TIMES[measure.name]
    before, after = (number(figure, digits=1, language=language) for figure in both)
    return before, after


def loom_change(measure: Measure, one: OneLoom) -> Message:
    return as_change(one.told) if measure.counts else as_difference(one.told, measure.name)


def more_of(verdict: Verdict, worth_knowing: float, periods: bool = False) -> Message | None:
    """What is still needed; None where the verdict is sure."""
    if verdict.more_picks is None:
        return None
    share = round(worth_knowing * 100, 1)
    if verdict.more_picks == 0:
        return message("worth-would-have-shown", share=share)
    if periods:
        return message("worth-more-periods", periods=round(verdict.more_picks), share=share)
    return message("worth-more-picks", millions=round(verdict.more_picks / 1e6, 1), share=share)


def as_change(told: Estimated) -> Message:
    """A ratio as a change in percent."""
    low, middle, high = (round((ratio - 1) * 100, 1) for ratio in (told.low, told.estimate, told.high))
    return message("worth-change", middle=middle, low=low, high=high)


def as_difference(told: Estimated, name: str) -> Message:
    low, middle, high = (round(one * TIMES[name], 2) for one in (told.low, told.estimate, told.high))
    return message("worth-difference", middle=middle, low=low, high=high, figure=name)


def beside(report: WorthReport) -> Iterator[Message]:
    """What stands beside the verdicts: the weeks left out, the looms that cannot speak, the plain figures."""
    first = report.measures[0] if report.measures else None
    if first is None or first.verdict.whole is None:
        return
    whole = first.verdict.whole
    yield message("worth-order-decided", on=report.decided_on)
    told = as_change if first.counts else lambda one: as_difference(one, first.name)
    for code, one in (("latest", first.verdict.without_latest), ("deciding", first.verdict.without_deciding)):
        if isinstance(one, Stepped):
            yield message("worth-without-weeks", which=code, what=what_of(first), change=told(one.told))
    if whole.silent:
        yield message("worth-silent", looms=whole.silent)
    if first.plain:
        yield message("worth-plain", what=what_of(first), change=told(first.plain))


def savings_messages(report: WorthReport) -> Iterator[Message]:
    saved, currency = report.savings, report.terms.currency
    if saved is None:
        return
    yield message("worth-picks", looms=saved.looms, millions=round(saved.picks_per_month / 1e6, 1))
    yield from _amounts(saved, report.minutes_per_stop, currency)
    yield from _missing(saved)
    if saved.money:
        yield message("worth-measured", amount=_amount(saved.money), currency=currency)
    yield message("worth-claimed", claimed=saved.claimed, unclaimed=saved.unclaimed, currency=currency)
    if saved.cost:
        yield message("worth-payback", cost=saved.cost, currency=currency, **_payback(saved.payback))
    if report.terms.share_of_saving != 1:
        yield message("worth-taken-over-now", share=round(report.terms.share_of_saving * 100, 1))


def _amounts(saved: Savings, minutes: float, currency: str) -> Iterator[Message]:
    if saved.hours:
        yield message("worth-hours", hours=_amount(saved.hours), minutes=round(minutes, 2),
                      money=_amount(saved.hours_money), currency=currency)  # fmt: skip
    if saved.weft_kg:
        yield message("worth-weft", kg=_amount(saved.weft_kg), money=_amount(saved.weft_money), currency=currency)
    if saved.leno_kg is not None:
        yield message("worth-leno", kg=round(saved.leno_kg, 1))


def _missing(saved: Savings) -> Iterator[Message]:
    if saved.stops is None:
        yield message("worth-without-stops")
    elif saved.hours_money is None:
        yield message("worth-without-contribution")
    if saved.weft_money is None:
        yield message("worth-without-weft")


def _amount(one: Estimated | None) -> Message | None:
    return one and message("worth-amount", middle=_figure(one.estimate), low=_figure(one.low), high=_figure(one.high))


def _payback(months: Estimated | None) -> dict[str, Any]:
    if months is None:
        return {"middle": None, "low": None, "high": None}
    middle, low, high = (None if isinf(m) else round(m, 1) for m in (months.estimate, months.low, months.high))
    return {"middle": middle, "low": low, "high": high}


def _figure(amount: float) -> float:
    """Three figures at least, no more decimals than one."""
    return round(amount) if abs(amount) >= 100 else round(amount, 1)
