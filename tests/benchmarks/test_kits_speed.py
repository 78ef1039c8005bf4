"""Speed of needs and reservations at 2,000 bookings × 60 parts, each beside a plain way of doing it in the same run.

Run with: pytest tests/benchmarks/test_kits_speed.py --benchmark-only
Issue's goals: needs in under 1 s, reserve all in under 3 s (with the database).
"""

from datetime import UTC, date, datetime, timedelta

import pytest
from opened import here

from tracker.domain.calendars import iso_week
from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part, Receipt
from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.rows import Change
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.kits.needs import needs
from tracker.kits.reserving import reserve
from tracker.kits.state import kit_states
from tracker.services.parts.reservations import reserve_plan
from tracker.store import open_store

BOOKINGS, PARTS, WEEKS = 2000, 60, 26
AT = datetime(2026, 1, 5, 6, tzinfo=UTC)
NAMES = [f"P{i:02}" for i in range(PARTS)]
KIT = {name: 1.0 + i % 4 for i, name in enumerate(NAMES)}


def _booking(i: int) -> Booking:
    start = AT + timedelta(days=i * WEEKS * 7 // BOOKINGS, hours=i % 8)
    key = LoomKey(f"Hall {i % 4}", str(i))
    return Booking(key, 1, WindowKind.REPEAT, (), start, start + timedelta(hours=4), None, 8, 8, KIT, CostTerms())


PLAN = Plan(
    PlanStatus.OPTIMAL, 0, 0, 0, "EUR", AT, AT + timedelta(weeks=WEEKS), tuple(_booking(i) for i in range(BOOKINGS))
)
MILL = Mill(
    looms={b.key: Loom(b.key.hall, b.key.loom, "AJ-190") for b in PLAN.bookings},
    parts={name: Part(name, 1500.0, lead_time_days=21, lot_size=10, safety_stock=20) for name in NAMES},
    receipts=tuple(
        Receipt(f"{n}-{w}", n, 100, date(2026, 1, 7) + timedelta(weeks=w)) for n in NAMES for w in range(WEEKS)
    ),
    crews=(Crew("F1", "fitter", 2),),
    terms=Terms(start=AT.date()),
)


def scan_each_week() -> dict[tuple[str, str], float]:
    """The plain way to the gross alone: every booking looked at again for every part and week."""
    weeks = [iso_week(AT.date() + timedelta(weeks=w)) for w in range(WEEKS)]
    return {
        (name, week): sum(b.parts[name] for b in PLAN.bookings if iso_week(b.start.date()) == week)
        for name in NAMES[:6]  # a tenth of the parts: the whole takes too long
        for week in weeks
    }


@pytest.mark.benchmark(group="needs")
def test_needs(benchmark):
    rows = benchmark(needs, PLAN, MILL, AT)
    assert sum(row.gross for row in rows) == BOOKINGS * sum(KIT.values())


@pytest.mark.benchmark(group="needs")
def test_needs_plain_scan_of_a_tenth_of_the_parts(benchmark):
    gross = benchmark.pedantic(scan_each_week, rounds=1)
    assert sum(gross.values()) == BOOKINGS * sum(KIT[name] for name in NAMES[:6])


@pytest.mark.benchmark(group="kit states")
def test_kit_states(benchmark):
    reservations = reserve(PLAN, MILL, ())
    assert len(benchmark(kit_states, PLAN, MILL, reservations, ())) == BOOKINGS


@pytest.fixture
def db(tmp_path):
    def added(table, *key, **values):
        return Change(table, key, "", None, values)

    url = str(tmp_path / "mill.db")
    rows = [added("looms", k.loom, k.hall, hall=k.hall, loom=k.loom, machine_type="AJ-190") for k in MILL.looms]
    rows += [added("parts", name, part=name, on_hand=1500.0, safety_stock=20.0) for name in NAMES]
    with open_store(url, make=True).unit_of_work("planner") as uow:
        uow.load_writer(at=AT).write(rows, {})
        uow.save_plan(PLAN, published=True)
        uow.commit()
    return url


def _reserve_all(db: str) -> int:
    with open_store(db).unit_of_work("planner") as uow:
        reserve_plan(uow, PLAN)
        uow.commit()
        return len(uow.reservations())


def _one_by_one(db: str) -> int:
    """The plain way: each kit reserved by itself, in a unit of work of its own; a fiftieth of the kits."""
    from tracker.services.parts.reservations import reserve as reserve_kit

    for booking in PLAN.bookings[: BOOKINGS // 50]:
        reserve_kit(here(db), booking.key.loom, booking.key.hall)
    return BOOKINGS // 50


@pytest.mark.benchmark(group="reserve all")
def test_reserve_all(benchmark, db):
    # 1,480 usable of each part: parts of 1 a kit reach for 1,480 kits, of 2 for 740, of 3 for 493⅓, of 4 for 370.
    made = benchmark.pedantic(_reserve_all, args=(db,), rounds=1)
    assert made == 15 * (1480 + 740 + 494 + 370)


@pytest.mark.benchmark(group="reserve all")
def test_reserve_plain_kit_by_kit_a_fiftieth(benchmark, db):
    assert benchmark.pedantic(_one_by_one, args=(db,), rounds=1) == 40
