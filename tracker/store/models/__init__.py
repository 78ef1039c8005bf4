"""The tables of the database, by area."""

from tracker.store.models.about import AboutRow, SealRow
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
from tracker.store.models.plans import BookingRow, LeftOverRow, OtherDateRow, PlanRow, PriceRow
from tracker.store.models.progress import ConversionRow, OperationMinutesRow, SettingRow, StageRow
from tracker.store.models.stock import MovementRow, PartRow, ReceiptRow, ReservationRow

__all__ = [
    "AboutRow",
    "AbsenceRow",
    "AlternativeRow",
    "AnswerRow",
    "ArticleRow",
    "BookingRow",
    "ChangeRow",
    "CheckRow",
    "ClosureRow",
    "ConversionRow",
    "CrewRow",
    "FindingRow",
    "HallRow",
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
    "PlanRow",
    "PriceRow",
    "ReadingRow",
    "ReceiptRow",
    "ReservationRow",
    "RowChangeRow",
    "RunningRow",
    "SealRow",
    "SetpointRow",
    "SettingRow",
    "SourceTableRow",
    "StageRow",
    "StandingRow",
    "TermRow",
    "ToolRow",
    "WarpRow",
]
