"""The manager's page of a week in words, in a language, and as PDF."""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from pathlib import Path

from tracker.domain.calendars import iso_week
from tracker.domain.late import shortened
from tracker.errors import Message, message
from tracker.export.week_page import FigureOfWeek, NotesOfWeek, WeekPage, week_pdf, write_week_page
from tracker.mill_state.progress import WeekCount
from tracker.services.context import Context
from tracker.services.moments import monday_of
from tracker.services.screens.week_report import WeekReport, week_report
from tracker.words import Speaker, formats

MOST_MONTHS = 8
"""Of the table by month, the last ones."""


def week_file(context: Context, week: str | None = None, language: str = "en") -> bytes:
    """The page as PDF, for a download."""
    return week_pdf(page_of(week_report(context, week), language))


def write_week(path: Path, report: WeekReport, language: str = "en") -> None:
    """Write the page as .pdf."""
    write_week_page(path, page_of(report, language))


def week_file_name(week: str) -> str:
    return f"{week}.pdf"


def page_of(report: WeekReport, language: str) -> WeekPage:
    said = _Said(report, language)
    begins = {
        "week": report.week,
        "first": report.first,
        "last": report.last,
        "over": "yes" if report.is_over else "no",
    }
    return WeekPage(
        title=report.programme, subtitle=said.of("report-week", at=report.at, **begins),
        figures=tuple(said.figures()),
        progress_title=said.of("report-progress"), weeks=tuple(one.week for one in report.counts),
        planned=tuple(one.planned_total for one in report.counts),
        done=tuple(one.done_total for one in report.counts if one.week <= report.week),
        expected=tuple(one.expected_total for one in report.counts), all=report.looms,
        legend=(said.of("report-line-planned"), said.of("report-line-done"), said.of("report-line-expected")),
        months_title=said.of("report-months", currency=report.currency), months=tuple(said.months()), notes=tuple(said.notes()),
        more=lambda many: said.of("report-and-more", more=many),
        foot=said.of("report-made", at=report.made_at, plan=report.plan), seal=report.last_hash or said.of("report-no-history"),
    )  # fmt: skip


class _Said:
    """What a report says in a language."""

    def __init__(self, report: WeekReport, language: str):
        self.report, self.language, self.speaker = report, language, Speaker(language, report.zone)

    def of(self, code: str, /, **params: object) -> str:
        return self.speaker.say(message(code, **params))

    def _money(self, amount: float) -> str:
        return formats.money(amount, self.report.currency, self.language)

    def figures(self) -> Iterator[FigureOfWeek]:
        report, money = self.report, self.report.money
        week, known = report.count, self.of("status-not-known")
        yield FigureOfWeek(self.of("report-done"), self.of("of-all", some=report.done, all=report.looms),
                     self.of("report-done-week", done=week.done, planned=week.planned))  # fmt: skip
        yield FigureOfWeek(
            self.of("report-finish"), formats.day(report.finish_on, self.language) or known, self._target()
        )
        yield FigureOfWeek(
            self.of("report-pace"), formats.day(report.pace.finish_on, self.language) or known, self._pace()
        )
        yield FigureOfWeek(self.of("report-spent"), self._money(money.spent), self.of(
            "report-spent-more", planned=self._money(money.planned), week=self._money(money.spent_in_week)))  # fmt: skip
        if money.on_order is None:
            yield FigureOfWeek(self.of("report-on-order"), known, self.of("report-on-order-past"))
        else:
            both = self._money(money.spent + money.on_order)
            yield FigureOfWeek(
                self.of("report-on-order"), self._money(money.on_order), self.of("report-on-order-all", both=both)
            )
        yield self._saved()

    def _target(self) -> str:
        report = self.report
        if report.target is None:
            return self.of("status-no-target")
        days = (report.finish_on - report.target).days if report.finish_on else None
        how = "open" if days is None else "on" if not days else "after" if days > 0 else "before"
        return self.of("status-target", how=how, days=abs(days or 0), target=report.target)

    def _pace(self) -> str:
        if self.report.rehearsed:
            looms, half, sure = self.report.rehearsed
            return self.of("status-rehearsed", looms=looms, half=half, sure=sure)
        return self.of("status-pace-of", done=self.report.pace.done, days=self.report.pace.days)

    def _saved(self) -> FigureOfWeek:
        saved = self.report.savings
        if saved is None or saved.money is None:
            return FigureOfWeek(self.of("report-saved"), self.of("status-not-known"), self.of("status-saved-not"))
        low, high = self._money(saved.money.low), self._money(saved.money.high)
        return FigureOfWeek(
            self.of("report-saved"), self._money(saved.money.estimate), self.of("status-between", low=low, high=high)
        )

    def months(self) -> Iterator[tuple[str, ...]]:
        """The heading, and the last months."""
        over = self.report.is_over
        yield ("", *(self.of(code) for code in ("report-planned", "report-so-far", *([] if over else ["report-open"]))))
        for one in self.report.money.months[-MOST_MONTHS:]:
            amounts = [one.planned, one.spent, *([] if over else [one.committed])]
            yield (
                formats.month(one.month, self.language),
                *(formats.money(each, "", self.language) for each in amounts),
            )

    def notes(self) -> Iterator[NotesOfWeek]:
        """What is late and at risk first; of a week that is over neither is known any more."""
        report = self.report
        if not report.is_over:
            late, more = shortened(report.late)
            yield self._list("report-late", [one.what for one in late] + ([more] if more else []), "report-none")
            yield self._list("report-risks", [one.what for one in report.risks], "report-none")
        missed = [message("report-missed-loom", loom=b.key, end=b.end.astimezone(report.zone), stage=stage)
                  for b, stage in report.missed]  # fmt: skip
        yield self._list("report-missed", missed, "report-missed-none")

    def _list(self, title: str, lines: list[Message], nothing: str) -> NotesOfWeek:
        return NotesOfWeek(self.of(title), tuple(self.speaker.say(line) for line in lines) or (self.of(nothing),))


def weeks_begun(counts: Iterable[WeekCount], today: date) -> list[str]:
    """The weeks of which there is a report, this one first."""
    this = today - timedelta(days=today.weekday())
    first = min([this, *(monday_of(one.week) for one in counts)])
    return [iso_week(this - timedelta(weeks=i)) for i in range((this - first).days // 7 + 1)]
