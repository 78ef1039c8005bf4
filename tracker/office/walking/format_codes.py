"""Number format codes: the built-in ones by their number, and which codes change what a value means.

Numbers and codes: ECMA-376 part 1, 18.8.30 `numFmt`, from memory; 27 to 58 as that section lists them for zh-cn.
"""

import re

SYSTEM_DATE = "[$-x-sysdate]"
"""Built-in 14 and 22: shown in the order of the computer that opens the file, so the code proves no order."""

BUILT_IN: dict[int, str] = {
    0: "General", 1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00", 9: "0%", 10: "0.00%", 11: "0.00E+00", 12: "# ?/?",
    13: "# ??/??", 14: SYSTEM_DATE, 15: "d-mmm-yy", 16: "d-mmm", 17: "mmm-yy", 18: "h:mm AM/PM", 19: "h:mm:ss AM/PM",
    20: "h:mm", 21: "h:mm:ss", 22: f"{SYSTEM_DATE} h:mm", 37: "#,##0", 38: "#,##0", 39: "#,##0.00", 40: "#,##0.00",
    45: "mm:ss", 46: "[h]:mm:ss", 47: "mmss.0", 48: "##0.0E+0", 49: "@",
    27: 'yyyy"年"m"月"', 28: 'm"月"d"日"', 29: 'm"月"d"日"', 30: "m-d-yy", 31: 'yyyy"年"m"月"d"日"',
    32: 'h"时"mm"分"', 33: 'h"时"mm"分"ss"秒"', 34: 'AM/PM h"时"mm"分"', 35: 'AM/PM h"时"mm"分"ss"秒"',
    36: 'yyyy"年"m"月"', 50: 'yyyy"年"m"月"', 51: 'm"月"d"日"', 52: 'yyyy"年"m"月"', 53: 'm"月"d"日"',
    54: 'm"月"d"日"', 55: 'AM/PM h"时"mm"分"', 56: 'AM/PM h"时"mm"分"ss"秒"', 57: 'yyyy"年"m"月"', 58: 'm"月"d"日"',
}  # fmt: skip

_COLOUR = re.compile(r"\[(?:black|blue|cyan|green|magenta|red|white|yellow|color ?\d+)\]", re.IGNORECASE)
_SPACING = re.compile(r"[_*]\\?.")
_PLAIN = re.compile(r"[#?0,.()\-+ ;]*(?:@?)|General", re.IGNORECASE)
_PADDED = re.compile(r"0.*0")
_FIXED = re.compile(r"#?0\.0+")
"""A loom 1.10 kept as a number shows its nought only by such a code."""
_SCALED = re.compile(r"[0#?],+(?=$|[.;])")


def tidy(code: str) -> str:
    """The code in one spelling: without locale, trailing text section and needless backslashes (`yyyy\\-mm` → `yyyy-mm`)."""
    code = re.sub(r"^\[\$-F800\]", SYSTEM_DATE, code.removesuffix(";@"), flags=re.IGNORECASE)
    code = re.sub(r"\[\$-(?!x-sysdate)[^\]]*\]", "", code)
    return re.sub(r"\\(.)", lambda hit: hit[1] if hit[1] in " .,/-:()" else f'"{hit[1]}"', code)


def matters(code: str) -> bool:
    """True where a cell shows other than its plain number: padding, fixed decimals, literals, percent, dates, hidden
    thousands."""
    bare = _SPACING.sub("", _COLOUR.sub("", code)).strip()
    if not _PLAIN.fullmatch(bare):
        return True
    whole = bare.partition(";")[0].partition(".")[0]
    return bool(_PADDED.search(whole) or _SCALED.search(bare) or _FIXED.fullmatch(bare))
