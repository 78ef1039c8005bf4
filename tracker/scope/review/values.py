"""Values that a condition asks for and nothing has."""

from collections.abc import Iterator
from datetime import date
from functools import lru_cache

from tracker.domain.findings import Finding, Severity
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.errors import message
from tracker.scope.cells import Equal, Limit
from tracker.scope.review.subject import AnyRow, Subject, cell_of, found, is_window, nearest
from tracker.scope.rules import distinct, known_values, sample_values

KINDS = [kind.value for kind in WindowKind]


def not_a_choice(subject: Subject) -> Iterator[Finding]:
    """A window or an alternative that there is not."""
    for row, heading, name, test in subject.tests:
        known = KINDS if is_window(name) else list(subject.alternatives.get(name, {}).values())
        if not (is_window(name) or name in subject.alternatives):
            continue
        for item in test.tests:
            if not isinstance(item, Equal) or not any(item.holds(fold(word)) for word in known):
                yield found("value-unknown", Severity.REFUSED, row, heading, item, known=known,
                            near=nearest(str(item), known))  # fmt: skip


def on_no_loom(subject: Subject) -> Iterator[Finding]:
    """A value that no loom has: a doubt, or a note where looms without a value may turn out to have it."""
    known = lru_cache(None)(lambda name: distinct(subject.looms, name))
    seen = set()
    for row, heading, name, test in subject.tests:
        if name not in subject.attributes or name in subject.alternatives or is_window(name):
            continue
        for item in test.values:
            if item.value in known(name) or (row.row.sheet, name, item) in seen or isinstance(item.value, bool):
                continue
            seen.add((row.row.sheet, name, item))
            words = [str(value) for value in known(name).values()]
            missing = sum(known_values(loom).get(name) in (None, "") for loom in subject.looms)
            near = nearest(str(item), words)
            yield found("value-on-no-loom", Severity.DOUBT if near or not missing else Severity.NOTE, row, heading, item,
                        missing=missing, near=near, known=sorted(words) or None)  # fmt: skip


def never(subject: Subject) -> Iterator[Finding]:
    """A condition that no value can meet, as [16..8]."""
    for row, heading, _, test in subject.tests:
        if not any(test.holds(value) for value in sample_values([test])):
            how = "turned" if test.never else "empty"
            yield found(
                "row-never-holds", Severity.REFUSED, row, heading, row.conditions[heading], test=str(test), how=how
            )


def mixed(subject: Subject) -> Iterator[Finding]:
    """One attribute put in order as a number in one row and as a text or a date in another: no value answers both."""
    first: dict[str, tuple[type, AnyRow, str]] = {}
    for row, heading, name, test in subject.tests:
        for item in test.tests:
            if isinstance(item, Equal):
                continue
            kind = type(item.value if isinstance(item, Limit) else item.low)
            known, there, column = first.setdefault(name, (kind, row, heading))
            if known is not kind:
                other = f"{there.row.sheet} {cell_of(there, column)}".strip()
                yield found("unlike-limits", Severity.REFUSED, row, heading, row.conditions[heading], asks=str(item),
                            kind=message(KIND_CODES[kind]), other=other, other_kind=message(KIND_CODES[known]))  # fmt: skip


KIND_CODES: dict[type, str] = {float: "kind-number", date: "kind-date", str: "kind-text"}
