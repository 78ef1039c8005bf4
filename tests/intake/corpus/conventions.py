"""How a list writes what it says: words and units of headings, units of values, decimal marks, fractions, years."""

from collections.abc import Callable
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from .code_pages import write_letters
from .dates_written import write_dates
from .draft import Column, Draft, Question
from .words import decimal_mark, words

if TYPE_CHECKING:
    from .plans import Plan

ALWAYS = ("loom", "hall", "machine_type", "reed_width_cm", "speed_ppm", "efficiency", "rail")
OFTEN = ("row", "place", "insertion", "year", "frames", "notes", "creel", "sides")
OWN = ("rail", "creel", "sides")
GROUPS = {"hall": 0, "row": 0, "place": 0, "machine_type": 1, "insertion": 1, "year": 1, "frames": 1, "reed_width_cm": 1,
          "speed_ppm": 2, "efficiency": 2}  # fmt: skip
"""Which group heading a column stands below, where there are such."""

UNIT_FORMS = ("({})", "[{}]", "{}")


def write_columns(draft: Draft, plan: "Plan") -> None:
    """Give the draft the columns of the list and their cells, in the conventions of the plan."""
    rng = draft.rng
    often = [name for name in OFTEN if rng.random() < 0.6 or name == plan.needed]
    for name in OFTEN:
        if name not in often and name not in OWN:
            draft.drop_column(name)
    names = ["loom", *rng.sample(ALWAYS[1:3], 2), *rng.sample([*ALWAYS[3:], *often], len(ALWAYS) - 3 + len(often))]
    for name in names:
        draft.columns.append(Column(name, _heading(draft, plan, name), group=GROUPS.get(name)))
        if name in OWN:
            _write_own(draft, name)
    for name in names:
        if name not in OWN:
            _WRITERS.get(name, _write_plainly)(draft, plan, name)
    if plan.dates:
        write_dates(draft, plan, _heading(draft, plan, "protected_until"))
    write_letters(draft, plan)


def _heading(draft: Draft, plan: "Plan", name: str) -> str:
    given = draft.words["headings"][name]
    average = draft.words["average"].get(name)
    if plan.headings == "in capitals":
        return _capitals(given[0], draft.language)
    if plan.headings == "on two lines of a cell":
        return given[0].replace(" ", "\n", 1)
    if plan.headings == "in two languages":
        other = words("de" if draft.language == "en" else "en")["headings"][name][0]
        return f"{given[0]} / {other}"
    if plan.headings == "with a qualifier" and average:
        return draft.rng.choice(average)
    return draft.rng.choice(given[1:]) if plan.headings == "shortened" and len(given) > 1 else given[0]


def _capitals(text: str, language: str) -> str:
    """Turkish has an İ and an I."""
    return (text.replace("i", "İ").replace("ı", "I") if language == "tr" else text).upper()


def _write_own(draft: Draft, name: str) -> None:
    """A column of the mill's own: its words are kept under its heading."""
    for loom in draft.looms:
        value = draft.rng.choice(draft.words["values"][name])
        draft.cells[loom["key"], name] = value
        loom["attributes"][draft.column(name).heading] = value


def _write_plainly(draft: Draft, plan: "Plan", name: str) -> None:
    for loom in draft.looms:
        value = loom[name]
        typed = plan.typed and isinstance(value, str) and value.isdigit() and value[0] != "0"
        draft.cells[loom["key"], name] = int(value) if typed else value if plan.typed or value is None else str(value)
        if name == "loom" and plan.numbering == "noughts by format":
            draft.cells[loom["key"], name], draft.codes[loom["key"], name] = int(value), "000"


def number(draft: Draft, plan: "Plan", value: float) -> Any:
    """A number as the list writes it: typed, or as text with the decimal mark of the language."""
    value = round(value, 4)
    if plan.typed:
        return int(value) if value == int(value) else value
    return f"{value:g}".replace(".", decimal_mark(draft.language)) if value < 1e5 else str(int(value))


def _unit(draft: Draft, name: str, unit: str) -> None:
    draft.column(name).unit = draft.rng.choice(UNIT_FORMS).format(unit)


def _write_width(draft: Draft, plan: "Plan", name: str) -> None:
    write, unit = WIDTHS[plan.width]
    if unit:
        _unit(draft, name, unit)
    for loom in draft.looms:
        draft.cells[loom["key"], name] = write(draft, plan, loom["reed_width_cm"])
    if plan.width == "nothing tells inch from cm":
        inch = ((("head", name), "inch"),), ((draft.column(name).heading, "inch"),)
        draft.truth.questions.append(Question("unit of the reed width", (("head", name),), inch))


def _fraction(draft: Draft, plan: "Plan", cm: float) -> str:
    """`74 3/4"`, `86½"`."""
    inches = Fraction(round(cm / 2.54 * 4), 4)
    whole, rest = divmod(inches, 1)
    if not rest:
        return f'{whole}"'
    signs = {Fraction(1, 4): "¼", Fraction(1, 2): "½", Fraction(3, 4): "¾"}
    return f'{whole}{signs[rest]}"' if draft.rng.random() < 0.5 else f'{whole} {rest}"'


def _mixed(draft: Draft, plan: "Plan", cm: float) -> Any:
    """Most in cm, some in inch, each saying so."""
    if draft.rng.random() < 0.7:
        return f"{number(draft, plan, cm)} cm"
    return f"{f'{cm / 2.54:.2f}'.replace('.', decimal_mark(draft.language))} in"


WIDTHS: dict[str, tuple[Callable[[Draft, "Plan", float], Any], str]] = {
    "cm in the heading": (number, "cm"),
    "cm in the cell": (lambda d, p, cm: f"{number(d, p, cm)} cm", ""),
    "cm without a word": (number, ""),
    "mm in the heading": (lambda d, p, cm: number(d, p, cm * 10), "mm"),
    "m in the heading": (lambda d, p, cm: number(d, p, cm / 100), "m"),
    "inch in the heading": (lambda d, p, cm: number(d, p, cm / 2.54), "inch"),
    "inch in the cell": (lambda d, p, cm: f'{number(d, p, cm / 2.54)}"', ""),
    "inch in fractions": (_fraction, ""),
    "cm and inch mixed": (_mixed, ""),
    "nothing tells inch from cm": (lambda d, p, cm: number(d, p, cm / 2.54), ""),
}
"""How a reed width is written, and the unit in its heading."""


def _write_speed(draft: Draft, plan: "Plan", name: str) -> None:
    units = draft.words["units"]
    unit = draft.rng.choice(units["rare" if plan.headings == "with a rare unit" else name])
    in_cell = plan.speed == "unit in the cell"
    if not in_cell:
        _unit(draft, name, unit)
    for loom in draft.looms:
        value = loom["speed_ppm"]
        text = number(draft, plan, value)
        if plan.speed == "thousands grouped" and value >= 1000:
            mark = {".": ",", ",": "."}[decimal_mark(draft.language)]
            text = f"{value:,.0f}".replace(",", draft.rng.choice((mark, "\u00a0", " ")))
        draft.cells[loom["key"], name] = f"{text} {units[name][0]}" if in_cell else text


def _write_efficiency(draft: Draft, plan: "Plan", name: str) -> None:
    if plan.efficiency == "percent":
        _unit(draft, name, "%")
    for loom in draft.looms:
        share, key = loom["efficiency"], loom["key"]
        percent = number(draft, plan, share * 100)
        draft.cells[key, name] = {
            "percent": percent, "percent without a word": percent, "fraction": number(draft, plan, share),
            "88 %": f"{percent} %", "%88": f"%{percent}", "shown as percent": share,
        }[plan.efficiency]  # fmt: skip
        if plan.efficiency == "shown as percent":
            draft.codes[key, name] = "0.0%"


def _write_year(draft: Draft, plan: "Plan", name: str) -> None:
    for loom in draft.looms:
        year = loom["year"]
        draft.cells[loom["key"], name] = {
            "plain": year if plan.typed else str(year), "month and year": f"{draft.rng.randint(1, 12):02d}/{year}",
            "about": f"~{year}" if draft.rng.random() < 0.3 else str(year),
        }[plan.year]  # fmt: skip


_WRITERS = {
    "reed_width_cm": _write_width, "speed_ppm": _write_speed, "efficiency": _write_efficiency, "year": _write_year,
}  # fmt: skip
