"""What was remarked on a loom's conversions, with the photos that go with it."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.mill import LoomKey
from tracker.domain.photos import Photo
from tracker.errors import DataError
from tracker.services.context import Context
from tracker.services.work.sign_off import local_time
from tracker.store.photos import picture_of

Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Remark:
    key: LoomKey
    at: datetime | None
    """When that conversion began, local; None where only an operation of it was told."""
    about: str
    """The operation; empty = the whole."""
    text: str
    photos: tuple[Photo, ...] = ()


def remarks_of(key: LoomKey, work: Iterable[Row], photos: Iterable[Photo], zone: ZoneInfo) -> list[Remark]:
    """Of one loom, by its rows of Work done (moments local): oldest conversion first, the whole before its operations."""
    rows = list(work)
    begun = {row["card"]: row["started_at"] for row in rows if row["started_at"]}
    taken: dict[tuple[datetime | None, str], list[Photo]] = {}
    for photo in photos:
        if photo.key == key:
            taken.setdefault((local_time(photo.begun_at, zone), photo.operation or ""), []).append(photo)
    said: dict[tuple[datetime | None, str], dict[str, None]] = {place: {} for place in taken}
    for row in rows:
        if row["remark"]:
            at = row["started_at"] or begun.get(row["card"])
            said.setdefault((at, row["operation"] or ""), {})[row["remark"]] = None
    return [
        Remark(key, at, about, text, tuple(taken.get((at, about), ())) if last else ())
        for at, about in sorted(said, key=lambda place: (place[0] or datetime.min, place[1]))
        for text, last in _last_told(list(said[at, about]))
    ]


def _last_told(texts: Sequence[str]) -> Iterator[tuple[str, bool]]:
    """Each text, and whether it is the last one, beside which the photos stand; a photo whose remark was corrected away stays."""
    yield from ((text, text == texts[-1]) for text in texts)
    if not texts:
        yield "", True


def picture(context: Context, number: int) -> bytes:
    """The picture of a photo, as a JPEG file. DataError where there is none, or it was taken back."""
    with context.reading() as uow:
        found = picture_of(uow.session, number)
    if found is None:
        raise DataError("photo-gone")
    return found
