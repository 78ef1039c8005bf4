"""What each loom needs and why; hours per machine type and variant; what must be surveyed."""

from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, field, fields
from pathlib import Path
from typing import Any

from tracker.domain.method import Check, KitLine, Method, Operation, Setpoint
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.scopes import LoomScope
from tracker.domain.survey import SurveyList
from tracker.domain.windows import WindowKind
from tracker.domain.words import natural_key
from tracker.domain.work import WorkContent, parts_cost
from tracker.errors import Message, message
from tracker.export.survey import write_survey
from tracker.scope.content import scope_looms
from tracker.scope.experience import TypeLearning, learn, learning_factors, standard_curve
from tracker.scope.hours import HIGH, LOW, Hours, hours_table, labour_estimate
from tracker.scope.loads import Loader
from tracker.scope.survey import survey_rows
from tracker.scope.variants import Variant, variants
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.store import UnitOfWork
from tracker.store.mill import read_method
from tracker.words import ENGLISH


@dataclass(frozen=True, slots=True)
class Line:
    """A row of the method that a loom gets."""

    row: Operation | KitLine | Setpoint | Check
    reason: str
    """`rail = undrilled, window = mid-warp`."""
    planned_min: float | None = None
    """Of an operation: expected minutes with allowance and learning, as the next plan counts them."""

    def record(self) -> dict[str, Any]:
        said = {f.name: getattr(self.row, f.name) for f in fields(self.row) if f.name not in ("conditions", "row")}
        said |= {"planned_min": self.planned_min, "reason": self.reason}
        return {name: value for name, value in said.items() if value is not None}


@dataclass(frozen=True, slots=True)
class WorkReport:
    """The work of one loom in some kinds of window with one combination of choices. Hours as the next plan counts them."""

    kinds: tuple[WindowKind, ...]
    choices: Mapping[str, str]
    operations: tuple[Line, ...]
    kit_lines: tuple[Line, ...]
    setpoints: tuple[Line, ...]
    checks: tuple[Line, ...]
    tools: tuple[str, ...]
    on_loom_h: float
    """Elapsed hours, loom stopped; then on the bench before, after the restart, and on the bench after."""
    bench_h: float
    after_restart_h: float
    bench_after_h: float
    labour_h: float
    """Person-hours."""
    low_h: float
    """Person-hours, P10 and P90 by the three-point estimates."""
    high_h: float
    trades: Mapping[str, float]
    """Trade → person-hours."""
    parts_cost: float

    def record(self) -> dict[str, Any]:
        lines = {
            name: [line.record() for line in getattr(self, name)]
            for name in ("operations", "kit_lines", "setpoints", "checks")
        }
        figures = {f.name: getattr(self, f.name) for f in fields(self) if f.name not in (*lines, "kinds")}
        return {"windows": [kind.value for kind in self.kinds], **figures, **lines}


@dataclass(frozen=True, slots=True)
class LoomReport:
    key: LoomKey
    machine_type: str
    variant: str
    unknown: tuple[str, ...]
    obstacle: Message | None
    values: Mapping[str, Any]
    """What the loom list says of the attributes that the method asks for."""
    work: tuple[WorkReport, ...]
    learning_factor: float
    source: str
    """Of the learning factor: `standard` or `fitted`."""

    def record(self) -> dict[str, Any]:
        said = {f.name: getattr(self, f.name) for f in fields(self) if f.name not in ("key", "work")}
        said["obstacle"] = _say(self.obstacle)
        return {"hall": self.key.hall, "loom": self.key.loom, **said, "work": [work.record() for work in self.work]}


@dataclass(frozen=True, slots=True)
class ScopeReport:
    programme: str
    method_version: int
    currency: str
    scopes: Mapping[LoomKey, LoomScope]
    """With the learning of today, by loom in natural order."""
    variants: tuple[Variant, ...]
    """Commonest first, looms to survey last. Hours without learning."""
    hours: tuple[Hours, ...]
    """By machine type: all variants together, then each; a row for each set of window kinds with the same figures."""
    learning: Mapping[str, TypeLearning]
    """Machine types with recorded conversions."""
    survey: SurveyList
    loom: LoomReport | None = None
    left_done: Mapping[LoomKey, frozenset[str]] = field(default_factory=dict)
    """Loom → what a stopped conversion left done, which is not to be done again."""

    @property
    def names(self) -> dict[int, str]:
        return {variant.number: variant.name for variant in self.variants}

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        if self.loom:
            return self.loom.record()
        return {
            "method_version": self.method_version,
            "currency": self.currency,
            "looms": [self._loom(key, scope) for key, scope in self.scopes.items()],
            "variants": [_variant_record(variant) for variant in self.variants],
            "hours": [asdict(row) | {"kinds": [kind.value for kind in row.kinds]} for row in self.hours],
            "learning": [{"machine_type": name, "factor": one.factor, "source": one.curve.source, "says": ENGLISH.say(one.says)}
                         for name, one in self.learning.items()],
        }  # fmt: skip

    def messages(self) -> list[Message]:
        """What a person should know beside the tables."""
        survey, variants = self.survey, sum(v.number > 0 for v in self.variants)
        said = [message("scope-found", looms=len(self.scopes), variants=variants, version=self.method_version)]
        if survey.rows:
            columns = [column.heading for column in survey.columns]
            said.append(message("looms-to-survey", many=len(survey.rows), columns=columns))
        said += [
            message("loom-obstacle", loom=key, why=scope.obstacle)
            for key, scope in self.scopes.items()
            if scope.obstacle and not scope.to_survey
        ]
        said += [message("loom-left-done", loom=key, operations=len(done)) for key, done in self.left_done.items()]
        return said + [one.says for one in self.learning.values()]

    def _loom(self, key: LoomKey, scope: LoomScope) -> dict[str, Any]:
        return {"hall": key.hall, "loom": key.loom, "machine_type": scope.machine_type, "to_survey": scope.to_survey,
                "unknown": list(scope.unknown), "obstacle": _say(scope.obstacle),
                "variant": self.names.get(scope.variant, "")}  # fmt: skip


def scope(context: Context, loom: str | None = None, hall: str | None = None) -> ScopeReport:
    """Scope every loom, or tell everything about one. DataError where there is no method or no such loom."""
    with context.reading() as uow:
        mill = uow.mill()
        learned = learning(uow, mill)
    return scope_report(mill, learned, find_loom(mill, loom, hall) if loom else None)


def write_survey_list(report: ScopeReport, target: Path, language: str = "en") -> None:
    """Write the list to walk the hall with; filled in and loaded, it closes the gaps."""
    write_survey(target, report.survey, report.programme, language)


def learning(uow: UnitOfWork, mill: Mill) -> dict[str, TypeLearning]:
    """What the recorded conversions teach, each measured by the method version it was done by."""
    conversions = uow.conversions()
    return learn(conversions, mill, methods(uow, (conversion.method_version for conversion in conversions)))


def methods(uow: UnitOfWork, versions: Iterable[int]) -> dict[int, Method]:
    return {version: read_method(uow.session, version) for version in sorted(set(versions)) if version}


def scope_report(mill: Mill, learned: Mapping[str, TypeLearning], key: LoomKey | None = None) -> ScopeReport:
    """The report from what was read."""
    plain = scope_looms(mill)
    scopes = scope_looms(mill, learning_factors(learned)) if learned else plain
    groups = variants(mill, plain)
    names = {variant.number: variant.name for variant in groups}
    ordered = dict(sorted(scopes.items(), key=lambda item: item[0].sort_key))
    return ScopeReport(
        programme=mill.terms.programme,
        method_version=mill.method.version,
        currency=mill.terms.currency,
        scopes=ordered,
        variants=groups,
        hours=hours_table(mill, plain, names, learned),
        learning=dict(sorted(learned.items(), key=lambda item: natural_key(item[0]))),
        survey=survey_rows(mill, scopes),
        loom=_loom_report(mill, scopes[key], names, learned) if key else None,
        left_done=mill.left_done,
    )


def _loom_report(
    mill: Mill, scope: LoomScope, names: Mapping[int, str], learned: Mapping[str, TypeLearning]
) -> LoomReport:
    known = learned.get(scope.machine_type)
    factor = known.factor if known else 1.0
    return LoomReport(
        key=scope.key,
        machine_type=scope.machine_type,
        variant=names.get(scope.variant, ""),
        unknown=scope.unknown,
        obstacle=scope.obstacle,
        values=scope.values,
        work=tuple(_works(mill, scope, factor)),
        learning_factor=factor,
        source=known.curve.source if known else standard_curve(mill.terms).source,
    )


def _works(mill: Mill, scope: LoomScope, factor: float) -> Iterable[WorkReport]:
    """Contents with the same rows and choices once, with all their kinds of window."""
    same: dict[tuple, list[WorkContent]] = {}
    for contents in scope.contents.values():
        for content in contents:
            same.setdefault((content.choices, *map(id, content.rows)), []).append(content)
    for contents in same.values():
        yield _work(mill, scope, contents[0], tuple(content.kind for content in contents), factor)


def _work(
    mill: Mill, scope: LoomScope, content: WorkContent, kinds: tuple[WindowKind, ...], factor: float
) -> WorkReport:
    estimate = labour_estimate(content, mill.terms, factor) * (1 / 60)
    loader = Loader(mill.terms.allowance, factor)
    operations = tuple(Line(row, scope.reason(row, content), loader.minutes(row)) for row in content.operations)
    kit_lines, setpoints, checks = (
        tuple(Line(row, scope.reason(row, content)) for row in rows)
        for rows in (content.kit_lines, content.setpoints, content.checks)
    )
    return WorkReport(
        kinds=kinds,
        choices=dict(content.choices),
        operations=operations,
        kit_lines=kit_lines,
        setpoints=setpoints,
        checks=checks,
        tools=tuple(sorted({row.tool for row in content.operations if row.tool}, key=natural_key)),
        on_loom_h=content.on_loom_min / 60,
        bench_h=content.bench_min / 60,
        after_restart_h=content.after_restart_min / 60,
        bench_after_h=content.bench_after_min / 60,
        labour_h=content.labour_h,
        low_h=estimate.quantile(LOW),
        high_h=estimate.quantile(HIGH),
        trades={trade: minutes / 60 for trade, minutes in content.labour_min.items()},
        parts_cost=parts_cost(content, mill.parts),
    )


def _variant_record(variant: Variant) -> dict[str, Any]:
    said = {f.name: getattr(variant, f.name) for f in fields(variant) if f.name not in ("looms", "kind", "values")}
    looms = [{"hall": key.hall, "loom": key.loom} for key in variant.looms]
    said |= {"window": variant.kind.value if variant.kind else None, "count": len(looms), "looms": looms}
    return said | {"obstacle": _say(variant.obstacle)}


def _say(what: Message | None) -> str:
    return ENGLISH.say(what) if what else ""
