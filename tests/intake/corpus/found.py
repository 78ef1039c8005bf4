"""The numbered cases that mills' lists brought to light, each as small as it can be, with what must come of it.

All start from one list of ten looms, headed in the words of one language; a case changes what it is about.
"""

import random
from collections.abc import Callable
from typing import Any

from . import dirt_in_cells, layouts
from .draft import Column, Draft, Finished, Question
from .sheets import LIST, ODD, File

LOOMS = """
A-01 | 1 | AJ-190 | 190 | 640 | 88   | drilled
A-02 | 1 | AJ-190 | 190 | 655 | 87.5 | undrilled
A-03 | 1 | RP-360 | 360 | 340 | 91   | drilled
A-04 | 1 | AJ-190 | 190 | 625 | 89   | drilled
A-05 | 1 | RP-360 | 360 | 355 | 90.5 | undrilled
A-06 | 2 | AJ-190 | 190 | 645 | 86   | undrilled
A-07 | 2 | RP-360 | 360 | 330 | 92   | drilled
A-08 | 2 | AJ-190 | 190 | 660 | 85.5 | undrilled
A-09 | 2 | AJ-190 | 190 | 635 | 88.5 | drilled
A-10 | 2 | RP-360 | 360 | 345 | 93   | undrilled
"""
"""Loom, hall, machine type, reed width in cm, speed in picks/min, efficiency in percent, rail."""

NAMES = ("loom", "hall", "machine_type", "reed_width_cm", "speed_ppm", "efficiency", "rail")


def ten_looms(language: str = "en", names: tuple[str, ...] = NAMES) -> Draft:
    """The list as a draft: full headings with units, numbers typed; only the columns named."""
    rows = [[cell.strip() for cell in line.split("|")] for line in LOOMS.strip().splitlines()]
    draft = Draft(random.Random(1), language, [])
    heading = {name: draft.words["headings"][name][0] for name in NAMES}
    units = {"reed_width_cm": "(cm)", "speed_ppm": f"({draft.words['units']['speed_ppm'][0]})", "efficiency": "(%)"}
    for key, (number, hall, kind, width, speed, percent, rail) in enumerate(rows):
        said = {"loom": number, "hall": draft.words["hall"].format(hall), "machine_type": kind, "reed_width_cm": int(width),
                "speed_ppm": int(speed), "efficiency": float(percent)}  # fmt: skip
        loom: dict[str, Any] = dict.fromkeys(
            ("row", "place", "insertion", "year", "frames", "protected_until", "notes")
        )
        loom |= said | {"key": key, "efficiency": float(percent) / 100, "attributes": {heading["rail"]: rail}}
        draft.looms.append(loom)
        draft.cells |= {(key, name): value for name, value in {**said, "rail": rail}.items()}
    draft.columns = [Column(name, heading[name], units.get(name, "")) for name in NAMES]
    for name in NAMES:
        if name not in names:
            draft.drop_column(name, truth=name != "rail")
    for loom in draft.looms if "rail" not in names else ():
        loom["attributes"] = {}
    return draft


def finished(
    number: str, draft: Draft, lay: Callable[[Draft], None] = layouts.plain, *, encoding: str = ""
) -> Finished:
    """The list as a workbook, or (`encoding`) as delimited text."""
    if not draft.sheets:
        lay(draft)
    odd = b"\x92" if any(ODD in str(value) for value in draft.cells.values()) else b""
    draft.files = [File(f"{LIST}.csv" if encoding else f"{LIST}.xlsx", draft.sheets, encoding, odd_byte=odd)]
    return Finished.of(number, (), draft)


def headed(number: str, name: str, heading: str, language: str) -> Finished:
    """One column is headed like that, without a unit elsewhere."""
    draft = ten_looms(language)
    column = draft.column(name)
    column.heading, column.unit = heading, ""
    return finished(number, draft)


def changed(number: str, change: Callable[[Draft], None], language: str = "en", **more: Any) -> Finished:
    """A change made to the cells or the columns, before the list is laid out."""
    draft = ten_looms(language)
    change(draft)
    return finished(number, draft, **more)


def below(number: str, change: Callable[[Draft], None], language: str = "en") -> Finished:
    """Rows put below the list."""
    draft = ten_looms(language)
    layouts.plain(draft)
    change(draft)
    return finished(number, draft)


def put(key: int, name: str, value: Any, **truth: Any) -> Callable[[Draft], None]:
    """Write a value into a cell; `truth`: what the loom's fields are then."""

    def change(draft: Draft) -> None:
        draft.cells[key, name] = value
        draft.loom(key).update(truth)

    return change


def column_of(
    name: str, heading: str, write: Callable[[int], Any], truth: Callable[[int], Any]
) -> Callable[[Draft], None]:
    """A field more, under a heading: what each loom's cell holds and what it means."""

    def change(draft: Draft) -> None:
        draft.columns.append(Column(name, heading))
        for key in draft.keys:
            draft.cells[key, name] = write(key)
            draft.loom(key)[name] = truth(key)

    return change


def own_column(heading: str, write: Callable[[int], Any], instead_of: str = "") -> Callable[[Draft], None]:
    """A column of the mill's own, in place of one of ours; asking what it is does no harm."""

    def change(draft: Draft) -> None:
        if instead_of:
            draft.drop_column(instead_of)
        draft.add_column(Column("own", heading), {key: write(key) for key in draft.keys}, heading)
        own = (((heading, "own column"),), ((("head", "own"), "own column"),))
        draft.truth.questions.append(Question("what the column is", (("head", "own"),), own, required=False))

    return change


def starting_again(draft: Draft) -> None:
    """`North side` and `South side` with the same looms 1 to 5 of the same values below each."""
    for key in range(5, 10):
        for name in NAMES[2:6]:
            draft.cells[key, name] = draft.cells[key - 5, name]
            draft.loom(key)[name] = draft.loom(key - 5)[name]
        draft.cells[key, "rail"] = draft.cells[key - 5, "rail"]
        draft.loom(key)["attributes"] = draft.loom(key - 5)["attributes"]
    layouts.side_lines(draft)


def narrow_width(draft: Draft) -> None:
    put(3, "reed_width_cm", 75, reed_width_cm=75)(draft)
    dirt_in_cells.ask_whether_so(draft, 3, "reed_width_cm")


def low_efficiency(draft: Draft) -> None:
    put(3, "efficiency", 8.8, efficiency=0.088)(draft)
    dirt_in_cells.ask_whether_so(draft, 3, "efficiency")
