"""What every PDF of ours shares: fonts that can write the mill's words, and paragraphs of plain text."""

import os
import unicodedata
from dataclasses import dataclass
from functools import cache
from html import escape
from pathlib import Path

from reportlab.lib.colors import HexColor
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.cidfonts import UnicodeCIDFont
from reportlab.pdfbase.pdfmetrics import registerFont, registerFontFamily
from reportlab.pdfbase.ttfonts import TTFError, TTFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable, Paragraph

FONT, BOLD = "Beamslot", "Beamslot-Bold"
INK, GREY, WARN, SHADE = "#1f2a30", "#5b6a72", "#fbe3c4", "#dde5e8"
_BORROWED = "STSong-Light"
"""A font that is only named in the file: every reader of PDFs is to bring one along for it."""
_CHINESE = "Beamslot-Chinese"
_CHINESE_FILES = (
    "NotoSansSC-Regular.ttf", "NotoSansSC[wght].ttf", "NotoSansCJKsc-Regular.ttf", "wqy-microhei.ttc", "wqy-zenhei.ttc",
    "DroidSansFallbackFull.ttf", "DroidSansFallback.ttf", "simhei.ttf", "msyh.ttc", "simsun.ttc", "Deng.ttf",
    "Arial Unicode.ttf", "STHeiti Light.ttc",
)  # fmt: skip
"""Where systems have Chinese letters as TrueType outlines, the only ones that the library can embed."""
_FOLDERS = (
    "/usr/share/fonts", "/usr/local/share/fonts", "~/.fonts", "~/.local/share/fonts", "C:/Windows/Fonts", "/Library/Fonts",
    "/System/Library/Fonts",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Fonts:
    usual: frozenset[int]
    """Characters of the font that comes with the library."""
    others: tuple[tuple[str, frozenset[int]], ...]
    """Fonts of this machine that are embedded too, the first that has a letter writes it."""


@cache
def _fonts() -> _Fonts:
    """Registers the fonts once."""
    usual = TTFont(FONT, "Vera.ttf")  # comes with the library: Latin letters, Turkish included
    registerFont(usual)
    registerFont(TTFont(BOLD, "VeraBd.ttf"))
    registerFontFamily(FONT, normal=FONT, bold=BOLD, italic=FONT, boldItalic=BOLD)
    registerFont(UnicodeCIDFont(_BORROWED))
    others = [_registered("Beamslot-Wide", "DejaVuSans.ttf"), _chinese()]
    return _Fonts(frozenset(usual.face.charToGlyph), tuple(font for font in others if font))


def _chinese() -> tuple[str, frozenset[int]] | None:
    wanted = {name.casefold(): i for i, name in enumerate(_CHINESE_FILES)}
    found = (
        Path(folder) / name
        for top in _FOLDERS for folder, _, names in os.walk(Path(top).expanduser()) for name in names
        if name.casefold() in wanted
    )  # fmt: skip
    best = sorted(found, key=lambda path: (wanted[path.name.casefold()], str(path)))
    return next((font for path in best if (font := _registered(_CHINESE, str(path)))), None)


def _registered(name: str, file: str) -> tuple[str, frozenset[int]] | None:
    """The font under a name and the characters that it has; None where it is not there or cannot be embedded."""
    try:
        font = TTFont(name, file)
    except (TTFError, OSError):
        return None
    registerFont(font)
    registerFontFamily(name, normal=name, bold=name, italic=name, boldItalic=name)
    return name, frozenset(font.face.charToGlyph)


def is_borrowed(pdf: bytes) -> bool:
    """Whether some letters of a file are left to the reader's own font."""
    return _BORROWED.encode() in pdf


def borrows(canvas: Canvas) -> bool:
    """The same of a file that is still being drawn."""
    return _BORROWED in canvas._doc.fontMapping  # type: ignore[attr-defined]


def style(
    size: float = 9, bold: bool = False, colour: str = INK, space_before: float = 0, right: bool = False
) -> ParagraphStyle:
    _fonts()
    return ParagraphStyle(
        "plain", fontName=BOLD if bold else FONT, fontSize=size, leading=size * 1.3, textColor=HexColor(colour),
        spaceBefore=space_before, alignment=2 if right else 0,
    )  # fmt: skip


def paragraph(text: str, size: float = 9, **more: object) -> Paragraph:
    """A paragraph of plain text: nothing in it is markup, and each character has a font that can write it."""
    return Paragraph(markup(text), style(size, **more))  # type: ignore[arg-type]


def markup(text: str) -> str:
    """The text for a paragraph; characters that no font has lose their accent, or become their code: `[U+10FFFF]`."""
    fonts = _fonts()
    pieces: list[tuple[str, str]] = []
    for char in text:
        font, shown = _font_of(char, fonts)
        if pieces and pieces[-1][0] == font:
            pieces[-1] = (font, pieces[-1][1] + shown)
        else:
            pieces.append((font, shown))
    return "".join(
        escape(t).replace("\n", "<br/>") if not f else f'<font name="{f}">{escape(t)}</font>' for f, t in pieces
    )


def _font_of(char: str, fonts: _Fonts) -> tuple[str, str]:
    """The font for a character, `` for the usual one, and what is written with it."""
    if ord(char) in fonts.usual or char in "\n ":
        return "", char
    for name, letters in fonts.others:
        if ord(char) in letters:
            return name, char
    if 0x2E80 <= ord(char) < 0x10000 and unicodedata.category(char) != "Cn":
        return _BORROWED, char
    bare = unicodedata.normalize("NFKD", char)[:1]
    return "", bare if bare and ord(bare) in fonts.usual else f"[U+{ord(char):04X}]"


class TickBox(Flowable):
    """An empty square to tick."""

    def __init__(self, size: float = 9):
        super().__init__()
        self.width = self.height = size

    def draw(self) -> None:
        self.canv.setLineWidth(0.8)
        self.canv.rect(0, -1, self.width, self.height)
