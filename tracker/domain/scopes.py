"""What one loom needs, by the method and its attributes, and why."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tracker.domain.method import Conditions
from tracker.domain.mill import LoomKey
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import Choices, MethodRow, WorkContent
from tracker.errors import Message


@dataclass(frozen=True, slots=True)
class LoomScope:
    """The work of converting one loom, or what must be surveyed before it can be known."""

    key: LoomKey
    machine_type: str
    contents: Mapping[WindowKind, tuple[WorkContent, ...]] = field(default_factory=dict)
    """One WorkContent per feasible combination of choices; nothing where the loom is to survey. Looms with equal scopes
    and the same learning factor share this object."""
    unknown: tuple[str, ...] = ()
    """Attributes (as the method heads them) that are missing or cannot be compared, and would change the scope."""
    obstacle: Message | None = None
    """Why there is no content for planning, or for some kind of window."""
    values: Mapping[str, Any] = field(default_factory=dict)
    """Folded name → value of each attribute that the method asks for; None where missing."""
    variant: int = 0
    """Looms with equal scopes have the same number within one scoping; 0 = to survey."""

    @property
    def to_survey(self) -> bool:
        return bool(self.unknown)

    @property
    def reasons(self) -> tuple[tuple[MethodRow, str], ...]:
        """Each row of the method that this loom gets in some window, once, with its reason in words."""
        found: dict[int, tuple[MethodRow, str]] = {}
        for contents in self.contents.values():
            for content in contents:
                for row in content.rows:
                    found.setdefault(id(row), (row, self.reason(row, content)))
        return tuple(found.values())

    def reason(self, row: MethodRow, content: WorkContent) -> str:
        """Why the loom gets a row: `rail = undrilled, window = mid-warp`; `every loom` where nothing is asked."""
        return _words(row.conditions, self.values, content.kind, content.choices)


def _words(conditions: Conditions, values: Mapping[str, Any], kind: WindowKind, choices: Choices) -> str:
    known = {fold(name): value for name, value in choices} | {"window": kind.value}
    parts = []
    for heading, cell in conditions.items():
        value = known.get(fold(heading), values.get(fold(heading)))
        if cell.strip() not in ("", "-"):
            parts.append(_part(heading, value, cell))
    return ", ".join(parts) or "every loom"


def _part(heading: str, value: Any, cell: str) -> str:
    shown = {True: "yes", False: "no", None: "unknown"}.get(value, value) if isinstance(value, bool | None) else value
    shown = f"{shown:g}" if isinstance(shown, float) else str(shown)
    named = fold(shown) in {fold(item.strip(' "')) for item in cell.split(",")}
    return f"{heading} = {shown}" if named else f"{heading} = {shown} ({cell})"
