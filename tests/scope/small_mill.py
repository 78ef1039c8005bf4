"""A method small enough to work everything out by hand."""

from dataclasses import replace
from typing import Any

from tracker.domain.method import Alternative, Check, KitLine, Method, Operation, Row, Setpoint
from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part, Tool
from tracker.domain.terms import Terms


def row(number, *headings, sheet="Operations"):
    """Columns A, B, C … in the order of the headings."""
    return Row(sheet, number, dict(zip(headings, "ABCDEFGHIJKLMNOP", strict=False)))


FIELDS = ("step", "operation", "minutes", "trade", "heads", "tool", "place", "minutes_low", "minutes_high")


def operation(number, step, name, minutes, trade="fitter", heads=1, **rest):
    given = {key: rest.pop(key) for key in ("tool", "place", "minutes_low", "minutes_high") if key in rest}
    conditions = {key.replace("_", " "): value for key, value in rest.items()}
    return Operation(step, name, minutes, trade, heads, conditions=conditions,
                     row=row(number, *FIELDS, *conditions), **given)  # fmt: skip


METHOD = Method(
    version=1,
    operations=(
        operation(2, 10, "Make ready", 20, place="bench before"),
        operation(3, 20, "Beam out", 40, heads=2, tool="hoist", window="mid-warp"),
        operation(4, 30, "Fit left", 30, side="left, both"),
        operation(5, 30, "Fit right", 20, side="right, both"),
        operation(6, 40, "Drill", 60, tool="jig", rail_work="drill"),
        operation(7, 40, "Change the rail", 50, heads=2, rail_work="new rail"),
        operation(8, 50, "Wire", 30, trade="electrician", frames="> 12"),
        operation(9, 60, "Watch", 10, place="after restart"),
    ),
    kit_lines=(
        KitLine("DEVICE", 1, conditions={"side": "left, right"}, row=row(2, "part", "side", sheet="Kit lines")),
        KitLine("DEVICE", 2, conditions={"side": "both"}, row=row(3, "part", "side", sheet="Kit lines")),
        KitLine("RAIL", 1, conditions={"rail work": "new rail"}, row=row(4, "part", "rail work", sheet="Kit lines")),
    ),
    alternatives=tuple(
        Alternative("rail work", name, {"rail": rail}, row(number, "choice", "alternative", "rail", sheet="Choices"))
        for number, name, rail in ((2, "as it is", "drilled"), (3, "drill", "undrilled"), (4, "new rail", "undrilled"))
    ),
    setpoints=(Setpoint("angle", "left", "deg", 310, 305, 315, {"side": "left, both"},
                        row(2, "setting", "side", "unit", "target", "low", "high", sheet="Setpoints")),),
    checks=(Check("Runs"),),
)  # fmt: skip
PARTS = {part: Part(part, 10, price=price) for part, price in (("DEVICE", 100), ("RAIL", 300))}
TOOLS = {name: Tool(name, 1) for name in ("hoist", "jig")}
CREWS = (Crew("F1", "fitter", 2), Crew("E1", "electrician", 1))
TERMS = Terms(allowance=0.15)


def loom(number, side: Any = "left", rail: Any = "drilled", frames: Any = 8, machine_type="AJ", **attributes):
    return Loom("H1", number, machine_type, frames=frames, attributes={"Side": side, "Rail": rail, **attributes})


def mill(*looms, method=METHOD, terms=TERMS):
    return Mill({one.key: one for one in looms}, parts=PARTS, tools=TOOLS, crews=CREWS, method=method, terms=terms)


def key(number):
    return LoomKey("H1", number)


def with_operations(*operations):
    return replace(METHOD, operations=(*METHOD.operations, *operations))
