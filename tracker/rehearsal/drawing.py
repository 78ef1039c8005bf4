"""One world drawn from what varies (MODEL.md, section 1).

Each source has a random stream of its own for each thing that it touches: two policies meet the same world, switching one
source off leaves the others as they are, and more runs never change earlier ones.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from math import ceil, log, sqrt
from zlib import crc32

import numpy as np
from numpy.typing import NDArray

from tracker.arrays.inverse_gaussian import cdf, quantile
from tracker.domain.mill import Crew, LoomKey
from tracker.domain.windows import Window, WindowKind
from tracker.rehearsal.sources import MILL, Source, Spreads, of_crew, of_supplier

BEAM_OUTS = (WindowKind.REPEAT, WindowKind.STYLE)
TRIES = 8
"""Conversions of one loom for which work and failure are drawn; more than anybody makes."""


@dataclass(frozen=True, slots=True)
class Noise:
    """What readings of the warps vary by; drawn where they are asked for, since only who plans anew reads them."""

    seed: int
    run: int
    error: float
    """Of a reading, as a share of the metres left: its coefficient of variation."""

    def of(self, key: LoomKey, number: int, days: int) -> NDArray[np.float64]:
        """Standard normal values, shape (days, 4), of the warp that ends with a loom's beam-out of this number: three for its
        way from day to day, one for the error of the reading. More days leave the earlier ones as they are."""
        return stream(self.seed, self.run, Source.BEAM_OUTS, (key, number, "readings")).standard_normal((days, 4))


@dataclass(frozen=True, slots=True)
class World:
    """One course of all that varies; it knows nothing of what is done in it."""

    warps: Mapping[tuple[LoomKey, int], float]
    """(loom, number of its beam-out) → running hours by which it comes later (or, below 0, sooner) than by its mean."""
    work: Mapping[LoomKey, tuple[float, ...]]
    """Standard normal values, one for each conversion that is tried."""
    fails: Mapping[LoomKey, tuple[bool, ...]]
    away: Mapping[tuple[str, int], frozenset[int]]
    """(crew, head; −1 = all of it) → days from today on which it is away."""
    late: Mapping[str, int]
    """Order line, or part that is still to be ordered → days late."""
    short: Mapping[str, float] = field(default_factory=dict)
    """Order line → share that comes on the day, where not all of it does."""
    protected: tuple[tuple[int, LoomKey], ...] = ()
    """(day from today, loom) of each that is protected from that day on."""
    readings: Noise | None = None
    """None = each warp runs out evenly, and is read as it is."""


def stream(seed: int, number: int, source: Source, name: object = "") -> np.random.Generator:
    """The random numbers of a source for one thing in one run."""
    place = list(Source).index(source)
    return np.random.Generator(
        np.random.PCG64(np.random.SeedSequence([seed, number, place, crc32(repr(name).encode())]))
    )


class Drawing:
    """Worlds of one hall; what they rest on is put in order once."""

    def __init__(
        self,
        windows: Mapping[LoomKey, Iterable[Window]],
        elapsed_h: Mapping[LoomKey, float],
        crews: Iterable[tuple[Crew, bool]],
        lines: Mapping[str, str | None],
        days: int,
        spreads: Spreads,
    ):
        """`elapsed_h`: running hours since each loom's reading, in which its beam has not come. `crews`: rows, and whether
        of the lead trade. `lines`: order lines, and parts that may still be ordered, with their supplier. `days`: calendar days
        ahead."""
        self.spreads, self.days, self.lines, self.looms = spreads, days, lines, tuple(windows)
        self.crews = {
            (c.crew, i)
            for c, lead in crews if c.crew not in spreads.never_away
            for i in ([-1] if lead else range(c.heads))
        }  # fmt: skip
        self.numbers: list[tuple[LoomKey, int]] = []
        self.counts: list[int] = []
        mean, spread, before = [], [], []
        for key, its in windows.items():
            outs = sorted((w for w in its if w.kind in BEAM_OUTS), key=lambda w: w.mean_running_h)
            self.counts.append(len(outs))
            for i, w in enumerate(outs):
                self.numbers.append((key, w.number))
                mean.append(w.mean_running_h - (outs[i - 1].mean_running_h if i else 0.0))
                spread.append(w.spread_h)
                before.append(elapsed_h.get(key, 0.0) if i == 0 else 0.0)
        self.mean, self.spread = np.array(mean), np.array(spread)
        self.floor = np.array(
            [float(cdf(m, s, e)) if m > 0 and s > 0 and e > 0 else 0.0
             for m, s, e in zip(mean, spread, before, strict=True)]
        )  # fmt: skip

    def world(self, seed: int, number: int) -> World:
        """The world of a run; the same for the same seed and number, whatever else is drawn."""
        return World(
            warps=self._warps(seed, number),
            work=self._work(seed, number),
            fails=self._fails(seed, number),
            away=self._away(seed, number),
            late=self._late(seed, number),
            short=self._short(seed, number),
            protected=self._protected(seed, number),
            readings=Noise(seed, number, self.spreads.reading_error) if self._on(Source.BEAM_OUTS) else None,
        )

    def _on(self, source: Source) -> bool:
        return source not in self.spreads.off

    def _warps(self, seed: int, number: int) -> dict[tuple[LoomKey, int], float]:
        """Each warp takes an inverse Gaussian time; the sums of a loom's warps are its beam-outs. The first has not come
        since the reading, so it is drawn from what is left of its spread."""
        if not self._on(Source.BEAM_OUTS) or not self.numbers:
            return dict.fromkeys(self.numbers, 0.0)
        drawn = [
            stream(seed, number, Source.BEAM_OUTS, key).random(n)
            for key, n in zip(self.looms, self.counts, strict=True)
        ]
        share = np.clip(self.floor + np.concatenate(drawn) * (1 - self.floor), 1e-9, 1 - 1e-9)
        later = quantile(self.mean, self.spread, share) - self.mean
        found: dict[tuple[LoomKey, int], float] = {}
        begin = 0
        for n in self.counts:
            sums = np.cumsum(later[begin : begin + n]).tolist()
            found.update(zip(self.numbers[begin : begin + n], sums, strict=True))
            begin += n
        return found

    def _work(self, seed: int, number: int) -> dict[LoomKey, tuple[float, ...]]:
        if not self._on(Source.WORK):
            return {}
        return {k: tuple(stream(seed, number, Source.WORK, k).standard_normal(TRIES).tolist()) for k in self.looms}

    def _fails(self, seed: int, number: int) -> dict[LoomKey, tuple[bool, ...]]:
        share = self.spreads.of("fail_share", MILL)
        if not self._on(Source.FAILURES) or not share:
            return {}
        # one stream for all: a draw decides by itself, so the order of the looms is all that must stay
        drawn = stream(seed, number, Source.FAILURES).random((len(self.looms), TRIES)) < share
        return {self.looms[i]: tuple(drawn[i].tolist()) for i in np.flatnonzero(drawn.any(axis=1))}

    def _away(self, seed: int, number: int) -> dict[tuple[str, int], frozenset[int]]:
        """Days of presence and absence by turns, both of geometric length; who is there today is there today."""
        found = {}
        if not self._on(Source.PEOPLE):
            return {}
        for name in sorted(self.crews):
            whose = of_crew(name[0], lead=name[1] < 0)
            share, long = (self.spreads.of(figure, *whose) for figure in ("away_share", "away_days"))
            falls_ill = share / (long * (1 - share))
            chance = stream(seed, number, Source.PEOPLE, name).random(self.days + 1)
            away, days = False, []
            for day in range(1, self.days + 1):
                away = chance[day] >= 1 / long if away else chance[day] < falls_ill
                if away:
                    days.append(day)
            if days:
                found[name] = frozenset(days)
        return found

    def _late(self, seed: int, number: int) -> dict[str, int]:
        found = {}
        if not self._on(Source.RECEIPTS):
            return {}
        for line, supplier in self.lines.items():
            late, long = stream(seed, number, Source.RECEIPTS, line).random(2)
            mean = self.spreads.usual_lateness(supplier)
            if mean and late < self.spreads.of("late_share", *of_supplier(supplier)):
                found[line] = max(1, ceil(-log(1 - long) * mean))
        return found

    def _short(self, seed: int, number: int) -> dict[str, float]:
        if not self._on(Source.RECEIPTS):
            return {}
        found = {}
        for line, supplier in self.lines.items():
            short, share = stream(seed, number, Source.RECEIPTS, (line, "short")).random(2)
            if short < self.spreads.of("short_share", *of_supplier(supplier)):
                found[line] = float(0.5 + share / 2)
        return found

    def _protected(self, seed: int, number: int) -> tuple[tuple[int, LoomKey], ...]:
        if not self._on(Source.ORDERS) or not self.looms:
            return ()
        draws, found = stream(seed, number, Source.ORDERS), []
        a_week = self.spreads.of("protected_per_week", MILL)
        for week in range(self.days // 7 + 1):
            for _ in range(draws.poisson(a_week)):
                day, loom = week * 7 + int(draws.integers(7)), self.looms[int(draws.integers(len(self.looms)))]
                found.append((day, loom))
        return tuple(sorted(found, key=lambda one: one[0]))


def lognormal(value: float, cv: float) -> float:
    """A factor of mean 1 with this coefficient of variation, from a standard normal value."""
    variance = log(1 + cv * cv)
    return float(np.exp(sqrt(variance) * value - variance / 2))
