"""What a load does beside the rows it brings: to stock, stages and plans that are there, and to its own counts."""

from datetime import date

import pytest
from opened import here
from openpyxl import Workbook
from said import said, texts
from stock_room_samples import AT, added, booking, fill, fill_with_method, key, plan_of

from tracker.domain.progress import Stage
from tracker.services.loading.load import LoadRequest, load
from tracker.services.parts.kits import kits
from tracker.services.parts.stock import issue_kit
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    """Looms 1, 2 and 10 are booked in this order, each with a rail and 8 nuts; 2 rails and 20 nuts are there and held."""
    return fill_with_method(str(tmp_path / "mill.db"))


def sheet(path, name, *rows):
    workbook = Workbook()
    page = workbook.active
    page.title = name
    for row in rows:
        page.append(row)
    workbook.save(path)
    return path


def parts(path, **on_hand):
    return sheet(path, "Parts", ["Part", "On hand"], *on_hand.items())


def room(db):
    with open_store(db).reading() as uow:
        return read_stockroom(uow)


def held(db, part):
    return {key.loom: quantity for key, quantity in room(db).reserved(part).items()}


def counts(report):
    (table,) = report.tables
    return table.rows.added, table.rows.changed, table.rows.unchanged, table.rows.refused


# ---- stock


def test_a_lower_stock_leaves_no_more_held_than_is_there(db, tmp_path):
    # 1 rail and 5 nuts are left: loom 1 keeps the rail and 5 of its 8 nuts, loom 2 loses all, loom 10 had 4 nuts.
    report = load(here(db), [parts(tmp_path / "count.xlsx", RAIL=1, NUT=5)])
    assert (held(db, "RAIL"), held(db, "NUT")) == ({"1": 1}, {"1": 5})
    assert [(kit.key.loom, kit.state) for kit in kits(here(db)).kits] == [
        ("1", "short"),
        ("2", "short"),
        ("10", "short"),
    ]
    assert texts(report.said) == (
        "Less is there than was held: loom 1 (Hall 1) gives up 3 NUT, loom 2 (Hall 1) gives up 8 NUT, 1 RAIL, loom 10 (Hall 1) "
        "gives up 4 NUT. `beamslot kits` shows what each kit lacks.",
    )


def test_a_higher_stock_goes_to_the_kit_that_lacks_it(db, tmp_path):
    report = load(here(db), [parts(tmp_path / "count.xlsx", RAIL=4, NUT=24)])
    assert (held(db, "RAIL"), held(db, "NUT")["10"]) == ({"1": 1, "2": 1, "10": 1}, 8)
    assert texts(report.said) == ()


def test_a_stock_that_changes_no_kit_says_nothing(db, tmp_path):
    assert load(here(db), [parts(tmp_path / "count.xlsx", RAIL=2, CABLE=9.5)]).said == ()
    assert held(db, "RAIL") == {"1": 1, "2": 1}


def test_a_stock_that_is_only_tried_out_holds_on_to_everything(db, tmp_path):
    report = load(here(db), [parts(tmp_path / "count.xlsx", RAIL=1)], LoadRequest(dry_run=True))
    assert said(report.said[0]).startswith("Less is there than was held: loom 2 (Hall 1) gives up 1 RAIL.")
    assert held(db, "RAIL") == {"1": 1, "2": 1}


def test_a_refused_load_holds_on_to_everything(db, tmp_path):
    # The second row says that nuts, with entries in pc, are counted in boxes.
    file = sheet(tmp_path / "count.xlsx", "Parts", ["Part", "On hand", "Unit"], ["RAIL", 1, "pc"], ["NUT", 5, "box"])
    report = load(here(db), [file])
    assert report.refusal and not report.written
    assert (held(db, "RAIL"), room(db).mill.parts["RAIL"].on_hand) == ({"1": 1, "2": 1}, 2)


# ---- stages and plans


def test_a_load_leaves_stages_conversions_plans_and_what_was_issued(db, tmp_path):
    issue_kit(here(db), "1")
    record_stage(here(db), "1", "in work")
    record_stage(here(db), "2", "put off", told=StageTold(why="no warp"))
    before = room(db)
    looms = [[number, "Hall 1", "AJ-200", 640, 90] for number in ("1", "2", "3", "10")]
    file = sheet(
        tmp_path / "l.xlsx", "Looms", ["Loom", "Hall", "Machine type", "Speed (picks/min)", "Efficiency (%)"], *looms
    )
    assert load(here(db), [file]).written
    after = room(db)
    assert {loom.machine_type for loom in after.mill.looms.values()} == {"AJ-200"}
    assert (after.plan, after.movements, after.reservations) == (before.plan, before.movements, before.reservations)
    with open_store(db).reading() as uow:
        stages = {key.loom: change.stage for key, change in uow.stages().items()}
    assert stages == {"1": Stage.IN_WORK, "2": Stage.PUT_OFF}


def test_parts_of_a_loom_in_work_are_not_counted_back_by_a_load(db, tmp_path):
    # One rail is out with loom 1, so one is counted; it is held for loom 2.
    issue_kit(here(db), "1")
    record_stage(here(db), "1", "in work")
    assert load(here(db), [parts(tmp_path / "count.xlsx", RAIL=1)]).said == ()
    assert (held(db, "RAIL"), room(db).issued[key("1")]["RAIL"]) == ({"2": 1}, 1)


# ---- counts after a refusal: added, changed, unchanged, refused


def orders(path, *lines):
    return sheet(path, "Receipts", ["Order", "Part", "Quantity", "Due"], *lines)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        # There is PO-1 of 4 RAIL, due on 21 Jan; a good new line stands beside each.
        (["PO-9", "BOLT", 4, date(2026, 1, 21)], (1, 0, 0, 1)),  # new, its part unknown
        (["PO-1", "NUT", 4, date(2026, 1, 21)], (1, 0, 0, 1)),  # the number of another part's line
        (["PO-1", "RAIL", 4, date(2026, 1, 21)], (1, 0, 1, 0)),  # sound, as stored
        (["PO-1", "RAIL", 4, date(2026, 1, 22)], (1, 1, 0, 0)),  # sound, later
    ],
)
def test_counts_of_order_lines(db, tmp_path, line, expected):
    report = load(
        here(db), [orders(tmp_path / "o.xlsx", ["PO-2", "NUT", 10, date(2026, 2, 1)], line)], LoadRequest(partial=True)
    )
    assert (counts(report), report.written) == (expected, True)
    assert {(r.order, r.part) for r in room(db).mill.receipts} == {("PO-1", "RAIL"), ("PO-2", "NUT")}


def test_a_changed_row_that_is_refused_is_counted_as_refused_alone(db, tmp_path):
    # RAIL 2 → 5 in boxes is refused: it was kept in pc. NUT stays at 20, CABLE becomes 8.
    rows = [["RAIL", 5, "box"], ["NUT", 20, "pc"], ["CABLE", 8, "m"], ["CLIP", 3, "pc"]]
    report = load(
        here(db), [sheet(tmp_path / "p.xlsx", "Parts", ["Part", "On hand", "Unit"], *rows)], LoadRequest(partial=True)
    )
    assert counts(report) == (1, 1, 1, 1)
    stock = room(db).mill.parts
    assert [stock[name].on_hand for name in ("RAIL", "NUT", "CABLE", "CLIP")] == [2, 20, 8, 3]


def test_an_unchanged_row_that_is_refused_is_counted_as_refused_alone(tmp_path):
    # A warp of an article that nobody knows was written in by hand, and comes again with the list of articles.
    warp = added("warps", "1", "Hall 1", 0, hall="Hall 1", loom="1", sequence=0, article="A-9", set_length_m=3000.0)
    article = added("articles", "A-1", article="A-1", pick_density_per_cm=20.0, take_up=0.06)
    db = fill(str(tmp_path / "mill.db"), plan_of(booking("1", date(2026, 1, 12), {})), warp, article)
    heads = ["Loom", "Hall", "Sequence", "Article", "Set length (m)"]
    rows = [["1", "Hall 1", 0, "A-9", 3000], ["2", "Hall 1", 0, "A-1", 2000]]
    report = load(
        here(db), [sheet(tmp_path / "w.xlsx", "Warps", heads, *rows)], LoadRequest(partial=True, today=AT.date())
    )
    assert counts(report) == (1, 0, 0, 1)
    assert {loom.loom for loom in room(db).mill.warps} == {"1", "2"}
