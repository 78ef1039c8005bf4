"""Read the mill as the domain knows it."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date, datetime
from typing import Any, TypeVar

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from tracker.domain.method import Alternative, Check, KitLine, Method, Operation, Row, Setpoint
from tracker.domain.mill import (
    Absence,
    Article,
    Closure,
    Crew,
    Loom,
    LoomKey,
    Mill,
    OrdinaryChange,
    Overtime,
    Part,
    Reading,
    Receipt,
    Running,
    Standing,
    Tool,
    Warp,
)
from tracker.domain.tables import TABLES, TERM_COLUMNS, TERM_HEADINGS, Kind
from tracker.domain.terms import Terms
from tracker.domain.words import fold
from tracker.store.models import MethodVersion, TermRow
from tracker.store.progress import read_left_done
from tracker.store.rows import MODELS, stock_on_hand

D = TypeVar("D")


def read_mill(session: Session) -> Mill:
    """Everything in one go, looms in natural order."""
    looms = {loom.key: loom for loom in _read(session, "looms", Loom, extra=("attributes",))}
    on_hand = stock_on_hand(session)
    parts = _read(session, "parts", lambda **v: Part(on_hand=on_hand.get(v["part"], 0.0), **v))
    return Mill(
        looms={key: looms[key] for key in sorted(looms, key=lambda key: key.sort_key)},
        warps=_by_loom(_read(session, "warps", Warp), lambda warp: warp.sequence),
        readings=_by_loom(_read(session, "readings", Reading), lambda reading: reading.read_at),
        articles={article.article: article for article in _read(session, "articles", Article)},
        changes=tuple(_read(session, "changes", OrdinaryChange)),
        standing=_by_loom(_read(session, "standing", Standing), lambda span: span.from_at),
        parts={part.part: part for part in parts},
        receipts=tuple(_read(session, "receipts", Receipt)),
        crews=tuple(_read(session, "crews", Crew)),
        absences=tuple(_read(session, "absences", Absence)),
        overtime=tuple(_read(session, "overtime", Overtime)),
        running=tuple(_read(session, "running", Running)),
        closures=tuple(_read(session, "closures", Closure)),
        tools={tool.tool: tool for tool in _read(session, "tools", Tool)},
        method=read_method(session),
        terms=read_terms(session),
        left_done=read_left_done(session),
    )


def _read(session: Session, table: str, make: Any, extra: tuple[str, ...] = ()) -> list[Any]:
    """Domain objects of a table; empty cells are left to the defaults of the domain."""
    model = MODELS[table]
    fields = [c.field for c in TABLES[table].columns if hasattr(model, c.field)] + list(extra)
    query = select(*(getattr(model, field) for field in fields))
    return [
        make(**{f: v for f, v in zip(fields, values, strict=True) if v is not None})
        for values in session.execute(query)
    ]


def _by_loom(items: Iterable[D], order: Any) -> dict[LoomKey, tuple[D, ...]]:
    found: dict[LoomKey, list[D]] = defaultdict(list)
    for item in items:
        found[item.key].append(item)  # type: ignore[attr-defined]
    return {key: tuple(sorted(found[key], key=order)) for key in found}


TERM_DAYS = frozenset(column.field for column in TERM_COLUMNS if column.kind is Kind.DATE)
"""Terms that are days, kept as text."""


def read_terms(session: Session) -> Terms:
    """The terms as typed values; a term that the sheet does not give keeps its default."""
    values: dict[str, Any] = {}
    pilots: dict[str, str] = {}
    for term, value in session.execute(select(TermRow.term, TermRow.value)):
        name = fold(term)
        if name.startswith("pilot of "):
            pilots[term[len("pilot of ") :].strip()] = str(value)
        elif (field := TERM_HEADINGS.get(name)) and value is not None:
            values[field] = date.fromisoformat(value) if field in TERM_DAYS else value
    return Terms(**values, pilots=pilots)


def read_method(session: Session, version: int | None = None) -> Method:
    """A method version, the newest by default; version 0 and empty where none is loaded."""
    version = version or session.scalar(select(func.max(MethodVersion.version)))
    if not version:
        return Method()
    return Method(
        version=version,
        operations=_method_part(session, version, "operations", Operation),
        kit_lines=_method_part(session, version, "kit_lines", KitLine),
        alternatives=_method_part(session, version, "choices", Alternative),
        setpoints=_method_part(session, version, "setpoints", Setpoint),
        checks=_method_part(session, version, "checks", Check),
    )


def method_versions(session: Session) -> list[tuple[int, datetime]]:
    """Each version of the method with the moment from which it was in force, oldest first."""
    found = session.execute(select(MethodVersion.version, MethodVersion.at).order_by(MethodVersion.version))
    return [(version, at) for version, at in found]


def _method_part(session: Session, version: int, table: str, make: type[D]) -> tuple[D, ...]:
    model: Any = MODELS[table]
    rows = session.scalars(select(model).where(model.version == version).order_by(model.id))
    return tuple(_method_object(row, table, make) for row in rows)


def _method_object(row: Any, table: str, make: Any) -> Any:
    values = {c.field: getattr(row, c.field) for c in TABLES[table].columns}
    given = {field: value for field, value in values.items() if value is not None}
    place = Row(sheet=row.sheet, number=row.number, columns=row.columns)
    return make(**given, conditions=row.conditions, row=place)
