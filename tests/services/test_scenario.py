"""Scenario files: what they change, and one line for each value that does not fit."""

import tomllib
from datetime import UTC, date, datetime, time
from pathlib import Path

import pytest
import refusals

from tracker.domain.method import Method, Operation
from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part, Receipt, Tool
from tracker.domain.plan import Plan, PlanStatus
from tracker.domain.since import EnteredSince
from tracker.errors import UsageError
from tracker.mill_state.happened import OTHER, happened
from tracker.services.plans.scenario import apply_scenario, changes_nothing, read_scenario
from tracker.services.plans.scenario_changes import rows_changed
from tracker.services.plans.scenario_entries import ENTRIES, Spot, checked_items
from tracker.services.plans.scenario_template import write_scenario_template
from tracker.words import ENGLISH

SEVEN = LoomKey("Hall 1", "007")
MILL = Mill(
    looms={SEVEN: Loom("Hall 1", "007", "AJ"), LoomKey("Hall 2", "9"): Loom("Hall 2", "9", "AJ")},
    parts={"RAIL": Part("RAIL", 2, unit="pc")},
    receipts=(Receipt("PO-1", "RAIL", 4, date(2027, 1, 8), "Supplier A"),),
    crews=(Crew("Fitters", "fitter", 2, shift_start=time(7), shift_end=time(15), rate_per_head_h=34),),
    tools={"hoist": Tool("hoist", 1)},
)


@pytest.fixture
def changed(tmp_path):
    """The mill as the text of a scenario file changes it."""

    def change(text: str) -> Mill:
        (tmp_path / "late.toml").write_text(text)
        return apply_scenario(MILL, read_scenario(tmp_path / "late.toml"))

    return change


@pytest.fixture
def refused(changed, tmp_path):
    """What is said of a scenario that does not fit, less the file that it begins with."""

    def refuse(text: str) -> str:
        with pytest.raises(UsageError) as error:
            changed(text)
        said = ENGLISH.line(error.value)
        assert said.startswith(f"scenario {tmp_path / 'late.toml'}") and "\n" not in said
        return said.removeprefix(f"scenario {tmp_path / 'late.toml'}").removeprefix(": ")

    return refuse


DAY = "give a day of 1970 to 2099, such as 2027-01-31"
HEADS = "give a whole number from 0 to 100"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("heads = 3", "heads 3 is not possible; write it as lines under [heads]"),
        ("closure = [3]", "closure [3] is not possible; write it as lines under [[closure]]"),
        ("[[heads]]\n[[heads]]", "heads [{}, {}] is not possible; write it as lines under [heads]"),
        ("[trucks]\na = 1",
         "'trucks' is not one of name, terms, heads, tools, crew, absent, receipt, closure, protect"),
        ("[heads]\nFitters = 'two'", f"[heads] Fitters: 'two' is not possible; {HEADS}"),
        ("[heads]\nFitters = 1.5", f"[heads] Fitters: 1.5 is not possible; {HEADS}"),
        ("[heads]\nFitters = -2", f"[heads] Fitters: -2 is not possible; {HEADS}"),
        ("[heads]\nFitters = true", f"[heads] Fitters: True is not possible; {HEADS}"),
        ("[heads]\nFitters = nan", f"[heads] Fitters: nan is not possible; {HEADS}"),
        ("[heads]\nWeavers = 1", "[heads]: there is no crew 'Weavers'; there are Fitters"),
        ("[tools]\nhoist = -1", "[tools] hoist: -1 is not possible; give a whole number from 0 to 1,000"),
        ("[tools]\ncrane = 1", "[tools]: there is no tool 'crane'; there are hoist"),
        ("[terms]\n'horizon (days)' = 20000000",
         "[terms] horizon (days): 20000000 is not possible; give a whole number from 1 to 1,000 days"),
        ("[terms]\n'learning rate (%)' = 150",
         "[terms] learning rate (%): 150 is not possible; give a share from 50 % to 100 %"),
        ("[terms]\n'left-over penalty' = -10",
         "[terms] left-over penalty: -10 is not possible; give a number of at least 0"),
        ("[terms]\n'target finish' = '3/4/27'", f"[terms] target finish: '3/4/27' is not possible; {DAY}"),
        ("[terms]\nstart = 9999-12-31", f"[terms] start: 9999-12-31 is not possible; {DAY}"),
        ("[terms]\n'time zone' = 'europe-vienna'",
         "[terms] time zone: 'europe-vienna' is not possible; give an IANA name such as Europe/Vienna"),
        ("[[absent]]\ncrew = 'Fitters'\nfrom = 2027-01-15", f"[[absent]] Fitters has no to; {DAY}"),
        ("[[absent]]\ncrew = 'Fitters'\nfrom = 2027-01-15\nto = 2027-01-11",
         "[[absent]]: from Fri 15 Jan 2027 is later than to Mon 11 Jan 2027; correct one of them"),
        ("[[crew]]\ntrade = 'fitter'", "[[crew]] has no crew; give a text"),
        ("[[crew]]\ncrew = 'F3'\ntrade = 'fitter'\nheads = 2\nshift = 'late'",
         "[[crew]]: there is no field 'shift'; the fields are crew, trade, heads, weekdays, shift start, shift end, "
         "breaks, rate per head and hour, hall, from, to, language"),
        ("[[crew]]\ncrew = 'F3'\ntrade = 'baker'\nheads = 2",
         "[[crew]]: there is no trade 'baker'; there are fitter"),
        ("[[crew]]\ncrew = 'F3'\ntrade = 'fitter'\nheads = 2\nweekdays = 'some'",
         "[[crew]] weekdays: 'some' is not possible; give weekdays such as Mon-Fri or Mon, Wed"),
        ("[[crew]]\ncrew = 'F3'\ntrade = 'fitter'\nheads = 2\nweekdays = [0, 1]",
         "[[crew]] weekdays: [0, 1] is not possible; give weekdays such as Mon-Fri or Mon, Wed"),
        ("[[crew]]\ncrew = 'F3'\ntrade = 'fitter'\nheads = 2\nshift_end = 07:00:00",
         "[[crew]]: F3: shift start and shift end are both 07:00; correct one of them"),
        ("[[crew]]\ncrew = 'F3'\ntrade = 'fitter'\nheads = 2\nfrom = 2027-02-01\nfrom_on = 2027-03-01",
         "[[crew]]: from is given twice; leave one of them out"),
        ("[[receipt]]\norder = 'x'\npart = 'RAIL'\ndue = 2027-01-12",
         "[[receipt]]: order x of RAIL is a new one and has no quantity; give a number of at least 0"),
        ("[[receipt]]\norder = 'x'\npart = 'RAIL'\ndue = 2027-01-12\nquantity = -6",
         "[[receipt]] quantity: -6 is not possible; give a number of at least 0"),
        ("[[receipt]]\norder = 'x'\npart = 'RAIL'\ndue = 2027-01-12\nquantity = 6\nunit = 'm'",
         "[[receipt]]: part RAIL is kept in pc, not in m; give the quantity in that"),
        ("[[closure]]\ndate = 2027-02-01\nstops = 'lunch'",
         "[[closure]] stops: 'lunch' is not possible; give weaving or work or both"),
        ("[[closure]]\ndate = 2027-02-01\nhall = 'Hall 9'",
         "[[closure]]: there is no hall 'Hall 9'; the halls are Hall 1, Hall 2"),
        ("[[protect]]\nloom = '7'\nuntil = 2027-02-14",
         "[[protect]]: there is no loom 7; `beamslot scope` lists the looms"),
        ("name = 5", "name 5 is not possible; give a text of one line with 1 to 60 characters"),
        (f"name = '{'x' * 61}'", f"name '{'x' * 61}' is not possible; give a text of one line with 1 to 60 characters"),
        ("Hello", "cannot be read: Expected '=' after a key in a key/value pair (at end of document); mend that line"),
    ],
)  # fmt: skip
def test_what_does_not_fit_is_one_line(refused, text, said):
    assert refused(text).removeprefix(" ") == said


def test_a_file_in_another_encoding_is_said_to_be(tmp_path):
    (tmp_path / "late.toml").write_bytes(b"\xff\xfe a")
    with refusals.refused(UsageError, "is no text in UTF-8; save it as a TOML file in UTF-8"):
        read_scenario(tmp_path / "late.toml")


def test_terms_are_read_as_the_terms_sheet_reads_them(changed):
    terms = changed("""
        [terms]
        "horizon (days)" = "98"
        "learning rate (%)" = "85 %"
        "allowance (%)" = 20
        "day-to-day variation (%)" = 0.5
        start = "2027-01-11"
        "target finish" = "26.2.2027"
    """).terms
    assert (terms.horizon_days, terms.learning_rate, terms.allowance) == (98, 0.85, 0.2)
    assert terms.day_to_day_variation == 0.005  # percent, also below 1
    assert (terms.start, terms.target_finish) == (date(2027, 1, 11), date(2027, 2, 26))


def test_a_crew_more_works_as_the_workbook_reads_its_words(changed):
    crew = changed("""
        [[crew]]
        crew = "Fitters 3"
        trade = "Fitter"
        heads = 3
        weekdays = "Mon-Wed, Sat"
        shift_start = "06:00"
        shift end = 14:30:00
        hall = "hall 1"
        from = "2027-02-01"
    """.replace("shift end", '"shift end"')).crews[1]  # fmt: skip
    assert crew == Crew(
        "Fitters 3", "fitter", 3, frozenset({0, 1, 2, 5}), time(6), time(14, 30), 34, "Hall 1", date(2027, 2, 1)
    )


def test_a_crew_more_is_otherwise_as_those_of_its_trade(changed):
    crew = changed("[[crew]]\ncrew = 'F3'\ntrade = 'fitter'\nheads = 1\nweekdays = ['Tue', 'Thu']").crews[1]
    assert crew == Crew("F3", "fitter", 1, frozenset({1, 3}), time(7), time(15), 34)


def test_an_absence_is_added_to_those_of_the_mill(changed):
    found = changed("[[absent]]\ncrew = 'fitters'\nfrom = '2027-01-11'\nto = 2027-01-15\nheads = 1").absences
    assert [(a.from_on, a.to_on, a.heads) for a in found] == [(date(2027, 1, 11), date(2027, 1, 15), 1)]


def test_order_lines_closures_and_protections(changed):
    mill = changed("""
        [[receipt]]
        order = "PO-1"
        part = "RAIL"
        due = "2027-02-08"
        [[receipt]]
        order = 4711
        part = "RAIL"
        due = 2027-02-09
        quantity = "2"
        [[closure]]
        date = "2027-02-01"
        stops = "work"
        [[protect]]
        loom = "007"
        until = "2027-02-14"
    """)
    assert mill.receipts == (
        Receipt("PO-1", "RAIL", 4, date(2027, 2, 8), "Supplier A"), Receipt("4711", "RAIL", 2, date(2027, 2, 9))
    )  # fmt: skip
    assert [(closure.on, closure.stops) for closure in mill.closures] == [(date(2027, 2, 1), "work")]
    assert mill.looms[SEVEN].protected_until == date(2027, 2, 14)


def test_the_template_of_a_scenario_has_every_entry_and_every_line_of_it_is_possible(tmp_path):
    write_scenario_template(tmp_path / "s.toml")
    text = (tmp_path / "s.toml").read_text("utf-8")
    assert read_scenario(tmp_path / "s.toml") == {}  # as written it changes nothing
    taken = [line.removeprefix("# ") for line in text.splitlines() if line.startswith("# [") or " = " in line]
    said = tomllib.loads("\n".join(taken))
    assert set(said) == {"name", *ENTRIES}
    for entry, content in said.items():
        if entry != "name":
            items = checked_items(Spot(), entry, content)
            assert entry in ("heads", "tools") or len(items[0]) == len(ENTRIES[entry].fields)


def test_every_entry_of_a_scenario_stands_in_the_readme():
    readme = (Path(__file__).parents[2] / "README.md").read_text("utf-8")
    assert [entry for entry in ENTRIES if f"`{entry}`" not in readme] == []


def test_more_heads_for_a_crew_that_can_take_a_conversion_are_said_to_change_nothing():
    # the method asks for two fitters at once: one more makes F1 a crew of three that still takes one conversion
    method = Method(1, (Operation(10, "Lift the rail", 30, "fitter", 2),))
    mill = Mill(method=method, crews=(Crew("F1", "fitter", 2), Crew("F2", "fitter", 1), Crew("E", "electrician", 1)))
    more = apply_scenario(mill, {"heads": {"F1": 3, "F2": 2, "E": 2}})
    (said,) = changes_nothing(mill, more)
    assert ENGLISH.line(said) == (
        "F1 takes one conversion at a time, and for that its 2 heads are enough: more heads change nothing but what an hour "
        "costs. Another crew would change something: [[crew]] in a scenario file."
    )
    assert list(changes_nothing(mill, mill)) == []


def test_what_a_scenario_changes_is_told_as_what_was_entered_would_be(changed):
    after = changed("""
        [terms]
        "allowance (%)" = 20
        [heads]
        Fitters = 1
        [tools]
        hoist = 0
        [[absent]]
        crew = "Fitters"
        from = 2027-01-11
        to = 2027-01-15
        [[receipt]]
        order = "PO-1"
        part = "RAIL"
        due = 2027-02-08
        [[closure]]
        date = 2027-02-01
        stops = "work"
    """)
    at = datetime(2027, 1, 4, tzinfo=UTC)
    before = Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", at, at)
    found = happened(after, EnteredSince(tuple(rows_changed(MILL, after))), before, at)
    assert [ENGLISH.say(one.says) for one in found] == [
        "Fitters is away from Mon 11 Jan 2027 to Fri 15 Jan 2027",
        "the mill has no conversions on Mon 1 Feb 2027",
        "Heads of Fitters was changed from 2 to 1",
        "How many of hoist was changed from 1 to 0",
        "the term allowance (%) was changed from 15 to 20",
        "the receipt of 4 pc RAIL promised for Fri 8 Jan 2027 is promised for Mon 8 Feb 2027 now (order PO-1)",
    ]
    assert all(one.of != OTHER for one in found)
