"""Jobs: long work in a process of its own, seen and stopped by everybody, written by the server alone.

The mill of three looms (three_looms.py); a plan that is `held` waits at its first word until it is stopped.
"""

import os
import signal
import socket
import sys
from dataclasses import replace
from pickle import dumps
from subprocess import PIPE, Popen

import psutil
import pytest
from held_work import Waiting, held, until
from opened import here
from quick_jobs import quick_jobs  # noqa: F401
from refusals import refused
from three_looms import MONDAY, at, key, make
from two_workers import two_workers  # noqa: F401

from tracker.domain.jobs import JobKind, JobState
from tracker.domain.people import Role
from tracker.domain.plan import RuledOut
from tracker.errors import DataError, NotAllowed, TrackerError, UsageError
from tracker.services.apart import APART
from tracker.services.context import Actor, Context
from tracker.services.jobs import desk, kinds, running
from tracker.services.jobs.kinds import plan_arguments
from tracker.services.loading.load import LoadRequest, load
from tracker.services.loading.readings import is_read
from tracker.services.plans.made_plans import made_plan, made_plans
from tracker.services.plans.plan import PlanRequest, plan
from tracker.words import ENGLISH

AS_OF = MONDAY.isoformat()
pytestmark = pytest.mark.usefixtures("quick_jobs")


@pytest.fixture
def db(tmp_path):
    return make(str(tmp_path / "mill.db"))


def by(db, name, role=Role.PLANNER):
    return Context(db, Actor(name, frozenset({role}), "screen"))


def hold_plans(monkeypatch):
    usual = kinds.KINDS[JobKind.PLAN]
    monkeypatch.setitem(kinds.KINDS, JobKind.PLAN, lambda *args, **given: held(usual(*args, **given)))


def newest(context):
    return desk.look(context).jobs[0]


def said(job):
    return ENGLISH.line(job.message)


def test_a_plan_is_that_of_the_command(db, monkeypatch):
    """In a process that is started anew, as a server starts it."""
    monkeypatch.setattr(running, "APART", APART)
    ann = by(db, "Ann")
    request = PlanRequest(publish=True, as_of=MONDAY, ruled_out=(RuledOut(key("3"), at(0, 0), at(1, 0)),))
    asked = plan_arguments(request)
    assert asked == {
        "publish": True,
        "as_of": AS_OF,
        "ruled_out": [{"key": ["H", "3"], "from_at": AS_OF, "until_at": at(1, 0).isoformat()}],
    }
    number = desk.start(ann, "plan", asked)
    assert desk.wait(ann, number, 60)
    job = newest(ann)
    assert (job.number, job.kind, job.who, job.state, job.arguments) == (number, "plan", "Ann", JobState.DONE, asked)
    made, _ = made_plan(ann, job.result["plan"])
    told = plan(here(db), replace(request, publish=False, afresh=True)).plan
    assert (made.bookings, made.objective, made.bound) == (told.bookings, told.objective, told.bound)
    assert all(booking.start >= at(1, 0) for booking in made.bookings if booking.key == key("3"))
    assert said(job).startswith("Plan 1: 3 looms booked, 0 left over,") and said(job).endswith(
        "gap 0 %. It is in force."
    )
    (entry, _) = reversed(made_plans(ann).entries)
    assert (entry.who, entry.published) == ("Ann", True)


def test_everybody_sees_it_and_a_stop_by_another_keeps_the_best(db, monkeypatch):
    hold_plans(monkeypatch)
    ann, bob = by(db, "Ann"), by(db, "Bob")
    number = desk.start(ann, "plan", {"as_of": AS_OF, "publish": True})
    seen = until(lambda: newest(by(db, "Vera", Role.VIEWER)).fraction and newest(by(db, "Vera", Role.VIEWER)))
    assert (seen.number, seen.who, seen.state) == (number, "Ann", JobState.RUNNING)
    assert "gap" in said(seen) and seen.gaps
    assert newest(bob) == newest(ann)
    with refused(DataError, r"a plan is being made already, begun by Ann on .*; wait for its end, or stop it"):
        desk.start(bob, "plan")
    with pytest.raises(NotAllowed):
        desk.stop(by(db, "Vera", Role.VIEWER), number)
    desk.stop(bob, number)
    assert desk.wait(bob, number, 60)
    job = newest(ann)
    assert (job.state, job.stopped_by) == (JobState.STOPPED, "Bob")
    assert "It was stopped; this is the best that was found until then. It is not published." in said(job)
    made, _ = made_plan(bob, job.result["plan"])
    assert made.status.value in ("timed out", "proven optimal within tolerance")
    (entry,) = made_plans(bob).entries
    assert not entry.published
    desk.stop(bob, number)  # of what has ended there is nothing to stop


def test_a_killed_process_leaves_it_broken_off_and_it_can_be_started_again(db, monkeypatch):
    monkeypatch.setitem(kinds.KINDS, JobKind.PLAN, lambda *_, **given: Waiting())
    ann = by(db, "Ann")
    number = desk.start(ann, "plan", {"calm": 2})
    until(lambda: newest(ann).fraction)
    os.kill(desk._RUNNING[db, number].pid, signal.SIGKILL)
    assert desk.wait(ann, number, 60)
    job = newest(ann)
    assert job.state is JobState.BROKEN
    assert said(job) == "its process was ended from outside (code -9); nothing was written; start it again"
    assert made_plans(ann).entries == ()
    second = desk.again(ann, job)
    assert newest(ann).arguments == {"calm": 2} and second == number + 1


@pytest.mark.parametrize("machine", [socket.gethostname(), "before-the-restore"])
def test_of_a_server_that_is_no_more_it_is_broken_off_when_the_next_begins(db, monkeypatch, machine):
    ann = by(db, "Ann")
    monkeypatch.setattr(desk, "RunningJob", lambda *_: None)  # nobody follows it
    monkeypatch.setattr(desk, "_this_process", lambda: f"{machine}/{os.getpid()}/1.00")
    monkeypatch.setitem(kinds.KINDS, JobKind.PLAN, lambda *_, **given: Waiting())
    desk.start(ann, "plan")
    desk._RUNNING.clear()
    monkeypatch.undo()
    job = newest(ann)
    assert (job.state, said(job)) == (
        JobState.BROKEN, "the server that looked after it is no more; nothing was written; start it again"
    )  # fmt: skip
    assert job.ended_at is None  # looking writes nothing
    desk.break_off_dead(ann)
    assert newest(ann).state is JobState.BROKEN and newest(ann).ended_at


SERVER = """
import sys
from held_work import Waiting, until
from tracker.services.context import Context
from tracker.services.jobs import desk, kinds
kinds.KINDS["plan"] = lambda *_, **given: Waiting()
here = Context(sys.argv[1])
desk.start(here, "plan")
until(lambda: desk.look(here).jobs[0].fraction)
print(desk._RUNNING[here.database, 1].pid, flush=True)
sys.stdin.read()
"""


@pytest.mark.long
def test_a_server_that_is_killed_takes_its_processes_along_and_the_next_says_so(db):
    with Popen([sys.executable, "-c", SERVER, db], stdin=PIPE, stdout=PIPE, text=True, env=_with_shared()) as server:
        assert server.stdout
        worker = int(server.stdout.readline())
        assert newest(here(db)).message.code == "job-elsewhere"
        with refused(DataError, rf"another server of this machine \(process {server.pid}\)"):
            desk.stop(here(db), 1)
        server.kill()
        server.wait()
    until(lambda: not psutil.pid_exists(worker) or psutil.Process(worker).status() == psutil.STATUS_ZOMBIE)
    desk.break_off_dead(here(db))
    job = newest(here(db))
    assert (job.state, job.who, made_plans(here(db)).entries) == (JobState.BROKEN, job.who, ())
    number = desk.start(here(db), "plan", {"as_of": AS_OF})
    assert desk.wait(here(db), number, 60) and newest(here(db)).state is JobState.DONE


def _with_shared():
    return os.environ | {"PYTHONPATH": os.pathsep.join(path for path in sys.path if path)}


def test_what_cannot_be_asked_for_is_refused_at_once(db):
    ann = by(db, "Ann")
    with refused(DataError, "99"):
        desk.start(ann, "plan", {"hold": ["99"]})
    with refused(DataError, "no plan is published"):
        desk.start(ann, "rehearsal")
    with refused(UsageError, "heads"):
        desk.start(ann, "scenario", {"text": "[heads]\nNobody = 3"})
    with pytest.raises(NotAllowed):
        desk.start(by(db, "Bo", Role.FITTER), "plan")
    assert desk.look(ann).jobs == ()


def test_lists_are_read_for_who_may_load_something_and_refused_as_by_a_load(db, tmp_path):
    file = tmp_path / "looms.xlsx"
    file.write_bytes(b"no workbook")
    with pytest.raises(NotAllowed):
        desk.start(by(db, "Vera", Role.VIEWER), "reading", {"files": [str(file)]})
    store = by(db, "Pia", Role.PURCHASING)
    number = desk.start(store, "reading", {"files": [str(file)]})
    assert desk.wait(store, number, 60)
    assert is_read(store, [file], {})
    report = load(store, [file], LoadRequest(dry_run=True))
    assert report.refusal and "looms.xlsx" in ENGLISH.say(report.refusal)
    assert said(newest(store)) == "looms.xlsx read"


def test_what_runs_is_seen_however_many_were_begun_since(db, monkeypatch):
    monkeypatch.setattr(desk, "SHOWN", 1)
    monkeypatch.setitem(kinds.KINDS, JobKind.PLAN, lambda *_, **given: Waiting())
    monkeypatch.setitem(kinds.KINDS, JobKind.READING, lambda *_, **given: Waiting())
    desk.start(by(db, "Ann"), "plan")
    desk.start(by(db, "Bob"), "reading")
    assert [job.kind for job in desk.look(by(db, "Vera", Role.VIEWER)).jobs] == ["reading", "plan"]


def test_each_may_have_lists_read(db, monkeypatch):
    monkeypatch.setitem(kinds.KINDS, JobKind.READING, lambda *_, **given: Waiting())
    desk.start(by(db, "Pia", Role.PURCHASING), "reading")
    desk.start(by(db, "Ann"), "reading")
    with refused(DataError, "lists are being read already, begun by Pia"):
        desk.start(by(db, "Pia", Role.PURCHASING), "reading")


def test_a_reading_that_is_stopped_gives_nothing(db, tmp_path):
    work = kinds.KINDS[JobKind.READING](by(db, "Ann"), files=[str(tmp_path / "looms.csv")])
    with refused(DataError, "the reading was stopped; nothing was written; read them again"):
        work.run(lambda *_: None, lambda: True)


def test_a_worker_of_a_cluster_makes_the_same_plan_and_is_stopped(db, monkeypatch, two_workers):  # noqa: F811
    told = plan(here(db), PlanRequest(as_of=MONDAY)).plan
    monkeypatch.setenv("BEAMSLOT_CLUSTER", two_workers)
    ann, asked = by(db, "Ann"), {"as_of": AS_OF}
    assert db.encode() not in dumps(kinds.KINDS[JobKind.PLAN](ann, **asked))  # no way to the database travels
    number = desk.start(ann, "plan", asked)
    assert desk.wait(ann, number, 60)
    made, _ = made_plan(ann, newest(ann).result["plan"])
    assert (made.bookings, made.objective, made.bound) == (told.bookings, told.objective, told.bound)
    hold_plans(monkeypatch)
    number = desk.start(ann, "plan", asked)
    until(lambda: "gap" in said(newest(ann)))  # what the worker tells is seen
    desk.stop(ann, number)
    assert desk.wait(ann, number, 60)
    assert newest(ann).state is JobState.STOPPED


def test_a_cluster_that_is_not_there_is_said_before_anything_begins(db, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_CLUSTER", "tcp://127.0.0.1:1")
    with refused(TrackerError, "no cluster answered at tcp://127.0.0.1:1"):
        desk.start(by(db, "Ann"), "plan")
    assert desk.look(by(db, "Ann")).jobs == ()
