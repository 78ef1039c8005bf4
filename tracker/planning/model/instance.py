"""The problem as arrays: clocks, pools, supplies, contents and windows, each looked up once and numbered."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.shifts import crews_of, running_calendar
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import Choices, WorkContent, labour_cost, parts_cost
from tracker.errors import DataError, Message
from tracker.planning.model.contents import trades_and_tools
from tracker.planning.model.delays import Delays
from tracker.planning.model.entries import Entries
from tracker.planning.model.grid import (
    SLOT_H,
    Floats,
    Grid,
    HallClock,
    Ints,
    RunningClock,
    closed_before,
    first_of_days,
    full_hours,
    midnight,
)
from tracker.planning.model.leaving import left_costs, move_cost
from tracker.planning.model.notes import notes
from tracker.planning.model.numbered import KINDS, ContentTable, Menus, Previous, WindowTable
from tracker.planning.model.pools import (
    Pool,
    converting,
    heads_at_work,
    lead_pool,
    section_pool,
    stopped_pool,
    tool_pool,
    trade_pool,
    trade_rates,
    week_pool,
)
from tracker.planning.model.presence import Presence
from tracker.planning.model.second_chance import chances_lost
from tracker.planning.model.shapes import ChangeBetween, Shapes, change_of, make_shapes
from tracker.planning.model.supplies import Supply, supplies
from tracker.planning.model.watching import Watching, make_watching
from tracker.planning.problem import PlanningProblem

PAST_DAYS = 60
"""So far back working slots are counted from a beam-out that is past; after that none of its window is left."""
_MARGIN = timedelta(days=120)
"""Running calendars reach this far past the horizon, for the tails of the last beam-outs."""


@dataclass(frozen=True)
class Instance:
    problem: PlanningProblem
    grid: Grid
    start: datetime
    """Programme start, UTC: saving foregone counts from here."""
    earliest_h: float
    """No option starts before it: the later of as of and the programme's start."""
    halls: list[str]
    clocks: list[HallClock]
    looms: list[LoomKey]
    hall_of: Ints
    """Hall of each loom, index into `halls`."""
    sections: dict[tuple[int, str], int]
    """(hall, weaver's section) → its number; empty where the sections have no limit."""
    section_of: Ints
    """Section of each loom; -1 = none."""
    pools: list[Pool]
    """The lead trade first. Looms in work are not taken out yet."""
    supplies: list[Supply]
    """Of the scarce parts only."""
    needs: Floats
    """Distinct needs of scarce parts, shape (rows, supplies)."""
    shapes: Shapes
    """How conversions lie in the working slots, and what they hold in them."""
    delays: Delays
    """How conversions go whose beams come late."""
    watching: Watching
    """Who must be at work after the restart."""
    contents: ContentTable
    menus: Menus
    menu_of: list[dict[WindowKind, int]]
    """Kind of window → menu, by loom."""
    windows: WindowTable
    previous: Previous
    saving: Floats
    """Currency a day, by loom."""
    beside: Floats
    """What the looms beside each loom earn together in a running hour."""
    left_cost: Floats
    """Cost of leaving each loom over."""
    chance_lost: Floats
    """By window: the chance that it and every later chance of its loom are missed; 0 where nobody asks."""
    protected_slot: Ints
    """First slot in which each loom may start."""
    ruled_out: tuple[tuple[int, int, int], ...]
    """(loom, first slot, slot after the last) of each span in which it is not to start."""
    notes: tuple[Message, ...]

    @property
    def mill(self) -> Mill:
        return self.problem.mill

    def section(self, key: LoomKey) -> int:
        """The section of a loom, planned or in work; -1 = none."""
        return _section(self.sections, self.halls, self.mill, key)

    @property
    def start_h(self) -> float:
        return self.grid.hours(self.start)


def make_instance(problem: PlanningProblem) -> Instance:
    """Number everything. Raises `DataError` where the horizon is past or no crew ever works in it."""
    mill, terms = problem.mill, problem.mill.terms
    grid, start = _grid(problem)
    looms = problem.planned
    halls = list(dict.fromkeys(key.hall for key in sorted(mill.looms, key=lambda key: key.sort_key)))
    clocks = [_hall_clock(problem, grid, hall) for hall in halls]
    if not any(clock.work.size for clock in clocks):
        raise DataError("no-crew-in-horizon", trade=terms.lead_trade)
    rates = trade_rates(mill)
    contents, menus, menu_of, needs, scarce, short = _contents(problem, grid, looms, clocks, rates)
    sections = _sections(mill, halls)
    pools = _pools(mill, grid, halls, sections, contents.items)
    changes: dict[ChangeBetween, int] = {}
    windows = _windows(problem, grid, looms, menu_of, changes if any(c.first_part for c in contents.items) else None)
    asked = _asked_apart(contents, menus, windows)
    shapes = make_shapes(contents.items, terms, asked, list(changes), pools, clocks)
    presence = Presence(mill, grid, halls)
    saving = np.array([mill.saving_per_day(key) for key in looms])
    return Instance(
        problem=problem,
        grid=grid,
        start=start,
        earliest_h=max(grid.hours(problem.as_of), grid.hours(start)),
        halls=halls,
        clocks=clocks,
        looms=looms,
        hall_of=np.array([halls.index(key.hall) for key in looms], dtype=np.int32),
        sections=sections,
        section_of=np.array([_section(sections, halls, mill, key) for key in looms], dtype=np.int32),
        pools=pools,
        supplies=scarce,
        needs=needs,
        shapes=shapes,
        delays=Delays(presence, clocks, shapes),
        watching=make_watching(presence, contents.items),
        contents=contents,
        menus=menus,
        menu_of=menu_of,
        windows=windows,
        previous=_previous(problem, grid, looms, contents),
        saving=saving,
        beside=np.array([sum(_earns(problem, key) for key in problem.beside.get(loom, ())) for loom in looms]),
        left_cost=np.array(list(left_costs(problem, looms).values())),
        chance_lost=chances_lost(windows, menus, shapes, clocks, [halls.index(w.key.hall) for w in windows.items])
        if terms.no_second_chance
        else np.zeros(len(windows.items)),
        protected_slot=np.array([_protected(grid, mill, key) for key in looms], dtype=np.int32),
        ruled_out=tuple(_ruled_out(problem, grid, looms)),
        notes=tuple(notes(problem, contents.items, rates, short)),
    )


def _grid(problem: PlanningProblem) -> tuple[Grid, datetime]:
    terms = problem.mill.terms
    today = problem.as_of.astimezone(terms.zone).date()
    first = terms.start or today
    end = midnight(first + timedelta(days=terms.horizon_days), terms.zone)
    if end <= problem.as_of:
        raise DataError("horizon-past", days=terms.horizon_days, end=end, as_of=problem.as_of.astimezone(terms.zone))
    origin = midnight(today, terms.zone)
    return Grid(origin, (end - origin) // timedelta(hours=SLOT_H), terms.zone), midnight(first, terms.zone)


def _hall_clock(problem: PlanningProblem, grid: Grid, hall: str) -> HallClock:
    mill = problem.mill
    lead, past = crews_of(mill, mill.terms.lead_trade), grid.before(PAST_DAYS)
    there = [(crew, converting(mill, grid, crew, hall)) for crew in lead]
    worked = np.sum([converting(mill, past, crew, hall) for crew in lead], axis=0)
    crews = np.sum([at_work for _, at_work in there], axis=0)
    cost = np.sum(
        [at_work * heads_at_work(mill, grid, crew, hall) * crew.rate_per_head_h for crew, at_work in there], axis=0
    )
    work = np.flatnonzero(crews).astype(np.int32)
    return HallClock(
        hall, work, _running(problem, grid, hall), cost / np.maximum(crews, 1),
        first_of_days(grid, work), full_hours(grid, work), closed_before(grid, work), np.flatnonzero(worked) - past.slots,
    )  # fmt: skip


def _running(problem: PlanningProblem, grid: Grid, hall: str) -> RunningClock:
    earliest = min((w.mean_at for windows in problem.windows.values() for w in windows[:2]), default=grid.origin)
    first = (min(earliest, grid.origin) - timedelta(days=30)).astimezone(grid.zone).date()
    last = (grid.moment(grid.slots) + _MARGIN).astimezone(grid.zone).date()
    return RunningClock(running_calendar(problem.mill, hall, first, last), grid)


def _contents(problem, grid, looms, clocks, rates):
    """The content table, the menus, and everything that is numbered along with them."""
    entries = Entries(problem)
    menu_of = [entries.menus_of(key) for key in looms]
    attended = entries.with_attended()
    items = [content for content, _ in entries.found]
    choices: dict[Choices, int] = {}
    choice_of = [choices.setdefault(content.choices, len(choices)) for content in items]
    scarce, short, needs, needs_of = _scarce(problem, grid, clocks, entries, menu_of)
    table = ContentTable(
        items=items,
        labour=np.array([labour_cost(content, rates) for content in items]),
        neighbours_stand_h=np.array([content.neighbours_stand_min / 60 for content in items]),
        parts=np.array([parts_cost(content, problem.mill.parts) for content in items]),
        needs=needs_of,
        choices=np.array(choice_of, dtype=np.int32),
        choice_sets=list(choices),
        attended=attended,
    )
    flat = np.array([c for menu in entries.menus for c in menu], dtype=np.int32)
    first = np.cumsum([0, *map(len, entries.menus)]).astype(np.int32)
    return table, Menus(flat, first), menu_of, needs, scarce, short


def _scarce(problem, grid, clocks, entries: Entries, menu_of):
    """Supplies of the parts that the looms together could use up, those of which they need more than ever is there, and the
    needs of each content of them."""
    parts = sorted({part for _, need in entries.found for part in need})
    column = {part: i for i, part in enumerate(parts)}
    need = np.zeros((len(entries.found), len(parts)))
    for row, (_, needed) in enumerate(entries.found):
        for part, quantity in needed.items():
            need[row, column[part]] = quantity
    most_of_menu = [need[menu].max(axis=0) for menu in entries.menus]
    most = np.zeros(len(parts))
    for menus in menu_of:
        if menus:
            most += np.max([most_of_menu[menu] for menu in menus.values()], axis=0)
    working = np.zeros(grid.slots, dtype=bool)
    for clock in clocks:
        working[clock.work] = True
    all_ = supplies(problem.mill, problem.as_of, grid, working, parts, problem.taken)
    scarce = [i for i, supply in enumerate(all_) if most[i] > supply.total[0]]
    distinct, number = np.unique(need[:, scarce], axis=0, return_inverse=True)
    short = [all_[i].part for i in scarce if most[i] > all_[i].total[-1]]
    return [all_[i] for i in scarce], short, distinct, number.reshape(-1).astype(np.int32)


def _sections(mill: Mill, halls: list[str]) -> dict[tuple[int, str], int]:
    if mill.terms.stopped_per_section is None:
        return {}
    named = {(halls.index(loom.hall), loom.section) for loom in mill.looms.values() if loom.section}
    return {section: i for i, section in enumerate(sorted(named))}


def _section(sections: Mapping[tuple[int, str], int], halls: list[str], mill: Mill, key: LoomKey) -> int:
    return sections.get((halls.index(key.hall), mill.looms[key].section or ""), -1)


def _pools(
    mill: Mill, grid: Grid, halls: list[str], sections: Mapping[tuple[int, str], int], contents: Sequence[WorkContent]
) -> list[Pool]:
    trades, tools = trades_and_tools(contents, mill.terms.lead_trade)
    limit, of_section = mill.terms.looms_stopped_at_once, mill.terms.stopped_per_section
    return [
        lead_pool(mill, grid, halls, crews_of(mill, mill.terms.lead_trade)),
        *([week_pool(mill, grid, halls, crews_of(mill, mill.terms.lead_trade))] if mill.terms.usual_absence else []),
        *([stopped_pool(limit, grid, halls)] if limit is not None else []),
        *([section_pool(of_section, grid, len(sections))] if of_section is not None and sections else []),
        *(trade_pool(mill, grid, halls, trade) for trade in trades),
        *(tool_pool(mill, grid, halls, tool) for tool in tools),
    ]


def _asked_apart(contents: ContentTable, menus: Menus, windows: WindowTable) -> set[tuple[int, int]]:
    """(content, change) of every conversion that the change of its window parts."""
    pairs = np.unique(np.stack([windows.menu, windows.change], axis=1)[windows.change >= 0], axis=0)
    return {
        (number, change)
        for menu, change in pairs.tolist()
        for content in menus.flat[menus.first[menu] : menus.first[menu + 1]].tolist()
        if contents.items[content].first_part
        for number in {content, int(contents.attended[content])}
    }


def _windows(
    problem: PlanningProblem, grid: Grid, looms: list[LoomKey], menu_of, changes: dict[ChangeBetween, int] | None
) -> WindowTable:
    """`changes` numbers the changes that part conversions; None = the method parts none."""
    rows = [
        (i, window, menu_of[i][window.kind])
        for i, key in enumerate(looms)
        for window in sorted(problem.windows.get(key, ()), key=lambda w: w.number)
        if window.kind in menu_of[i]
    ]
    items = [window for _, window, _ in rows]
    unsold = [problem.mill.looms[w.key].capacity_unsold for w in items]

    def hours(moments) -> Floats:
        return np.array([grid.hours(at) for at in moments], dtype=float)

    def numbers(values) -> Floats:
        return np.array(list(values), dtype=float)

    return WindowTable(
        items=items,
        loom=np.array([i for i, _, _ in rows], dtype=np.int32),
        kind=np.array([KINDS.index(w.kind) for w in items], dtype=np.int32),
        menu=np.array([menu for _, _, menu in rows], dtype=np.int32),
        mean_h=hours(w.mean_at for w in items),
        starts_h=hours(w.starts_at for w in items),
        ends_h=hours(w.ends_at or w.starts_at for w in items),
        spread_h=numbers(w.spread_h for w in items),
        mean_running_h=numbers(w.mean_running_h for w in items),
        warp_rate=numbers(w.warp_rate_m_per_h for w in items),
        warp_value=numbers(w.warp_value_per_m for w in items),
        warp_in_h=hours(w.warp_in_at or w.ends_at or w.starts_at for w in items),
        change_h=numbers(w.ordinary_change_h for w in items),
        meanwhile_h=numbers(w.meanwhile_h for w in items),
        change=np.array([_change(w, grid, changes) for w in items], dtype=np.int32),
        contribution=numbers(0.0 if free else w.contribution_per_h for w, free in zip(items, unsold, strict=True)),
    )


def _change(window: Window, grid: Grid, changes: dict[ChangeBetween, int] | None) -> int:
    found = None if changes is None else change_of(window, grid)
    return -1 if found is None or changes is None else changes.setdefault(found, len(changes))


def _earns(problem: PlanningProblem, key: LoomKey) -> float:
    """What a loom earns in a running hour with the warp that is in work now; nothing where its capacity is unsold, or nothing
    is known of it."""
    now = (window for window in problem.windows.get(key, ()) if window.number == 0)
    return 0.0 if problem.mill.looms[key].capacity_unsold else next((w.contribution_per_h for w in now), 0.0)


def _previous(problem: PlanningProblem, grid: Grid, looms: list[LoomKey], contents: ContentTable) -> Previous:
    bookings = {booking.key: booking for booking in problem.previous_bookings}
    number = {choices: i for i, choices in enumerate(contents.choice_sets)}
    found = [bookings.get(key) for key in looms]
    return Previous(
        slot=np.array([grid.first_slot(b.start) if b else -(10**6) for b in found], dtype=np.int32),
        choices=np.array([number.get(b.choices, -1) if b else -1 for b in found], dtype=np.int32),
        booked=np.array([b is not None for b in found], dtype=bool),
        kind=np.array([KINDS.index(b.kind) if b else -1 for b in found], dtype=np.int32),
        move_cost=np.array([move_cost(problem, b) for b in found]),
    )


def _ruled_out(problem: PlanningProblem, grid: Grid, looms: Sequence[LoomKey]) -> Iterator[tuple[int, int, int]]:
    number = {key: i for i, key in enumerate(looms)}
    for span in problem.ruled_out:
        if span.key in number:
            yield number[span.key], grid.first_slot(span.from_at), grid.first_slot(span.until_at)


def _protected(grid: Grid, mill: Mill, key: LoomKey) -> int:
    until = mill.looms[key].protected_until
    return grid.day_start(until + timedelta(days=1)) if until else 0
