"""The terms of the programme: what each is now, what it means, where it acts, and what it was before."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.columns import Column, Kind
from tracker.domain.mill import Mill
from tracker.domain.tables import TERM_COLUMNS, acts
from tracker.domain.terms import Terms
from tracker.domain.units import percent
from tracker.errors import Message, message
from tracker.services.context import Context
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class TermWas:
    """One change of a term."""

    at: datetime
    who: str
    old: Any
    """As the sheet would have it; None = the default held."""
    new: Any


@dataclass(frozen=True, slots=True)
class TermLine:
    term: str
    """As the sheet writes it, with its unit."""
    column: Column | None
    """None for the pilot of a machine type."""
    named: Message
    means: Message
    acts: Message
    value: Any
    """As the sheet would have it: a share in percent; None where there is none."""
    default: Any
    given: bool
    """Whether the mill gave it; else its default holds."""
    was: tuple[TermWas, ...]
    """The newest first."""

    @property
    def kept(self) -> Any:
        """The value as the database has it; None where the default holds."""
        share = self.column is not None and self.column.kind is Kind.FRACTION
        value = self.value / 100 if share and self.value is not None else self.value
        return value if self.given else None


@dataclass(frozen=True, slots=True)
class TermsBoard:
    zone: ZoneInfo
    lines: tuple[TermLine, ...]
    """In the order of the sheet, then a pilot for each machine type."""


def terms_board(context: Context) -> TermsBoard:
    with context.reading() as uow:
        given = {str(key[0]) for key in uow.rows("terms")}
        mill = uow.mill()
        return TermsBoard(mill.terms.zone, (*_declared(uow, mill, given), *_pilots(uow, mill, given)))


def _declared(uow: UnitOfWork, mill: Mill, given: set[str]) -> Iterator[TermLine]:
    default = Terms()
    for column in TERM_COLUMNS:
        now, usual = (as_the_sheet(column, getattr(terms, column.field)) for terms in (mill.terms, default))
        was = _was(uow, column.title, column)
        yield TermLine(
            column.title,
            column,
            column.titled,
            message(column.about),
            acts(column),
            now,
            usual,
            column.title in given,
            was,
        )


def _pilots(uow: UnitOfWork, mill: Mill, given: set[str]) -> Iterator[TermLine]:
    types = sorted({loom.machine_type for loom in mill.looms.values()} | mill.terms.pilots.keys())
    for machine_type in types:
        term = f"pilot of {machine_type}"
        value = mill.terms.pilots.get(machine_type)
        says = message("term-pilot", machine_type=machine_type), message("about-term-pilot"), message("acts-pilot")
        yield TermLine(term, None, *says, value, None, term in given, _was(uow, term, None))


def _was(uow: UnitOfWork, term: str, column: Column | None) -> tuple[TermWas, ...]:
    found = uow.origin("terms", (term,), "value")
    return tuple(TermWas(o.at, o.who, as_the_sheet(column, o.old), as_the_sheet(column, o.new)) for o in found)


def as_the_sheet(column: Column | None, value: Any) -> Any:
    share = column is not None and column.kind is Kind.FRACTION
    return percent(value) if share and isinstance(value, int | float) else value
