"""What moves the stock of a part, day by day."""

from datetime import date
from typing import NamedTuple

from tracker.domain.mill import LoomKey


class Flow(NamedTuple):
    """What moves a part's stock on a local day: needs negative, receipts positive."""

    day: date
    quantity: float
    key: LoomKey | None = None
    """The loom that needs it; None for receipts."""
    left_over: bool = False
    overdue: bool = False
    """Something that should be there: it comes before the needs of its day, others after them."""
    line: bool = False
    """It is an open order line that is not past its date."""
    not_come: bool = False
    """It is an order line past its date: it is not ordered again, and is to be had like what is ordered now."""
    counts: date | None = None
    """For what comes back from a booked conversion: the day from which it is there for those that follow; None = its own."""
