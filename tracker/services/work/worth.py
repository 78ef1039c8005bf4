"""Was it worth it? Stops by cause, waste width and efficiency of converted looms against what the same weeks would have been
without the conversion; what it saves, beside what was claimed."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from tracker.commissioning.worth.observed import (
    Observed,
    SideWidth,
    Standstill,
    StopCount,
    causes,
    efficiencies_of,
    stops_of,
    widths_of,
)
from tracker.commissioning.worth.panel import Panel, panel
from tracker.commissioning.worth.plain import Estimated, OneLoom, one_by_one, pooled, strata
from tracker.commissioning.worth.savings import Converted, Savings, savings
from tracker.commissioning.worth.stepped import Stepped
from tracker.commissioning.worth.verdict import Verdict, Word, judged
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.terms import Terms
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError
from tracker.services.context import Context
from tracker.services.work.worth_data import (
    Wanted,
    converted_looms,
    decided_on,
    minutes_per_stop,
    read_conversions,
    read_stops,
    read_widths,
)

STOPS, WIDTH, EFFICIENCY = "stops", "waste width", "efficiency"


@dataclass(frozen=True, slots=True)
class Measure:
    """The three answers for one of the figures."""

    name: str
    """STOPS, WIDTH (mm, both sides) or EFFICIENCY (a fraction)."""
    cause: str | None
    """Of stops; None = all causes together."""
    verdict: Verdict
    """From the stepped comparison, which alone gives one."""
    looms: tuple[OneLoom, ...]
    strata: Estimated | None
    plain: Estimated | None
    """Before and after of all looms pooled, shown so that nobody trusts it."""

    @property
    def counts(self) -> bool:
        return self.name == STOPS


@dataclass(frozen=True, slots=True)
class WorthReport:
    as_of: datetime
    terms: Terms
    decided_on: date | None
    measures: tuple[Measure, ...]
    savings: Savings | None
    converted: tuple[Converted, ...]
    minutes_per_stop: float


def worth(
    context: Context,
    cause: str | None = None,
    article: str | None = None,
    from_at: datetime | None = None,
    to_at: datetime | None = None,
    as_of: datetime | None = None,
) -> WorthReport:
    """What is known up to `as_of` (default now), of periods that lie within `from_at` to `to_at`, of one cause, of one article
    (default all). DataError for a cause or an article that no period names, and where nothing is loaded at all."""
    at = as_of or context.now()
    read = _read(context, Wanted(article, from_at, to_at, at))
    _refuse_unknown(read.stops, bool(read.widths), cause, article)
    stops, widths = read.stops, read.widths
    figures = _figures(stops, cause) if cause else [*_figures(stops, None), (WIDTH, None, widths_of(widths)),
                                                    (EFFICIENCY, None, efficiencies_of(stops))]  # fmt: skip
    measures = tuple(_measure(name, of, observed, read) for name, of, observed in figures if observed)
    verdicts = {one.name: one.verdict for one in measures if one.cause is None}
    return WorthReport(
        at, read.mill.terms, read.decided, measures, read.savings(verdicts), tuple(read.looms), read.minutes
    )


@dataclass(frozen=True, slots=True)
class WorthChoices:
    """What a comparison may be narrowed to."""

    causes: tuple[str, ...]
    articles: tuple[str, ...]


def worth_choices(context: Context, as_of: datetime | None = None) -> WorthChoices:
    """The causes and articles that the periods up to `as_of` name."""
    with context.reading() as uow:
        wanted = Wanted(None, None, None, as_of or context.now())
        stops, widths = read_stops(uow, wanted), read_widths(uow, wanted)
    articles = {one.article for one in (*stops, *widths) if one.article}
    return WorthChoices(tuple(causes(stops)), tuple(sorted(articles, key=natural_key)))


def measured_savings(context: Context, as_of: datetime | None = None) -> Savings | None:
    """What `worth` says is saved, without the rest of it; None where nothing is loaded or nobody is converted."""
    read = _read(context, Wanted(None, None, None, as_of or context.now()))
    observed = {STOPS: stops_of(read.stops, None), WIDTH: widths_of(read.widths)}
    worth_knowing = read.mill.terms.worth_knowing
    return read.savings({
        name: judged(read.panel(of), name == STOPS, worth_knowing, read.decided) for name, of in observed.items() if of
    })  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Known:
    """What is known of stops, waste and conversions."""

    mill: Mill
    conversions: Mapping[LoomKey, Standstill]
    stops: Sequence[StopCount]
    widths: Sequence[SideWidth]
    decided: date | None
    looms: Sequence[Converted]

    @property
    def minutes(self) -> float:
        """Per stop."""
        return minutes_per_stop(self.stops, self.mill)

    def panel(self, observed: Sequence[Observed]) -> Panel:
        return panel(observed, self.conversions, self.mill.terms.zone, self.mill.terms.settling_days)

    def savings(self, verdicts: Mapping[str, Verdict]) -> Savings | None:
        """By the verdicts on all stops and on the waste width, as far as they can be told."""
        return savings(self.looms, _believed(verdicts.get(STOPS)), _believed(verdicts.get(WIDTH)), self.minutes)


def _read(context: Context, wanted: Wanted) -> _Known:
    with context.reading() as uow:
        mill, conversions = uow.mill(), read_conversions(uow, wanted.as_of)
        stops, widths = read_stops(uow, wanted), read_widths(uow, wanted)
        settling = timedelta(days=mill.terms.settling_days)
        looms = converted_looms(uow, mill, stops, conversions, settling)
        return _Known(mill, conversions, stops, widths, decided_on(uow, mill), looms)


def _refuse_unknown(stops: Sequence[StopCount], widths: bool, cause: str | None, article: str | None) -> None:
    if not stops and not widths:
        raise DataError("worth-nothing", article=article)
    if cause and fold(cause) not in map(fold, causes(stops)):
        raise DataError("cause-unknown", cause=cause, causes=causes(stops) or None)


def _figures(stops: Sequence[StopCount], cause: str | None) -> Iterator[tuple[str, str | None, list[Observed]]]:
    """The stops asked for: of one cause, else of all together and then of each."""
    for one in [cause] if cause else [None, *causes(stops)]:
        yield STOPS, one, stops_of(stops, one)


def _measure(name: str, cause: str | None, observed: Sequence[Observed], read: _Known) -> Measure:
    seen, counts, worth_knowing = read.panel(observed), name == STOPS, read.mill.terms.worth_knowing
    looms = one_by_one(seen, counts, worth_knowing)
    verdict = judged(seen, counts, worth_knowing, read.decided)
    return Measure(name, cause, verdict, tuple(looms), strata(looms, counts), pooled(seen, counts))


def _believed(verdict: Verdict | None) -> Stepped | None:
    """The comparison that savings may rest on: not where nothing can be told."""
    return verdict.whole if verdict and verdict.word is not Word.CANNOT_TELL else None
