"""The mill's own words stay words in a real browser: an address in them is text, a file's name says what it is."""

from dataclasses import replace
from datetime import date

import pytest
from conftest import settle
from openpyxl import Workbook
from screen_mill import put, small_mill, small_plan
from served import served

from tracker.domain.plan import PlanStatus
from tracker.errors import as_it_stands

pytestmark = pytest.mark.browser
BAIT = "see https://bait.example/x, www.bait.example, who@bait.example"


def baited(mill):
    """Every free text of the small mill that reaches a sentence or a table, with addresses in it."""
    looms = {
        key: replace(loom, machine_type=f"AJ {BAIT}", attributes={**loom.attributes, BAIT: BAIT})
        for key, loom in mill.looms.items()
    }
    return replace(
        mill,
        looms=looms,
        parts={"RAIL": replace(mill.parts["RAIL"], description=BAIT, supplier=BAIT)},
        receipts=tuple(replace(receipt, order=BAIT, due=date(2027, 1, 1)) for receipt in mill.receipts),
        crews=tuple(replace(crew, crew=BAIT) for crew in mill.crews),
        method=replace(
            mill.method, operations=tuple(replace(o, operation=f"{o.operation} {BAIT}") for o in mill.method.operations)
        ),
        terms=replace(mill.terms, programme=BAIT),
    )


@pytest.fixture(scope="module")
def bait(tmp_path_factory):
    mill = baited(small_mill())
    plan = small_plan(mill)
    plan = replace(
        plan,
        left_over=tuple(replace(item, why=as_it_stands(BAIT)) for item in plan.left_over),
        reasons=(as_it_stands(BAIT),),
        status=PlanStatus.INFEASIBLE,
    )
    with served(put(tmp_path_factory.mktemp("bait") / "mill.db", mill, plan)) as screens:
        yield screens.url


def strange_links(page) -> list[str]:
    """Links that lead away from the screens."""
    return page.eval_on_selector_all("a[href]", "all => all.filter(a => a.origin !== location.origin).map(a => a.href)")


LONG = ("", "bookings", "needs", "looms", "looms?loom=A-9")


@pytest.mark.parametrize(
    "path",
    [
        "looms?loom=A-7&hall=Hall+1",
        *(pytest.param(one, marks=pytest.mark.long) for one in LONG),
    ],
)
def test_an_address_in_the_mills_text_is_no_link(bait, open_page, path):
    page = open_page(f"{bait}/{path}")
    page.wait_for_function("document.body.innerText.includes('https://bait.example/x')")
    assert strange_links(page) == []


def test_an_address_in_a_link_is_no_link_either(bait, open_page):
    page = open_page(f"{bait}/looms?loom=https://bait.example/x")
    assert "https://bait.example/x" in page.inner_text("h1") and strange_links(page) == []


def test_an_address_in_a_spreadsheet_is_no_link_and_its_name_hides_nothing(bait, open_page, tmp_path):
    book = Workbook()
    book.worksheets[0].title = "www.bait.example"
    for row in (("Loom", "Hall", "Machine type", "Reed width"), ("007", BAIT, BAIT, 110), ("008", BAIT, BAIT, 130)):
        book.worksheets[0].append(row)
    sent = tmp_path / "our \u202elist\u200f.xlsx"
    book.save(sent)
    page = open_page(f"{bait}/load")
    page.set_input_files("input[type=file]", sent)
    page.wait_for_selector("text=Recognised tables", timeout=60_000)
    settle(page)
    said = page.inner_text("body")
    assert "https://bait.example/x" in said and strange_links(page) == []
    assert "our list.xlsx" in said
    with page.expect_download(timeout=60_000) as download:
        page.get_by_role("button", name="Copy of our list.xlsx").click()
    assert download.value.suggested_filename == "our list marked.xlsx"
