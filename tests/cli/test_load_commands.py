"""Loading as a person sees it: what was read, each finding once, one line where it was refused."""

import json

import pytest
from openpyxl import Workbook, load_workbook

HEADS = ["Loom", "Hall", "Machine type", "Speed (picks/min)", "Reed width"]


def looms(path, *changes, heads=HEADS):
    """Eight looms in a list; `changes`: (row, column, value), both from 0 below the headings."""
    rows = [[f"{i:03}", "Hall 1", "AJ", 640, 190] for i in range(1, 9)]
    for row, column, value in changes:
        rows[row][column] = value
    workbook = Workbook(write_only=True)
    page = workbook.create_sheet("Looms")
    for row in [heads, *rows]:
        page.append(row)
    workbook.save(path)
    return path.name


CM = [*HEADS[:4], "Reed width (cm)"]


def test_a_load_says_what_it_read_and_wrote(beamslot, tmp_path):
    ran = beamslot("load", looms(tmp_path / "looms.xlsx", heads=CM))
    assert (ran.code, ran.err) == (0, "")
    lines = [" ".join(line.split()) for line in ran.out.splitlines()]
    assert lines == [
        "looms.xlsx Looms: Looms",
        "A1 Loom: Loom",
        "B1 Hall: Hall",
        "C1 Machine type: Machine type",
        "D1 Speed (picks/min): Speed, in picks/min",
        "E1 Reed width (cm): Reed width, in cm",
        # 5 headings, and 8 looms in 5 columns
        "looms.xlsx Looms: 45 cells: 5 in headings, 40 taken, 0 under own headings, 0 refused, 0 set aside.",
        "Tables read",
        "File Sheet Table Added Changed Unchanged Refused Passed over",
        "looms.xlsx Looms Looms 8 0 0 0 0",
        "Loaded: 8 rows added, 0 changed.",
    ]


def test_a_change_is_told_value_by_value(beamslot, tmp_path):
    beamslot("load", looms(tmp_path / "looms.xlsx", heads=CM))
    ran = beamslot("load", looms(tmp_path / "looms.xlsx", (2, 3, 650), heads=CM), "--dry-run")
    assert "Looms 003, Hall 1: Speed (picks/min) 640 → 650" in ran.out
    assert ran.out.splitlines()[-1] == "Would load: 0 rows added, 1 changed. Nothing was written."
    assert "Looms 003, Hall 1" in beamslot("load", "looms.xlsx").out  # it was not written before
    assert (
        beamslot("load", "looms.xlsx").out.splitlines()[-1] == "Loaded: 0 rows added, 0 changed. Nothing had changed."
    )


def test_two_faults_are_listed_once_and_the_line_says_where(beamslot, tmp_path):
    ran = beamslot("load", looms(tmp_path / "looms.xlsx", (1, 3, 6000), (4, 3, 7000), heads=CM))
    assert ran.code == 1
    assert ran.out.count("above the highest possible") == 2
    assert ran.line == (
        "2 refusals, nothing was written: looms.xlsx Looms D3 (Speed (picks/min)), looms.xlsx Looms D6 (Speed (picks/min)). "
        "Mend them, or load the rest with --partial."
    )


def test_a_question_is_answered_on_the_command_line_and_remembered(beamslot, tmp_path):
    # 75 to 190: inch or cm?
    name = looms(tmp_path / "looms.xlsx", (0, 4, 75))
    ran = beamslot("load", name)
    assert ran.code == 1 and ran.line.startswith(
        "1 question is open, nothing was written: looms.xlsx Looms E1 (Reed width): "
    )
    assert '--answer "Reed width=inch"' in ran.line and "inch" not in ran.out
    assert beamslot("load", name, "--answer", "Reed width=cm").code == 0
    assert beamslot("load", name).code == 0


def test_an_answer_to_nothing_is_wrong_use(beamslot, tmp_path):
    ran = beamslot("load", looms(tmp_path / "looms.xlsx", heads=CM), "--answer", "Colour=cm")
    assert (ran.code, ran.line.split(";")[0]) == (2, "no heading or sheet is called 'Colour'")


def test_the_marked_copy_is_named_and_a_wrong_name_is_refused_first(beamslot, tmp_path):
    name = looms(tmp_path / "looms.xlsx", (1, 3, 6000), heads=CM)
    ran = beamslot("load", name, "--marked", "marked.xlsx")
    assert ran.code == 1 and ran.out.splitlines()[-1] == "Wrote the marked copy marked.xlsx."
    assert load_workbook(tmp_path / "marked.xlsx").sheetnames == ["Findings", "Looms"]
    refused = beamslot("load", name, "--marked", "marked.csv")
    assert (refused.code, refused.line) == (
        2,
        "marked.csv: the name of the marked copy of looms.xlsx must end in .xlsx",
    )


def test_json_has_everything_and_goes_where_it_is_told(beamslot, tmp_path):
    name = looms(tmp_path / "looms.xlsx", (1, 3, 6000), heads=CM)
    ran = beamslot("load", name, "--json", "-")
    assert ran.code == 1 and ran.line.startswith("1 refusal, nothing was written: looms.xlsx Looms D3")
    (finding,) = ran.json["findings"]
    assert (finding["severity"], finding["cell"], finding["raw"]) == ("refused", "D3", "6000")
    (table,) = ran.json["tables"]
    assert table["rows"] == {"added": 7, "changed": 0, "unchanged": 0, "refused": 1, "ignored": 0}
    assert {"heading": "Reed width (cm)", "cell": "E1", "field": "reed_width_cm"}.items() <= table["columns"][4].items()
    beamslot("load", name, "--json", "out.json")
    assert json.loads((tmp_path / "out.json").read_text())["written"] is False
    nowhere = beamslot("load", name, "--partial", "--json", "no/such/folder.json")
    assert nowhere.code == 1 and "there is no folder no/such" in nowhere.line
    assert "8 rows" not in beamslot("load", name, "--partial").out  # the load before wrote nothing


def test_the_template_and_an_untouched_export_load_as_nothing(mill):
    assert mill("template", "t.xlsx").code == 0
    assert mill("load", "t.xlsx").out.splitlines()[-1].endswith("Nothing had changed.")
    assert mill("export", "all.xlsx").code == 0
    assert mill("load", "all.xlsx").out.splitlines()[-1].endswith("Nothing had changed.")


def test_canonical_looms(mill):
    looms = mill("export", "--what", "looms", "--json", "-").json
    one = next(loom for loom in looms if loom["loom"] == "007")
    assert one["hall"] == "Hall 1" and 0 < one["efficiency"] < 1 and one["attributes"]["Rail"] == "drilled"


@pytest.mark.parametrize(
    ("arguments", "code", "says"),
    [
        (("export", "x.xlsx", "--what", "loom"), 2, "there is no table 'loom'; the tables are looms, warps"),
        (("export", "x.csv"), 2, "x.csv: a .csv holds one table; name one of looms, warps"),
        (("export", "no/x.xlsx"), 1, "cannot write no/x.xlsx: there is no folder no"),
        (("template", "t.csv"), 2, "t.csv: the name must end in .xlsx"),
        (("scope", "--survey", "s.pdf"), 2, "s.pdf: the name must end in .xlsx"),
        (("load", "--origin", "007", "colour"), 1, "looms have no 'colour'; they have Cable duct"),
        (("forecast", "999"), 1, "there is no loom 999"),
        (("kits",), 1, "no plan is published, so there are no kits yet; `beamslot plan --publish` makes one"),
        (("verify",), 1, "no plan is published yet; make one: beamslot plan --publish"),
        (("plan", "--scenario", "no.toml"), 2, "there is no scenario file no.toml"),
        (("serve", "--port", "0"), 2, "port 0 is not between 1 and 65535"),
        (("record", "008", "--stage", "put off"), 2, "a loom that is put off needs a reason; say it with --why TEXT"),
        (
            ("record", "008", "--stage", "asleep"),
            2,
            "stage 'asleep' is not one of: in work, run-in, signed off, stopped, put off, left out, scoped",
        ),
    ],
)
def test_refusals_word_for_word(mill, arguments, code, says):
    ran = mill(*arguments)
    assert ran.code == code
    assert ran.line.startswith(says)
