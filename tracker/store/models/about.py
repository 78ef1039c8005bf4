"""What the database says of itself."""

from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import Base


class AboutRow(Base):
    """`program` = `beamslot` marks the database as ours."""

    __tablename__ = "about"
    what: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str]
