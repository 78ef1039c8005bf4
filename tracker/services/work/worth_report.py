"""The report of two pages: what `worth` found, ready to be laid out."""

from collections.abc import Iterable, Iterator
from pathlib import Path

from tracker.commissioning.worth.plain import Estimated
from tracker.errors import Message, message
from tracker.export.worth_report import Bar, WorthPages, write_worth_report
from tracker.services.work.worth import Measure, WorthReport
from tracker.services.work.worth_says import (
    beside,
    loom_change,
    loom_figures,
    savings_messages,
    verdicts,
    what_of,
)
from tracker.words import Speaker
from tracker.words.formats import moment


def write_report(path: Path, report: WorthReport) -> None:
    """Write it as .pdf."""
    write_worth_report(path, pages_of(report))


def pages_of(report: WorthReport) -> WorthPages:
    speaker, terms = Speaker(zone=report.terms.zone), report.terms
    first = report.measures[0] if report.measures else None
    return WorthPages(
        speaker.say(message("worth-title", programme=terms.programme)), moment(report.as_of, terms.zone),
        _sentences(speaker, verdicts(report)),
        [bar for one in report.measures for bar in _bars(one, speaker)],
        _sentences(speaker, savings_messages(report)), list(_money(report, speaker)), terms.currency,
        list(_weeks(first, speaker)) if first else [], _sentences(speaker, beside(report)),
        [[one.key.hall, one.key.loom, one.article, *loom_figures(first, one), speaker.say(loom_change(first, one))]
         for one in first.looms] if first else [],
        speaker.say(message("worth-looms-figure", figure=first.name if first else "stops")),
    )  # fmt: skip


def _sentences(speaker: Speaker, messages: Iterable[Message]) -> list[str]:
    """Each beginning with a capital."""
    return [said[:1].upper() + said[1:] for said in map(speaker.say, messages)]


def _bars(measure: Measure, speaker: Speaker) -> Iterator[Bar]:
    """In percent, of a figure: as compared, and plainly."""
    whole, label = measure.verdict.whole, speaker.say(what_of(measure))
    if whole is None:
        return
    base = 1.0 if measure.counts else whole.expected
    yield _percent(label, whole.told, measure.counts, base)
    if measure.plain:
        plainly = speaker.say(message("worth-plainly", what=what_of(measure)))
        yield _percent(plainly, measure.plain, measure.counts, base, marked=True)


def _percent(label: str, told: Estimated, counts: bool, base: float, marked: bool = False) -> Bar:
    low, middle, high = (
        (one - 1) * 100 if counts else one / base * 100 for one in (told.low, told.estimate, told.high)
    )
    return Bar(label, middle, low, high, marked)


def _weeks(measure: Measure, speaker: Speaker) -> Iterator[Bar]:
    whole = measure.verdict.whole
    for one in whole.since if whole and measure.counts else ():
        yield _percent(
            speaker.say(message("worth-week", first=one.first, last=one.last if one.last > one.first else None)),
            one,
            True,
            1.0,
        )


def _money(report: WorthReport, speaker: Speaker) -> Iterator[Bar]:
    saved = report.savings
    if saved is None:
        return
    if saved.money:
        yield Bar(
            speaker.say(message("worth-bar", which="measured")), saved.money.estimate, saved.money.low, saved.money.high
        )
    yield Bar(speaker.say(message("worth-bar", which="claimed")), saved.claimed, saved.claimed, saved.claimed, True)
