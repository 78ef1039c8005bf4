"""What each numbered case is: number → the list that is made for it."""

from collections.abc import Callable
from datetime import date

from . import columns_for_one_field, dirt_in_cells, dirt_in_numbers, dirt_in_rows, layouts, layouts_several
from .code_pages import may_ask_code_page
from .draft import ANYTHING, Column, Draft, Finished, Question
from .found import (
    below,
    changed,
    column_of,
    finished,
    headed,
    low_efficiency,
    narrow_width,
    own_column,
    put,
    starting_again,
    ten_looms,
)
from .sheets import ODD

CASES: dict[str, Callable[[], Finished]] = {}


def case(number: str, make: Callable[[str], Finished]) -> None:
    CASES[number] = lambda: make(number)


# 1: several looms to a row
def _two_to_a_row(number: str) -> Finished:
    """`Hall;Loom;Type;Rail;Loom;Type;Rail`."""
    draft = ten_looms(names=("hall", "loom", "machine_type", "rail"))
    draft.column("machine_type").heading, draft.column("rail").heading = "Type", "Rail"
    for loom in draft.looms:
        loom["attributes"] = {"Rail": loom["attributes"].pop("Cross rail")}
    return finished(number, draft, layouts_several.groups_after_hall)


def _speed_and_creel_repeated(number: str) -> Finished:
    """`Sala;N. telaio;Tipo macchina;Velocità (colpi/min);Cantra`, the last four repeated."""
    draft = ten_looms("it", names=("hall", "loom", "machine_type", "speed_ppm", "rail"))
    draft.column("rail").heading = "Cantra"
    for loom in draft.looms:
        loom["attributes"] = {"Cantra": loom["attributes"].pop("Traversa")}
    return finished(number, draft, layouts_several.groups_after_hall)


case("1.1 right-hand looms", _two_to_a_row)
case("1.2 left looms' values", _speed_and_creel_repeated)

# 2: several columns for one field
case("2.1 nominal and actual under one heading", lambda n: changed(n, columns_for_one_field.nominal_over_actual))
case("2.2 shifts under one heading", lambda n: changed(n, columns_for_one_field.shifts))
case("2.3 Vitesse réelle beside Vitesse nominale", lambda n: changed(n, columns_for_one_field.nominal_and_actual, "fr"))
case("2.4 Speed twice", lambda n: changed(n, columns_for_one_field.same_heading_twice))

# 3: headings with a qualifying word, or with a unit spelt in a rarer way
HEADINGS = (
    ("speed_ppm", "fr", "Vitesse (cp/min)"), ("speed_ppm", "it", "Veloc. / pass/min"), ("speed_ppm", "en", "M/c speed"),
    ("speed_ppm", "en", "Avg. speed"), ("efficiency", "fr", "Rdt moyen"), ("efficiency", "tr", "Ort. randıman"),
    ("efficiency", "zh", "平均效率"), ("speed_ppm", "en", "Speed 2026"), ("reed_width_cm", "en", "R/S (cm)"),
    ("efficiency", "de", "N.E. %"), ("speed_ppm", "de", "Schuss pro Minute"), ("speed_ppm", "de", "Touren/min"),
    ("reed_width_cm", "zh", "筘幅cm"),
)  # fmt: skip
for i, (name, language, heading) in enumerate(HEADINGS, 1):
    case(
        f"3.{i} {heading}", lambda n, name=name, heading=heading, language=language: headed(n, name, heading, language)
    )

# 4: headings below the rows
case("4.1 headings below", lambda n: finished(n, ten_looms(), layouts.headings_below))


# 5: code pages
def _noted(number: str, note: str, encoding: str, language: str = "en") -> Finished:
    """A text file in which one cell holds letters beyond ASCII."""
    draft = ten_looms(language)
    draft.columns.append(Column("notes", draft.words["headings"]["notes"][0]))
    draft.cells[4, "notes"] = draft.loom(4)["notes"] = note
    may_ask_code_page(draft, encoding)
    return finished(number, draft, encoding=encoding)


def _odd_byte(number: str) -> Finished:
    """UTF-8 but for one byte: the other cells read as they are written."""
    draft = ten_looms()
    draft.columns.append(Column("notes", "Remarks"))
    for key, note in ((1, "métier réglé"), (4, f"caf{ODD}"), (6, "à côté")):
        draft.cells[key, "notes"] = draft.loom(key)["notes"] = note
    draft.loom(4)["notes"] = ANYTHING
    may_ask_code_page(draft, "utf-8")
    return finished(number, draft, encoding="utf-8")


case("5.1 one odd byte", _odd_byte)
case("5.2 daño in cp1252", lambda n: _noted(n, "daño", "cp1252"))
case("5.3 métier réglé in cp850", lambda n: _noted(n, "métier réglé", "cp850"))
case("5.4 huile ôtée in Mac Roman", lambda n: _noted(n, "huile ôtée", "mac_roman"))
case("5.5 manutenção in Mac Roman", lambda n: _noted(n, "manutenção", "mac_roman"))
case("5.6 così in cp850", lambda n: _noted(n, "così", "cp850", "it"))

# 6: what is a loom, and which
case("6.1 101-108", lambda n: changed(n, dirt_in_numbers.range_of_looms))
case("6.2 a count by type", lambda n: below(n, dirt_in_rows.count_by_type))
case("6.3 North side and South side", lambda n: finished(n, ten_looms(), starting_again))
case("6.4 A–02 beside A-02", lambda n: changed(n, dirt_in_numbers.two_dashes))
case("6.5 B 3 beside B3", lambda n: changed(n, dirt_in_numbers.a_blank_inside))
case("6.6 'A019", lambda n: changed(n, dirt_in_numbers.apostrophe))
case("6.7 005*", lambda n: changed(n, dirt_in_numbers.footnote_star))


# 7: what is dropped, or taken for something else
def _attributes_apart(number: str) -> Finished:
    draft = ten_looms()
    return finished(number, draft, layouts_several.attributes_on_a_second_sheet)


def _serial_days(number: str) -> Finished:
    """46,388 is 1 January 2027 in the count of days from 30 December 1899 on (46,388 = 127 × 365 + 33)."""
    draft = ten_looms()
    days = column_of("protected_until", "Protected until", lambda key: 46_388 + key, lambda key: date(2027, 1, 1 + key))
    days(draft)
    at = (("head", "protected_until"),)
    spelt = ((("Protected until", "protected until"),),)
    draft.truth.questions.append(Question("days counted", at, spelt, required=False))
    return finished(number, draft, encoding="utf-8")


def _two_times(draft: Draft) -> None:
    """Every width is written `2x190`: the heading is certain, its values are no widths; asked or refused."""
    for key in draft.keys:
        draft.cells[key, "reed_width_cm"] = f"2x{draft.cells[key, 'reed_width_cm']}"
    draft.truth.questions.append(Question("what 2x190 is"))
    draft.truth.may_stop = True


case("7.1 attributes on a second sheet", _attributes_apart)
# ISO week 12 of 2027 ends on Sunday, 28 March: week 1 is that of Monday, 4 January, and 4 January + 11 weeks is 22 March
_WEEKS = column_of("protected_until", "Protected until", lambda key: "KW 12/27", lambda key: date(2027, 3, 28))
case("7.2 Protected until KW 12/27", lambda n: changed(n, _WEEKS))
case("7.3 Protected until as a serial number", _serial_days)
case("7.4 one 2x190", lambda n: changed(n, dirt_in_cells.two_times_190))
case("7.8 2x190 throughout", lambda n: changed(n, _two_times))
case(
    "7.5 Loss of efficiency %", lambda n: changed(n, own_column("Loss of efficiency %", lambda k: 5 + k, "efficiency"))
)
case("7.6 Ancho de tela", lambda n: changed(n, own_column("Ancho de tela", lambda k: 170 + k, "reed_width_cm"), "es"))
_MONTHS = column_of("year", "Year built", lambda key: f"{1 + key:02d}/1998", lambda key: 1998)
case("7.7 06/1998", lambda n: changed(n, _MONTHS))

# 8: values out of place
case("8.1 8.8 among 88s", lambda n: changed(n, low_efficiency))
case("8.2 75 among 190s", lambda n: changed(n, narrow_width))

# 9: refused or asked without need
_INVENTORY = own_column("Inv.-Nr.", lambda key: 4711 + key)
_QUARTERS = put(3, "reed_width_cm", '75 3/4"', reed_width_cm=192.405)  # 75.75 × 2.54
_HALVES = put(3, "reed_width_cm", '75½"', reed_width_cm=191.77)  # 75.5 × 2.54


def _looms_and_sheds(number: str) -> Finished:
    draft = ten_looms()
    draft.column("loom").heading, draft.column("hall").heading = "L#", "Shd"
    return finished(number, draft)


case("9.1 Inv.-Nr.", lambda n: changed(n, _INVENTORY, "de"))
case('9.2 75 3/4"', lambda n: changed(n, _QUARTERS))
case('9.3 75½"', lambda n: changed(n, _HALVES))
case("9.4 190 (new reed)", lambda n: changed(n, dirt_in_cells.words_behind_a_width))
case("9.5 Min, Max and n", lambda n: below(n, dirt_in_rows.low_high_count))
case("9.6 type once per group", lambda n: finished(n, ten_looms(), layouts.type_once))
case("9.7 type in section lines", lambda n: finished(n, ten_looms(), layouts.bare_type_lines))
case("9.8 M/c type", lambda n: headed(n, "machine_type", "M/c type", "en"))
case("9.9 L# and Shd", _looms_and_sheds)


# 11: a question that cannot be answered
def _new_years_day(draft: Draft) -> None:
    """Looms 1/1, 2/2 … that a spreadsheet turned into dates read alike day first and month first: nothing to ask."""
    for key in draft.keys:
        draft.cells[key, "loom"] = date(2026, key + 1, key + 1)
        draft.codes[key, "loom"] = "d/m"
        draft.loom(key)["loom"] = f"{key + 1}/{key + 1}"


case("11.1 loom 1/1 turned into a date", lambda n: changed(n, _new_years_day))
