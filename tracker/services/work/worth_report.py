"""The report of two pages: what `worth` found, ready to be laid out."""

from collections.abc import Iterable, Iterator
from pathlib import Path

from tracker.errors import Message, message
from tracker.export.worth_report import Bar, WorthPages, worth_pdf, write_worth_report
from tracker.services.work.worth import Measure, WorthReport
from tracker.services.work.worth_says import (
    beside,
    in_percent,
    loom_change,
    loom_figures,
    savings_messages,
    verdicts,
    what_of,
)
from tracker.words import Speaker
from tracker.words.formats import moment


def write_report(path: Path, report: WorthReport, language: str = "en") -> None:
    """Write it as .pdf."""
    write_worth_report(path, pages_of(report, language))


def report_file(report: WorthReport, language: str = "en") -> bytes:
    """The same, for a download."""
    return worth_pdf(pages_of(report, language))


def pages_of(report: WorthReport, language: str = "en") -> WorthPages:
    speaker, terms = Speaker(language, report.terms.zone), report.terms
    first = report.measures[0] if report.measures else None
    return WorthPages(
        speaker.say(message("worth-title", programme=terms.programme)), moment(report.as_of, terms.zone, language),
        _sentences(speaker, verdicts(report)),
        [bar for one in report.measures for bar in _bars(one, speaker)],
        _sentences(speaker, savings_messages(report)), list(_money(report, speaker)), terms.currency,
        list(_weeks(first, speaker)) if first else [], _sentences(speaker, beside(report)),
        [[one.key.hall, one.key.loom, one.article, *loom_figures(first, one, language), speaker.say(loom_change(first, one))]
         for one in first.looms] if first else [],
        speaker.say(message("worth-looms-figure", figure=first.name if first else "stops")), language,
    )  # fmt: skip


def _sentences(speaker: Speaker, messages: Iterable[Message]) -> list[str]:
    """Each beginning with a capital."""
    return [said[:1].upper() + said[1:] for said in map(speaker.say, messages)]


def _bars(measure: Measure, speaker: Speaker) -> Iterator[Bar]:
    """In percent, of a figure: as compared, and plainly."""
    what = what_of(measure)
    labels = {"stepped": what, "plain": message("worth-plainly", what=what)}
    for how, told in in_percent(measure):
        yield Bar(speaker.say(labels[how]), told.estimate, told.low, told.high, how == "plain")


def _weeks(measure: Measure, speaker: Speaker) -> Iterator[Bar]:
    whole = measure.verdict.whole
    for one in whole.since if whole and measure.counts else ():
        last = one.last if one.last > one.first else None
        middle, low, high = ((ratio - 1) * 100 for ratio in (one.estimate, one.low, one.high))
        yield Bar(speaker.say(message("worth-week", first=one.first, last=last)), middle, low, high)


def _money(report: WorthReport, speaker: Speaker) -> Iterator[Bar]:
    saved = report.savings
    if saved is None:
        return
    if saved.money:
        yield Bar(
            speaker.say(message("worth-bar", which="measured")), saved.money.estimate, saved.money.low, saved.money.high
        )
    yield Bar(speaker.say(message("worth-bar", which="claimed")), saved.claimed, saved.claimed, saved.claimed, True)
