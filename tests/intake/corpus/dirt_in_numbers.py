"""What goes wrong in the numbers of looms: ranges, one loom in two spellings, marks that do not belong to them."""

from typing import Any

from .draft import Draft, Question, headed
from .sheets import Tag

Spelt = tuple[tuple[tuple[Tag | str, str], ...], ...]


def a_place_in(draft: Draft) -> int:
    """A loom that is neither the first two nor the last two of the list."""
    return draft.keys[draft.rng.randrange(2, len(draft.keys) - 2)]


def answers_about(draft: Draft, key: int, name: str, *answers: str) -> Spelt:
    """Answers that name the cell, or its heading."""
    heading = draft.column(name).heading
    return tuple(((said, answer),) for answer in answers for said in ((key, name), heading, headed(draft.column(name))))


def range_of_looms(draft: Draft) -> None:
    """`101-108` in the column of the loom numbers: eight looms or one of that name?"""
    key = a_place_in(draft)
    for i, loom in enumerate(draft.looms):
        loom["loom"] = str(101 + 20 * i)
        draft.cells[loom["key"], "loom"] = 101 + 20 * i
    first = int(draft.loom(key)["loom"])
    said = draft.cells[key, "loom"] = draft.loom(key)["loom"] = f"{first}-{first + 7}"
    _ask_about_number(draft, f"is {said} one loom?", key)


def two_dashes(draft: Draft) -> None:
    """`A–02` beside `A-02`, with other values."""
    _number_twice(draft, lambda i: f"A-{i:02d}", lambda i: f"A–{i:02d}")


def a_blank_inside(draft: Draft) -> None:
    """`B 3` beside `B3`, with other values."""
    _number_twice(draft, lambda i: f"B{i}", lambda i: f"B {i}")


def another_case(draft: Draft) -> None:
    """`a-02` beside `A-02`, with other values."""
    _number_twice(draft, lambda i: f"A-{i:02d}", lambda i: f"a-{i:02d}")


def _number_twice(draft: Draft, first: Any, second: Any) -> None:
    for i, loom in enumerate(draft.looms, 1):
        loom["loom"] = draft.cells[loom["key"], "loom"] = first(i)
    at = draft.rng.randrange(2, len(draft.keys) - 2)
    key, other = draft.keys[at], draft.keys[at - 1]
    draft.loom(key)["loom"] = draft.cells[key, "loom"] = second(at)  # looks like the number of the loom before it
    draft.loom(key)["hall"] = draft.loom(other)["hall"]
    if draft.has("hall"):
        draft.cells[key, "hall"] = draft.cells[other, "hall"]
    _ask_about_number(draft, "one loom or two?", key, other)


def _ask_about_number(draft: Draft, about: str, *keys: int) -> None:
    spelt = tuple(one for key in keys for one in answers_about(draft, key, "loom", "as written"))
    draft.truth.questions.append(Question(about, tuple((key, "loom") for key in keys), spelt))


def footnote_star(draft: Draft) -> None:
    """`005*` with a footnote: loom 005, said or asked."""
    _marked_number(draft, "{}*")


def apostrophe(draft: Draft) -> None:
    """`'A019`: the mark by which a spreadsheet keeps text, typed once too often."""
    _marked_number(draft, "'{}")


def _marked_number(draft: Draft, form: str) -> None:
    key = a_place_in(draft)
    number = draft.loom(key)["loom"]
    draft.cells[key, "loom"] = form.format(number)
    spelt = answers_about(draft, key, "loom", number)
    draft.truth.questions.append(Question("which loom it is", ((key, "loom"),), spelt, required=False))
    draft.truth.told.append((key, "loom"))


def a_letter_for_a_figure(draft: Draft) -> None:
    """`A-O7` with the letter O: kept as it is written, and told."""
    key = a_place_in(draft)
    number = f"A-O{draft.keys.index(key) % 10}"
    draft.loom(key)["loom"] = draft.cells[key, "loom"] = number
    spelt = answers_about(draft, key, "loom", "as written")
    draft.truth.questions.append(Question("letter or figure?", ((key, "loom"),), spelt, required=False))
    draft.truth.told.append((key, "loom"))
