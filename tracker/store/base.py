"""The declarative base, the column types of the trade, and what marks a table as history."""

from datetime import UTC, datetime
from typing import Any, ClassVar

from sqlalchemy import JSON, DateTime, MetaData, String, TypeDecorator
from sqlalchemy.orm import DeclarativeBase

NAMING = {
    "ix": "ix_%(column_0_label)s",
    "uq": "uq_%(table_name)s_%(column_0_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}


class UtcDateTime(TypeDecorator[datetime]):
    """An aware moment, kept as UTC; a naive one is a programming error and is refused."""

    impl = DateTime
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Any) -> datetime | None:
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"a moment without time zone cannot be stored: {value}")
        return value.astimezone(UTC).replace(tzinfo=None)

    def process_result_value(self, value: datetime | None, dialect: Any) -> datetime | None:
        return None if value is None else value.replace(tzinfo=UTC)


class Weekdays(TypeDecorator[frozenset[int]]):
    """Weekdays 0 = Monday … 6 = Sunday, kept as `0,1,2`."""

    impl = String(20)
    cache_ok = True

    def process_bind_param(self, value: frozenset[int] | None, dialect: Any) -> str | None:
        return None if value is None else ",".join(str(day) for day in sorted(value))

    def process_result_value(self, value: str | None, dialect: Any) -> frozenset[int] | None:
        return None if value is None else frozenset(int(day) for day in value.split(",") if day)


class Base(DeclarativeBase):
    metadata = MetaData(naming_convention=NAMING)
    type_annotation_map: ClassVar[dict[Any, Any]] = {
        datetime: UtcDateTime,
        frozenset[int]: Weekdays,
        dict[str, Any]: JSON,
        list[Any]: JSON,
    }


class AppendOnly:
    """A table whose rows are history: they are added and read, never changed or removed (`tracker/store/history.py`)."""
