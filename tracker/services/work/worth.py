"""Was it worth it? Stops by cause, waste width and efficiency of converted looms against what the same weeks would have been
without the conversion; what it saves, beside what was claimed."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from tracker.commissioning.worth.observed import (
    Observed,
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
from tracker.domain.words import fold
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
    wanted = Wanted(article, from_at, to_at, at)
    with context.reading() as uow:
        mill, conversions = uow.mill(), read_conversions(uow, at)
        stops, widths = read_stops(uow, wanted), read_widths(uow, wanted)
        decided = decided_on(uow, mill)
        settling = timedelta(days=mill.terms.settling_days)
        looms = converted_looms(uow, mill, stops, conversions, settling)
    _refuse_unknown(stops, bool(widths), cause, article)
    figures = _figures(stops, cause) if cause else [*_figures(stops, None), (WIDTH, None, widths_of(widths)),
                                                    (EFFICIENCY, None, efficiencies_of(stops))]  # fmt: skip
    measures = tuple(
        _measure(name, of, observed, conversions, mill, decided) for name, of, observed in figures if observed
    )
    minutes = minutes_per_stop(stops, mill)
    saved = savings(looms, _believed(measures, STOPS), _believed(measures, WIDTH), minutes)
    return WorthReport(at, mill.terms, decided, measures, saved, tuple(looms), minutes)


def _refuse_unknown(stops: Sequence[StopCount], widths: bool, cause: str | None, article: str | None) -> None:
    if not stops and not widths:
        raise DataError("worth-nothing", article=article)
    if cause and fold(cause) not in map(fold, causes(stops)):
        raise DataError("cause-unknown", cause=cause, causes=causes(stops) or None)


def _figures(stops: Sequence[StopCount], cause: str | None) -> Iterator[tuple[str, str | None, list[Observed]]]:
    """The stops asked for: of one cause, else of all together and then of each."""
    for one in [cause] if cause else [None, *causes(stops)]:
        yield STOPS, one, stops_of(stops, one)


def _measure(
    name: str, cause: str | None, observed: Sequence[Observed], conversions: Mapping[LoomKey, Standstill], mill: Mill,
    decided: date | None,
) -> Measure:  # fmt: skip
    terms = mill.terms
    seen: Panel = panel(observed, conversions, terms.zone, terms.settling_days)
    counts = name == STOPS
    looms = one_by_one(seen, counts, terms.worth_knowing)
    verdict = judged(seen, counts, terms.worth_knowing, decided)
    return Measure(name, cause, verdict, tuple(looms), strata(looms, counts), pooled(seen, counts))


def _believed(measures: Sequence[Measure], name: str) -> Stepped | None:
    """The comparison of a figure that savings may rest on: of all causes, and not where nothing can be told."""
    found = next((one.verdict for one in measures if one.name == name and one.cause is None), None)
    return found.whole if found and found.word is not Word.CANNOT_TELL else None
