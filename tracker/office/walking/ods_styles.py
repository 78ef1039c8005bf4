"""Number formats of an OpenDocument spreadsheet, and which cell style has which; which styles strike through, and which hide
their table.

Element and attribute names: OASIS OpenDocument 1.3 part 3 (schema), from memory.
"""

from tracker.office.walking.format_codes import matters

_DATA_STYLES = ("number-style", "percentage-style", "currency-style", "date-style", "time-style", "boolean-style")
_PARTS = {
    "day": ("d", "dd"), "year": ("yy", "yyyy"), "hours": ("h", "hh"), "minutes": ("mm", "mm"), "seconds": ("ss", "ss"),
    "am-pm": ("AM/PM", "AM/PM"), "day-of-week": ("ddd", "dddd"),
}  # fmt: skip
_BARE = set(" .,/-:%()")


class OdsStyles:
    """Follows the style elements of styles.xml and content.xml."""

    def __init__(self) -> None:
        self.hidden_tables: set[str] = set()
        self._strikes: dict[str, bool] = {}
        self._codes: dict[str, str] = {}
        """Data style → code."""
        self._data_of: dict[str, str] = {}
        """Cell style → data style."""
        self._parent: dict[str, str] = {}
        self._known: dict[str, str] = {}
        self._style = self._data_style = ""
        self._pieces: list[str] = []
        self._in_text = False

    def code(self, style: str) -> str:
        """Code of a cell style if it matters, else ``; a style without a format has its parent's."""
        if style not in self._known:
            self._known[style] = self._look_up(style)
        return self._known[style]

    def struck(self, style: str) -> bool:
        """Does a style strike its text through? One that does not say has it of its parent."""
        for _ in range(20 if any(self._strikes.values()) else 0):
            if style in self._strikes or not style:
                break
            style = self._parent.get(style, "")
        return self._strikes.get(style, False)

    def _look_up(self, style: str) -> str:
        for _ in range(20):
            if style in self._data_of or not style:
                break
            style = self._parent.get(style, "")
        code = self._codes.get(self._data_of.get(style, ""), "")
        return code if matters(code) else ""

    def start(self, tag: str, at: dict[str, str]) -> None:
        if tag in _DATA_STYLES:
            self._data_style, self._pieces = at.get("style:name", ""), []
        elif self._data_style:
            self._format_piece(tag, at)
        elif tag == "style":
            self._style = at.get("style:name", "")
            self._parent[self._style] = at.get("style:parent-style-name", "")
            if "style:data-style-name" in at:
                self._data_of[self._style] = at["style:data-style-name"]
        elif tag == "text-properties" and (line := at.get("style:text-line-through-style")):
            self._strikes[self._style] = line != "none"
        elif tag == "table-properties" and at.get("table:display") == "false":
            self.hidden_tables.add(self._style)

    def end(self, tag: str) -> None:
        if tag in _DATA_STYLES:
            self._codes[self._data_style] = "".join(self._pieces)
            self._data_style = ""
        elif tag in ("text", "embedded-text"):
            self._in_text = False

    def text(self, data: str) -> None:
        if self._in_text:
            self._pieces.append(data if set(data) <= _BARE else f'"{data}"')

    def _format_piece(self, tag: str, at: dict[str, str]) -> None:
        long = at.get("number:style") == "long"
        if tag == "number":
            self._pieces.append(_number_code(at))
        elif tag == "month":
            textual = at.get("number:textual") == "true"
            self._pieces.append(("mmmm" if long else "mmm") if textual else ("mm" if long else "m"))
        elif tag in _PARTS:
            self._pieces.append(_PARTS[tag][long])
        elif tag in ("text", "embedded-text"):
            self._in_text = True


def _number_code(at: dict[str, str]) -> str:
    digits = int(at.get("number:min-integer-digits", 1))
    whole = "0" * digits if digits else "#"
    if at.get("number:grouping") == "true":
        whole = "#," + whole.rjust(3, "#")
    decimals = int(at.get("number:decimal-places", 0))
    return f"{whole}.{'0' * decimals}" if decimals else whole
