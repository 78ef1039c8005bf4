"""What every PDF of ours shares: fonts that can write the mill's words, and paragraphs of plain text."""

import unicodedata
from functools import cache
from html import escape

from reportlab.lib.colors import HexColor
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.cidfonts import UnicodeCIDFont
from reportlab.pdfbase.pdfmetrics import registerFont, registerFontFamily
from reportlab.pdfbase.ttfonts import TTFError, TTFont
from reportlab.platypus import Flowable, Paragraph

FONT, BOLD = "Beamslot", "Beamslot-Bold"
INK, GREY, WARN, SHADE = "#1f2a30", "#5b6a72", "#fbe3c4", "#dde5e8"
_CHINESE = "STSong-Light"


@cache
def _fonts() -> tuple[frozenset[int], tuple[str, frozenset[int]] | None]:
    """Registers the fonts once; gives the characters of the usual font and, where the system has one, of a wider one."""
    usual = TTFont(FONT, "Vera.ttf")  # comes with the library: Latin letters, Turkish included
    registerFont(usual)
    registerFont(TTFont(BOLD, "VeraBd.ttf"))
    registerFontFamily(FONT, normal=FONT, bold=BOLD, italic=FONT, boldItalic=BOLD)
    registerFont(UnicodeCIDFont(_CHINESE))  # every reader of PDFs brings it along
    try:
        wide = TTFont("Beamslot-Wide", "DejaVuSans.ttf")
    except TTFError:
        return frozenset(usual.face.charToGlyph), None
    registerFont(wide)
    return frozenset(usual.face.charToGlyph), ("Beamslot-Wide", frozenset(wide.face.charToGlyph))


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
    usual, wide = _fonts()
    pieces: list[tuple[str, str]] = []
    for char in text:
        font, shown = _font_of(char, usual, wide)
        if pieces and pieces[-1][0] == font:
            pieces[-1] = (font, pieces[-1][1] + shown)
        else:
            pieces.append((font, shown))
    return "".join(
        escape(t).replace("\n", "<br/>") if not f else f'<font name="{f}">{escape(t)}</font>' for f, t in pieces
    )


def _font_of(char: str, usual: frozenset[int], wide: tuple[str, frozenset[int]] | None) -> tuple[str, str]:
    if ord(char) in usual or char in "\n ":
        return "", char
    if ord(char) >= 0x2E80 and unicodedata.category(char) != "Cn" and ord(char) < 0x10000:
        return _CHINESE, char
    if wide and ord(char) in wide[1]:
        return wide[0], char
    bare = unicodedata.normalize("NFKD", char)[:1]
    return "", bare if bare and ord(bare) in usual else f"[U+{ord(char):04X}]"


class TickBox(Flowable):
    """An empty square to tick."""

    def __init__(self, size: float = 9):
        super().__init__()
        self.width = self.height = size

    def draw(self) -> None:
        self.canv.setLineWidth(0.8)
        self.canv.rect(0, -1, self.width, self.height)
