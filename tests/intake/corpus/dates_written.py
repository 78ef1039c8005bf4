"""How a list writes days: typed, in figures of either order, with words for months, as weeks or as counted days."""

from datetime import date, timedelta
from typing import TYPE_CHECKING, Any

from .draft import Column, Draft, Question

if TYPE_CHECKING:
    from .plans import Plan


def write_dates(draft: Draft, plan: "Plan", heading: str) -> None:
    """A column of days until which some looms are protected."""
    rng, name = draft.rng, "protected_until"
    draft.columns.append(Column(name, heading))
    last = 12 if plan.dates == "order open" else 28
    for i, loom in enumerate(draft.looms):
        if i not in (1, 3) and rng.random() < 0.4:
            continue
        day = date(2027, rng.randint(1, 12), rng.randint(1, last))
        if plan.dates in ("day first", "month first") and i == 1:
            day = date(2027, 3, 27)  # proves the order
        if plan.dates == "order open" and i == 3:
            day = date(2027, 5, 4)
        if plan.dates == "week":  # the Sunday of an ISO week
            day = date.fromisocalendar(2027, rng.randint(1, 50), 7)
        loom[name] = day
        draft.cells[loom["key"], name] = _day(draft, plan, day)
    if plan.dates == "order open":
        spelt = (((heading, "day first"),), ((("head", name), "day first"),))
        draft.truth.questions.append(Question("order of day and month", (("head", name),), spelt))
    elif plan.dates == "serial number":
        spelt = (((heading, "protected until"),),)
        draft.truth.questions.append(Question("days counted", (("head", name),), spelt, required=False))


def _day(draft: Draft, plan: "Plan", day: date) -> Any:
    numbered, year = draft.words["week"], day.isocalendar()
    return {
        "typed": lambda: day if plan.typed else day.isoformat(),
        "day.month.year": lambda: f"{day:%d.%m.%Y}",
        "day first": lambda: f"{day:%d/%m/%Y}",
        "month first": lambda: f"{day:%m/%d/%Y}",
        "order open": lambda: f"{day.day}/{day.month}/{day:%y}",
        "month as a word": lambda: _with_month_word(draft, day),
        "week": lambda: numbered.format(
            year.week, year.year if draft.language in ("tr", "zh") else f"{year.year % 100:02d}"
        ),
        "serial number": lambda: (day - date(1899, 12, 30)) // timedelta(days=1),
    }[plan.dates]()


def _with_month_word(draft: Draft, day: date) -> str:
    month = draft.words["months"][day.month - 1]
    if draft.language == "zh":
        return f"{day.year}年{month}{day.day}日"
    between = " de " if draft.language in ("es", "pt") else ". " if draft.language == "de" else " "
    return f"{day.day}{between}{month}{' de ' if between == ' de ' else ' '}{day.year}"
