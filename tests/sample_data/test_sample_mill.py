"""The sample mill holds what its readme says; counts are those that the readme and the loom list name."""

from collections import Counter
from datetime import date, datetime, time, timedelta
from itertools import pairwise

import pytest

from sample_data.mill import ATTRIBUTE_UNKNOWN, sample_mill
from sample_data.weaving import CLOTH_WIDTH_CM
from tracker.domain.mill import Mill
from tracker.domain.words import fold
from tracker.forecast.beam_outs import forecast


@pytest.fixture(scope="module")
def mill() -> Mill:
    return sample_mill()


def test_looms_by_hall_and_type(mill: Mill) -> None:
    assert Counter(loom.hall for loom in mill.looms.values()) == {"Hall 1": 52, "Hall 2": 44}
    kinds = Counter(loom.machine_type for loom in mill.looms.values())
    assert kinds == {"AJ-N": 36, "AJ-W": 16, "RP-N": 30, "RP-W": 14}


@pytest.mark.parametrize(
    ("attribute", "values"),
    [
        ("rail", {"drilled", "undrilled"}),
        ("leno side", {"left", "right", "both"}),
        ("creel", {"vertical creel", "horizontal creel", "no creel"}),
        ("extra ends", {"kept", "taken out"}),
        ("waste drop wires", {"present", "absent"}),
        ("controller generation", {1, 2, 3, 4}),
        ("cable duct", {"free", "full"}),
    ],
)
def test_attributes_spread(mill: Mill, attribute: str, values: set) -> None:
    counts = Counter(loom.attributes[attribute] for loom in mill.looms.values())
    counts.pop(None, None)
    assert set(counts) == values
    assert min(counts.values()) >= 6


def test_widths_and_frames_span_the_hall(mill: Mill) -> None:
    widths = {loom.reed_width_cm or 0 for loom in mill.looms.values()}
    frames = {loom.frames or 0 for loom in mill.looms.values()}
    assert (min(widths), max(widths)) == (190, 360)
    assert (min(frames), max(frames)) == (8, 20)


def test_two_looms_lack_one_attribute_each(mill: Mill) -> None:
    lacking = {
        loom.key: [name for name, value in loom.attributes.items() if value is None] for loom in mill.looms.values()
    }
    assert {key: names for key, names in lacking.items() if names} == {
        key: [name] for key, name in ATTRIBUTE_UNKNOWN.items()
    }


def test_crews_and_tools(mill: Mill) -> None:
    people = {(crew.crew, crew.trade, crew.heads) for crew in mill.crews}
    assert people == {
        ("Fitters 1", "fitter", 2), ("Fitters 2", "fitter", 2), ("Fitters 3", "fitter", 2), ("Electricians", "electrician", 2),
        ("Bench", "assistant", 1),
    }  # fmt: skip
    assert {tool.tool: tool.how_many for tool in mill.tools.values()} == {"drilling jig": 1, "hoist": 1}


def test_who_is_away_and_who_works_longer_is_in_a_crew(mill: Mill) -> None:
    names = {crew.crew for crew in mill.crews}
    assert {row.crew for row in (*mill.absences, *mill.overtime)} <= names
    # a whole crew, one head of two fitters, one of two electricians; and a Saturday
    assert [(a.crew, a.heads) for a in mill.absences] == [("Fitters 2", None), ("Fitters 1", 1), ("Electricians", 1)]
    assert {row.on.weekday() for row in mill.overtime} == {5}


def test_looms_bought_together_run_alike_and_at_speeds_of_their_kind(mill: Mill) -> None:
    """Within a batch of four speeds lie 3 % apart (and half a pick of rounding); weft insertion, picks a minute × reed width,
    is 900 to 1,250 m/min on older rapiers and 1,300 to 2,200 on air-jets."""
    looms = list(mill.looms.values())
    batches: dict[tuple, list[float]] = {}
    for i, loom in enumerate(looms):
        speed, width_m = loom.speed_ppm or 0, (loom.reed_width_cm or 0) / 100
        low, high = (1300, 2200) if loom.insertion == "air-jet" else (900, 1250)
        assert low * 0.985 <= speed * width_m <= high * 1.015
        batches.setdefault((loom.hall, loom.machine_type, loom.year, loom.reed_width_cm, i // 4), []).append(speed)
    assert all(max(speeds) - min(speeds) <= 0.0305 * max(speeds) + 1 for speeds in batches.values())
    assert any(len(set(speeds)) > 1 for speeds in batches.values())


def test_a_weaver_minds_eight_looms_of_a_hall(mill: Mill) -> None:
    sections = Counter((loom.hall, loom.section) for loom in mill.looms.values())
    # 52 = 6 × 8 + 4 and 44 = 5 × 8 + 4
    assert Counter(sections.values()) == {8: 11, 4: 2}


def test_an_article_is_woven_on_looms_of_its_width(mill: Mill) -> None:
    for key, warps in mill.warps.items():
        reed = mill.looms[key].reed_width_cm or 0
        assert all(2 <= reed - CLOTH_WIDTH_CM[warp.article] < 25 for warp in warps)
    for article, width in CLOTH_WIDTH_CM.items():
        low, high = (0.4, 0.9) if width <= 230 else (1, 2)
        assert low <= (mill.articles[article].warp_value_per_m or 0) <= high


def test_nearly_all_looms_are_bound_on_both_sides_and_save_two_to_six_a_day(mill: Mill) -> None:
    sides = Counter(loom.attributes["leno side"] for loom in mill.looms.values())
    assert 0.85 < sides["both"] / 96 < 0.95
    assert all(2 <= (loom.saving_per_day or 0) <= 6 for loom in mill.looms.values())


def test_every_loom_has_one_warp_at_work_and_its_article(mill: Mill) -> None:
    assert set(mill.warps) == set(mill.looms)
    for warps in mill.warps.values():
        assert [warp.sequence for warp in warps] == list(range(len(warps)))
        assert 0 < (warps[0].warp_left_m or 0) <= (warps[0].set_length_m or 0)
        assert all(warp.article in mill.articles for warp in warps)
        assert all(warp.change in ("repeat", "style") for warp in warps[1:])


def test_a_month_of_daily_readings_for_ten_looms(mill: Mill) -> None:
    lengths = Counter(len(readings) for readings in mill.readings.values())
    assert lengths[33] == 10
    assert lengths[1] >= 10
    newer = [r for key, (*_, r) in mill.readings.items() if r.read_at > (mill.warps[key][0].read_at or r.read_at)]
    assert len(newer) >= 10


def test_states_of_the_forecast(mill: Mill) -> None:
    """Most first beam-outs are ahead; one reading is old, and two warps should be gone by what was read of them."""
    start = datetime.combine(mill.terms.start or date.min, time(0), mill.terms.zone)
    windows = forecast(mill, start, start + timedelta(days=mill.terms.horizon_days))
    assert set(windows) == set(mill.looms)
    first = Counter(next(w for w in listed if w.number == 1).state for listed in windows.values())
    assert first == {"ok": 93, "overdue": 2, "stale": 1}


def test_windows_other_than_beam_outs(mill: Mill) -> None:
    assert len(mill.standing) == 5
    assert sum(loom.protected_until is not None for loom in mill.looms.values()) == 6
    assert sum(loom.capacity_unsold for loom in mill.looms.values()) == 8


def test_names_in_one_sheet_exist_in_the_other(mill: Mill) -> None:
    assert {receipt.part for receipt in mill.receipts} <= set(mill.parts)
    assert {line.part for line in mill.method.kit_lines} == set(mill.parts)
    assert {op.tool for op in mill.method.operations if op.tool} == set(mill.tools)
    assert {op.trade for op in mill.method.operations} == {crew.trade for crew in mill.crews}
    for machine_type, loom in mill.terms.pilots.items():
        assert [x.machine_type for x in mill.looms.values() if x.loom == loom] == [machine_type]


def test_condition_columns_name_attributes_choices_or_the_window(mill: Mill) -> None:
    method = mill.method
    rows = (*method.operations, *method.kit_lines, *method.alternatives, *method.setpoints, *method.checks)
    headings = {fold(heading) for row in rows for heading in row.conditions}
    known = set(next(iter(mill.looms.values())).known()) | {"window"} | {a.choice for a in method.alternatives}
    assert headings <= known


def test_the_method_is_as_rich_as_asked(mill: Mill) -> None:
    method = mill.method
    assert len(method.operations) >= 30
    assert len(mill.parts) >= 25
    assert len(method.setpoints) >= 15
    assert len(method.checks) >= 12
    assert len({a.choice for a in method.alternatives}) == 2
    assert max(op.heads for op in method.operations) == 2
    assert any("window" in op.conditions for op in method.operations)
    assert any("window" in line.conditions for line in method.kit_lines)
    assert sum(op.minutes_low is not None for op in method.operations) >= 10
    for op in method.operations:
        assert op.minutes_low is None or op.minutes_low <= op.minutes <= (op.minutes_high or 0), op.operation


def test_isolation_comes_in_the_published_order(mill: Mill) -> None:
    """29 CFR 1910.147(d)(1)-(6) (seen): prepare, shut down, isolate, lock/tag, release stored energy, verify."""
    order = ("Prepare the stop", "Shut the loom down", "Isolate", "Lock and tag", "Release or restrain", "Verify")
    on_loom = sorted((op for op in mill.method.operations if op.place == "on loom"), key=lambda op: op.step)
    met = [next((word for word in order if op.operation.startswith(word)), "other work") for op in on_loom]
    assert list(dict.fromkeys(met)) == [*order, "other work"]


def step_of(mill: Mill, beginning: str) -> list[int]:
    found = [op.step for op in mill.method.operations if op.operation.startswith(beginning)]
    assert found, beginning
    return found


def test_the_method_can_be_worked_in_its_order(mill: Mill) -> None:
    """Mechanics on the dead loom; dead proved before the electrics; guards on and warp uncovered before the people are
    cleared, and only then power; software, reference run and settings under power; interlock and emergency stops tested
    before anything is threaded by jog; the warp in before the first slow run."""
    order = (
        "Lock and tag", "Cover warp", "Screw on", "Hang the", "Prove dead", "Connect the supply tap", "Bond rail", "Fit the guards",
        "Uncover warp", "Clear the people", "Save the old software", "Enter the parameters", "Set crossing angle",
        "Test the interlock", "Thread the leno yarn", "Set spring", "Lift the warp beam in", "Gait the warp", "First slow run",
        "Watch the first", "A day later",
    )  # fmt: skip
    for earlier, later in pairwise(order):
        assert max(step_of(mill, earlier)) < min(step_of(mill, later)), (earlier, later)


def test_what_takes_its_time_does_not_learn(mill: Mill) -> None:
    kept = {op.step for op in mill.method.operations if not op.learns}
    assert kept == {*range(100, 151, 10), 295, 350, 380, 420, 500, 530}
    assert all(op.minutes_low is None for op in mill.method.operations if not op.learns)


def test_the_new_warp_comes_in_before_gaiting(mill: Mill) -> None:
    marked = {op.step: op.warp for op in mill.method.operations if op.warp}
    assert marked == {**dict.fromkeys((210, 220, 230, 232, 233, 390, 392), "out"), 410: "in", 420: "in"}


def test_locks_proof_bonding_interlock_and_guards_are_never_waived(mill: Mill) -> None:
    fixed = [op.operation for op in mill.method.operations if op.waivable is False]
    wanted = (
        "Lock",
        "Verify",
        "Prove dead",
        "Connect the interlock",
        "Bond",
        "Fit the guards",
        "Clear",
        "Test the interlock",
    )
    assert [next(word for word in wanted if name.startswith(word)) for name in fixed] == list(wanted)
    safety = {check.check for check in mill.method.checks if check.safety}
    assert len(safety) == 7 and all(check.waivable is None for check in mill.method.checks)


def test_electrical_work_is_a_hold_point(mill: Mill) -> None:
    electrical = [op for op in mill.method.operations if op.trade == "electrician"]
    assert all((op.caution or "").startswith("HOLD POINT") for op in electrical)
    text = " ".join(op.operation.lower() for op in electrical)
    assert all(word in text for word in ("supply", "interlock", "emergency stop", "earth", "software"))
