"""Several columns for one field: nominal and actual, a column for each shift, one heading twice."""

from typing import Any

from .draft import Column, Draft, Question, headed


def nominal_and_actual(draft: Draft) -> None:
    """Two speeds, the nominal one and the one that the looms run at, in a column each."""
    unit, speed = draft.column("speed_ppm").unit, draft.words["headings"]["speed_ppm"][0]
    nominal, actual = (
        f"{speed}{'' if draft.language == 'zh' else ' '}{word}" for word in draft.words["nominal_actual"]
    )
    if draft.language in ("zh", "tr"):
        nominal, actual = (
            f"{word}{'' if draft.language == 'zh' else ' '}{speed.lower()}" for word in draft.words["nominal_actual"]
        )
    draft.column("speed_ppm").heading = actual
    _add_twin(draft, Column("nominal", nominal, unit), headed(Column("", nominal, unit)))
    _ask_which(draft, "speed_ppm", "speed", ("speed_ppm", "nominal"))


def same_heading_twice(draft: Draft) -> None:
    """Two columns of other values under the same heading."""
    own = draft.column("speed_ppm")
    _add_twin(draft, Column("nominal", own.heading, own.unit), headed(own))
    _ask_which(draft, "speed_ppm", "speed", ("speed_ppm", "nominal"), by_heading=False)


def nominal_over_actual(draft: Draft) -> None:
    """One heading merged over `nominal | actual`."""
    own, words = draft.column("speed_ppm"), draft.words["nominal_actual"]
    own.twins, own.below = ("nominal", "speed_ppm"), words[1]
    twin = Column("nominal", own.heading, own.unit, own.group, own.twins, words[0])
    _add_twin(draft, twin, f"{headed(own)} {words[0]}", before="speed_ppm")
    draft.truth.headings_also[f"{headed(own)} {words[0]}"] = (
        words[0],
        f"{own.heading} {words[0]}",
        f"{own.heading} {words[0]} {own.unit}",
    )
    _ask_which(draft, "speed_ppm", "speed", ("speed_ppm", "nominal"), by_heading=False)


def shifts(draft: Draft) -> None:
    """One heading merged over the shifts `A | B | C`, an efficiency for each; the answer takes the second."""
    own, names = draft.column("efficiency"), draft.words["shifts"]
    own.twins, own.below = ("first shift", "efficiency", "third shift"), names[1]
    for name, below, before, factor in (
        ("first shift", names[0], "efficiency", 0.98),
        ("third shift", names[2], "", 0.95),
    ):
        values = {key: _times(draft.cells[key, "efficiency"], factor) for key in draft.keys}
        heading = f"{headed(own)} {below}"
        draft.truth.headings_also[heading] = (
            below,
            f"{own.heading} {below}",
            f"{own.heading} {below} {own.unit}".strip(),
        )
        column = Column(name, own.heading, own.unit, own.group, own.twins, below)
        _place(draft, column, "efficiency", before)
        _fill(draft, column, values, heading)
        draft.codes |= {(key, name): code for key in draft.keys if (code := draft.codes.get((key, "efficiency")))}
    _ask_which(draft, "efficiency", "efficiency", own.twins, by_heading=False)


def _times(value: Any, factor: float) -> Any:
    return round(value * factor, 3)


def _add_twin(draft: Draft, column: Column, attribute: str, before: str = "") -> None:
    _place(draft, column, "speed_ppm", before)
    _fill(draft, column, {loom["key"]: int(loom["speed_ppm"]) + 40 for loom in draft.looms}, attribute)


def _place(draft: Draft, column: Column, beside: str, before: str) -> None:
    """Put a column beside another one."""
    at = [c.name for c in draft.columns].index(beside)
    draft.columns.insert(at if before else at + 1, column)


def _fill(draft: Draft, column: Column, values: dict[int, Any], attribute: str) -> None:
    for key, value in values.items():
        draft.cells[key, column.name] = value
        draft.loom(key)["attributes"][attribute] = value


def _ask_which(draft: Draft, name: str, field: str, among: tuple[str, ...], by_heading: bool = True) -> None:
    """Which of the columns is the field? Answered by the column's cell, or by its heading where that tells."""
    spelt = [((("head", name), field),)]
    if by_heading:
        spelt += [((headed(draft.column(name)), field),), ((draft.column(name).heading, field),)]
    draft.truth.questions.append(
        Question(f"which column is the {field}", tuple(("head", c) for c in among), tuple(spelt))
    )
