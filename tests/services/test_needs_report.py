"""What purchasing reads, from a database. The sample's stock and kits are in `stock_room_samples`."""

from dataclasses import replace
from datetime import date, timedelta

from opened import here
from said import lines
from stock_room_samples import AT, KITS, PLAN, booking, fill_with_method, key, plan_of

from tracker.domain.progress import Stage, StageChange
from tracker.services.parts.needs import left_over_kits, net_needs
from tracker.services.parts.stock import issue_kit, recover
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store
from tracker.words import ENGLISH


def db_of(tmp_path, plan=PLAN):
    return fill_with_method(str(tmp_path / "mill.db"), plan)


def row(report, part, week):
    return next(row for row in report.weeks if (row.part, row.week) == (part, week))


def test_needs_of_the_published_plan(tmp_path):
    """Nuts: 20 on hand, 8 a week from W03: 12, 4, −4, so in W05 (26 Jan, a Monday) 4 lack, in by Fri 23 Jan, no lead
    time. Loom 3 is left over: its cheapest kit is drilled (8 nuts, no rail for 300), needed on the last day of the
    horizon, Sun 1 Mar, in W09, when the 4 ordered are used up: 8 lack."""
    report = net_needs(here(db_of(tmp_path)), AT)
    assert (row(report, "NUT", "2026-W04").on_hand_end, row(report, "NUT", "2026-W05").net) == (4, 4)
    last = row(report, "NUT", "2026-W09")
    assert (last.gross, last.gross_left_over, last.net) == (0, 8, 8)
    assert row(report, "RAIL", "2026-W04").receipts == 4  # PO-1, Wed 21 Jan
    assert [(line.part, line.quantity, line.order_by, line.late) for line in report.orders if line.part == "NUT"] == [
        ("NUT", 4, date(2026, 1, 23), False),
        ("NUT", 8, date(2026, 2, 27), False),
    ]
    assert (report.cash.total, report.cash.peak.month) == (4 * 300 + 12 * 0.5, "2026-01")


def test_left_over_looms_may_be_left_out(tmp_path):
    report = net_needs(here(db_of(tmp_path)), AT, left_over=False)
    assert [line.quantity for line in report.orders if line.part == "NUT"] == [4]


def test_what_comes_back_serves_again_and_only_once_it_is_back(tmp_path):
    """Gauges: 3 on hand; each conversion takes one and gives it back the same day."""
    drilled = {"choices": (("rail", "drill"),)}
    bookings = [booking(loom, day, {"GAUGE": 1.0}, **drilled) for loom, (day, _) in KITS.items()]
    db = db_of(tmp_path, plan_of(*bookings))
    before = row(net_needs(here(db), AT), "GAUGE", "2026-W03")
    assert (before.gross, before.receipts, before.on_hand_end) == (1, 1, 3)
    issue_kit(here(db), "1")
    out = row(net_needs(here(db), AT), "GAUGE", "2026-W03")
    assert (out.gross, out.receipts, out.on_hand_end) == (0, 1, 3)
    recover(here(db), "1")
    back = row(net_needs(here(db), AT), "GAUGE", "2026-W03")
    assert (back.gross, back.receipts, back.on_hand_end) == (0, 0, 3)


def test_what_a_converted_loom_still_has_is_not_ordered_again(tmp_path):
    """Gauges: 3 on hand, 1 issued to loom 1, booked for Mon 12 Jan and signed off; loom 2 needs 3 on Mon 19 Jan."""
    drilled = {"choices": (("rail", "drill"),)}
    bookings = [booking(loom, KITS[loom][0], {"GAUGE": need}, **drilled) for loom, need in (("1", 1.0), ("2", 3.0))]
    db = db_of(tmp_path, plan_of(*bookings))
    issue_kit(here(db), "1")
    with open_store(db).unit_of_work() as uow:
        uow.add_stage(StageChange(key("1"), Stage.SIGNED_OFF, AT, "fitter"))
        uow.commit()
    report = net_needs(here(db), AT)
    assert (row(report, "GAUGE", "2026-W03").receipts, row(report, "GAUGE", "2026-W04").net) == (1, 0)
    assert lines(report) == ["Nothing is to be ordered: stock and open orders cover every need."]
    assert lines(net_needs(here(db), AT + timedelta(days=8)))[0] == (
        "Loom 1 (Hall 1) still has 1 of GAUGE that should have come back on Mon 12 Jan 2026; counted as there, recover it."
    )


def test_what_was_held_for_a_loom_put_off_is_not_needed_now(tmp_path):
    """Rails: 2 on hand, held for looms 1 and 2; loom 10 needs one on Mon 26 Jan. Loom 2 is put off: 2 are needed, and 2
    are there, whatever comes on order."""
    db = db_of(tmp_path, plan_of(*PLAN.bookings))
    record_stage(here(db), "2", "put off", told=StageTold(why="no warp"))
    report = net_needs(here(db), AT)
    assert [row(report, "RAIL", week).gross for week in ("2026-W02", "2026-W03", "2026-W04", "2026-W05")] == [
        0,
        1,
        0,
        1,
    ]


def test_left_over_looms_share_what_comes_back(tmp_path):
    db = db_of(tmp_path)
    with open_store(db).reading() as uow:
        mill = read_stockroom(uow).mill
    kits = left_over_kits(plan_of(left_over=("2", "3")), mill)
    assert kits == {key("2"): {"NUT": 8, "GAUGE": 1}, key("3"): {"NUT": 8, "GAUGE": 0}}


def test_the_report_in_words(tmp_path):
    # A fortnight later: PO-1 of Wed 21 Jan is overdue; the nuts for loom 10 of Mon 26 Jan were to be ordered by Fri
    # 23 Jan and touch it: ordered on Tue 27 Jan they come the same day and are usable on Wed 28 Jan.
    report = net_needs(here(db_of(tmp_path, replace(PLAN, left_over=()))), AT + timedelta(days=22))
    assert lines(report) == [
        "Order PO-1: 4 pc of RAIL were due on Wed 21 Jan 2026 and have not come. Reckoned with on Tue 10 Feb 2026, as if "
        "ordered today. The kit of loom 10 (Hall 1) wants the part. Receive them, or correct the day.",
        "1 order line, 2 EUR.",
        "1 line is late: the order-by day is past. That touches 1 loom.",
        "With the open orders 1,202 EUR in all, the most in 2026-01: 1,202 EUR, taken at delivery.",
    ]
    (touched,) = report.late[0].touched
    assert (touched.key, touched.days) == (key("10"), 1)


def test_before_anything_is_published_the_newest_plan_made_tells_the_needs(tmp_path):
    db = db_of(tmp_path, None)
    with open_store(db).unit_of_work() as uow:
        uow.save_plan(PLAN, published=False)
        uow.save_plan(plan_of(), published=False, scenario="without rails")
        uow.commit()
    report = net_needs(here(db), AT)
    assert (ENGLISH.say(report.basis), row(report, "NUT", "2026-W05").gross) == ("plan 1, which is not published", 8)
    assert lines(report)[0] == "These are the needs of plan 1, which is not published."


def test_without_any_plan_each_beam_out_taken_as_it_comes_tells_them(tmp_path):
    """Four looms that were never read: no beam-out, so all are left over and need their cheapest kit."""
    report = net_needs(here(db_of(tmp_path, None)), AT)
    assert ENGLISH.say(report.basis) == "each beam-out taken as it comes, since no plan is made yet"
    assert sum(week.gross for week in report.weeks) == 0
    assert sum(week.gross_left_over for week in report.weeks if week.part == "NUT") == 4 * 8


def test_records_carry_the_words_of_the_contract(tmp_path):
    plan = replace(PLAN, left_over=())
    records = net_needs(here(db_of(tmp_path, plan)), AT).record()
    nut = next(r for r in records if r["part"] == "NUT" and r["week"] == "2026-W05")
    assert {name: nut[name] for name in ("gross", "receipts", "on_hand_end", "net", "order_quantity", "order_by", "late")} == {
        "gross": 8, "receipts": 0, "on_hand_end": 0, "net": 4, "order_quantity": 4, "order_by": "2026-01-23", "late": False,
    }  # fmt: skip
