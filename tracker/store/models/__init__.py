"""The tables of the database, by area."""

from tracker.store.models.about import AboutRow, SealRow
from tracker.store.models.alarms import SeenAlarmRow
from tracker.store.models.jobs import JobEndRow, JobRow
from tracker.store.models.loads import AnswerRow, FindingRow, LoadRow, RowChangeRow, SourceTableRow
from tracker.store.models.method import (
    AlternativeRow,
    CheckRow,
    KitLineRow,
    MethodVersion,
    OperationRow,
    SetpointRow,
)
from tracker.store.models.mill import (
    AbsenceRow,
    ArticleRow,
    ChangeRow,
    ClosureRow,
    CrewRow,
    HallRow,
    LoomRow,
    OvertimeRow,
    ReadingRow,
    RunningRow,
    StandingRow,
    TermRow,
    ToolRow,
    WarpRow,
)
from tracker.store.models.people import ActRow, PersonRow, SessionRow
from tracker.store.models.photos import PhotoRow
from tracker.store.models.plans import BookingRow, LeftOverRow, OtherDateRow, PlanRow, PriceRow
from tracker.store.models.progress import ConversionRow, OperationMinutesRow, StageRow, WithdrawalRow
from tracker.store.models.records import (
    BobbinRow,
    CheckResultRow,
    PartUsedRow,
    SetValueRow,
    StopsRow,
    WasteRow,
    WorkDoneRow,
)
from tracker.store.models.rehearsals import RehearsalRow
from tracker.store.models.stock import MovementRow, PartRow, ReceiptRow, ReservationRow
from tracker.store.models.tokens import AnsweredPostRow, TokenRow

__all__ = [
    "AboutRow",
    "AbsenceRow",
    "ActRow",
    "AlternativeRow",
    "AnswerRow",
    "AnsweredPostRow",
    "ArticleRow",
    "BobbinRow",
    "BookingRow",
    "ChangeRow",
    "CheckResultRow",
    "CheckRow",
    "ClosureRow",
    "ConversionRow",
    "CrewRow",
    "FindingRow",
    "HallRow",
    "JobEndRow",
    "JobRow",
    "KitLineRow",
    "LeftOverRow",
    "LoadRow",
    "LoomRow",
    "MethodVersion",
    "MovementRow",
    "OperationMinutesRow",
    "OperationRow",
    "OtherDateRow",
    "OvertimeRow",
    "PartRow",
    "PartUsedRow",
    "PersonRow",
    "PhotoRow",
    "PlanRow",
    "PriceRow",
    "ReadingRow",
    "ReceiptRow",
    "RehearsalRow",
    "ReservationRow",
    "RowChangeRow",
    "RunningRow",
    "SealRow",
    "SeenAlarmRow",
    "SessionRow",
    "SetValueRow",
    "SetpointRow",
    "SourceTableRow",
    "StageRow",
    "StandingRow",
    "StopsRow",
    "TermRow",
    "TokenRow",
    "ToolRow",
    "WarpRow",
    "WasteRow",
    "WithdrawalRow",
    "WorkDoneRow",
]
