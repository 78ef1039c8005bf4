"""Tables: natural order, whole cells, nothing that a loom list could smuggle in."""

import re

from streamlit.testing.v1 import AppTest

from dashboards.parts import literal
from dashboards.tables import Cell, Head, RowsAsShown, loom_cell, part_of, table_html
from tracker.domain.mill import LoomKey


def ranks(html: str) -> list[int]:
    return [int(rank) for rank in re.findall(r'data-rank="(\d+)"', html)]


def test_texts_rank_naturally_and_equals_share_a_rank():
    html = table_html([Head("Loom")], [["A-10"], ["A-2"], ["A-2"], ["007"]])
    # 007 before A-2 before A-10
    assert ranks(html) == [2, 1, 1, 0]


def test_an_empty_cell_ranks_last():
    assert ranks(table_html([Head("Kit")], [[""], ["short"], ["complete"]])) == [2, 1, 0]


def test_numbers_rank_by_value_not_by_text():
    html = table_html([Head("Cost", right=True)], [[Cell("1,000", 1000.0)], [Cell("90", 90.0)]])
    assert ranks(html) == [1, 0]
    assert html.count('class="right"') == 3  # the heading and two cells


def test_cells_are_escaped():
    html = table_html([Head("Why <b>")], [["<script>alert(1)</script>"]])
    assert "<script>" not in html
    assert "Why &lt;b&gt;" in html


def test_a_loom_leads_to_its_own_screen():
    cell = loom_cell(LoomKey("Hall 1", "3/12"))
    assert cell.href == "looms?loom=3%2F12&hall=Hall+1"
    assert 'href="looms?loom=3%2F12&amp;hall=Hall+1"' in table_html([Head("Loom")], [[cell]])


def test_the_mills_words_are_not_taken_for_markup():
    assert literal("a_b *c* [d](e) $f$ :red[g] 06:00") == r"a\_b \*c\* \[d\](e) \$f\$ \:red\[g\] 06:00"


def test_a_day_is_not_broken_within():
    html = table_html([Head("Start", whole=True), Head("Due")], [["Wed 6 Jan 2027 06:00", "RAIL Fri 8 Jan 2027"]])
    assert "<span>Wed 6 Jan 2027</span> 06:00" in html and "RAIL <span>Fri 8 Jan 2027</span>" in html


def test_a_long_table_goes_to_the_browser_page_by_page_in_the_order_asked_for():
    """450 rows, of which two pages of 200 and one of 50. Ordered downwards the second page begins with row 250."""
    app = AppTest.from_string(LONG, default_timeout=30).run()
    assert shown(app) == (200, "0") and app.caption[0].value == "Rows 1 to 200 of 450"
    assert app.selectbox[1].options == ["1", "2", "3"]
    app.selectbox[1].set_value(3).run()
    assert shown(app) == (50, "400") and app.caption[0].value == "Rows 401 to 450 of 450"
    app.selectbox[0].set_value(0)
    app.checkbox[0].check()
    app.selectbox[1].set_value(2).run()
    assert shown(app) == (200, "249")


def test_of_a_long_table_only_what_is_shown_is_written():
    written = []
    rows = RowsAsShown(range(450), lambda i: written.append(i) or [str(i)])
    assert part_of(rows, 2) == (200, [[str(i)] for i in range(200, 400)])
    assert written == [*range(200, 400)] and len(rows) == 450


def test_a_short_table_has_no_pages():
    app = AppTest.from_string(LONG.replace("450", "200"), default_timeout=30).run()
    assert shown(app) == (200, "0") and not app.selectbox and not app.caption


LONG = """
from dashboards.parts import table
from dashboards.tables import Cell, Head
table([Head("Number"), Head("Twice")], [[Cell(str(i), i), str(2 * i)] for i in range(450)])
"""


def shown(app: AppTest) -> tuple[int, str]:
    """How many rows, and the first cell."""
    body = app.get("html")[0].proto.body.split("<tbody>")[1]
    return body.count("<tr>"), re.findall(r"<td[^>]*>(.*?)</td>", body)[0]
