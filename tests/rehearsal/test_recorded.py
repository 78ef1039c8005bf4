"""What records say of how much things vary, worked out by hand; and worlds drawn by them."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from math import exp, log, sqrt
from statistics import fmean, stdev
from zoneinfo import ZoneInfo

import pytest
from two_looms import FITTERS, LOOMS, ONE, TWO, at, problem, window

from tracker.domain.mill import LoomKey, Part, Reading, Receipt
from tracker.domain.past import Notice, PastAbsence, PastLine
from tracker.domain.plan import Plan, PlanStatus
from tracker.domain.progress import Stage, StageChange
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.recorded import CrewThere, Worked, of_failures, of_orders, of_people, of_receipts, of_work, share
from tracker.rehearsal.rests_on import rests_on
from tracker.rehearsal.sources import (
    CREWS,
    MILL,
    OTHERS,
    SUPPLIERS,
    Figure,
    Source,
    Spreads,
    Whose,
    before_rounding,
    of_supplier,
)

RUNS = 5_000
TODAY, FIRST = date(2027, 1, 4), date(2026, 1, 5)
AJ = Whose("type", "AJ")
A, B = Whose("supplier", "A Works"), Whose("supplier", "B Works")
FITTERS_1 = CrewThere("Fitters 1", 2, lead=True, needed=2)


def days(n: int) -> timedelta:
    return timedelta(days=n)


# ---- work


def test_ten_conversions_say_how_much_work_varies() -> None:
    # ln r is 0.2 five times and −0.2 five times: its mean is 0, s² = 10 · 0.04 ÷ 8 = 0.05; √(e^0.05 − 1) = √0.051271 = 0.22643
    worked = Worked([exp(0.2), exp(-0.2)] * 5, FIRST)
    assert of_work({"AJ": worked}) == {"work_cv": {AJ: Figure(pytest.approx(0.22643, abs=1e-5), 10, FIRST)}}
    # all of them a third longer: that is what the plan learns, and no spread
    longer = Worked([ratio * 4 / 3 for ratio in worked.ratios], FIRST)
    assert of_work({"AJ": longer})["work_cv"][AJ].value == pytest.approx(0.22643, abs=1e-5)


def test_nine_say_nothing() -> None:
    assert of_work({"AJ": Worked([exp(0.2)] * 9, FIRST)}) == {"work_cv": {}}


def test_what_is_drawn_varies_as_what_was_recorded_and_what_was_asked_for_wins() -> None:
    given = problem()
    hall = Hall(given, nothing(given))
    key, content = ONE, given.contents[ONE][window(ONE, given.as_of).kind][0]
    own = Spreads(own={"work_cv": {AJ: Figure(0.3, 12, FIRST)}})
    assert hall.spread_of_work(key, content, own) == 0.3
    assert (
        hall.spread_of_work(key, content, Spreads(own={"work_cv": {Whose("type", "PX"): Figure(0.3, 12, FIRST)}}))
        == 0.15
    )
    assert hall.spread_of_work(key, content, replace(own, work_cv=0.2, asked=frozenset({"work_cv"}))) == 0.2


def nothing(given) -> Plan:
    return Plan(PlanStatus.FEASIBLE, 0, 0, 0, "EUR", given.as_of, given.as_of, ())


# ---- deliveries


def line(number: int, late: int | None = 0, supplier: str | None = "A Works", **other) -> PastLine:
    """Promised a week after the one before; None = still waited for."""
    promised = FIRST + days(7 * number)
    came = None if late is None else promised + days(late)
    told = PastLine("RAIL", supplier, promised, FIRST, came, open=late is None)
    return replace(told, **other)


def test_a_supplier_with_ten_lines_is_known_by_them_and_the_others_by_all() -> None:
    # A: 10 lines, 4 of them late, by 2, 4, 6 and 8 days; B: 9 lines, 6 of them late by 10 days; all: 19 lines, 10 of them late,
    # (20 + 60) ÷ 10 = 8 days
    of_a = [line(i, late) for i, late in enumerate([0, 0, 0, 0, 0, -3, 2, 4, 6, 8])]
    of_b = [line(i, late, "B Works") for i, late in enumerate([0, 0, 0, 10, 10, 10, 10, 10, 10])]
    own = of_receipts([*of_a, *of_b], TODAY)
    assert own["late_share"] == {
        A: Figure(4.5 / 11, 10, FIRST), SUPPLIERS: Figure(10.5 / 20, 19, FIRST),
    }  # fmt: skip
    assert own["late_days"] == {SUPPLIERS: Figure(8.0, 10, FIRST + days(21))}
    assert own["short_share"] == {}
    spreads = Spreads(own=own)
    shares = [spreads.of("late_share", *of_supplier(name)) for name in ("A Works", "B Works", None)]
    assert shares == [4.5 / 11, 10.5 / 20, 10.5 / 20]
    assert spreads.of("short_share", *of_supplier("A Works")) == 0.02


def test_nine_lines_say_nothing() -> None:
    own = of_receipts([line(i) for i in range(9)], TODAY)
    assert own == {"late_share": {}, "late_days": {}, "short_share": {}}
    assert Spreads(own=own).of("late_share", *of_supplier("A Works")) == 0.2


def test_what_does_not_count() -> None:
    """Due today, written down after its day (as of a list that is loaded late), no more expected though nothing came."""
    counted = [line(i) for i in range(9)]
    beside = [line(52), line(10, 3, told_on=FIRST + days(71)), line(11, None, open=False)]
    assert of_receipts([*counted, *beside], TODAY)["late_share"] == {}
    assert of_receipts([*counted, line(51)], TODAY)["late_share"][A].count == 10


def test_a_line_that_is_still_waited_for_is_late_by_more_than_the_days_that_are_over() -> None:
    # ten came 3 days late; one, due on 28 December, is waited for on 4 January: 6 days are over, the 29th to the 3rd
    own = of_receipts([*(line(i, 3) for i in range(10)), line(51, None)], TODAY)
    assert line(51).promised == date(2026, 12, 28)
    assert own["late_days"][A].value == pytest.approx((30 + 6) / 10)
    assert own["late_share"][A] == Figure(11.5 / 12, 11, FIRST)


def test_fifty_deliveries_say_how_often_one_is_short() -> None:
    lines = [line(i, short=i < 5) for i in range(50)]
    assert of_receipts(lines, TODAY)["short_share"][A] == Figure(5.5 / 51, 50, FIRST)
    assert of_receipts(lines[1:], TODAY)["short_share"] == {}


def test_what_was_never_seen_in_a_few_is_not_impossible() -> None:
    assert share(0, 10) == 0.5 / 11
    assert share(10, 10) == 10.5 / 11


@pytest.mark.long
def test_a_world_has_the_lateness_of_each_supplier() -> None:
    """A is late in 30 of 100, by 8 days on average, B in 60, by 1; the mean of those drawn lies within four standard errors."""
    rail, nut = Part("RAIL", 1.0, supplier="A Works"), Part("NUT", 1.0, supplier="B Works")
    lines = (Receipt("1", "RAIL", 1.0, date(2027, 1, 8)), Receipt("2", "NUT", 1.0, date(2027, 1, 8)))
    given = problem(parts={"RAIL": rail, "NUT": nut}, receipts=lines)
    own = {
        "late_share": {A: Figure(0.3, 40, FIRST), B: Figure(0.6, 40, FIRST)},
        "late_days": {A: Figure(8.0, 12, FIRST), B: Figure(1.0, 24, FIRST)},
    }
    spreads = Spreads(own=own, off=frozenset(Source) - {Source.RECEIPTS})
    drawing = Hall(given, nothing(given)).drawing(spreads)
    worlds = [drawing.world(1, n) for n in range(RUNS)]
    for name, chance, mean in (("RAIL 0", 0.3, 8.0), ("NUT 0", 0.6, 1.0)):
        late = [world.late[name] for world in worlds if name in world.late]
        assert len(late) / RUNS == pytest.approx(chance, abs=4 * sqrt(chance * (1 - chance) / RUNS))
        assert fmean(late) == pytest.approx(mean, abs=4 * (stdev(late) or 1e-9) / sqrt(len(late)))
    # one figure more leaves all that was drawn for others as it is
    more = replace(spreads, own=own | {"late_share": {A: Figure(0.5, 40, FIRST), B: Figure(0.6, 40, FIRST)}})
    again = Hall(given, nothing(given)).drawing(more)
    for n, world in enumerate(worlds[:50]):
        other = again.world(1, n).late
        assert other.get("NUT 0") == world.late.get("NUT 0")
        assert "RAIL 0" not in world.late or other["RAIL 0"] == world.late["RAIL 0"]


def test_an_exponential_time_rounded_up_to_whole_days_has_the_mean_that_was_recorded() -> None:
    # 1 − e^(−1/m) = 1/8: m = 1 ÷ ln(8/7) = 7.489; half a day less than 8 but for a hundredth
    assert before_rounding(8.0) == pytest.approx(1 / log(8 / 7))
    assert before_rounding(1.0) == 0.1


# ---- people


def away(number: int, long: int = 2, crew: str = "Fitters 1", heads: int | None = None, told: int = 0) -> PastAbsence:
    """Begins 20 days after the one before; `told`: days after its first on which it was written down."""
    first = FIRST + days(20 * number)
    return PastAbsence(crew, first, first + days(long - 1), heads, first + days(told))


def test_ten_absences_after_the_first_say_how_often_a_crew_is_away() -> None:
    # the first, of one day, says that absences are written down since 6 January 2026; to 3 January 2027 these are 363 days, of
    # which ten absences of 2 days and one of 4 took 24, 24 ÷ 11 at a time
    own = of_people([FITTERS_1], [away(0, 1), *(away(i) for i in range(1, 11)), away(11, 4)], TODAY)
    said = date(2026, 1, 6)
    crew = Whose("crew", "Fitters 1")
    assert own["away_share"] == {crew: Figure(24 / 363, 11, said), CREWS: Figure(24 / 363, 11, said)}
    assert own["away_days"][crew] == Figure(24 / 11, 11, said)


def test_what_was_planned_is_in_the_roster_and_counts_not() -> None:
    """Written down a day before it begins, of one head of three where two convert, or still to come."""
    three = replace(FITTERS_1, heads=3)
    unforeseen = [away(0, 1), *(away(i) for i in range(1, 10))]
    ahead = PastAbsence("Fitters 1", TODAY, TODAY, None, TODAY - days(30))
    beside = [away(12, told=-1), away(13, heads=1), ahead]
    assert of_people([three], [*unforeseen, *beside], TODAY) == {"away_share": {}, "away_days": {}}
    own = of_people([three], [*unforeseen, *beside, away(14, heads=2)], TODAY)
    assert own["away_share"][CREWS].count == 10


def test_crews_with_few_absences_are_known_by_all_of_their_kind() -> None:
    # crews 1 and 2: 5 absences of 3 days each in 363 days; three electricians: 10 absences of one head for 4 days
    crews = [FITTERS_1, replace(FITTERS_1, crew="Fitters 2"), CrewThere("Electricians", 3, lead=False)]
    told = [away(0, 1), *(away(i, 3) for i in range(1, 6)), *(away(i, 3, "Fitters 2") for i in range(6, 11))]
    told += [away(i, 4, "Electricians", 1) for i in range(1, 11)]
    own = of_people(crews, told, TODAY)
    said = date(2026, 1, 6)
    assert own["away_share"] == {
        CREWS: Figure(30 / 726, 10, said), OTHERS: Figure(40 / 1089, 10, said),
        Whose("crew", "Electricians"): Figure(40 / 1089, 10, said),
    }  # fmt: skip
    assert own["away_days"][CREWS].value == 3.0


def test_an_absence_that_goes_on_has_lasted_so_long_at_least() -> None:
    # nine of 2 days, and one since 1 January of which 3 days are over: 21 days, 9 of ten ended
    going = PastAbsence("Fitters 1", date(2027, 1, 1), date(2027, 1, 20), None, date(2027, 1, 1))
    own = of_people([FITTERS_1], [away(0, 1), *(away(i) for i in range(1, 10)), going], TODAY)
    assert own["away_days"][CREWS] == Figure(21 / 9, 10, date(2026, 1, 6))
    assert own["away_share"][CREWS].value == 21 / 363


def test_a_world_has_the_absences_that_were_recorded() -> None:
    """Crew 1 is away on 10 % of days, 5 at a time; of 2,000 worlds of 29 days the share is the one of a chain that begins present:
    on day n 0.1 · (1 − 0.777…^n), 0.777… = 1 − 1/5 − 1/45, on average 0.1 · (1 − 3.49761 ÷ 28) over the 28 days after today."""
    own = {"away_share": {CREWS: Figure(0.1, 20, FIRST)}, "away_days": {CREWS: Figure(5.0, 20, FIRST)}}
    given = problem(crews=(FITTERS,))
    drawing = Hall(given, nothing(given)).drawing(Spreads(own=own, off=frozenset(Source) - {Source.PEOPLE}))
    assert drawing.days == 29
    shares = [
        len([day for gone in drawing.world(1, n).away.values() for day in gone if day <= 28]) / 28 for n in range(2000)
    ]
    assert sum((7 / 9) ** n for n in range(1, 29)) == pytest.approx(3.4969, abs=1e-3)
    error = stdev(shares) / sqrt(2000)
    assert fmean(shares) == pytest.approx(0.1 * (1 - sum((7 / 9) ** n for n in range(1, 29)) / 28), abs=4 * error)


# ---- failures, orders


def test_fifty_conversions_say_how_often_one_fails() -> None:
    # 48 went through, of which one was stopped before and one after was taken back: 47 + 3 stopped are 50
    def moved(number: int, *stages: Stage) -> list[StageChange]:
        begun = datetime(2026, 1, 5, 6, tzinfo=UTC) + days(number)
        return [StageChange(LoomKey("H", str(number)), stage, begun, "M. Berg") for stage in stages]

    through = (Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF)
    history = moved(0, Stage.IN_WORK, Stage.STOPPED, *through) + moved(1, *through, Stage.SCOPED)
    history += [change for i in range(2, 48) for change in moved(i, *through)]
    history += moved(48, Stage.IN_WORK, Stage.STOPPED) + moved(49, Stage.IN_WORK, Stage.STOPPED)
    assert of_failures(history, ZoneInfo("UTC")) == {"fail_share": {MILL: Figure(3.5 / 51, 50, FIRST)}}
    assert of_failures(history[:-2], ZoneInfo("UTC")) == {}
    assert of_failures(history + moved(50, Stage.IN_WORK), ZoneInfo("UTC"))["fail_share"][MILL].count == 50


def test_ten_looms_protected_say_how_many_are_in_a_week() -> None:
    # listed on 5 January 2026; the 363 days from the 6th to 3 January 2027 are 51.857 weeks; 7 days each, the last of them included
    told = [Notice(FIRST + days(30 * i), FIRST + days(30 * i + 6)) for i in range(1, 11)]
    own = of_orders(told, FIRST, TODAY)
    assert own["protected_per_week"][MILL] == Figure(pytest.approx(10 / (363 / 7)), 10, FIRST + days(30))
    assert own["protected_days"][MILL].value == 7.0
    assert of_orders(told[1:], FIRST, TODAY) == {}
    assert of_orders([*told[1:], Notice(FIRST, TODAY), Notice(TODAY, TODAY)], FIRST, TODAY) == {}


# ---- what it says


def test_each_figure_says_where_it_comes_from() -> None:
    """One type of two was recorded, one supplier of three; the share of days away was asked for. Loom 1 was read on six days, by
    which its use of warp varies by 10 % from day to day (24 · 0.1² h); that of loom 2 is taken to vary by 4 %, as is usual."""
    outs = {key: (replace(window(key, at(1, 8)), spread_h=24 * cv**2),) for key, cv in ((ONE, 0.1), (TWO, 0.04))}
    read = {ONE: tuple(Reading("Hall 1", "1", at(-i, 6), 100.0 + i) for i in range(1, 7))}
    looms = LOOMS | {TWO: replace(LOOMS[TWO], machine_type="PX")}
    parts = {
        name: Part(name, 1.0, supplier=supplier)
        for name, supplier in (("RAIL", "A Works"), ("NUT", "B Works"), ("X", None))
    }
    own = {
        "work_cv": {AJ: Figure(0.3, 12, FIRST)},
        "late_share": {A: Figure(0.3, 40, FIRST), SUPPLIERS: Figure(0.4, 60, FIRST)},
        "away_share": {CREWS: Figure(0.1, 20, FIRST)},
        "away_days": {CREWS: Figure(5.0, 20, FIRST)},
    }
    spreads = Spreads(own=own, away_share=0.06, asked=frozenset({"away_share"}), off=frozenset({Source.ORDERS}))
    given = problem(outs, looms=looms, parts=parts, readings=read)
    told = [(g.name, g.by, g.names, g.together, g.value, g.count) for g in rests_on(given, spreads)]
    assert told == [
        ("day_to_day_variation", "records", (), False, pytest.approx(0.1), 6),
        ("day_to_day_variation", "usual", (), False, 0.04, 0),
        ("reading_error", "usual", (), False, 0.02, 0),
        ("work_cv", "records", ("AJ",), False, 0.3, 12),
        ("work_cv", "usual", ("PX",), False, 0.15, 0),
        ("away_share", "asked", (), False, 0.06, 0),
        ("away_days", "records", ("Fitters 1",), True, 5.0, 20),
        ("away_days", "usual", ("Electrician",), False, 3.0, 0),
        ("late_share", "records", ("B Works",), True, 0.4, 60),
        ("late_share", "records", ("A Works",), False, 0.3, 40),
        ("late_days", "usual", (), False, 5.0, 0),
        ("short_share", "usual", (), False, 0.02, 0),
        ("fail_share", "usual", (), False, 0.01, 0),
    ]  # fmt: skip
