"""What becomes of a photo before it is kept: upright, scaled, without place and device; what is none is refused."""

from io import BytesIO

import pytest
from PIL import Image
from refusals import refused

from tracker.errors import DataError
from tracker.office import photos
from tracker.office.photos import kept_photo

TURN_RIGHT = 6
"""Orientation of a photo whose top is at the right of what the sensor wrote (Exif 2.32, table 6)."""
ORIENTATION, MODEL, GPS = 0x0112, 0x0110, 0x8825


def sent(size=(400, 300), kind="JPEG", mode="RGB", colour="red", **more) -> bytes:
    file = BytesIO()
    Image.new(mode, size, colour).save(file, kind, **more)
    return file.getvalue()


def test_a_photo_is_kept_upright_scaled_and_without_place_device_and_comment():
    """3,200 × 800 as the sensor wrote it, to be turned by a quarter: 800 × 3,200, of which the longest side becomes 1,600. Its
    left half is red, so that after a turn to the right its upper half is."""
    picture, exif = Image.new("RGB", (3200, 800), "blue"), Image.Exif()
    picture.paste("red", (0, 0, 1600, 800))
    exif[ORIENTATION], exif[MODEL] = TURN_RIGHT, "Pocket 3"
    exif.get_ifd(GPS)[1] = "N"
    file = BytesIO()
    picture.save(file, "JPEG", exif=exif, comment=b"by the window")
    content = kept_photo(file.getvalue())
    kept = Image.open(BytesIO(content))
    assert (kept.format, kept.size, dict(kept.getexif())) == ("JPEG", (400, 1600), {})
    assert b"Pocket" not in content and b"by the window" not in content
    (red, _, blue), (red_below, _, blue_below) = kept.getpixel((200, 100)), kept.getpixel((200, 1500))
    assert red > 200 > 50 > blue and blue_below > 200 > 50 > red_below


def test_what_shows_through_becomes_white_and_a_small_one_stays_as_small():
    kept = Image.open(BytesIO(kept_photo(sent(kind="PNG", mode="RGBA", colour=(0, 0, 0, 0)))))
    assert kept.size == (400, 300) and min(kept.getpixel((5, 5))) > 250
    assert Image.open(BytesIO(kept_photo(sent(kind="WEBP")))).format == "JPEG"


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"%PDF-1.7 no picture", r"no picture of a kind that can be read \(JPEG, PNG, WEBP\)"),
        (b"", "no picture"),
        (sent(kind="GIF"), "no picture"),
        (sent()[:600], "cannot be read to its end; take it again"),
        (sent(size=(10_000, 5_001), kind="PNG", mode="1", colour=1), "10,000 × 5,001 pixels; at most 50 million"),
    ],
)
def test_what_is_no_photo_is_refused(content, said):
    with refused(DataError, said):
        kept_photo(content)


def test_too_large_a_file_is_refused_before_it_is_looked_at(monkeypatch):
    monkeypatch.setattr(photos.Image, "open", None)
    with refused(DataError, "the photo has 20.1 MB; at most 20 MB are taken"):
        kept_photo(bytes(20_100_000))
