"""What `plan` is told of single bookings, and a scenario put in force: the same as on the screens.

Loom 1 runs out on Tuesday 5 January 08:00, loom 2 on Wednesday 16:00, loom 3 far off; one crew, shifts 06:00 to 18:00.
"""

import re

import pytest
from three_looms import added, make, write

AS_OF = ("--as-of", "2027-01-04T06:00")
SCENARIO = """
name = "three heads"
[heads]
F1 = 3
[[receipt]]
order = "PO-1"
part = "RAIL"
quantity = 2
due = 2027-02-01
"""


@pytest.fixture
def mill(beamslot, tmp_path):
    make(str(tmp_path / "mill.db"), {"firm (hours)": 10})
    return beamslot


def starts(ran):
    return {one["loom"]: one["start"] for one in ran.json["bookings"]}


def test_a_window_is_ruled_out_and_allowed_again_and_another_date_taken(mill):
    first = starts(mill("plan", "--publish", *AS_OF, "--json", "-"))
    assert first["1"].startswith("2027-01-05")
    # a span whose end is a day has all of that day: nothing of loom 1 starts on 5 to 7 January
    moved = starts(mill("plan", "--publish", *AS_OF, "--rule-out", "1=2027-01-05/2027-01-07", "--json", "-"))
    assert not "2027-01-05" <= moved["1"][:10] <= "2027-01-07"
    assert mill("plan", *AS_OF, "--allow", "2").line == "loom 2 (H) is ruled out nowhere"
    assert mill("plan", *AS_OF, "--rule-out", "1=2027-01-07T06:00/2027-01-05T06:00").code == 2
    assert starts(mill("plan", *AS_OF, "--allow", "1", "--json", "-")) == first
    other = mill("plan", "--dates", "2", "--json", "-").json["other_dates"][0]["start"]
    assert mill("plan", *AS_OF, "--place", "2=2027-01-30T06:00").line.startswith(
        "the plan in force lists no other date of loom 2 (H) on Sat 30 Jan 2027 06:00; it lists "
    )
    assert starts(mill("plan", *AS_OF, "--place", f"2={other}", "--json", "-"))["2"] == other


def test_a_scenario_is_put_in_force_and_taken_back(mill, tmp_path):
    write(str(tmp_path / "mill.db"), added("parts", "RAIL", part="RAIL"))
    (tmp_path / "heads.toml").write_text(SCENARIO)
    entering = ("plan", "--scenario", "heads.toml", "--enter")
    line = mill(*entering).line
    assert line.startswith("of the scenario three heads order line PO-1 would stay out; --said ORDER says")
    assert mill(*entering, "--said", "PO-7").code == 2
    ran = mill(*entering, "--leave-out")
    assert (
        ran.code == 0 and "Crews F1, 06:00: Heads 2 → 3" in ran.out and "order PO-1 of RAIL stays as it is" in ran.out
    )
    number = re.search(r"by change (\d+)\.", ran.out)[1]
    assert f"`beamslot undo {number}` takes it back" in ran.out
    told = mill(*entering, "--said", "PO-1", "--json", "-").json
    assert {one["table"] for one in told["changes"]} == {"receipts"} and told["left_out"] == []
    assert mill("undo", told["change"]).code == 0 and mill("undo", number).code == 0
    again = mill(*entering, "--said", "PO-1", "--json", "-").json
    assert {(one["table"], one["field"]): one["new"] for one in again["changes"]} == {
        ("crews", "heads"): 3, ("receipts", "quantity"): 2, ("receipts", "due"): "2027-02-01",
    }  # fmt: skip


@pytest.mark.parametrize(
    "arguments",
    [("--enter",), ("--enter", "--scenario", "x.toml", "--publish"), ("--said", "PO-1"), ("--rule-out", "1"),
     ("--rule-out", "1=2027-01-05"), ("--rule-out", "1=soon/late"), ("--place", "2=soon"), ("--show", "--allow", "1")],
)  # fmt: skip
def test_wrong_use_ends_with_2(mill, arguments):
    assert mill("plan", *arguments).code == 2
