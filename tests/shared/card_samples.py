"""A loom, its booking and its work, with figures that are easy to add up."""

from dataclasses import replace
from datetime import UTC, datetime

from tracker.domain.method import Check, KitLine, Method, Operation, Setpoint
from tracker.domain.mill import Loom, LoomKey, Mill, Part, Warp
from tracker.domain.plan import Booking, CostTerms, CrewTurn, Need, Plan, PlanStatus
from tracker.domain.terms import Terms
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import StepLoad, WorkContent

KEY = LoomKey("Hall 1", "007")
SLING = "Two people and a rated sling."


def at(day: int, hour: int) -> datetime:
    return datetime(2027, 1, day, hour, tzinfo=UTC)


OPERATIONS = (
    Operation(20, "Lift the rail off", 20, "fitter", 2, "hoist", caution=SLING),
    Operation(30, "Lift the new rail on", 30, "fitter", 2, "Hoist", caution=SLING, torque_nm=40),
    Operation(40, "Test every emergency stop", 10, "electrician", 1, learns=False, waivable=False),
    Operation(90, "Watch the first quarter of an hour", 15, "fitter", 1, place="after restart"),
    Operation(95, "Ring out the cables", 15, "assistant", 1, place="bench before"),
)
CONTENT = WorkContent(
    WindowKind.STYLE, (("rail work", "new rail"),), OPERATIONS,
    (KitLine("RAIL-190", 1), KitLine("LOCK", 2, comes_back=True), KitLine("PIN", 4)),
    (Setpoint("crossing angle", "left", "deg", 310, 305, 315), Setpoint("crossing angle", "right", "deg", 310, 305, 315),
     Setpoint("motor current", None, "A", 2)),
    (Check("Selvedge holds on the first 50 m", "left"), Check("Guards are refitted", safety=True),
     Check("Bond of the rail", None, "number", 0, 0.1, waivable=False), Check("Noise", safety=True, waivable=True)),
    (StepLoad(20, 20, {"fitter": 2}, {"hoist": 1}), StepLoad(30, 30, {"fitter": 2}, {"hoist": 1}),
     StepLoad(40, 10, {"electrician": 1}, {}, learns=False)),
    60, 15, 15, {"fitter": 115, "electrician": 10, "assistant": 15}, {"RAIL-190": 1, "LOCK": 2, "PIN": 4},
    {"electrician": 10},
)  # fmt: skip
"""140 person-minutes, of which 10 do not learn."""

BOOKING = Booking(
    KEY, 1, WindowKind.STYLE, CONTENT.choices, at(5, 5), at(5, 7), at(5, 4), 4, 140 / 60, dict(CONTENT.parts), CostTerms(),
    crews=(CrewTurn("Fitters 1", at(5, 5), at(5, 6)), CrewTurn("Fitters 2", at(5, 6), at(5, 7))),
    needs=(Need("electrician", "trade", 1, at(5, 6), at(5, 7)), Need("hoist", "tool", 1, at(5, 5), at(5, 6))),
)  # fmt: skip

WINDOW = Window(
    KEY, 1, WindowKind.STYLE, at(1, 0), 100, 1, at(5, 3), at(5, 1), at(5, 3), at(5, 9), at(5, 3), None, "A-out", "B-in",
    1, 1, 1, 4,
)  # fmt: skip

MILL = Mill(
    looms={KEY: Loom("Hall 1", "007", "AJ-190", row="3", place="12", attributes={"Rail weight": 31.5})},
    warps={KEY: (Warp("Hall 1", "007", 0, "A-now"),)},
    parts={
        "RAIL-190": Part("RAIL-190", 6, "cross rail 190 cm", "pc", location="B-04"),
        "LOCK": Part("LOCK", 6, "transport lock", "pc", location="A-10"),
        "PIN": Part("PIN", 6, unit="pc"),
    },
    method=Method(version=4),
    terms=Terms("Hall renewal", "Europe/Vienna"),
)

PLAN = Plan(
    PlanStatus.OPTIMAL, 1, 1, 1, "EUR", at(4, 5), at(29, 23),
    (BOOKING, replace(BOOKING, key=LoomKey("Hall 1", "A-2")), replace(BOOKING, key=LoomKey("Hall 1", "A-10"))),
)  # fmt: skip
