"""What is late, as a sheet of the plan workbook."""

from collections.abc import Sequence

from tracker.domain.late import Late
from tracker.domain.tables import Kind
from tracker.export.wording import Wording
from tracker.office.writing.sheets import TidySheet


def late_sheet(found: Sequence[Late], write: Wording) -> TidySheet:
    """One row each, in the order given; moments are the mill's local time."""
    col, zone = write.col, write.zone
    columns = [col("col-since", Kind.MOMENT), col("col-days", Kind.INTEGER), col("heading-loom", Kind.IDENTIFIER),
               col("heading-hall", Kind.IDENTIFIER), col("col-what"), col("col-what-follows")]  # fmt: skip
    rows = [
        [one.due.astimezone(zone).replace(tzinfo=None), one.days, one.key.loom if one.key else None,
         one.key.hall if one.key else None, write.speaker.say(one.what), write.speaker.say(one.follows)]
        for one in found
    ]  # fmt: skip
    return write.sheet("book-late", columns, rows)
