"""Bad input is one clear line, exit 1 (2 for wrong use), and nothing is written."""

import pytest
from openpyxl import Workbook
from sqlalchemy import delete

from tracker.domain.mill import LoomKey
from tracker.store import open_store
from tracker.store.models import CrewRow


def book(path, **sheets):
    """Write a workbook: sheet name → rows."""
    workbook = Workbook(write_only=True)
    for name, rows in sheets.items():
        page = workbook.create_sheet(name)
        for row in rows:
            page.append(row)
    workbook.save(path)
    return path


LOOMS = [["Loom", "Hall", "Machine type"], ["001", "Hall 1", "AJ-1"], ["002", "Hall 1", "AJ-1"]]


def stored(tmp_path):
    with open_store(tmp_path / "mill.db").reading() as uow:
        return uow.mill()


def test_a_missing_file(beamslot):
    ran = beamslot("load", "nowhere.xlsx")
    assert ran.code == 1
    assert "nowhere.xlsx" in ran.line


def test_a_file_that_is_no_workbook(beamslot, tmp_path):
    (tmp_path / "looms.xlsx").write_bytes(b"\x00\x01 not a workbook")
    ran = beamslot("load", "looms.xlsx")
    assert ran.code == 1
    assert "looms.xlsx" in ran.line


def test_a_workbook_without_a_known_table(beamslot, tmp_path):
    book(tmp_path / "menu.xlsx", Canteen=[["Monday", "Soup"], ["Tuesday", "Rice"]])
    ran = beamslot("load", "menu.xlsx")
    assert ran.code == 1
    assert "no heading row of a table known here" in ran.line
    assert not (tmp_path / "mill.db").exists()


def test_an_unknown_loom_in_warps(beamslot, tmp_path):
    warps = [["Loom", "Sequence", "Article", "Set length (m)"], ["009", 0, "A-1", 3000]]
    book(tmp_path / "mill.xlsx", Looms=LOOMS, Warps=warps)
    ran = beamslot("load", "mill.xlsx")
    assert ran.code == 1
    line = ran.line
    assert "009" in line and "A2" in line
    assert not (tmp_path / "mill.db").exists()


def test_an_article_with_pick_density_0(beamslot, tmp_path):
    articles = [["Article", "Pick density (picks/cm)", "Take-up (%)"], ["A-1", 0, 6], ["A-2", 24, 6]]
    book(tmp_path / "mill.xlsx", Articles=articles)
    ran = beamslot("load", "mill.xlsx")
    assert ran.code == 1
    assert "B2" in ran.line
    assert not (tmp_path / "mill.db").exists()


def test_a_method_that_names_an_unknown_attribute(mill, tmp_path):
    operations = [["Step", "Operation", "Minutes", "Trade", "Heads", "Colour of the door"],
                  [10, "Strip the old yarn supply", 20, "fitter", 2, "green"]]  # fmt: skip
    book(tmp_path / "method.xlsx", Operations=operations)
    before = stored(tmp_path).method.version
    ran = mill("load", "method.xlsx")
    assert ran.code == 1, ran.out
    assert "Colour of the door" in ran.line
    assert stored(tmp_path).method.version == before


def test_no_crew(mill, tmp_path):
    with open_store(tmp_path / "mill.db").unit_of_work() as uow:
        uow.session.execute(delete(CrewRow))
        uow.commit()
    ran = mill("plan", "--publish")
    assert ran.code == 1
    assert "no crew of the lead trade 'fitter'" in ran.line
    assert mill("verify").code == 1  # nothing was published


def test_a_horizon_that_is_over(mill):
    ran = mill("plan", "--as-of", "2028-01-01")
    assert ran.code == 1
    assert "horizon of 84 days" in ran.line


def test_a_database_without_looms(beamslot):
    ran = beamslot("plan")
    assert ran.code == 1
    assert "beamslot load" in ran.line


@pytest.mark.parametrize(
    "arguments",
    [
        ("load",),
        ("load", "x.xlsx", "--answer", "no equals sign"),
        ("plan", "--as-of", "next week"),
        ("export",),
        ("record", "001", "--stage", "asleep"),
        ("fly",),
    ],
)
def test_wrong_use_ends_with_2(mill, arguments):
    assert mill(*arguments).code == 2


def test_an_unknown_loom_is_named(mill):
    ran = mill("scope", "999")
    assert ran.code == 1
    assert "there is no loom 999" in ran.line


def test_a_refused_row_writes_nothing_and_partial_loads_the_rest(beamslot, tmp_path):
    rows = [["Loom", "Hall", "Machine type", "Speed (picks/min)"], ["001", "H1", "AJ", 640], ["002", "H1", "AJ", 6000]]
    book(tmp_path / "looms.xlsx", Looms=rows)
    ran = beamslot("load", "looms.xlsx", "--json", "-")
    assert ran.code == 1
    assert ran.json["written"] is False
    assert [f["cell"] for f in ran.json["findings"] if f["severity"] == "refused"] == ["D3"]
    assert not (tmp_path / "mill.db").exists()
    assert beamslot("load", "looms.xlsx", "--partial").code == 0
    assert [key.loom for key in stored(tmp_path).looms] == ["001"]


def test_a_dry_run_writes_nothing(beamslot, tmp_path):
    book(tmp_path / "looms.xlsx", Looms=LOOMS)
    ran = beamslot("load", "looms.xlsx", "--dry-run")
    assert ran.code == 0
    assert "Would load: 2 rows added" in ran.out
    assert not (tmp_path / "mill.db").exists()


def test_why_names_the_cell_and_the_change(beamslot, tmp_path):
    book(tmp_path / "looms.xlsx", Looms=[[*LOOMS[0], "Rail"], ["001", "Hall 1", "AJ-1", "undrilled"]])
    beamslot("load", "looms.xlsx")
    book(tmp_path / "later.xlsx", Looms=[[*LOOMS[0], "Rail"], ["001", "Hall 1", "AJ-1", "drilled"]])
    beamslot("load", "later.xlsx")
    ran = beamslot("load", "--origin", "001", "Rail", "--json", "-")
    told = [(o["file"], o["sheet"], o["cell"], o["old"], o["new"]) for o in ran.json]
    assert told == [
        ("later.xlsx", "Looms", "D2", "undrilled", "drilled"),
        ("looms.xlsx", "Looms", "D2", None, "undrilled"),
    ]


def test_an_unknown_article_is_found_with_its_cell_before_it_stops_the_forecast(mill, tmp_path):
    warps = [["Loom", "Hall", "Sequence", "Article", "Set length (m)"], ["001", "Hall 1", 0, "A-9999", 4050],
             ["002", "Hall 1", 0, "A-1218", 3333]]  # fmt: skip
    book(tmp_path / "warps.xlsx", Warps=warps)
    before = stored(tmp_path).warps[LoomKey("Hall 1", "001")][0].article
    ran = mill("load", "warps.xlsx")
    assert (ran.code, "warps.xlsx Warps D2 (Article): Article A-9999 is not in" in ran.line) == (1, True)
    partly = mill("load", "warps.xlsx", "--partial")
    assert partly.code == 0 and mill("forecast", "001").code == 0
    articles = {key.loom: warps[0] for key, warps in stored(tmp_path).warps.items() if key.hall == "Hall 1"}
    assert (articles["001"].article, articles["002"].set_length_m) == (before, 3333)
