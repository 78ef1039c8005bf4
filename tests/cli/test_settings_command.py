"""Settings from the command line, on the sample mill with one sheet of values loaded."""

from mill_sheets import workbook

HEAD = ["Loom", "Hall", "Side", "Setting", "Value", "At", "Why"]
ROWS = [["007", "Hall 1", "left", "crossing angle", 318, "2026-10-05 08:00", "read out"],
        ["007", "Hall 1", "right", "crossing angle", 310, "2026-10-05 08:00", "read out"]]  # fmt: skip


def test_values_are_loaded_and_what_lies_outside_is_told(mill, tmp_path):
    """The sample's method has 305 to 315 deg for an air-jet loom such as 007: 318 lies outside, and 8 more than the right."""
    assert mill("load", workbook(tmp_path / "values.xlsx", {"Set values": [HEAD, *ROWS]})).code == 0
    told = mill("settings", "--alarms", "--as-of", "2026-10-06").out
    assert "loom 007 (Hall 1), crossing angle left: 318 deg lies outside its limits, 305 to 315 deg" in told
    report = mill("settings", "007", "--as-of", "2026-10-06", "--json", "-").json
    assert [one["left_less_right"] for one in report["series"]] == [8, 8]
    assert [(one["kind"], one["side"]) for one in report["alarms"]] == [("outside", "left")]
    assert "no follow-up visit is due" in mill("settings", "--visits", "--as-of", "2026-10-06").out


def test_a_loom_that_there_is_not(mill):
    ran = mill("settings", "999")
    assert (ran.code, ran.line) == (1, "there is no loom 999; `beamslot scope` lists the looms")


def test_an_alarm_is_marked_as_seen_and_listed_as_such(mill, tmp_path):
    assert mill("load", workbook(tmp_path / "values.xlsx", {"Set values": [HEAD, *ROWS]})).code == 0
    assert mill("settings", "--seen", "tightened").line.startswith("alarms are marked as seen of one loom at a time")
    assert mill("settings", "007", "--seen", "tightened").out.startswith(
        "One alarm of loom 007 (Hall 1) is marked as seen"
    )
    told = mill("settings", "007", "--alarms").out
    assert "no alarm" in told and "one alarm was seen before and stays quiet until the value changes" in told
    assert "tightened" in told
