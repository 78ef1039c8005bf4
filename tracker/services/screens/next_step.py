"""What the mill must still load before a plan can be made."""

from tracker.domain.tables import TABLES
from tracker.services.context import Context


def lacking(context: Context) -> tuple[str, ...]:
    """What a plan rests on and is not in the database, each with its sheet, in the order in which it is best loaded."""
    with context.reading() as uow:
        mill = uow.mill()
    there = {
        ("looms", "a loom list"): mill.looms,
        ("operations", "a method"): mill.method.operations,
        ("articles", "articles"): mill.articles or mill.standing,  # a standing loom needs no beam-out
        ("warps", "warps"): mill.warps or mill.standing,
        ("crews", "crews"): mill.crews,
    }
    return tuple(f"{what} (sheet {TABLES[table].sheet})" for (table, what), rows in there.items() if not rows)
