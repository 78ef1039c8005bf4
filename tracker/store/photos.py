"""Keep photos of remarks and read them back, the pictures one by one."""

from collections.abc import Collection
from dataclasses import asdict

from sqlalchemy import select, tuple_
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey
from tracker.domain.photos import Photo
from tracker.store.models import PhotoRow
from tracker.store.withdrawals import stands


def add_photo(session: Session, photo: Photo, picture: bytes) -> None:
    fields = asdict(photo)
    del fields["key"], fields["number"]
    session.add(PhotoRow(hall=photo.key.hall, loom=photo.key.loom, picture=picture, **fields))
    session.flush()


def photos_of(session: Session, keys: Collection[LoomKey]) -> list[Photo]:
    """Those of some looms, oldest first."""
    places = tuple_(PhotoRow.hall, PhotoRow.loom).in_([(key.hall, key.loom) for key in keys])
    rows = session.scalars(select(PhotoRow).where(places, stands(PhotoRow)).order_by(PhotoRow.id))
    return [
        Photo(LoomKey(row.hall, row.loom), row.card, row.begun_at, row.operation, row.remark, row.at, row.who, row.id)
        for row in rows
    ]


def picture_of(session: Session, number: int) -> bytes | None:
    """The JPEG file of that photo; None where there is none that counts."""
    return session.scalar(select(PhotoRow.picture).where(PhotoRow.id == number, stands(PhotoRow)))
