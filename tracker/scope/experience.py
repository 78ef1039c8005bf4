"""What the recorded conversions teach: the learning factor of the next one, and the operations that run over."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from statistics import fmean

from tracker.domain.method import Method
from tracker.domain.mill import Mill
from tracker.domain.progress import Conversion
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold, natural_key
from tracker.domain.work import WorkContent
from tracker.errors import Message, message
from tracker.scope.content import Scoping
from tracker.scope.learning import FEWEST_TO_FIT, Curve, fit_curve
from tracker.scope.loads import ON_LOOM
from tracker.scope.pert import operation_minutes
from tracker.scope.rules import compile_method

WORTH_SAYING = 0.1
"""An operation is named where it runs this share over or under, in at least five conversions."""


@dataclass(frozen=True, slots=True)
class OperationBias:
    operation: str
    conversions: int
    """How many recorded it."""
    ratio: float
    """Recorded minutes ÷ the method's minutes (allowance and learning included)."""


@dataclass(frozen=True, slots=True)
class TypeLearning:
    """The learning of one machine type."""

    machine_type: str
    curve: Curve
    done: Mapping[str, int]
    """Crew → finished conversions of this type."""
    crews: tuple[str, ...]
    """Crews that may do the next one; where the mill lists none, those that did one."""
    used: int
    """Conversions with minutes that could be compared with the method's."""
    biases: tuple[OperationBias, ...] = ()
    """By size, the furthest from 1 first."""
    off_curve: tuple[float, ...] = ()
    """Of each that could be compared, recorded minutes ÷ those that the curve says."""
    since: datetime | None = None
    """When the first of those began."""

    @property
    def factor(self) -> float:
        """Of the next conversion, as a share of the method's minutes: the mean over the crews that may do it."""
        return fmean(self.curve.factor(self.done.get(crew, 0) + 1) for crew in self.crews)

    @property
    def says(self) -> Message:
        """What was learned, for the planner."""
        return message(
            "learning-of-type", machine_type=self.machine_type, conversions=sum(self.done.values()),
            curve=self._curve(), factor=self.factor, source=self.curve.source, biases=self._biases() or None,
        )  # fmt: skip

    def _curve(self) -> Message:
        curve = self.curve
        if not curve.fitted:
            return message("learning-by-the-terms", missing=FEWEST_TO_FIT - self.used, rate=curve.rate)
        if curve.rate == 1:
            return message("learning-not-seen", level=curve.level)
        return message("learning-fitted", rate=curve.rate, level=curve.level)

    def _biases(self) -> list[Message]:
        worth = [b for b in self.biases if b.conversions >= FEWEST_TO_FIT and abs(b.ratio - 1) >= WORTH_SAYING]
        return [message("operation-bias", operation=b.operation, percent=round((b.ratio - 1) * 100)) for b in worth[:3]]


@dataclass(frozen=True, slots=True)
class FinishedConversion:
    """A finished conversion beside what the method said of it."""

    conversion: Conversion
    number: int
    """Which conversion of its crew and machine type it was."""
    content: WorkContent | None
    """By the method version it was done by; None where the loom or its scope is no longer known."""

    @property
    def ratio(self) -> float | None:
        """Recorded on-loom minutes ÷ the method's, steps that do not learn left out of both; None where either is
        missing."""
        if self.content is None:
            return None
        kept_min = sum(step.minutes for step in self.content.steps if not step.learns)
        minutes = (self._added_min() or self.conversion.total_min or 0.0) - kept_min
        expected = self.content.on_loom_min - kept_min
        return minutes / expected if minutes > 0 and expected > 0 else None

    def _added_min(self) -> float | None:
        """Elapsed minutes from the operations, where each on the loom was recorded: the longest of each step."""
        recorded = {fold(name): minutes for name, minutes in self.conversion.operation_minutes.items()}
        steps: dict[int, float] = defaultdict(float)
        for row in self.content.operations if self.content else ():
            if row.place == ON_LOOM:
                if fold(row.operation) not in recorded:
                    return None
                steps[row.step] = max(steps[row.step], recorded[fold(row.operation)])
        return sum(steps.values())


@dataclass
class _Recorded:
    conversions: int = 0
    minutes: float = 0.0
    expected: float = 0.0
    name: str = field(default="")


def learn(
    conversions: Iterable[Conversion], mill: Mill, methods: Mapping[int, Method] | None = None
) -> dict[str, TypeLearning]:
    """Machine type → what its recorded conversions teach; types without a finished conversion are left out.

    `methods`: version → method, for conversions done by an earlier version; missing ones are measured by the method in
    force.
    """
    finished = sorted((c for c in conversions if c.ended_at), key=lambda c: (c.ended_at, c.key.sort_key))
    by_type: dict[str, list[FinishedConversion]] = defaultdict(list)
    counts: dict[tuple[str, str], int] = defaultdict(int)
    contents = _Contents(mill, methods or {})
    for conversion in finished:
        counts[conversion.machine_type, conversion.crew] += 1
        number = counts[conversion.machine_type, conversion.crew]
        by_type[conversion.machine_type].append(FinishedConversion(conversion, number, contents.of(conversion)))
    return {name: _type(name, by_type[name], mill) for name in sorted(by_type, key=natural_key)}


def learning_factors(learned: Mapping[str, TypeLearning]) -> dict[str, float]:
    """Machine type → factor of the next conversion, as `scope_looms` takes it."""
    return {name: one.factor for name, one in learned.items()}


def standard_curve(terms: Terms) -> Curve:
    return Curve(terms.learning_rate, terms.learning_floor)


def _type(machine_type: str, done: Sequence[FinishedConversion], mill: Mill) -> TypeLearning:
    compared = [one for one in done if one.ratio]
    measured = [(one.number, one.ratio) for one in compared if one.ratio]
    curve = fit_curve(standard_curve(mill.terms), [n for n, _ in measured], [ratio for _, ratio in measured])
    counts = {one.conversion.crew: one.number for one in done}
    crews = tuple(_crews(mill, machine_type) or counts)
    return TypeLearning(
        machine_type, curve, counts, crews, len(measured), _biases(done, curve, mill.terms),
        tuple(ratio / curve.factor(number) for number, ratio in measured),
        min((one.conversion.started_at for one in compared), default=None),
    )  # fmt: skip


def _crews(mill: Mill, machine_type: str) -> list[str]:
    """Crews of the lead trade that may convert a loom of this type."""
    halls = {loom.hall for loom in mill.looms.values() if loom.machine_type == machine_type}
    lead = [crew for crew in mill.crews if fold(crew.trade) == fold(mill.terms.lead_trade)]
    return sorted({crew.crew for crew in lead if crew.hall is None or crew.hall in halls}, key=natural_key)


def _biases(done: Sequence[FinishedConversion], curve: Curve, terms: Terms) -> tuple[OperationBias, ...]:
    found: dict[str, _Recorded] = defaultdict(_Recorded)
    for one in done:
        expected = _operation_min(one.content, terms)
        for name, minutes in one.conversion.operation_minutes.items():
            if expected.get(fold(name)) and name not in one.conversion.worked_out:
                sums = found[fold(name)]
                sums.name = sums.name or name
                sums.conversions += 1
                sums.minutes += minutes
                learned, kept = expected[fold(name)]
                sums.expected += learned * curve.unit(one.number) + kept
    biases = [OperationBias(s.name, s.conversions, s.minutes / s.expected) for s in found.values()]
    return tuple(sorted(biases, key=lambda bias: (-abs(bias.ratio - 1), bias.operation)))


def _operation_min(content: WorkContent | None, terms: Terms) -> dict[str, tuple[float, float]]:
    """Folded operation → the method's minutes that learn and those that do not, allowance included; none of 0."""
    minutes: dict[str, tuple[float, float]] = defaultdict(lambda: (0.0, 0.0))
    for row in content.operations if content else ():
        taken = operation_minutes(row).expected * (1 + terms.allowance)
        learned, kept = minutes[fold(row.operation)]
        minutes[fold(row.operation)] = (learned + taken, kept) if row.learns else (learned, kept + taken)
    return {name: both for name, both in minutes.items() if any(both)}


class _Contents:
    """What the method said of recorded conversions."""

    def __init__(self, mill: Mill, methods: Mapping[int, Method]):
        self.mill = mill
        self.methods = methods
        self._scopings: dict[int, Scoping] = {}

    def of(self, conversion: Conversion) -> WorkContent | None:
        loom = self.mill.looms.get(conversion.key)
        if loom is None:
            return None
        contents = self._scoping(conversion.method_version).scope(loom).contents
        recorded = {fold(name) for name in conversion.operation_minutes}
        return min(_as_done(contents, conversion), key=lambda content: _unlike(content, recorded), default=None)

    def _scoping(self, version: int) -> Scoping:
        if version not in self._scopings:
            method = self.methods.get(version, self.mill.method)
            self._scopings[version] = Scoping(compile_method(method), self.mill.terms, left_done=self.mill.left_done)
        return self._scopings[version]


def _as_done(contents: Mapping[WindowKind, tuple[WorkContent, ...]], conversion: Conversion) -> Sequence[WorkContent]:
    """The contents with the window and the choices that were recorded, as far as they were and the method knows them."""
    of_kind = contents.get(conversion.kind, ()) if conversion.kind else ()
    found = list(of_kind) or [content for of in contents.values() for content in of]
    taken = dict(conversion.choices).items()
    return [content for content in found if taken <= dict(content.choices).items()] or found


def _unlike(content: WorkContent, recorded: set[str]) -> int:
    """How many operations differ between a content and the record."""
    return len({fold(row.operation) for row in content.operations} ^ recorded)
