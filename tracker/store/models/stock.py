"""Parts, open receipts, the stock ledger and the reservations."""

from datetime import date, datetime

from sqlalchemy import ForeignKey, ForeignKeyConstraint, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class PartRow(Base):
    __tablename__ = "parts"
    part: Mapped[str] = mapped_column(primary_key=True)
    description: Mapped[str | None]
    unit: Mapped[str | None]
    safety_stock: Mapped[float | None]
    lead_time_days: Mapped[float | None]
    lot_size: Mapped[float | None]
    minimum_order: Mapped[float | None]
    price: Mapped[float | None]
    supplier: Mapped[str | None]
    location: Mapped[str | None]


class ReceiptRow(Base):
    __tablename__ = "receipts"
    order: Mapped[str] = mapped_column(primary_key=True)
    part: Mapped[str] = mapped_column(ForeignKey("parts.part"), primary_key=True)
    quantity: Mapped[float]
    due: Mapped[date]
    supplier: Mapped[str | None]
    unit: Mapped[str | None]


class MovementRow(AppendOnly, Base):
    """Signed quantities; stock on hand is their sum."""

    __tablename__ = "stock_movements"
    id: Mapped[int] = mapped_column(primary_key=True)
    part: Mapped[str] = mapped_column(ForeignKey("parts.part"), index=True)
    kind: Mapped[str]
    quantity: Mapped[float]
    at: Mapped[datetime]
    who: Mapped[str]
    why: Mapped[str]
    hall: Mapped[str | None]
    loom: Mapped[str | None]
    order: Mapped[str | None]
    entered_at: Mapped[datetime | None]


class ReservationRow(Base):
    """Open reservations; every change of them also stands in the change log."""

    __tablename__ = "reservations"
    __table_args__ = (
        ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),
        UniqueConstraint("hall", "loom", "part"),
    )
    id: Mapped[int] = mapped_column(primary_key=True)
    hall: Mapped[str]
    loom: Mapped[str]
    part: Mapped[str] = mapped_column(ForeignKey("parts.part"), index=True)
    quantity: Mapped[float]
