"""What the mill must still load before a plan can be made."""

from tracker.domain.tables import TABLES
from tracker.errors import Message, message
from tracker.services.context import Context


def lacking(context: Context) -> tuple[Message, ...]:
    """What a plan rests on and is not in the database, each with its sheet, in the order in which it is best loaded."""
    with context.reading() as uow:
        mill = uow.mill()
    there = {
        "looms": mill.looms,
        "operations": mill.method.operations,
        "articles": mill.articles or mill.standing,  # a standing loom needs no beam-out
        "warps": mill.warps or mill.standing,
        "crews": mill.crews,
    }
    return tuple(
        message("still-to-load", table=table, sheet=TABLES[table].named) for table, rows in there.items() if not rows
    )
