"""What goes wrong in single cells of a list: values out of place, words among figures, rows that contradict each other."""

from . import dirt_in_numbers as numbers
from .dirt_in_numbers import a_place_in, answers_about
from .draft import ANYTHING, Draft, Question


def blanks_around(draft: Draft) -> None:
    """Blanks before and behind loom numbers, halls and types, some of them no-break spaces."""
    for key in draft.keys:
        for name in ("loom", "hall", "machine_type"):
            value = draft.cells.get((key, name))
            if value is not None and draft.rng.random() < 0.4:
                draft.cells[key, name] = draft.rng.choice((" {}", "{} ", "{}\u00a0", "  {} ")).format(value)


def an_outlier(draft: Draft) -> None:
    """One efficiency is a tenth of the others: 8.8 among 88s."""
    _outlier(draft, "efficiency", 0.1)


def a_narrow_loom(draft: Draft) -> None:
    """One reed width is in inch among the cm: 75 among 190s."""
    for loom in draft.looms:
        loom["reed_width_cm"] = draft.cells[loom["key"], "reed_width_cm"] = 190 if loom["key"] % 3 else 210
    key = a_place_in(draft)
    draft.loom(key)["reed_width_cm"] = draft.cells[key, "reed_width_cm"] = 75
    ask_whether_so(draft, key, "reed_width_cm")


def a_slow_loom(draft: Draft) -> None:
    """One speed lacks its last figure: 61 among 600s."""
    _outlier(draft, "speed_ppm", 0.1)


def _outlier(draft: Draft, name: str, factor: float) -> None:
    key = a_place_in(draft)
    loom = draft.loom(key)
    loom[name] = round(loom[name] * factor, 6)
    draft.cells[key, name] = round(draft.cells[key, name] * factor, 4)
    ask_whether_so(draft, key, name)


def ask_whether_so(draft: Draft, key: int, name: str) -> None:
    spelt = answers_about(draft, key, name, "as written")
    draft.truth.questions.append(Question("is the value so?", ((key, name),), spelt))


def twice_alike(draft: Draft) -> None:
    """One loom stands twice with the same values: it loads once."""
    key, again = a_place_in(draft), 900
    for column in draft.columns:
        if (key, column.name) in draft.cells:
            draft.cells[again, column.name] = draft.cells[key, column.name]
            if (key, column.name) in draft.codes:
                draft.codes[again, column.name] = draft.codes[key, column.name]
    draft.looms.insert(draft.keys.index(key) + 1, {**draft.loom(key), "key": again})
    draft.truth.looms = [loom for loom in draft.looms if loom["key"] != again]
    draft.truth.told.append((again, "loom"))


def twice_unlike(draft: Draft) -> None:
    """One loom stands twice with another type and speed: refused, the rest may be loaded."""
    twice_alike(draft)
    again, draft.truth.told = draft.loom(900), []
    key = next(loom["key"] for loom in draft.truth.looms if loom["loom"] == again["loom"])
    again["machine_type"] = draft.cells[900, "machine_type"] = f"{again['machine_type']}X"
    again["speed_ppm"] += 25
    draft.cells[900, "speed_ppm"] = int(again["speed_ppm"])
    draft.truth.looms = [loom for loom in draft.truth.looms if loom["key"] != key]
    draft.truth.optional = [draft.loom(key), again]
    draft.truth.refused = [(900, "loom")]


def impossible_speed(draft: Draft) -> None:
    _impossible(draft, "speed_ppm", 6000)


def impossible_efficiency(draft: Draft) -> None:
    _impossible(draft, "efficiency", 870)


def impossible_frames(draft: Draft) -> None:
    _impossible(draft, "frames", -3)


def year_to_come(draft: Draft) -> None:
    _impossible(draft, "year", 2091)


def _impossible(draft: Draft, name: str, value: int) -> None:
    key = a_place_in(draft)
    draft.cells[key, name] = value
    _refuse(draft, key, name, name)


def no_number(draft: Draft) -> None:
    """A row without a loom number."""
    key = a_place_in(draft)
    del draft.cells[key, "loom"]
    _refuse(draft, key, "machine_type")


def no_type(draft: Draft) -> None:
    """A row without a machine type."""
    key = a_place_in(draft)
    del draft.cells[key, "machine_type"]
    _refuse(draft, key, "loom", "machine_type")


def two_times_190(draft: Draft) -> None:
    """`2x190` as a width: two cloths beside each other, or two reeds; never 2 and never 190 without a word."""
    key = a_place_in(draft)
    draft.cells[key, "reed_width_cm"] = f"2x{draft.cells[key, 'reed_width_cm']}"
    _refuse(draft, key, "reed_width_cm", "reed_width_cm")
    draft.truth.asking_will_do = True
    draft.truth.questions.append(Question("what 2x190 is", ((key, "reed_width_cm"),), required=False))


def _refuse(draft: Draft, key: int, name: str, without: str = "") -> None:
    """The row is refused; with --partial it may be left out, or be loaded `without` the value."""
    loom = draft.loom(key)
    draft.truth.looms = [other for other in draft.truth.looms if other["key"] != key]
    if without:
        loom[without] = None
        draft.truth.optional.append(loom)
    draft.truth.refused.append((key, name))


def placeholders(draft: Draft) -> None:
    """Dashes, question marks, n/a and a broken formula's text for what is not known."""
    for name in ("year", "frames", "notes", "insertion", "efficiency"):
        if draft.has(name):
            key = a_place_in(draft)
            draft.cells[key, name] = draft.rng.choice(("-", "–", "?", "n/a", "#REF!"))
            draft.loom(key)[name] = None


def words_behind_a_width(draft: Draft) -> None:
    """`190 (new reed)`: the width is 190, and a word stands with it."""
    key = a_place_in(draft)
    draft.cells[key, "reed_width_cm"] = f"{draft.cells[key, 'reed_width_cm']} {draft.words['new_reed']}"
    draft.truth.told.append((key, "reed_width_cm"))


def to_be_surveyed(draft: Draft) -> None:
    """`to check` for a width and for an attribute: not known yet."""
    key = a_place_in(draft)
    draft.cells[key, "reed_width_cm"] = draft.words["to_check"]
    draft.loom(key)["reed_width_cm"] = None
    key = a_place_in(draft)
    draft.cells[key, "rail"] = draft.words["to_check"]
    draft.loom(key)["attributes"][draft.column("rail").heading] = ANYTHING


def a_range_of_speeds(draft: Draft) -> None:
    """`600-650`: never one of the two without a word."""
    key = a_place_in(draft)
    first = draft.cells[key, "speed_ppm"]
    draft.cells[key, "speed_ppm"] = f"{first}-{first + 50}"
    _refuse(draft, key, "speed_ppm", "speed_ppm")
    draft.truth.asking_will_do = True
    draft.truth.questions.append(Question("which of the speeds", ((key, "speed_ppm"),), required=False))


def ditto_marks(draft: Draft) -> None:
    """Marks for `as above` below a machine type and a hall."""
    mark = draft.rng.choice(('"', "〃", "''"))
    for above, key in zip(draft.keys, draft.keys[1:], strict=False):
        for name in ("machine_type", "hall"):
            if draft.loom(key)[name] == draft.loom(above)[name] and draft.rng.random() < 0.7:
                draft.cells[key, name] = mark


IN_CELLS = {
    "a range of looms": numbers.range_of_looms,
    "a number with two dashes": numbers.two_dashes,
    "a number with a blank": numbers.a_blank_inside,
    "a number in another case": numbers.another_case,
    "a number with a star": numbers.footnote_star,
    "a number with an apostrophe": numbers.apostrophe,
    "blanks around words": blanks_around,
    "an efficiency a tenth of the others": an_outlier,
    "a width in inch among cm": a_narrow_loom,
    "a speed a tenth of the others": a_slow_loom,
    "a loom twice alike": twice_alike,
    "a loom twice unlike": twice_unlike,
    "an impossible speed": impossible_speed,
    "an impossible efficiency": impossible_efficiency,
    "an impossible number of frames": impossible_frames,
    "a year to come": year_to_come,
    "a row without a number": no_number,
    "a row without a type": no_type,
    "two times a width": two_times_190,
    "placeholders": placeholders,
    "words behind a width": words_behind_a_width,
    "to be surveyed": to_be_surveyed,
    "a range of speeds": a_range_of_speeds,
    "ditto marks": ditto_marks,
    "a letter for a figure": numbers.a_letter_for_a_figure,
}
