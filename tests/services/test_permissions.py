"""Every service that writes asks whether the actor may, and refuses before it touches the database."""

import ast
from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from writers import public_writers, units_of_work

from tracker.domain.jobs import JobKind, LongJob
from tracker.domain.mill import LoomKey
from tracker.domain.people import EVERY_ROLE, Role
from tracker.domain.rows import ReadResult, SourceTable
from tracker.errors import NotAllowed
from tracker.services import backups, own_clock
from tracker.services.context import Actor, Context
from tracker.services.jobs import desk
from tracker.services.loading import by_hand, correct_value, posted, watching
from tracker.services.loading import load as loading
from tracker.services.parts import ordering, reservations, stock, stock_entry
from tracker.services.people import absences, accounts, sessions, tokens
from tracker.services.people.permissions import PERMISSIONS, May, who_may
from tracker.services.plans import made_plans, plan, put_in_force, rehearse, scenarios, setting_aside, tune
from tracker.services.undoing import undo as undoing
from tracker.services.work import (
    at_the_loom,
    entering,
    proposed_setpoint,
    record,
    seen_alarms,
    taking_over,
    told_beam_out,
    withdrawing,
)
from tracker.words import ENGLISH

DAY, NOON = date(2027, 1, 4), datetime(2027, 1, 4, 12, tzinfo=UTC)
WORK_DONE = ReadResult((SourceTable("", "", "work_done", 0),), (), ())
AT_LOOM = at_the_loom.AtLoom(LoomKey("H", "1"), None, "F1", "Vera", NOON)
CALLS: dict[tuple[str, str], Callable[[Any], Any]] = {
    ("loading.load", "load"): lambda c: loading.load(c, [_looms(c)]),
    ("loading.load", "enter"): lambda c: loading.enter(c, WORK_DONE),
    ("loading.by_hand", "type_in"): lambda c: by_hand.type_in(c, "terms", []),
    ("loading.by_hand", "take_out"): lambda c: by_hand.take_out(c, "terms", ("soak (days)",)),
    ("loading.correct_value", "correct_value"): lambda c: correct_value.correct_value(
        c, "1", None, "Speed", "2", "read"
    ),
    ("own_clock", "set_clock"): lambda c: own_clock.set_clock(c, NOON),
    ("own_clock", "give_own_clock"): lambda c: own_clock.give_own_clock(c, NOON),
    ("parts.ordering", "place"): lambda c: ordering.place(c, [ordering.Ordered("PO-9", "NUT", 1, DAY)]),
    ("parts.ordering", "expect"): lambda c: ordering.expect(c, "PO-1", due=DAY),
    ("parts.reservations", "reserve"): lambda c: reservations.reserve(c, "1"),
    ("parts.reservations", "release"): lambda c: reservations.release(c, "1"),
    ("parts.reservations", "take"): lambda c: reservations.take(c, "NUT", ("1", None), ("2", None)),
    ("parts.stock", "receive"): lambda c: stock.receive(c, "NUT", 1),
    ("parts.stock", "issue"): lambda c: stock.issue(c, "1", "NUT"),
    ("parts.stock", "issue_kit"): lambda c: stock.issue_kit(c, "1"),
    ("parts.stock", "give_back"): lambda c: stock.give_back(c, "1"),
    ("parts.stock", "scrap"): lambda c: stock.scrap(c, "1", "NUT", 1),
    ("parts.stock", "recover"): lambda c: stock.recover(c, "1"),
    ("parts.stock", "adjust"): lambda c: stock.adjust(c, "NUT", 1),
    ("parts.stock", "count"): lambda c: stock.count(c, "NUT", 1),
    ("parts.stock_entry", "entry_in"): lambda c: stock_entry.entry_in(c).__enter__(),
    ("people.absences", "record_absence"): lambda c: absences.record_absence(c, "F1", DAY, DAY),
    ("people.absences", "end_absence"): lambda c: absences.end_absence(c, "F1", DAY),
    ("people.accounts", "add_person"): lambda c: accounts.add_person(c, "Ann", "long enough for it", ["viewer"]),
    ("people.accounts", "change_roles"): lambda c: accounts.change_roles(c, "Ann", ["viewer"]),
    ("people.accounts", "change_password"): lambda c: accounts.change_password(c, "Ann", "long enough for it"),
    ("people.accounts", "leave_to_provider"): lambda c: accounts.leave_to_provider(c, "Ann"),
    ("loading.watching", "load_dropped"): lambda c: [*watching.load_dropped(c, _watch(c))],
    ("loading.posted", "post_rows"): lambda c: posted.post_rows(c, posted.Post(1, "key", "stops", [{"loom": "1"}])),
    ("people.tokens", "give_token"): lambda c: tokens.give_token(c, "a program", "read"),
    ("people.tokens", "withdraw_token"): lambda c: tokens.withdraw_token(c, 1),
    ("people.accounts", "end_person"): lambda c: accounts.end_person(c, "Ann"),
    ("people.sessions", "end_session"): lambda c: sessions.end_session(c, 1),
    ("plans.plan", "plan"): lambda c: plan.plan(c),
    ("plans.plan", "save"): lambda c: plan.save(c, SimpleNamespace(), True, None, None),  # type: ignore[arg-type]
    ("plans.rehearse", "rehearse"): lambda c: rehearse.rehearse(c, rehearse.RehearsalRequest()),
    ("plans.tune", "tune_plan"): lambda c: tune.tune_plan(c, rehearse.RehearsalRequest()),
    ("plans.tune", "accept_tuning"): lambda c: tune.accept_tuning(c),
    ("backups", "keep_backup"): lambda c: backups.keep_backup(c, backups.BackupFolder(Path(c.database).parent)),
    ("jobs.desk", "start"): lambda c: desk.start(c, "plan"),
    ("jobs.desk", "again"): lambda c: desk.again(c, LongJob(1, JobKind.PLAN, {}, "Ann", NOON)),
    ("jobs.desk", "stop"): lambda c: desk.stop(c, 1),
    ("work.record", "record_stage"): lambda c: record.record_stage(c, "1", "in work"),
    ("plans.made_plans", "publish_made"): lambda c: made_plans.publish_made(c, 1),
    ("plans.scenarios", "plan_scenarios"): lambda c: scenarios.plan_scenarios(c, [Path("as-if.toml")]),
    ("plans.put_in_force", "put_in_force"): lambda c: put_in_force.put_in_force(
        c, put_in_force.InForce("one crew", (), (), (), ())
    ),
    ("plans.setting_aside", "set_aside"): lambda c: setting_aside.set_aside(c, "one crew"),
    ("plans.setting_aside", "list_again"): lambda c: setting_aside.list_again(c, "one crew"),
    ("work.seen_alarms", "mark_seen"): lambda c: seen_alarms.mark_seen(c, "1", None, "tightened"),
    ("work.entering", "enter_records"): lambda c: entering.enter_records(c, "1", None, {}, {}),
    ("work.at_the_loom", "begin"): lambda c: at_the_loom.begin(c, AT_LOOM),
    ("work.at_the_loom", "note_time"): lambda c: at_the_loom.note_time(c, AT_LOOM, "locked_at", NOON),
    ("work.at_the_loom", "tick"): lambda c: at_the_loom.tick(c, AT_LOOM, "Mount"),
    ("work.at_the_loom", "bobbin"): lambda c: at_the_loom.bobbin(c, AT_LOOM, "left", 640.0),
    ("work.at_the_loom", "remark"): lambda c: at_the_loom.remark(c, AT_LOOM, at_the_loom.ToldRemark("loose")),
    ("work.at_the_loom", "hand_over"): lambda c: at_the_loom.hand_over(c, AT_LOOM, "Ann"),
    ("work.at_the_loom", "set_value"): lambda c: at_the_loom.set_value(c, AT_LOOM, "angle", None, 310, "set"),
    ("work.at_the_loom", "check"): lambda c: at_the_loom.check(c, AT_LOOM, "Guards", None, "yes"),
    ("work.at_the_loom", "part_used"): lambda c: at_the_loom.part_used(c, AT_LOOM, {"part": "PIN", "used": 1.0}),
    ("work.at_the_loom", "waive"): lambda c: at_the_loom.waive(
        c, AT_LOOM, "set_values", {"setting": "angle"}, "worn", "Ann"
    ),
    ("work.at_the_loom", "finish"): lambda c: at_the_loom.finish(c, AT_LOOM),
    ("work.at_the_loom", "break_off"): lambda c: at_the_loom.break_off(c, AT_LOOM, "bent"),
    ("work.withdrawing", "withdraw_stage"): lambda c: withdrawing.withdraw_stage(c, "1", "mistyped"),
    ("work.withdrawing", "withdraw_reading"): lambda c: withdrawing.withdraw_reading(
        c, "1", "mistyped", withdrawing.RowMeant("set_values", {})
    ),
    ("undoing.undo", "undo"): lambda c: undoing.undo(c, 1),
    ("work.taking_over", "take_over"): lambda c: taking_over.take_over(c),
    ("work.proposed_setpoint", "take_over_setpoint"): lambda c: proposed_setpoint.take_over_setpoint(c, None, None),  # type: ignore[arg-type]
    ("work.told_beam_out", "tell_beam_out"): lambda c: told_beam_out.tell_beam_out(c, "1", None, NOON),
}
BY_ITSELF = {("demo", "run_demo"), ("demo_weeks", "live_six_weeks")}
"""The demo makes a mill of its own, as whoever is at the keyboard."""


def _looms(context: Context) -> Path:
    file = Path(context.database).with_name("looms.csv")
    file.write_text("Loom;Hall;Machine type;Reed width\n1;Hall 1;AJ-190;190\n")
    return file


def _watch(context: Context) -> watching.Watch:
    _looms(context)
    return watching.Watch(Path(context.database).parent, settled_s=0)


@pytest.fixture
def viewer(tmp_path) -> Context:
    return Context(str(tmp_path / "mill.db"), Actor("Vera", frozenset({Role.VIEWER}), "screen"))


def test_every_writing_service_is_tried_here():
    assert public_writers() == CALLS.keys() | BY_ITSELF


@pytest.mark.parametrize("name", CALLS, ids=".".join)
def test_who_may_only_look_writes_nothing_by_it(viewer, name):
    with pytest.raises(NotAllowed):
        CALLS[name](viewer)
    assert not Path(viewer.database).exists()  # it was asked before anything was opened


def test_each_unit_of_work_names_what_it_takes():
    """The type checker asks for it too; here nobody passes a variable of any other kind."""
    opened = [call for place, call in units_of_work() if "context.py" not in place]
    of_the_scratch = [call for call in opened if ast.unparse(call.func).startswith("scratch(")]
    assert len(of_the_scratch) == 1  # the copy in memory on which a load is tried
    named = [ast.unparse(call.args[0]) if call.args else "nothing" for call in opened if call not in of_the_scratch]
    assert [text for text in named if not text.startswith(("May.", "needed(", "needed_for("))] == []


def test_every_role_stands_in_the_table_and_everything_can_be_done_by_somebody():
    assert set(PERMISSIONS) == set(Role) == EVERY_ROLE
    assert [what for what in May if not who_may(what)] == []


def test_the_table_says_what_the_mill_was_promised():
    may = {role: PERMISSIONS[role] for role in Role}
    assert may[Role.VIEWER] == set()
    assert may[Role.FITTER] == {May.RECORD}
    assert may[Role.ELECTRICIAN] == {May.RECORD, May.SIGN_ELECTRICAL}
    assert may[Role.PURCHASING] == {May.STOCK}
    assert may[Role.PLANNER] == set(May) - {May.SIGN_ELECTRICAL, May.PEOPLE, May.BACK_UP}
    assert may[Role.ADMINISTRATOR] == {May.PEOPLE, May.BACK_UP}


def test_the_refusal_names_who_what_and_whose_it_is(viewer):
    with pytest.raises(NotAllowed) as refused:
        stock.count(viewer, "NUT", 1)
    assert ENGLISH.line(refused.value) == (
        "Vera may not book in the stockroom: that is for purchasing, planner. Nothing was written. "
        "Ask an administrator for the role, or somebody who has it."
    )


@pytest.mark.parametrize(("role", "stage", "may"), [
    (Role.FITTER, "in work", True), (Role.FITTER, "put off", False), (Role.FITTER, "scoped", False),
    (Role.PLANNER, "put off", True),
])  # fmt: skip
def test_to_put_a_loom_off_is_the_planners(tmp_path, role, stage, may):
    context = Context(str(tmp_path / "none.db"), Actor("Ann", frozenset({role})))
    with pytest.raises(Exception) as refused:
        record.record_stage(context, "1", stage, told=record.StageTold(why="asked"))
    assert isinstance(refused.value, NotAllowed) != may
