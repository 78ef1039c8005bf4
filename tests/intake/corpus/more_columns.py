"""Columns that a list holds beside the usual ones: such as look like a field and are none, and headings we do not know."""

from typing import Any

from . import columns_for_one_field
from .draft import ANYTHING, Column, Draft, Question, headed


def inventory_numbers(draft: Draft) -> None:
    """Numbers of the books: no loom numbers, no yes and no."""
    _add(draft, "inventory", {key: 40_100 + 7 * key for key in draft.keys})


def running_numbers(draft: Draft) -> None:
    """1, 2, 3 … before the list: neither looms nor places; whether they are kept matters to nobody."""
    draft.columns.insert(0, Column("serial", draft.words["headings"]["serial"][0]))
    for i, loom in enumerate(draft.looms, 1):
        draft.cells[loom["key"], "serial"] = i
        loom["attributes"][draft.words["headings"]["serial"][0]] = ANYTHING


def losses(draft: Draft) -> None:
    """What is lost of the efficiency, instead of the efficiency itself."""
    draft.drop_column("efficiency")
    _add(draft, "loss", {key: 4 + 3 * key % 11 for key in draft.keys})
    _may_ask_what_it_is(draft, "loss")


def losses_beside_efficiency(draft: Draft) -> None:
    _add(draft, "loss", {key: 4 + 3 * key % 11 for key in draft.keys})


def cloth_widths(draft: Draft) -> None:
    """How wide the cloth is, instead of the reed."""
    widths = {loom["key"]: round(loom["reed_width_cm"]) - 12 for loom in draft.looms}
    draft.drop_column("reed_width_cm")
    draft.truth.questions = [question for question in draft.truth.questions if "width" not in question.about]
    _add(draft, "cloth", widths)
    _may_ask_what_it_is(draft, "cloth")


def cloth_widths_beside_reed(draft: Draft) -> None:
    _add(draft, "cloth", {loom["key"]: round(loom["reed_width_cm"]) - 12 for loom in draft.looms})


def greatest_speeds(draft: Draft) -> None:
    """The greatest speed of the machine beside the speed it runs at."""
    _add(draft, "greatest", {loom["key"]: int(loom["speed_ppm"]) + 120 for loom in draft.looms})


def yarn_counts_and_picks(draft: Draft) -> None:
    _add(draft, "yarn", {key: (20, 24, 30, 40)[key % 4] for key in draft.keys})
    _add(draft, "picks", {key: 18 + key % 9 for key in draft.keys})


def _add(draft: Draft, name: str, values: dict[int, Any]) -> None:
    heading = draft.words["headings"][name][0]
    draft.add_column(Column(name, heading), values, heading)


def _may_ask_what_it_is(draft: Draft, name: str) -> None:
    """The column looks a little like a field that the list lacks: asking is right, taking it for the field is not."""
    heading = draft.column(name).heading
    own = (((heading, "own column"),), ((("head", name), "own column"),))
    draft.truth.questions.append(Question("what the column is", (("head", name),), own, required=False))


OTHER_WORDS = {"speed_ppm": ("Obroty 1/min", "speed"), "efficiency": ("Wydajność %", "efficiency")}
"""Headings in a language that is none of the eight, with the answer that says what they are."""


def speed_in_another_language(draft: Draft) -> None:
    """The speed is headed in a ninth language; its values and its unit show that something is there to be asked."""
    _head_in_another_language(draft, "speed_ppm")


def efficiency_in_another_language(draft: Draft) -> None:
    _head_in_another_language(draft, "efficiency")


def _head_in_another_language(draft: Draft, name: str) -> None:
    heading, answer = OTHER_WORDS[name]
    column = draft.column(name)
    column.heading, column.unit = heading, ""
    draft.truth.questions.append(
        Question("what the column is", (("head", name),), (((heading, answer),), ((("head", name), answer),)))
    )  # fmt: skip


def words_for_speeds(draft: Draft) -> None:
    """Under the heading of the speed stand words: asked, not dropped with a note."""
    column = draft.column("speed_ppm")
    said = headed(column)
    for loom in draft.looms:
        value = f"{'ABC'[loom['key'] % 3]} / {draft.words['shifts'][0]}"
        draft.cells[loom["key"], "speed_ppm"] = value
        loom["speed_ppm"], loom["attributes"][said] = None, value
    own = (((column.heading, "own column"),), ((("head", "speed_ppm"), "own column"),), ((said, "own column"),))
    draft.truth.headings_also[said] = (column.heading,)
    draft.truth.questions.append(Question("what the column is", (("head", "speed_ppm"),), own))


MORE_COLUMNS = {
    "inventory numbers": inventory_numbers,
    "running numbers": running_numbers,
    "losses of efficiency": losses,
    "losses beside the efficiency": losses_beside_efficiency,
    "cloth widths": cloth_widths,
    "cloth widths beside the reed": cloth_widths_beside_reed,
    "greatest speeds": greatest_speeds,
    "yarn counts and picks": yarn_counts_and_picks,
    "nominal beside actual": columns_for_one_field.nominal_and_actual,
    "the same heading twice": columns_for_one_field.same_heading_twice,
    "nominal and actual under one heading": columns_for_one_field.nominal_over_actual,
    "shifts under one heading": columns_for_one_field.shifts,
    "speed in a ninth language": speed_in_another_language,
    "efficiency in a ninth language": efficiency_in_another_language,
    "words for speeds": words_for_speeds,
}
