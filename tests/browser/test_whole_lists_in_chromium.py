"""A list that is declared whole on the Load screen: what is gone from it is shown, asked about and has ended once written."""

import pytest
from conftest import settle
from opened import here
from screen_mill import put, small_mill
from served import served

from tracker.services.loading.export import export_records

pytestmark = [pytest.mark.browser, pytest.mark.long]
TODAY = (
    "Loom;Hall;Sequence;Article;Set length (m);Warp left (m)\n"
    "A-7;Hall 1;0;Twill;3000;650\n"
    "A-10;Hall 1;0;Twill;3000;1300\n"
)
"""The warps of the day: that of A-9 in Hall 2 has run out, and nobody writes it any more."""


def _warps(db) -> dict[str, float]:
    return {warp["loom"]: warp["warp_left_m"] for warp in export_records(here(str(db)), ["warps"])["warps"]}


def test_a_warp_that_is_gone_from_a_whole_list_ends_once_it_is_written(open_page, tmp_path):
    db = put(tmp_path / "mill.db", small_mill())
    (tmp_path / "warps.csv").write_text(TODAY, encoding="utf-8")
    with served(db) as screens:
        page = open_page(f"{screens.url}/load")
        page.set_input_files("input[type=file]", tmp_path / "warps.csv")
        whole = page.get_by_role("combobox", name="These are whole lists")
        whole.click(timeout=60_000)
        page.get_by_role("option", name="Warps").click()
        settle(page)
        page.get_by_text("ended", exact=True).first.click(timeout=60_000)
        page.get_by_role("button", name="Use these answers").click()
        settle(page)
        assert set(_warps(db)) == {"A-7", "A-10", "A-9"}, "nothing is written before it is said"
        page.get_by_role("button", name="Write to the database").click(timeout=60_000)
        page.get_by_text("1 retired").first.wait_for(timeout=60_000)
    assert _warps(db) == {"A-7": 650, "A-10": 1300}
