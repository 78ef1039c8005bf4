"""What shows when the looms are scoped by the method: steps missing or doubled, rows that nobody gets."""

from collections import Counter, defaultdict
from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.domain.method import Operation
from tracker.domain.mill import Loom
from tracker.domain.words import fold
from tracker.domain.work import StepLoad
from tracker.scope.cells import UnaryTest, scalar
from tracker.scope.loads import Loader
from tracker.scope.review.subject import Subject, cell_of, found, named
from tracker.scope.review.supplies import most_heads
from tracker.scope.rules import known_values


def missing(subject: Subject) -> Iterator[Finding]:
    """A step that has a row for each of several values of an attribute, and none for a value that some looms have and
    the method never mentions."""
    tests: dict[str, set[UnaryTest]] = defaultdict(set)
    for _, _, name, test in subject.tests:
        tests[name].add(test)
    for step, rows in _steps(subject).items():
        for name, (heading, asked) in _split_by(rows, subject).items():
            left = [loom for loom in subject.looms if _forgotten(loom, name, asked, tests[name])]
            if left:
                value = known_values(left[0])[name]
                yield found("step-missing", Severity.DOUBT, rows[0], heading, value, step=step,
                            asked=" / ".join(map(str, asked)), looms=named(left))  # fmt: skip


def doubled(subject: Subject) -> Iterator[Finding]:
    """One operation twice in one step for the same loom."""
    twice: dict[tuple[int, int], tuple[Operation, Operation, list[Loom]]] = {}
    for piece, looms in subject.pieces(0).items():
        first: dict[tuple[int, str], Operation] = {}
        for row in piece.rows:
            same = first.setdefault((row.step, fold(row.operation)), row)
            if same is not row:
                twice.setdefault((id(same), id(row)), (same, row, []))[2].extend(looms)
    for same, row, looms in twice.values():
        yield found("step-doubled", Severity.REFUSED, row, "operation", row.operation, step=row.step,
                    other=cell_of(same, "operation"), looms=named(looms))  # fmt: skip


def two_targets(subject: Subject) -> Iterator[Finding]:
    """Two setpoints for one setting and side of the same loom."""
    seen = set()
    for piece, looms in subject.pieces(2).items():
        first = {}
        for row in piece.rows:
            same = first.setdefault((fold(row.setting), fold(row.side or "")), row)
            if same is not row and (id(same), id(row)) not in seen:
                seen.add((id(same), id(row)))
                name = f"{row.setting} {row.side or ''}".strip()
                yield found("setpoint-doubled", Severity.REFUSED, row, "setting", row.setting, name=name,
                            other=cell_of(same, "setting"), looms=named(looms))  # fmt: skip


def side_by_side(subject: Subject) -> Iterator[Finding]:
    """Rows of one step that together need more heads or tools than there are."""
    said, seen, loader = set(), set(), Loader(0.0)
    for piece, looms in subject.pieces(0).items():
        for step in loader.load(piece.rows).steps:
            if id(step) in seen:  # the loader gives the same rows side by side the same object
                continue
            seen.add(id(step))
            rows = [row for row in piece.rows if row.step == step.step]
            for what, need, have, column in _short(subject, step):
                if len(rows) > 1 and (step.step, what) not in said:
                    said.add((step.step, what))
                    yield found("step-needs-too-much", Severity.REFUSED, rows[-1], column, need, step=step.step, what=what,
                                need=need, have=have, looms=named(looms))  # fmt: skip


def no_work(subject: Subject) -> Iterator[Finding]:
    idle = [loom for piece, looms in subject.pieces(0).items() if not piece.rows for loom in looms]
    if idle:
        yield Finding("no-work", Severity.NOTE, sheet="Operations", params={"looms": named(idle)})


def no_loom(subject: Subject) -> Iterator[Finding]:
    """A row that no loom gets today."""
    for rule in subject.rules.everything if subject.looms else ():
        if not any(rule.asked_of(outcomes) for outcomes in subject.groups):
            heading = next(iter(rule.row.conditions))
            conditions = ", ".join(f"{h}: {c}" for h, c in rule.row.conditions.items())
            yield found("row-on-no-loom", Severity.NOTE, rule.row, heading, conditions)


def _steps(subject: Subject) -> dict[int, list[Operation]]:
    rows: dict[int, list[Operation]] = defaultdict(list)
    for row in subject.method.operations:
        rows[row.step].append(row)
    return rows


def _split_by(rows: list[Operation], subject: Subject) -> dict[str, tuple[str, list[UnaryTest]]]:
    """Attributes that every row of a step asks for, with at least two different tests."""
    asked: dict[str, tuple[str, list[UnaryTest]]] = {}
    counts: Counter[str] = Counter()
    members = {id(row) for row in rows}
    for row, heading, name, test in subject.tests:
        if id(row) in members and name in subject.attributes and name not in subject.alternatives:
            counts[name] += 1
            tests = asked.setdefault(name, (heading, []))[1]
            if test not in tests:
                tests.append(test)
    return {name: of for name, of in asked.items() if counts[name] == len(rows) and len(of[1]) > 1}


def _forgotten(loom: Loom, name: str, asked: list[UnaryTest], everywhere: set[UnaryTest]) -> bool:
    value = scalar(known_values(loom).get(name))
    if value is None or isinstance(value, bool) or any(test.holds(value) is not False for test in asked):
        return False
    return not any(_mentions(test, value) for test in everywhere)


def _mentions(test: UnaryTest, value: object) -> bool:
    return any(item.holds(value) for item in test.tests)  # type: ignore[arg-type]


def _short(subject: Subject, step: StepLoad) -> Iterator[tuple[str, int, int, str]]:
    for trade, need in step.heads.items():
        most = most_heads(subject, trade)
        if most is not None and need > most:
            yield trade, need, most, "heads"
    for tool, need in step.tools.items():
        if tool in subject.tools and need > subject.tools[tool].how_many:
            yield tool, need, subject.tools[tool].how_many, "tool"
