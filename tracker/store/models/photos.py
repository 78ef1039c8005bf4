"""Photos that were told with remarks. History as the remarks are; the picture itself is read only where it is asked for."""

from datetime import datetime

from sqlalchemy import ForeignKeyConstraint, Index, LargeBinary
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import Base
from tracker.store.models.progress import OfLoomHistory


class PhotoRow(OfLoomHistory, Base):
    __tablename__ = "remark_photos"
    __table_args__ = (
        ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),
        Index("ix_remark_photos_hall_loom", "hall", "loom"),
    )
    card: Mapped[str | None]
    begun_at: Mapped[datetime]
    operation: Mapped[str | None]
    remark: Mapped[str]
    at: Mapped[datetime]
    who: Mapped[str]
    picture: Mapped[bytes] = mapped_column(LargeBinary, deferred=True)
