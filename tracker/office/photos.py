"""Photos as they are sent, made into what is kept: a JPEG of a sensible size that tells nothing of place and device."""

from io import BytesIO

from PIL import Image, ImageOps, UnidentifiedImageError

from tracker.errors import DataError

LONGEST_PX, QUALITY = 1600, 80
"""Of the side that is kept; a bolt's mark can still be read, and a photo takes some 300 kB."""
LARGEST_FILE_BYTES, MOST_PIXELS = 20_000_000, 50_000_000
"""Of what is sent: above what phones and tablets take (48 million pixels), far below what fills a server's memory."""
FORMATS = ("JPEG", "PNG", "WEBP")
ENDINGS = ("jpg", "jpeg", "png", "webp")


def kept_photo(content: bytes) -> bytes:
    """As JPEG, upright, its longest side 1,600 px at most, without anything but the picture (no place, device, comment).

    DataError for a file that is no picture, is broken, or is larger than the limits, which its head tells before anything
    of it is unpacked.
    """
    if len(content) > LARGEST_FILE_BYTES:
        size, most = len(content) / 1e6, LARGEST_FILE_BYTES / 1e6
        raise DataError("photo-too-large", megabytes=size, most=most)
    try:
        with Image.open(BytesIO(content), formats=FORMATS) as image:
            _refuse_vast(image)
            image.draft("RGB", (LONGEST_PX, LONGEST_PX))  # a JPEG is unpacked no larger than it needs to be
            return _jpeg(_on_white(ImageOps.exif_transpose(image)))
    except (UnidentifiedImageError, Image.DecompressionBombError) as error:
        raise DataError("photo-no-picture", formats=", ".join(FORMATS)) from error
    except (OSError, SyntaxError, ValueError, EOFError) as error:  # what the library says of broken files
        raise DataError("photo-broken") from error


def _refuse_vast(image: Image.Image) -> None:
    width, height = image.size
    if width * height > MOST_PIXELS:
        raise DataError("photo-too-fine", width=width, height=height, most=MOST_PIXELS / 1e6)


def _on_white(image: Image.Image) -> Image.Image:
    """Scaled down, what shows through made white."""
    image.thumbnail((LONGEST_PX, LONGEST_PX))
    if not image.has_transparency_data:
        return image.convert("RGB")
    seen = image.convert("RGBA")
    return Image.alpha_composite(Image.new("RGBA", seen.size, "white"), seen).convert("RGB")


def _jpeg(image: Image.Image) -> bytes:
    image.info.clear()  # else a comment goes along
    file = BytesIO()
    image.save(file, "JPEG", quality=QUALITY, optimize=True)
    return file.getvalue()
