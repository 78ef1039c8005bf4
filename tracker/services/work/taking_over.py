"""Taking over the measured saving: from then on plans count on the measured share of what the loom list claims."""

from dataclasses import dataclass
from typing import Any

from tracker.domain.rows import ReadResult, SourceTable, TypedRow
from tracker.domain.tables import TERM_COLUMNS
from tracker.errors import DataError, Message, message
from tracker.intake.rows.compare import compare
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.services.work.worth import WorthReport, worth

SOURCE = SourceTable("", "", "terms", 0)
MOST = 10.0
"""Times the claimed saving that the term takes."""
TERM = next(column.title for column in TERM_COLUMNS if column.field == "share_of_saving")


@dataclass(frozen=True, slots=True)
class TakenOver:
    before: float
    share: float
    """Of the claimed saving, rounded to a thousandth."""

    @property
    def message(self) -> Message:
        before, share = (round(one * 100, 1) for one in (self.before, self.share))
        return message("saving-taken-over", before=before, share=share)

    def record(self) -> dict[str, Any]:
        return {"share_of_saving_before": self.before, "share_of_saving": self.share}


def would_take_over(report: WorthReport) -> TakenOver:
    """What taking over would change. DataError as of `take_over`."""
    return TakenOver(report.terms.share_of_saving, _share(report))


def take_over(context: Context) -> TakenOver:
    """Make the measured share the term `share of saving`, as a recorded change of terms. DataError where nothing was measured
    or claimed, where less than nothing is saved, or more than the term can hold."""
    context.require(May.PLAN)
    report = worth(context)
    share = _share(report)
    with context.unit_of_work(May.PLAN) as uow:
        row = TypedRow("terms", {"term": TERM, "value": share})
        writer = uow.load_writer()
        writer.begin([], ())
        writer.write(compare(ReadResult((SOURCE,), (row,), ()), {"terms": uow.rows("terms")}).changes, {})
        uow.commit()
    return TakenOver(report.terms.share_of_saving, share)


def _share(report: WorthReport) -> float:
    saved = report.savings
    if saved is None or saved.money is None:
        raise DataError("take-over-unmeasured")
    if not saved.claimed:
        raise DataError("take-over-unclaimed")
    share = round(saved.money.estimate / saved.claimed, 3)
    if not 0 <= share <= MOST:
        raise DataError("take-over-beyond", share=round(share * 100, 1), most=MOST * 100)
    return share
