"""Six weeks of a small mill, replanned whenever something happens; every move and its reason worked out by hand.

One crew of two, Monday to Friday 06:00 to 14:00, and a conversion takes 480 min of both: one a day. Looms 1 to 5 and 11, 12 stand
without an order, so that stopping them costs nothing and the savings order them; looms 6 and 7 run, 16.2 m/h at 0.5 a metre, and
are out at 06:00 on the mornings said. A loom's labour is 480, its rail (of AJ looms only) 100. Nobody learns and no beam-out has a
spread. Moving a booking of the next 14 days costs 60, a later one 15. A plan counts as optimal within 0.1 %, some 6 of 6,000.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from opened import here
from said import said
from three_looms import added, crew

from tracker.domain.mill import LoomKey
from tracker.domain.plan import TOLERANCE
from tracker.domain.progress import CONVERTED, Stage, StageChange
from tracker.domain.rows import Change, SourceTable, TypedRow
from tracker.services.parts import stock
from tracker.services.people.absences import record_absence
from tracker.services.plans.plan import PlanReport, PlanRequest, plan
from tracker.services.plans.verify import verify
from tracker.store import UnitOfWork, open_store

MONDAY = datetime(2027, 1, 4, tzinfo=UTC)
SAVINGS = {"1": 30.0, "11": 28.0, "2": 26.0, "12": 24.0, "3": 22.0, "4": 20.0, "5": 18.0, "6": 2.0, "7": 2.0}
AJ = [loom for loom in SAVINGS if len(loom) == 1]
"""The others are RP, which need no rail."""
OUT_DAY = {"6": 28, "7": 31}
"""Beam-out, days after Monday 4 January: Monday 1 and Thursday 4 February, at 06:00."""
TERMS: dict[str, object] = {
    "start": "2027-01-04", "horizon (days)": 42, "soak (days)": 5, "allowance (%)": 0.0, "learning rate (%)": 1.0,
    "day-to-day variation (%)": 0.0, "pilot of AJ": "1", "pilot of RP": "11", "days to order": 1,
}  # fmt: skip
WARP_M_PER_H = 16.2


Moves = dict[str, tuple[datetime, float | None, str]]
"""Loom → its start now, what leaving it where it was would cost, and why it moved."""


def key(loom: str) -> LoomKey:
    return LoomKey("H", loom)


def at(day: int, hour: float = 6) -> datetime:
    return MONDAY + timedelta(days=day, hours=hour)


def local(moment: datetime) -> datetime:
    return moment.replace(tzinfo=None)


def out_at(loom: str, read_at: datetime, out: datetime) -> Change:
    left = (out - read_at) / timedelta(hours=1) * WARP_M_PER_H
    values = {"loom": loom, "hall": "H", "read_at": local(read_at), "warp_left_m": left}
    return added("readings", loom, "H", local(read_at), **values)


@dataclass
class Story:
    """The mill on its way; its clock is where `now` says."""

    db: str
    now: datetime

    @property
    def context(self) -> Any:
        return here(self.db, clock=lambda: self.now)

    def writing(self) -> UnitOfWork:
        return open_store(self.db).unit_of_work("foreman", lambda: self.now)

    def load(self, *changes: Change) -> None:
        with self.writing() as uow:
            uow.load_writer().write(list(changes), {})
            uow.commit()

    def converted(self, loom: str, day: int, stage: Stage = Stage.SIGNED_OFF) -> None:
        """Its kit, where it has one, was handed out on a morning, and its conversion done by 14:00."""
        if loom in AJ:
            stock.issue_kit(here(self.db, clock=lambda: at(day)), loom)
        self.goes(loom, stage, at(day, 14))

    def goes(self, loom: str, stage: Stage, moment: datetime, why: str | None = None) -> None:
        with self.writing() as uow:
            uow.add_stage(StageChange(key(loom), stage, moment, "foreman", why))
            uow.commit()

    def replan(self) -> Moves:
        """Of the looms still booked or left over, in order of the new start; those done are told by their stage."""
        made = self.replanned()
        done = {loom.loom for loom, change in self.stages().items() if change.stage in CONVERTED}
        assert {m.key.loom for m in made.moves if m.after is None} == done & {m.key.loom for m in made.moves}
        return {m.key.loom: (m.after.start, m.price and round(m.price, 1), said(m.why)) for m in made.moves if m.after}

    def stages(self) -> dict[LoomKey, StageChange]:
        with self.context.reading() as uow:
            return uow.stages()

    def replanned(self) -> PlanReport:
        """Published and found sound; every move has a cause of its own or of another loom, or costs more to undo than the gap."""
        made = plan(self.context, PlanRequest(publish=True, as_of=self.now))
        assert verify(self.context).sound
        for move in made.moves:
            known = any(move.why.params.get(name) for name in ("root", "since", "forecast"))
            caused = known or move.why.code not in ("moved-at-a-price", "moved-cheaper")
            assert caused or (move.price or 0) > TOLERANCE * made.plan.objective, said(move.why)
        return made


def make(db: str) -> Story:
    open_store(db, make=True)
    story = Story(db, at(0, 5))
    stand = [loom for loom in SAVINGS if loom not in OUT_DAY]
    first, last = local(MONDAY), local(at(42, 0))
    warp = {"sequence": 0, "article": "A", "hall": "H", "set_length_m": 20000.0, "read_at": first}
    story.load(
        *(added("terms", term, term=term, value=value) for term, value in TERMS.items()),
        *(added("looms", loom, "H", loom=loom, hall="H", machine_type="AJ" if loom in AJ else "RP", speed_ppm=600.0,
                efficiency=0.9, saving_per_day=saving) for loom, saving in SAVINGS.items()),
        added("articles", "A", article="A", pick_density_per_cm=20.0, take_up=0.0, contribution_per_m=0.5),
        added("changes", "repeat", None, kind="repeat", hours_h=2.0),
        *(added("warps", loom, "H", 0, loom=loom, warp_left_m=20000.0, **warp) for loom in stand),
        *(added("warps", loom, "H", 0, loom=loom, warp_left_m=(day * 24 + 6) * WARP_M_PER_H, **warp)
          for loom, day in OUT_DAY.items()),
        *(added("standing", loom, "H", first, loom=loom, hall="H", from_at=first, to_at=last, reason="no order")
          for loom in stand),
        added("parts", "RAIL", part="RAIL", on_hand=3.0, price=100.0, lead_time_days=10.0, unit="pc"),
        added("receipts", "PO-1", "RAIL", order="PO-1", part="RAIL", quantity=2.0, due=date(2027, 1, 13)),
        added("receipts", "PO-2", "RAIL", order="PO-2", part="RAIL", quantity=2.0, due=date(2027, 1, 28)),
        crew({"crew": "F1", "trade": "fitter", "heads": 2, "rate_per_head_h": 30.0, "shift_start": time(6),
              "shift_end": time(14)}),
    )  # fmt: skip
    work = {"trade": "fitter", "heads": 2}
    out = {"step": 5, "operation": "Take the beam out", "minutes": 240.0} | work
    typed = {
        "operations": [
            TypedRow("operations", out, {"window": "mid-warp"}, 0, 5),
            TypedRow("operations", {"step": 10, "operation": "Mount", "minutes": 480.0} | work, {}, 0, 10),
        ],
        "kit_lines": [TypedRow("kit_lines", {"part": "RAIL", "quantity": 1.0}, {"machine type": "AJ"}, 1, 2)],
    }
    with story.writing() as uow:
        sources = [SourceTable("method.xlsx", name, name, 1) for name in typed]
        uow.load_writer().write_method(typed, sources)
        uow.commit()
    return story


def starts(made: PlanReport) -> dict[str, datetime]:
    return {b.key.loom: b.start for b in made.plan.bookings}


def test_six_weeks(tmp_path) -> None:
    mill = make(str(tmp_path / "mill.db"))
    first = plan(mill.context, PlanRequest(publish=True, as_of=mill.now))
    # the pilots first, by saving; with five days of soak their types open on Saturday 9 and Sunday 10 at 14:00
    assert starts(first) == {
        "1": at(0), "11": at(1), "2": at(7), "12": at(8), "3": at(9), "4": at(10), "5": at(11), "6": at(28), "7": at(31),
    }  # fmt: skip

    # Monday: the crew is ill, so the pilot of AJ is missed. It goes to Wednesday, the first free day, and its type opens on Monday
    # 11 at 14:00: loom 2 must wait. Exchanged with loom 12 it costs 26 − 24 and two moves, 122; on Monday 18 it would cost
    # 7 × 26 and one move, 242, and so 120 more
    record_absence(mill.context, "F1", date(2027, 1, 4), date(2027, 1, 4), reason="ill")
    mill.now = at(1, 5)
    missed = "its start on Mon 4 Jan 2027 06:00 passed and nothing was recorded (F1 is away on Mon 4 Jan 2027: ill)"
    began = f"it began with loom 1 (H): {missed}"
    room = "makes room for 2 (H): with it there would be too little fitter from Tue 12 Jan 2027 06:00 on"
    assert mill.replan() == {
        "1": (at(2), None, missed),
        "12": (
            at(7),
            120.0,
            f"{room}; {began}",
        ),
        "2": (
            at(8),
            None,
            f"it waits until Mon 11 Jan 2027 14:00 for the pilot of AJ, loom 1 (H), to have run 5 days; {began}",
        ),
    }

    # loom 12 is broken off on Monday 11. The days to Friday are booked, Monday 18 is free; to exchange with loom 5 on Friday would
    # save 3 × (24 − 18) and cost a move
    mill.converted("11", 1, Stage.RUN_IN)
    mill.converted("1", 2, Stage.RUN_IN)
    mill.goes("12", Stage.IN_WORK, at(7, 6))
    mill.goes("12", Stage.STOPPED, at(7, 12), "the rail does not fit")
    mill.now = at(7, 15)
    assert mill.replan() == {"12": (at(14), None, "its conversion was broken off: the rail does not fit")}

    # three rails are used up, two more were due on Wednesday 13. On Thursday they count like an order of that day, 10 days:
    # Sunday 24, so Monday 25, and they serve from Tuesday. Loom 12 takes the Thursday: 4 × 24 less a move, 36
    mill.converted("2", 8)
    mill.converted("3", 9)
    mill.now = at(10, 5)
    late = ("it needs 1 of part RAIL, 0 can be there (the receipt of 2 pc RAIL promised for Wed 13 Jan 2027 has not come "
            "(order PO-1))")  # fmt: skip
    assert mill.replan() == {
        "12": (at(10), 36.0, f"takes the place of 4 (H); it began with loom 4 (H): {late}"),
        "4": (at(22), None, late),
        "5": (at(23), None, late),
    }

    # the rails come on Monday 25; loom 5 is protected for an order until Friday. Monday 1 February is loom 6's
    mill.converted("12", 10)
    mill.now = at(21, 10)
    stock.receive(mill.context, order="PO-1")
    mill.load(Change("looms", ("5", "H"), "protected_until", None, date(2027, 1, 29)))
    assert mill.replan() == {"5": (at(29), None, "the loom is protected until Fri 29 Jan 2027 included")}

    # Friday: loom 6 is out a day later, on Tuesday, loom 7 a day earlier, on Wednesday. Loom 7 would wait 24 h at 8.1 and lose 2
    # of saving, less its move: 136.4. Loom 5 on Tuesday keeps its move (60) and loses 18; then loom 6 waits until Wednesday and
    # loom 7 until Thursday, 196.4 each, and that keeps loom 7's move: 290.8
    mill.converted("4", 22)
    mill.now = at(25, 5)
    stock.receive(mill.context, order="PO-2")
    mill.load(out_at("6", at(25, 4), at(29)), out_at("7", at(25, 4), at(30)))
    moved = mill.replan()
    room = "makes room for 6 (H): with it there would be too little fitter from Tue 2 Feb 2027 06:00 on"
    assert moved["5"] == (at(28), 290.8, f"{room}; it began with loom 6 (H): its beam-out is expected 24 h later")
    assert moved["6"][::2] == (at(29), "its beam-out is expected 24 h later")
    assert moved["7"] == (at(30), 136.4, "its beam-out is expected 24 h earlier")
    assert len(moved) == 3

    # and without new data nothing moves
    assert mill.replan() == {}
