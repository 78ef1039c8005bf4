"""What is late, as a sheet of the plan workbook."""

from collections.abc import Sequence
from zoneinfo import ZoneInfo

from tracker.domain.late import Late
from tracker.domain.tables import Kind
from tracker.office.writing.sheets import Col, TidySheet
from tracker.words import ENGLISH


def late_sheet(found: Sequence[Late], zone: ZoneInfo) -> TidySheet:
    """One row each, in the order given; moments are the mill's local time."""
    columns = [Col("Since", Kind.MOMENT), Col("Days", Kind.INTEGER), Col("Loom", Kind.IDENTIFIER), Col("Hall", Kind.IDENTIFIER),
               Col("What"), Col("What follows")]  # fmt: skip
    rows = [
        [one.due.astimezone(zone).replace(tzinfo=None), one.days, one.key.loom if one.key else None,
         one.key.hall if one.key else None, ENGLISH.say(one.what), ENGLISH.say(one.follows)]
        for one in found
    ]  # fmt: skip
    return TidySheet("Late", columns, rows)
