"""Letters beyond ASCII: the question about a file's code page, one foreign word, one odd byte."""

from typing import TYPE_CHECKING

from .draft import ANYTHING, Draft, Question
from .sheets import LIST, ODD

if TYPE_CHECKING:
    from .plans import Plan


def write_letters(draft: Draft, plan: "Plan") -> None:
    """What the file's code page is good or bad for; asking which it is does no harm."""
    if plan.file == "odd byte":
        _write_odd_byte(draft)
    elif plan.file.startswith("one word"):
        _write_foreign_word(draft)
    if plan.encoding not in ("utf-8", "utf-8-sig", "utf-16"):
        may_ask_code_page(draft, plan.encoding)


def may_ask_code_page(draft: Draft, encoding: str) -> None:
    spelt = tuple(((f"{LIST}.csv", answer),) for answer in (encoding, encoding.replace("_", " ")))
    draft.truth.questions.append(Question("code page of the file", (), spelt, required=False))


def _write_foreign_word(draft: Draft) -> None:
    """One word of the whole file has letters beyond ASCII."""
    for loom in draft.looms:
        loom["notes"] = None
        draft.cells.pop((loom["key"], "notes"), None)
    word = draft.rng.choice(
        ("Kühlung geprüft", "métier réglé", "qualità bassa", "año dudoso", "manutenção", "Kettablaß")
    )
    draft.loom(draft.keys[3])["notes"] = draft.cells[draft.keys[3], "notes"] = word


def _write_odd_byte(draft: Draft) -> None:
    """One cell holds a byte that is no text in the file's encoding, the others letters beyond ASCII."""
    key = draft.keys[2]
    draft.cells[key, "notes"] = f"caf{ODD}"
    draft.loom(key)["notes"] = ANYTHING
    draft.cells[draft.keys[0], "notes"] = draft.loom(draft.keys[0])["notes"] = "über Öl, à gauche, ß"
    may_ask_code_page(draft, "utf-8")
