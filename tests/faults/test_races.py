"""Several people at once: whatever they do, nothing is lost, nothing done twice, and who comes too late is told in a line."""

import json
from collections.abc import Callable
from random import Random

import pytest
from commands import Ran
from invented_mill import AS_OF, CREW, LOOMS, ORDERED, PARTS, rows_of, write_book
from mills import Mill

SEED = 11
HALL, LOOM = LOOMS[0]
BY_HAND = ("--at", "2026-01-12T12:00", "--why", "written up at noon")


def refused(ran: list[Ran]) -> list[str]:
    """The one line of each that was refused."""
    for one in ran:
        assert one.code in (0, 1) and "Traceback" not in one.err and len(one.lines) == one.code, one
        assert not any(word in one.err.lower() for word in ("sqlalchemy", "psycopg", "sqlite3", "duplicate key")), one
    return [one.lines[0] for one in ran if one.code]


def numbers(mill: Mill, sentence: str) -> list[float]:
    return [row[0] for row in mill.rows(sentence)]


def a_conversion_is_recorded_once(mill: Mill, _: Random) -> None:
    command = ("record", LOOM, "--hall", HALL, "--stage", "run-in", *BY_HAND, "--crew", CREW,
               "--started", "2026-01-12T06:00", "--minutes", "mount=50")  # fmt: skip
    late = refused(mill.at_once(*[command] * 4))
    assert len(late) == 3 and all("is recorded already" in line for line in late), late
    assert numbers(mill, "SELECT count(*) FROM conversions") == [1]
    assert numbers(mill, "SELECT count(*) FROM stage_changes") == [1]
    assert numbers(mill, "SELECT minutes FROM conversion_operations") == [50]


def no_stage_is_lost(mill: Mill, chance: Random) -> None:
    stages = chance.sample(("in work", "run-in", "put off", "left out"), 3)
    ran = mill.at_once(*[("record", "<b>8</b>", "--stage", s, *BY_HAND) for s in stages])
    refused(ran)
    told = sorted(stage for stage, one in zip(stages, ran, strict=True) if not one.code)
    assert sorted(row[0] for row in mill.rows("SELECT stage FROM stage_changes")) == told


def the_last_part_is_reserved_once(mill: Mill, chance: Random) -> None:
    looms = chance.sample(LOOMS, 4)
    ran = mill.at_once(*[("stock", "reserve", loom, "LAST", 1, "--hall", hall) for hall, loom in looms])
    late = refused(ran)
    assert len(late) == 3 and all("LAST" in line for line in late), late
    won = next(loom for loom, one in zip(looms, ran, strict=True) if not one.code)
    assert mill.rows("SELECT hall, loom, quantity FROM reservations WHERE part = 'LAST'") == [(*won, 1)]


def the_last_part_is_issued_once(mill: Mill, chance: Random) -> None:
    looms = chance.sample(LOOMS, 4)
    ran = mill.at_once(*[("stock", "issue", loom, "LAST", 1, "--hall", hall, *BY_HAND) for hall, loom in looms])
    assert len(refused(ran)) == 3
    assert mill.in_stock()["LAST"] == 0
    won = next(loom for loom, one in zip(looms, ran, strict=True) if not one.code)
    assert mill.rows("SELECT hall, loom, quantity FROM stock_movements WHERE kind = 'issue'") == [(*won, -1)]


def a_kit_is_issued_once(mill: Mill, chance: Random) -> None:
    kits = mill.rows("SELECT hall, loom, sum(quantity) FROM reservations GROUP BY hall, loom ORDER BY hall, loom")
    hall, loom, held = chance.choice([kit for kit in kits if kit[2] == 10])  # 1 RAIL, 8 NUT, 1 GAUGE
    assert len(refused(mill.at_once(*[("stock", "issue", loom, "--hall", hall, *BY_HAND)] * 4))) == 3
    assert numbers(mill, "SELECT sum(quantity) FROM stock_movements WHERE kind = 'issue'") == [-held]


def all_that_comes_in_is_booked(mill: Mill, chance: Random) -> None:
    each = ORDERED / 4
    assert refused(mill.at_once(*[("stock", "receive", "RAIL", each, "--order", "PO-1", *BY_HAND)] * 4)) == []
    assert mill.in_stock()["RAIL"] == PARTS["RAIL"] + ORDERED
    assert mill.rows("SELECT quantity FROM receipts WHERE part = 'RAIL'") == []


def no_more_is_taken_than_there_is(mill: Mill, chance: Random) -> None:
    """500 are on hand: two take 200 each, the others hear so."""
    assert len(refused(mill.at_once(*[("stock", "adjust", "COUNTED", -200, *BY_HAND)] * 4))) == 2
    assert mill.in_stock()["COUNTED"] == 100


def a_killed_writer_leaves_the_others_their_turn(mill: Mill, chance: Random) -> None:
    kill = (chance.randrange(180), chance.random() * 0.02)
    killed, *others = mill.at_once(*[("stock", "adjust", "COUNTED", -10, *BY_HAND)] * 4, kill_first=kill)
    assert killed.killed and refused(others) == []
    taken = numbers(mill, "SELECT quantity FROM stock_movements WHERE kind = 'adjustment'")
    assert taken in ([-10] * 3, [-10] * 4)


def a_held_part_is_taken_once(mill: Mill, chance: Random) -> None:
    """Every planned loom needs one rail; three have theirs."""
    holders = mill.rows("SELECT hall, loom FROM reservations WHERE part = 'RAIL' ORDER BY hall, loom")
    hall, loom = chance.choice(holders)
    others = [one for one in LOOMS[:6] if one not in holders]
    commands = [("stock", "take", "RAIL", "--from", loom, "--from-hall", hall, "--to", to, "--to-hall", to_hall)
                for to_hall, to in others]  # fmt: skip
    assert len(refused(mill.at_once(*commands))) == len(others) - 1
    now = mill.rows("SELECT hall, loom FROM reservations WHERE part = 'RAIL' AND quantity = 1")
    assert len(now) == len(holders) and (hall, loom) not in now


def a_count_beside_a_load_is_not_added_to_it(mill: Mill, chance: Random) -> None:
    found, loaded = chance.sample(range(501, 900), 2)
    write_book(mill.folder / "count.xlsx", {"Parts": rows_of("parts", [{"part": "COUNTED", "on_hand": loaded}])})
    assert refused(mill.at_once(("stock", "count", "COUNTED", found, *BY_HAND), ("load", "count.xlsx"))) == []
    assert mill.in_stock()["COUNTED"] in (found, loaded)


def loads_side_by_side_all_count(mill: Mill, chance: Random) -> None:
    written = {"speed_ppm": 610.0, "efficiency": 90.0, "saving_per_day": 41.0}
    for field, value in written.items():
        one = {"loom": LOOM, "hall": HALL, "machine_type": "AJ", field: value}
        write_book(mill.folder / f"{field}.xlsx", {"Looms": rows_of("looms", [one])})
    assert refused(mill.at_once(*[("load", f"{field}.xlsx") for field in written])) == []
    query = f"SELECT speed_ppm, efficiency, saving_per_day FROM looms WHERE hall = '{HALL}' AND loom = '{LOOM}'"
    assert mill.rows(query) == [(610, 0.9, 41)]


def a_mill_is_begun_once(mill: Mill, chance: Random) -> None:
    assert refused(mill.at_once(*[("load", "mill.xlsx")] * 3)) == []
    assert mill.in_stock() == PARTS
    assert numbers(mill, "SELECT count(*) FROM stock_movements") == [len(PARTS)]
    assert numbers(mill, "SELECT count(*) FROM looms") == [len(LOOMS)]
    assert numbers(mill, "SELECT version FROM method_versions") == [1]


def a_plan_takes_the_place_of_the_one_it_was_made_after(mill: Mill, chance: Random) -> None:
    """A loom is put off, so that the next plan drops it; who plans after that one has nothing to move."""
    hall, loom = chance.choice(mill.rows("SELECT hall, loom FROM bookings WHERE plan_id = 1 ORDER BY hall, loom"))
    mill.done("record", loom, "--hall", hall, "--stage", "put off", *BY_HAND)
    ran = mill.at_once(*[("plan", "--publish", "--as-of", AS_OF, "--json", f"{i}.json") for i in range(3)])
    late = refused(ran)
    assert all("another plan was published while this one was made" in line for line in late), late
    made = [json.loads((mill.folder / f"{i}.json").read_text()) for i, one in enumerate(ran) if not one.code]
    assert sum(bool(plan["moves"]) for plan in made) == 1
    published = "SELECT id FROM plans WHERE published ORDER BY id"
    assert numbers(mill, published)[1:] == sorted(plan["number"] for plan in made)
    booked = {(b["hall"], b["loom"]) for b in made[-1]["bookings"]}
    assert {*mill.rows("SELECT hall, loom FROM reservations")} <= booked and (hall, loom) not in booked


def a_published_plan_reserves_what_is_there(mill: Mill, chance: Random) -> None:
    part, on_hand = chance.choice([("RAIL", 2), ("NUT", 12), ("GAUGE", 1)])
    ran = mill.at_once(
        ("plan", "--publish", "--number", 2, "--as-of", AS_OF),
        ("stock", "count", part, on_hand, *BY_HAND),
        ("stock", "adjust", "COUNTED", -1, *BY_HAND),
        ("stock", "release", LOOM, "--hall", HALL),
    )
    refused(ran)
    assert ran[1].code == ran[2].code == 0
    assert (mill.in_stock()[part], mill.in_stock()["COUNTED"]) == (on_hand, PARTS["COUNTED"] - 1)


def a_backup_holds_one_moment(mill: Mill, chance: Random) -> None:
    """Of three entries made meanwhile it holds the first ones, as many as were done by then."""
    taken = [-chance.randint(1, 9) for _ in range(3)]
    entries = [("stock", "adjust", "COUNTED", quantity, *BY_HAND) for quantity in taken]
    assert refused(mill.at_once(("backup", "now.zip"), *entries)) == []
    other = Mill(mill.folder, str(mill.folder / "other.db"), mill.commands)
    other.done("restore", "now.zip")
    book = "SELECT id, part, kind, quantity FROM stock_movements ORDER BY id"
    assert mill.rows(book)[: len(other.rows(book))] == other.rows(book)
    assert mill.in_stock()["COUNTED"] == PARTS["COUNTED"] + sum(taken)
    other.check_sound()


BEGINNING = (a_mill_is_begun_once,)
"""Races that start without a database."""
RACES: tuple[Callable[[Mill, Random], None], ...] = (
    *BEGINNING, a_conversion_is_recorded_once, no_stage_is_lost, the_last_part_is_reserved_once,
    the_last_part_is_issued_once, a_kit_is_issued_once, all_that_comes_in_is_booked, no_more_is_taken_than_there_is,
    a_killed_writer_leaves_the_others_their_turn, a_held_part_is_taken_once, a_count_beside_a_load_is_not_added_to_it,
    loads_side_by_side_all_count, a_plan_takes_the_place_of_the_one_it_was_made_after,
    a_published_plan_reserves_what_is_there, a_backup_holds_one_moment,
)  # fmt: skip


@pytest.mark.parametrize("tries", [len(RACES) // 2, pytest.param(300, marks=pytest.mark.long)])
def test_nothing_is_lost_or_doubled(mills, tries):
    races = RACES if tries > len(RACES) else RACES[mills.half :: 2]

    def race(number: int) -> None:
        run = races[number % len(races)]
        with mills.fresh(empty=run in BEGINNING) as mill:
            run(mill, Random(SEED + number))
            mill.contents()  # the file is sound
            mill.check_sound()

    mills.commands.spread(race, range(tries))
    print(f"{tries} races")


@pytest.mark.long
def test_of_twenty_who_reserve_the_last_part_one_has_it(mills):
    """Each is a process of its own; the six planned looms lack it, and every one of them is asked for by three or four."""
    with mills.fresh() as mill:
        looms = [LOOMS[i % 6] for i in range(20)]
        ran = mill.at_once(*[("stock", "reserve", loom, "LAST", "1", "--hall", hall) for hall, loom in looms])
        assert len(refused(ran)) == 19
        assert mill.rows("SELECT part, quantity FROM reservations WHERE part = 'LAST'") == [("LAST", 1)]
        mill.check_sound()
