"""Columns under the mill's own heading: attributes keep their words; a column of nothing but numbers becomes numbers."""

import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Any

from tracker.domain.tables import LOOMS
from tracker.intake.columns.date_columns import DatePlan, plan_dates
from tracker.intake.columns.number_units import ask_pick_density, proven_decimals
from tracker.intake.columns.pool import ColumnPool
from tracker.intake.columns.shown import plain_number, shown_number
from tracker.intake.vocabulary.dates import date_text
from tracker.intake.vocabulary.numbers import quantity

_CODE_LIKE = re.compile(r"[+\-−]?0\d|\+|.*\d{16}")
_PADDED = re.compile(r"0{2,}")


@dataclass(slots=True)
class OwnPlan:
    pool: ColumnPool
    numeric: bool = False
    decimals: str = ""
    dates: DatePlan | None = None
    """Where every text of the column is a date."""

    def read(self, value: Any, code: str) -> Any:
        """Text, number (whole ones as int), yes/no as given, or date; times and spans as text."""
        if isinstance(value, str):
            return self._date(value) if self.dates else self._number(value) if self.numeric else value
        if isinstance(value, bool):
            return value
        if isinstance(value, float | int):
            if code and _PADDED.match(code) and value == int(value):
                return shown_number(value, code)
            return _whole(value)
        if isinstance(value, datetime) and value.time() == time(0):
            return value.date()
        if isinstance(value, datetime | date):
            return value
        return value.isoformat("minutes") if isinstance(value, time) else str(value)

    def _date(self, text: str) -> date | datetime:
        assert self.dates is not None
        day, clock = self.dates.day_and_time(text)
        return datetime.combine(day, clock) if clock else day

    def _number(self, text: str) -> Any:
        found = quantity(text)
        if found is None or found.unit:
            return text
        value = found.certain if found.certain is not None else found.readings.get(self.decimals)
        return text if value is None else _whole(value)


def _whole(value: float | int) -> float | int:
    return int(value) if value == int(value) and abs(value) < 1e15 else value


def plan_own(pool: ColumnPool) -> OwnPlan:
    """Numbers where every text is one, in one convention, and none looks like a code (`007`, `1.1` beside `1.10`); dates
    where every text is one, their order proved or asked; a pick density without a unit is asked about, too."""
    plan = OwnPlan(pool)
    kinds, texts = {kind for kind, _ in pool.distinct}, pool.texts
    if kinds <= {str, int, float}:
        plan.numeric = bool(texts) and _all_numbers(pool, plan, texts)
        if _is_pick_density(pool) and (plan.numeric or not texts) and kinds:
            ask_pick_density(pool)
    elif kinds <= {str, date, datetime} and texts:
        plan.dates = plan_dates(pool) if all(map(date_text, texts)) else None
    if kinds == {str} and not plan.numeric and all(map(date_text, texts)):
        plan.dates = plan_dates(pool)
    return plan


def _all_numbers(pool: ColumnPool, plan: OwnPlan, texts: set[str]) -> bool:
    open_texts = []
    for text in texts:
        found = quantity(text)
        if found is None or found.unit or found.about or _CODE_LIKE.match(text):
            return False
        if found.certain is None:
            open_texts.append(text)
    proven = proven_decimals(pool)
    if len(proven) > 1:
        return False
    plan.decimals = next(iter(proven), pool.sheet_decimals)
    if open_texts and not plan.decimals:
        return False
    lengths = {len(re.split(r"[.,]", text)[-1]) for text in texts if re.search(r"[.,]", text)}
    trailing = any(re.search(r"[.,]\d*0$", text) for text in texts)
    return not (len(lengths) > 1 and trailing)


def _is_pick_density(pool: ColumnPool) -> bool:
    return pool.table is LOOMS and any(
        entry.field == "pick_density_per_cm" and entry.weight >= 0.75 for entry in pool.match.candidates
    )


@dataclass(slots=True)
class ConditionPlan:
    """Cells of a condition column: the unary test as written; `-` and empty mean any."""

    pool: ColumnPool

    def read(self, value: Any, code: str) -> str | None:
        if isinstance(value, str):
            return None if value.strip() in ("-", "–", "—") else value
        if isinstance(value, bool):
            return "true" if value else "false"
        if isinstance(value, float | int):
            return plain_number(value)
        if isinstance(value, datetime) and value.time() == time(0):
            return value.date().isoformat()
        return str(value) if isinstance(value, timedelta) else value.isoformat()
