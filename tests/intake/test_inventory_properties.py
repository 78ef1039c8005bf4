"""Any inventory in any mix of the conventions reads back equal or asks; no cell content breaks the reader."""

import csv
import tempfile
from datetime import date, datetime, time, timedelta
from pathlib import Path

import openpyxl
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from mill_sheets import FIELDS, HEADINGS, TODAY, delimited, read, turned, workbook

from tracker.domain.findings import Severity
from tracker.errors import TrackerError
from tracker.intake.reader import read_files
from tracker.words import ENGLISH
from tracker.words.findings import in_words

SLOW = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)

NUMBER_STYLES = (
    lambda i: f"{i + 1:03d}", lambda i: f"A-{i + 1:02d}", lambda i: f"H2R{1 + i // 4}-{i + 1}", lambda i: f"{i + 1}a",
    lambda i: f"3/{i + 40}", lambda i: f"W {i + 1}", lambda i: str(1001 + i),
)  # fmt: skip


@st.composite
def inventories(draw):
    """Looms of one hall or two; widths in whole mm between 130 and 540 cm, as reeds are."""
    count = draw(st.integers(4, 14))
    number = draw(st.sampled_from(NUMBER_STYLES))
    looms = []
    for i in range(count):
        kind = draw(st.sampled_from(("AJ", "RP", "T4", "X-9")))
        looms.append({
            "loom": number(i), "hall": "Hall 1" if i < count // 2 else "Hall 2", "row": str(1 + i // 4), "place": str(1 + i % 4),
            "machine_type": kind, "insertion": "rapier" if kind == "RP" else "air-jet", "year": draw(st.integers(1970, 2026)),
            "reed_width_cm": draw(st.integers(1300, 5400)) / 10, "frames": draw(st.integers(2, 28)),
            "speed_ppm": float(draw(st.integers(150, 1200))), "efficiency": draw(st.integers(500, 980)) / 1000,
        })  # fmt: skip
    return looms


@st.composite
def conventions(draw):
    """How a sheet writes numbers, units and layout."""
    return {
        "language": draw(st.sampled_from(sorted(HEADINGS))),
        "mark": draw(st.sampled_from(".,")),
        "unit": draw(st.sampled_from(("cm", "mm", "m", "inch"))),
        "unit_in": draw(st.sampled_from(("heading", "cell", "nowhere"))),
        "efficiency": draw(st.sampled_from(("percent", "fraction", "88 %", "%88"))),
        "texts": draw(st.booleans()),
        "title": draw(st.booleans()),
        "total": draw(st.booleans()),
        "own": draw(st.booleans()),
        "order": draw(st.permutations(range(len(FIELDS)))),
        "layout": draw(st.sampled_from(("upright", "turned", "semicolon", "tab"))),
    }


FACTORS = {"cm": 1.0, "mm": 10.0, "m": 0.01, "inch": 1 / 2.54}


def written(loom, how):
    """The cells of a loom in the order of FIELDS."""

    def number(value, digits=6):
        text = f"{round(value, digits):g}" if value < 1e5 else str(value)
        return text.replace(".", how["mark"])

    width = loom["reed_width_cm"] * FACTORS[how["unit"]]
    texts = how["texts"] or how["layout"] in ("semicolon", "tab")
    width_cell = (
        f"{number(width)} {how['unit']}" if how["unit_in"] == "cell" else number(width) if texts else round(width, 6)
    )
    share = loom["efficiency"]
    efficiency = {
        "percent": number(share * 100) if texts else round(share * 100, 6), "fraction": number(share) if texts else share,
        "88 %": f"{number(share * 100)} %", "%88": f"%{number(share * 100)}",
    }[how["efficiency"]]  # fmt: skip
    cells = {**loom, "reed_width_cm": width_cell, "efficiency": efficiency, "speed_ppm": int(loom["speed_ppm"])}
    return [str(cells[f]) if texts else cells[f] for f in FIELDS]


def sheet_of(looms, how):
    heads = list(HEADINGS[how["language"]])
    if how["unit_in"] == "heading":
        heads[7] += f" ({how['unit']})"
    order = how["order"]
    rows = [[heads[i] for i in order], *([written(loom, how)[i] for i in order] for loom in looms)]
    if how["own"]:
        rows = [[*row, "Rail" if n == 0 else "drilled"] for n, row in enumerate(rows)]
    if how["total"]:
        rows.append(["Total", len(looms)])
    return [["Loom list of the mill"], [], *rows] if how["title"] else rows


def file_of(folder, looms, how):
    rows = sheet_of(looms, how)
    if how["layout"] == "upright":
        return workbook(folder / "a.xlsx", rows)
    if how["layout"] == "turned":
        return workbook(folder / "a.xlsx", turned(rows))
    return delimited(folder / "a.csv", rows, ";" if how["layout"] == "semicolon" else "\t")


@SLOW
@given(inventories(), conventions())
def test_any_inventory_reads_back_equal_or_asks(looms, how):
    with tempfile.TemporaryDirectory() as folder:
        got = read(file_of(Path(folder), looms, how))
    if got.doubts or (
        how["unit_in"] == "nowhere" and how["unit"] == "inch" and max(x["reed_width_cm"] for x in looms) > 400
    ):
        return  # no reed is 190 inch wide (4.8 m), so 190 without a unit is read as cm
    assert not got.refused, [f.line() for f in got.refused]
    assert len(got.looms) == len(looms)
    for found, loom in zip(got.looms, looms, strict=True):
        for field in FIELDS:
            wanted, value = loom[field], found[field]
            same = (
                abs(value - wanted) <= 0.0005 * wanted if field in ("reed_width_cm", "efficiency") else value == wanted
            )
            assert same, (field, wanted, value, how)


@SLOW
@given(inventories(), conventions())
def test_units_in_heading_or_cell_are_never_asked_about(looms, how):
    how = how | {"unit_in": "heading" if how["unit_in"] == "nowhere" else how["unit_in"]}
    with tempfile.TemporaryDirectory() as folder:
        got = read(file_of(Path(folder), looms, how))
    assert not [d for d in got.doubts if d.code == "unit-doubt"]


ANY_TEXT = st.text(st.characters(blacklist_categories=["Cs"], blacklist_characters="\x00"), max_size=40).filter(
    lambda text: not openpyxl.cell.cell.ILLEGAL_CHARACTERS_RE.search(text)
)
ANY_CELL = st.one_of(
    st.none(), st.booleans(), st.integers(-(10**12), 10**12), st.floats(allow_nan=False, allow_infinity=False), ANY_TEXT,
    st.dates(date(1900, 1, 1), date(9999, 12, 31)), st.datetimes(datetime(1900, 1, 1), datetime(9999, 12, 31)),
    st.times(), st.timedeltas(timedelta(0), timedelta(days=400)),
    st.sampled_from(["#REF!", "-", "n/a", "?", "12/3", "1.234", "1,234", "%88", '75"', "Total", "Hall 2", "=1+1"]),
    st.sampled_from(["３４", "²", "½", "Ⅳ", "٣"]),
    st.sampled_from([time(0), date(1900, 2, 28), datetime(1905, 7, 4)]),
)  # fmt: skip


@SLOW
@given(
    st.lists(st.lists(ANY_CELL, min_size=len(FIELDS) + 1, max_size=len(FIELDS) + 1), max_size=8),
    st.sampled_from(sorted(HEADINGS)),
)
def test_no_cell_content_breaks_the_reader(rows, language):
    """Every row is loaded, refused, or passed over; never lost, never a crash."""
    heads = [*HEADINGS[language], "Protected until"]
    with tempfile.TemporaryDirectory() as folder:
        path = workbook(Path(folder) / "a.xlsx", [heads, *rows])
        result = read_files([path], {}, {}, TODAY)
    empty = sum(all(v is None or (isinstance(v, str) and not v.strip()) for v in row) for row in rows)
    assert len(result.rows) + sum(result.refused.values()) + sum(result.ignored.values()) >= len(rows) - empty - 8 * (
        not result.tables
    )


@SLOW
@given(st.lists(st.lists(ANY_TEXT, max_size=8), max_size=12), st.sampled_from(["utf-8", "utf-16", "gb18030", "cp1252"]))
def test_no_text_breaks_the_reader(rows, encoding):
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "a.csv"
        with path.open("w", encoding=encoding, errors="replace", newline="") as file:
            csv.writer(file, delimiter=";").writerows([["Loom", "Hall", "Machine type", "Speed"], *rows])
        try:
            result = read_files([path], {}, {}, TODAY)
        except TrackerError as refused:
            assert ENGLISH.line(refused).startswith("a.csv")
            return
    assert all(f.message and f.severity in Severity for f in map(in_words, result.findings))
