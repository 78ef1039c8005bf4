"""The invented method of the sample mill: what converting a loom to motor-driven leno devices consists of.

Written from scratch. Minutes are normal minutes before allowance of a crew that has done it before; the first conversion of
a type takes 1.8 to 2 times as long, but for what takes its time however often it was done: isolation, waiting, tests,
watched runs. Threads and tightening follow common practice: hexagon screws of property class 8.8,
M10 × 1.5, tap drill 8.5 mm, 40 N·m in steel with a thread as deep as its diameter. The order of the isolation steps is
that of 29 CFR 1910.147(d): prepare, shut down, isolate, lock and tag, release stored energy, verify. The order of the
whole is one in which it can be worked: all mechanical work on the dead loom, then the electrics, closed and uncovered,
people clear, power, software, reference run, tests, yarn threaded by jog, then the first slow run.
"""

from tracker.domain.method import Alternative, Check, KitLine, Method, Operation, Setpoint

FITTER, ELECTRICIAN, ASSISTANT = "fitter", "electrician", "assistant"
HOIST, JIG = "hoist", "drilling jig"
BENCH, AFTER = "bench before", "after restart"
LEFT, RIGHT = "left, both", "right, both"

HOLD = "HOLD POINT: only an electrically competent person; do not go on before it is signed."
SLING = "Two people and a rated sling at the marked points; nobody under the load; the rail is above the 25 kg one person may lift."
CHOCK = "Chock the beam before the brackets are opened; hands clear of the flanges."
SWARF = (
    "Eyes and ears protected, no gloves at the spindle; warp, reed, harness and drop wires covered; catch the swarf; no blowing "
    "down with air."
)
SCREW = "Property class 8.8, M10 × 1.5; degreased threads; tighten crosswise in two passes."
TURNS = "A motor-driven device can turn while the loom stands: hands out before power, reset and reference run."
REED = "Keep clear of reed, temples and cutters."


def _when(**conditions: str) -> dict[str, str]:
    """Keyword → heading of the condition column: `leno_side` → `leno side`."""
    return {name.replace("_", " "): test for name, test in conditions.items()}


def _op(step: int, operation: str, minutes: float, trade: str, heads: int, *, spread: tuple[float, float] | None = None,
        tool: str | None = None, place: str = "on loom", caution: str | None = None, torque: float | None = None,
        warp: str | None = None, learns: bool = True, stops_neighbours: bool = False, waivable: bool | None = None,
        **conditions: str) -> Operation:  # fmt: skip
    low, high = spread or (None, None)
    return Operation(
        step, operation, minutes, trade, heads, tool, place, caution, torque, low, high, _when(**conditions),
        warp=warp, learns=learns, stops_neighbours=stops_neighbours, waivable=waivable,
    )  # fmt: skip


def _line(part: str, quantity: float, comes_back: bool = False, **conditions: str) -> KitLine:
    return KitLine(part, quantity, comes_back, _when(**conditions))


BENCH_WORK = (
    _op(10, "Check the kit against the pick list and mark it with the loom number", 7, ASSISTANT, 1, place=BENCH),
    _op(20, "Build up the left device with its support and turn it by hand", 10, ASSISTANT, 1, spread=(7, 18),
        place=BENCH, leno_side=LEFT),
    _op(30, "Build up the right device with its support and turn it by hand", 10, ASSISTANT, 1, spread=(7, 18),
        place=BENCH, leno_side=RIGHT),
    _op(40, "Cut, label and ring out the cables, press the ferrules on", 13, ASSISTANT, 1, place=BENCH),
    _op(50, "Deburr the new rail and run a gauge through its threads", 8, ASSISTANT, 1, place=BENCH,
        caution="Gloves; rest the rail on two trestles, lifted by two people.", rail_work="new rail"),
    _op(60, "Wire the add-on control box, load its software and test it on the bench supply", 20, ELECTRICIAN, 1,
        spread=(14, 33), place=BENCH, caution=HOLD, controller_generation="1"),
)  # fmt: skip

ISOLATION = (
    _op(100, "Prepare the stop: read the loom's energy sheet, tell the weaver and everyone near, set the barriers", 6,
        FITTER, 1, caution="Name every source: supply, air, warp tension, springs, drive capacitors.", learns=False),
    _op(110, "Shut the loom down by its ordinary stop, shed closed", 4, FITTER, 1, learns=False),
    _op(120, "Isolate: main switch off", 3, FITTER, 1, learns=False),
    _op(120, "Isolate: close the air valve of the loom", 3, FITTER, 1, learns=False, insertion="air-jet"),
    _op(130, "Lock and tag every isolating point, one lock for each person", 3, FITTER, 2, learns=False, waivable=False,
        caution="Own lock, own key. Never take off another person's lock."),
    _op(140, "Release or restrain what is stored: warp tension, springs, air, drive capacitors", 8, FITTER, 2, learns=False,
        caution="Wait the discharge time on the plate of the drive; watch the air gauge fall to zero."),
    _op(150, "Verify that nothing moves: try to start, read the gauge", 5, FITTER, 1, learns=False, waivable=False,
        caution="Whatever moves: back to the isolation. Nobody touches the electrics before the electrician has proved them dead."),
)  # fmt: skip

STRIPPING = (
    _op(160, "Lease and clamp the warp ends and take the warp beam out", 19, FITTER, 2, spread=(14, 33), tool=HOIST,
        caution=CHOCK, window="mid-warp"),
    _op(170, "Cover warp, harness and reed", 3, FITTER, 2),
    _op(180, "Take down the vertical creel and close its openings", 9, FITTER, 1, creel="vertical creel"),
    _op(185, "Take down the horizontal creel and its yarn tubes", 12, FITTER, 2, spread=(9, 22),
        caution="Lift the creel frame by two people.", creel="horizontal creel"),
    _op(190, "Take off the old selvedge gear and flange bobbin, left", 4, FITTER, 1, leno_side=LEFT),
    _op(190, "Take off the old selvedge gear and flange bobbin, right", 4, FITTER, 1, leno_side=RIGHT),
    _op(200, "Draw the extra leno ends out of drop wires, healds and reed", 5, FITTER, 1, extra_ends="taken out"),
    _op(200, "Tie back and label the extra leno ends", 6, FITTER, 1, extra_ends="kept"),
)  # fmt: skip

RAIL = (
    _op(210, "Sling the old rail and lift it off", 45, FITTER, 2, warp="out", spread=(33, 67), tool=HOIST, caution=SLING,
        stops_neighbours=True, rail_work="new rail"),
    _op(220, "Lift the new rail on, align it with the reed and tighten its end screws", 75, FITTER, 2, warp="out", spread=(56, 111),
        tool=HOIST, caution=f"{SLING} {SCREW}", torque=40, stops_neighbours=True, rail_work="new rail"),
    _op(230, "Clamp the drilling jig on the rail and check its distance from the reed", 7, FITTER, 2, warp="out", tool=JIG,
        rail_work="drill"),
    _op(232, "Drill 8.5 mm and tap M10 × 1.5 through the jig, left, one drilling, one taking up the swarf", 32, FITTER, 2,
        warp="out", spread=(25, 56), tool=JIG, caution=SWARF, rail_work="drill", leno_side=LEFT),
    _op(233, "Drill 8.5 mm and tap M10 × 1.5 through the jig, right, one drilling, one taking up the swarf", 32, FITTER, 2,
        warp="out", spread=(25, 56), tool=JIG, caution=SWARF, rail_work="drill", leno_side=RIGHT),
    _op(234, "Take up the swarf with magnet and vacuum cleaner, gauge every thread", 8, FITTER, 1, caution=SWARF,
        rail_work="drill"),
    _op(236, "Clean the threads that are there, degrease and gauge them", 6, FITTER, 1, rail_work="as it is"),
)  # fmt: skip

FITTING = (
    _op(240, "Screw on the left support", 8, FITTER, 1, caution=SCREW, torque=40, leno_side=LEFT),
    _op(240, "Screw on the right support", 8, FITTER, 1, caution=SCREW, torque=40, leno_side=RIGHT),
    _op(250, "Hang the left device in its support and secure the pin", 7, FITTER, 1, leno_side=LEFT),
    _op(250, "Hang the right device in its support and secure the pin", 7, FITTER, 1, leno_side=RIGHT),
    _op(260, "Set the long arms clear of the rear frames, shed fully open by hand", 7, FITTER, 1, spread=(4, 14),
        frames="> 12"),
    _op(270, "Fit the drop wires for waste detection and their bar", 7, FITTER, 1, waste_drop_wires="absent"),
    _op(280, "Clear the old duct and pull the cables through it", 19, FITTER, 1, spread=(11, 33),
        cable_route="old duct"),
    _op(280, "Clip a new duct along the frame and lay the cables, motor and signal apart", 9, FITTER, 1, spread=(7, 17),
        cable_route="new duct"),
    _op(290, "Tie the motor cables with a loop for the rail's travel", 5, FITTER, 1, reed_width="<= 230"),
    _op(290, "Tie the motor cables with a loop for the rail's travel, wide loom", 8, FITTER, 1, reed_width="> 230"),
)  # fmt: skip

ELECTRICAL = (
    _op(295, "Prove dead at the drive and at the supply tap: tester, terminals, tester again", 5, ELECTRICIAN, 1, caution=HOLD,
        learns=False, waivable=False),
    _op(300, "Connect the supply tap behind the loom's main switch, with its fuse and label", 30, ELECTRICIAN, 1,
        spread=(22, 50), caution=HOLD),
    _op(310, "Connect the interlock switch and the emergency-stop circuit", 40, ELECTRICIAN, 1, spread=(31, 61),
        caution=HOLD, waivable=False),
    _op(320, "Bond rail and devices to earth and measure bond, insulation and polarity", 15, ELECTRICIAN, 1, caution=HOLD,
        waivable=False),
    _op(330, "Mount the add-on control box and the shaft-angle sensor and connect them", 22, ELECTRICIAN, 1, spread=(17, 39),
        caution=HOLD, controller_generation="1"),
    _op(330, "Mount the driver on its rail and connect it", 9, ELECTRICIAN, 1, caution=HOLD, controller_generation=">= 2"),
)  # fmt: skip

CLOSING = (
    _op(340, "Fit the guards of the devices and the warning signs", 4, FITTER, 1, waivable=False),
    _op(345, "Uncover warp, harness and reed, count tools and cloths", 3, FITTER, 2),
    _op(350, "Clear the people, take off each own lock and tag, switch on", 4, FITTER, 2, learns=False, waivable=False,
        caution=f"Count the people first; the last lock goes when the barriers are checked. {TURNS}"),
)  # fmt: skip

POWERED = (
    _op(360, "Save the old software and load the new one from the card", 20, ELECTRICIAN, 1, spread=(17, 39), caution=HOLD,
        controller_generation="2"),
    _op(360, "Save the old software and load the new one over the network", 20, ELECTRICIAN, 1, spread=(14, 33), caution=HOLD,
        controller_generation=">= 3"),
    _op(365, "Enter the parameters and make the reference run", 6, FITTER, 1, caution=TURNS),
    _op(370, "Set crossing angle, turning direction and reference offset, left", 6, FITTER, 1, spread=(5, 13),
        caution=TURNS, leno_side=LEFT),
    _op(370, "Set crossing angle, turning direction and reference offset, right", 6, FITTER, 1, spread=(5, 13),
        caution=TURNS, leno_side=RIGHT),
    _op(380, "Test the interlock and every emergency stop", 25, ELECTRICIAN, 1, caution=HOLD, learns=False, waivable=False),
    _op(390, "Thread the leno yarn by hold-to-run jog, left", 5, FITTER, 1, warp="out", caution=TURNS, leno_side=LEFT),
    _op(390, "Thread the leno yarn by hold-to-run jog, right", 5, FITTER, 1, warp="out", caution=TURNS, leno_side=RIGHT),
    _op(392, "Set spring and yarn tension, left", 4, FITTER, 1, warp="out", leno_side=LEFT),
    _op(392, "Set spring and yarn tension, right", 4, FITTER, 1, warp="out", leno_side=RIGHT),
)  # fmt: skip

STARTING = (
    _op(400, "Lift the warp beam in and tension the warp", 22, FITTER, 2, spread=(17, 42), tool=HOIST, caution=CHOCK,
        window="mid-warp"),
    _op(410, "Gait the warp and turn the loom slowly through two full shed cycles", 4, FITTER, 1, warp="in", caution=REED),
    _op(420, "First slow run under watch", 14, FITTER, 2, warp="in", learns=False,
        caution=f"{REED} One person at the stop button."),
)  # fmt: skip

RUN_IN = (
    _op(500, "Watch the first quarter of an hour at full speed", 15, FITTER, 1, place=AFTER, learns=False),
    _op(510, "Look at both selvedges on the first cloth and correct the settings", 4, FITTER, 1, spread=(3, 17),
        place=AFTER),
    _op(520, "Write down settings, torques and hours and hand the loom over", 4, FITTER, 1, place=AFTER),
    _op(530, "A day later: tighten the screws again and look at the cloth of the first doff", 12, FITTER, 1, place=AFTER,
        torque=40, learns=False),
)  # fmt: skip

KIT_LINES = (
    _line("DEV-L", 1, leno_side=LEFT),
    _line("DEV-R", 1, leno_side=RIGHT),
    _line("SUP-12", 1, leno_side="left, right", frames="<= 12"),
    _line("SUP-12", 2, leno_side="both", frames="<= 12"),
    _line("SUP-20", 1, leno_side="left, right", frames="> 12"),
    _line("SUP-20", 2, leno_side="both", frames="> 12"),
    _line("TRANSPORT-LOCK", 1, True, leno_side="left, right"),
    _line("TRANSPORT-LOCK", 2, True, leno_side="both"),
    _line("RAIL-N", 1, rail_work="new rail", reed_width="<= 230"),
    _line("RAIL-M", 1, rail_work="new rail", reed_width="(230..300]"),
    _line("RAIL-W", 1, rail_work="new rail", reed_width="> 300"),
    _line("SCREW-M10-45", 8, rail_work="new rail"),
    _line("SCREW-M10-30", 4, leno_side="left, right"),
    _line("SCREW-M10-30", 8, leno_side="both"),
    _line("WASHER-LOCK", 4, leno_side="left, right"),
    _line("WASHER-LOCK", 8, leno_side="both"),
    _line("WASHER-LOCK", 8, rail_work="new rail"),
    _line("TAPPING-OIL", 30, rail_work="drill"),
    _line("SPACER-6", 2, reed_width="> 300"),
    _line("PLATE-CREEL", 2, creel="vertical creel, horizontal creel"),
    _line("GUIDE-EXTRA", 2, extra_ends="kept"),
    _line("WIRE-SET", 1, waste_drop_wires="absent"),
    _line("CABLE-SUPPLY", 6.5, reed_width="<= 230"),
    _line("CABLE-SUPPLY", 8.5, reed_width="> 230"),
    _line("CABLE-MOTOR", 4, leno_side="left"),
    _line("CABLE-MOTOR", 5.5, leno_side="right", reed_width="<= 230"),
    _line("CABLE-MOTOR", 7, leno_side="right", reed_width="> 230"),
    _line("CABLE-MOTOR", 9.5, leno_side="both", reed_width="<= 230"),
    _line("CABLE-MOTOR", 11, leno_side="both", reed_width="> 230"),
    _line("DUCT-40", 3, cable_route="new duct", reed_width="<= 230"),
    _line("DUCT-40", 4.5, cable_route="new duct", reed_width="> 230"),
    _line("CABLE-TIE", 20),
    _line("GLAND-16", 2),
    _line("TERMINAL-4", 12),
    _line("FERRULE", 40),
    _line("DC-SUPPLY", 1),
    _line("DRIVER", 1, controller_generation=">= 2"),
    _line("ANGLE-SENSOR", 1, controller_generation="1"),
    _line("GUARD", 1, leno_side="left, right"),
    _line("GUARD", 2, leno_side="both"),
    _line("SIGN", 2),
    _line("FUSE-6A", 2),
    _line("SWITCH-LOCK", 1),
    _line("EARTH-STRAP", 2, leno_side="left, right"),
    _line("EARTH-STRAP", 3, leno_side="both"),
    _line("CONTROL-BOX", 1, controller_generation="1"),
    _line("CARD", 1, True, controller_generation="2"),
    _line("NET-LEAD", 1, controller_generation=">= 3"),
    _line("SPRING-SOFT-L", 1, insertion="air-jet", leno_side=LEFT),
    _line("SPRING-SOFT-R", 1, insertion="air-jet", leno_side=RIGHT),
    _line("SPRING-FIRM-L", 1, insertion="rapier", leno_side=LEFT),
    _line("SPRING-FIRM-R", 1, insertion="rapier", leno_side=RIGHT),
    _line("EYE-SET", 1, leno_side="left, right"),
    _line("EYE-SET", 2, leno_side="both"),
    _line("YARN-LENO", 0.8, leno_side="left, right"),
    _line("YARN-LENO", 1.6, leno_side="both"),
    _line("COVER-SHEET", 1),
    _line("LABEL-SET", 1),
    _line("LEASE-CORD", 1, window="mid-warp"),
    _line("WARP-CLAMP", 2, True, window="mid-warp"),
)

ALTERNATIVES = (
    Alternative("rail work", "as it is", _when(rail="drilled")),
    Alternative("rail work", "new rail", _when(rail="undrilled")),
    Alternative("rail work", "drill", _when(rail="undrilled", reed_width="<= 340")),
    Alternative("cable route", "old duct", _when(cable_duct="free")),
    Alternative("cable route", "new duct"),
)


REPEATABILITY = {"crossing angle": 1, "yarn tension": 3, "mounting position": 1, "reference offset": 1}
"""Two readings of one thing differ by less in 95 of 100 cases: an encoder's angle, a hand-held gauge, a rule, a read-out."""


def _both(setting: str, unit: str | None, target: float | str, low: float | None = None, high: float | None = None,
          right: float | str | None = None, **conditions: str) -> tuple[Setpoint, Setpoint]:  # fmt: skip
    """A setpoint for each side; `right` is the target on the right where it differs."""
    other, finely = target if right is None else right, REPEATABILITY.get(setting)
    return (
        Setpoint(setting, "left", unit, target, low, high, _when(leno_side=LEFT, **conditions), repeatability=finely),
        Setpoint(setting, "right", unit, other, low, high, _when(leno_side=RIGHT, **conditions), repeatability=finely),
    )


SETPOINTS = (
    *_both("crossing angle", "deg", 310, 305, 315, insertion="air-jet"),
    *_both("crossing angle", "deg", 322, 316, 328, insertion="rapier"),
    *_both("turning direction", None, "clockwise", right="anticlockwise"),
    *_both("spring", None, "soft", insertion="air-jet"),
    *_both("spring", None, "firm", insertion="rapier"),
    *_both("yarn tension", "cN", 24, 20, 28, insertion="air-jet"),
    *_both("yarn tension", "cN", 32, 27, 37, insertion="rapier"),
    *_both("mounting position", "mm", 45, 43, 47, frames="<= 12"),
    *_both("mounting position", "mm", 78, 75, 81, frames="> 12"),
    *_both("reference offset", "deg", 0, -2, 2, reed_width="<= 300"),
    *_both("reference offset", "deg", 4, 2, 6, reed_width="> 300"),
)

CHECKS = (
    Check("All locks and tags are off and counted", safety=True),
    Check("Dead was proved before work on the electrics", safety=True),
    Check("Torque of the support screws (N·m)", "left", "number", 36, 44, _when(leno_side=LEFT)),
    Check("Torque of the support screws (N·m)", "right", "number", 36, 44, _when(leno_side=RIGHT)),
    Check("Torque of the rail's end screws (N·m)", None, "number", 36, 44, _when(rail_work="new rail")),
    Check("Every drilled thread takes the M10 gauge by hand", None, "yes/no", None, None, _when(rail_work="drill")),
    Check("No swarf on warp, reed and harness", None, "yes/no", None, None, _when(rail_work="drill")),
    Check("Distance of device from reed (mm)", "left", "number", 3, 6, _when(leno_side=LEFT)),
    Check("Distance of device from reed (mm)", "right", "number", 3, 6, _when(leno_side=RIGHT)),
    Check("Long arms clear of the rear frame (mm)", None, "number", 8, None, _when(frames="> 12")),
    Check("Supply tap fused and signed by the electrician", safety=True),
    Check("Interlock stops the loom, every emergency stop too", safety=True),
    Check("Resistance of the earth bond (Ω)", None, "number", 0, 0.1, safety=True),
    Check("Guards of the devices are on", safety=True),
    Check("Nothing moves while the loom stands", safety=True),
    Check("Software version noted in the controller sheet", None, "yes/no", None, None,
          _when(controller_generation=">= 2")),
    Check("A broken waste end stops the loom"),
    Check("Old creel openings are closed", None, "yes/no", None, None,
          _when(creel="vertical creel, horizontal creel")),
    Check("Warp tension as before the stop (%)", None, "number", 95, 105, _when(window="mid-warp")),
    Check("No missed crossing on the first 50 m of cloth", "left", "yes/no", None, None, _when(leno_side=LEFT)),
    Check("No missed crossing on the first 50 m of cloth", "right", "yes/no", None, None, _when(leno_side=RIGHT)),
    Check("Fringe (mm)", None, "number", 3, 8),
)  # fmt: skip

METHOD = Method(
    version=1,
    operations=(
        *BENCH_WORK,
        *ISOLATION,
        *STRIPPING,
        *RAIL,
        *FITTING,
        *ELECTRICAL,
        *CLOSING,
        *POWERED,
        *STARTING,
        *RUN_IN,
    ),
    kit_lines=KIT_LINES,
    alternatives=ALTERNATIVES,
    setpoints=SETPOINTS,
    checks=CHECKS,
)
