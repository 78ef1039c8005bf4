"""What conversions share: crews, heads of other trades, tools, the hall's limit of stopped looms."""

from bisect import bisect_right
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache
from math import ceil, floor

from tracker.domain.calendars import iso_week
from tracker.domain.mill import Crew, LoomKey
from tracker.domain.shifts import crews_of
from tracker.domain.words import fold
from tracker.domain.work import StepLoad, WorkContent
from tracker.errors import Message, message
from tracker.planning.checks.case import DUST, SLOT_MIN, Case, Hold

Use = Counter[tuple[str, int]]
"""(hall, slot) → how much is used."""
Count = Callable[[Case, Crew, str], Mapping[int, int]]
"""Slot → what a crew row has to give in a hall."""
Area = dict[str, str]
"""A hall, or a section of one, as the finding names it."""


def crews(case: Case) -> Iterator[Message]:
    """One crew of the lead trade for every conversion in each of its slots."""
    use: Use = Counter()
    fixed: Use = Counter()
    for hold in case.holds:
        for slot in hold.slots:
            use[hold.key.hall, slot] += 1
            fixed[hold.key.hall, slot] += hold.fixed
    there = _there(case, crews_of(case.mill, case.terms.lead_trade), one_crew)
    yield from _too_much(case, "too-few-crews", case.terms.lead_trade, use, fixed, there)


def room_between(case: Case) -> Iterator[Message]:
    """After each conversion that could have been booked otherwise a crew is left in as many slots as the term asks for."""
    if not case.terms.room:
        return
    use: Use = Counter()
    fixed: Use = Counter()
    for hold in case.holds:
        work = case.work(hold.key.hall)
        after = work[bisect_right(work, hold.slots[-1]) :][: case.room_after(hold)] if hold.slots else ()
        for slot in (*hold.slots, *after):
            use[hold.key.hall, slot] += 1
            fixed[hold.key.hall, slot] += hold.fixed
    there = _there(case, crews_of(case.mill, case.terms.lead_trade), one_crew)
    yield from _too_much(case, "too-little-room", case.terms.lead_trade, use, fixed, there)


def hours_of_a_week(case: Case) -> Iterator[Message]:
    """In no ISO week are more crew-slots planned than its crews have, less the usual absence; what is firm, in work, held or
    opens its type stays, whatever the week holds."""
    if not case.terms.usual_absence:
        return
    own, anywhere = _there(case, crews_of(case.mill, case.terms.lead_trade), one_crew)
    week_of = cache(lambda slot: iso_week(case.at(case.begin(slot)).date()))
    there: Counter[str] = Counter()
    for (_, slot), crews in own.items():
        there[week_of(slot)] += crews
    for slot, crews in anywhere.items():
        there[week_of(slot)] += crews
    settled = {b.key for b in case.plan.bookings if b.pilot} | case.problem.held
    used, given = Counter[str](), Counter[str]()
    for hold in case.holds:
        for slot in hold.slots:
            used[week_of(slot)] += 1
            given[week_of(slot)] += hold.fixed or hold.key in settled
    for week in sorted(used):
        most = floor(there[week] * (1 - case.terms.usual_absence) + DUST)
        if used[week] > max(most, given[week]):
            yield message("week-too-full", week=week, hours=used[week] / 2, limit=most / 2, trade=case.terms.lead_trade)


def one_crew(case: Case, crew: Crew, hall: str) -> Mapping[int, int]:
    """1 in each slot in which a crew row of the lead trade can work at a conversion in a hall."""
    return dict.fromkeys(case.crew_slots(crew, hall), 1)


def heads_of_other_trades(case: Case) -> Iterator[Message]:
    use, fixed = _used(case, "trade", lambda step: other_trades(case, step))
    for trade in sorted(use):
        there = _there(case, crews_of(case.mill, trade), Case.heads_in)
        yield from _too_much(case, "too-few-heads", trade, use[trade], fixed[trade], there)


def other_trades(case: Case, step: StepLoad) -> dict[str, int]:
    """Folded trade → heads that a step holds, those of the lead trade left out: they come as a crew."""
    lead = fold(case.terms.lead_trade)
    return {fold(trade): heads for trade, heads in step.heads.items() if fold(trade) != lead}


def tools(case: Case) -> Iterator[Message]:
    use, fixed = _used(case, "tool", tools_of)
    there = {fold(name): tool.how_many for name, tool in case.mill.tools.items()}
    for tool in sorted(use):
        all_halls, given = _over_halls(use[tool]), _over_halls(fixed[tool])
        limit = there.get(tool, 0)
        over = {slot for slot, amount in all_halls.items() if amount > max(limit, given[slot])}
        yield from _each_run(case, over, "too-few-tools", limit=limit, tool=tool)


def tools_of(step: StepLoad) -> dict[str, int]:
    """Folded tool → how many a step holds."""
    return {fold(tool): amount for tool, amount in step.tools.items()}


def _over_halls(use: Use) -> Counter[int]:
    by_slot: Counter[int] = Counter()
    for (_, slot), amount in use.items():
        by_slot[slot] += amount
    return by_slot


def stopped_at_once(case: Case) -> Iterator[Message]:
    """No more looms of a hall stopped at any moment than the limit, nights included."""
    yield from _stopped(case, case.terms.looms_stopped_at_once, "too-many-stopped", lambda key: {"hall": key.hall})


def stopped_per_section(case: Case) -> Iterator[Message]:
    """No more looms of one weaver's section."""

    def section(key: LoomKey) -> Area | None:
        loom = case.mill.looms.get(key)
        return {"section": loom.section, "hall": loom.hall} if loom and loom.section else None

    yield from _stopped(case, case.terms.stopped_per_section, "too-many-stopped-in-section", section)


def _stopped(case: Case, limit: int | None, code: str, area_of: Callable[[LoomKey], Area | None]) -> Iterator[Message]:
    if limit is None:
        return
    by_area: dict[tuple[tuple[str, str], ...], list[Hold]] = defaultdict(list)
    for hold in case.holds:
        if area := area_of(hold.key):
            by_area[tuple(area.items())].append(hold)
    for area, holds in by_area.items():
        for moment in sorted({hold.start for hold in holds}):
            stopped = [hold for hold in holds if hold.start <= moment < hold.end]
            if len(stopped) > limit and not all(hold.fixed for hold in stopped):
                yield message(code, stopped=len(stopped), at=case.at(moment), limit=limit, **dict(area))
                break


def _used(
    case: Case, kind: str, of_step: Callable[[StepLoad], Mapping[str, int]]
) -> tuple[dict[str, Use], dict[str, Use]]:
    """By trade or tool: what all conversions use and what the fixed ones do.

    In a slot that several steps touch, a conversion holds the largest of what they ask for; a firm one what it was
    published to need.
    """
    use: dict[str, Use] = defaultdict(Counter)
    fixed: dict[str, Use] = defaultdict(Counter)
    for hold in case.holds:
        listed = _as_listed(case, hold, kind) if hold.needs is not None else as_asked(hold, of_step)
        for what, slot, amount in listed:
            use[what][hold.key.hall, slot] += amount
            fixed[what][hold.key.hall, slot] += amount * hold.fixed
    return use, fixed


def as_asked(hold: Hold, of_step: Callable[[StepLoad], Mapping[str, int]]) -> Iterator[tuple[str, int, int]]:
    """(trade or tool, slot, amount) by the steps of its content."""
    for what, amounts in held_by_slot(hold.content, of_step, hold.pause is not None).items():
        for i, amount in amounts.items():
            if 0 <= i - hold.skipped < len(hold.slots):
                yield what, hold.slots[i - hold.skipped], amount


def _as_listed(case: Case, hold: Hold, kind: str) -> Iterator[tuple[str, int, int]]:
    """(trade or tool, slot, amount) as it was published."""
    for need in hold.needs or ():
        for slot in hold.slots:
            if need.kind == kind and need.start <= case.begin(slot) < need.end:
                yield fold(need.what), slot, need.amount


def held_by_slot(
    content: WorkContent | None, of_step: Callable[[StepLoad], Mapping[str, int]], parted: bool = False
) -> dict[str, dict[int, int]]:
    """Trade or tool → slot of the conversion (0 = the first) → the most that a step touching it asks for. The second part of
    one that is `parted` begins with a slot of its own."""
    held: dict[str, dict[int, int]] = defaultdict(dict)
    minute = 0.0
    cut = content.first_part if content and parted else 0
    for i, step in enumerate(content.steps if content else ()):
        if cut and i == cut:
            minute = ceil((minute - DUST) / SLOT_MIN) * SLOT_MIN
        if step.minutes > DUST:
            touched = range(floor((minute + DUST) / SLOT_MIN), ceil((minute + step.minutes - DUST) / SLOT_MIN))
            for what, amount in of_step(step).items():
                for slot in touched:
                    held[what][slot] = max(held[what].get(slot, 0), amount)
        minute += step.minutes
    return held


def _too_much(
    case: Case, code: str, trade: str, use: Use, fixed: Use, there: tuple[Use, Counter[int]]
) -> Iterator[Message]:
    """Slots in which the halls together ask for more than there is: each hall takes its own crews first, and what it
    lacks comes from the crews of any hall. What firm bookings and looms in work take too much is not the plan's."""
    own, anywhere = there
    halls = sorted({hall for hall, _ in use})
    over = set()
    for slot in {slot for _, slot in use}:
        wanted = sum(max(0, use[hall, slot] - own[hall, slot]) for hall in halls)
        given = sum(max(0, fixed[hall, slot] - own[hall, slot]) for hall in halls)
        if wanted > max(anywhere[slot], given):
            over.add(slot)
    yield from _each_run(case, over, code, trade=trade)


def _there(case: Case, crews: Iterable[Crew], count: Count) -> tuple[Use, Counter[int]]:
    """What the crews of each hall have to give slot by slot, and those of any hall."""
    own: Use = Counter()
    anywhere: Counter[int] = Counter()
    halls = {key.hall for key in case.mill.looms}
    for crew in crews:
        most: Counter[int] = Counter()
        for hall in halls if crew.hall is None else {crew.hall}:
            for slot, amount in count(case, crew, hall).items():
                most[slot] = max(most[slot], amount)
        if crew.hall is None:
            anywhere.update(most)
        else:
            own.update({(crew.hall, slot): amount for slot, amount in most.items()})
    return own, anywhere


def _each_run(case: Case, slots: Iterable[int], code: str, **what: object) -> Iterator[Message]:
    """One finding for each run of neighbouring slots."""
    first = last = None
    for slot in [*sorted(slots), None]:
        if first is not None and last is not None and (slot is None or slot > last + 1):
            yield message(code, start=case.at(case.begin(first)), end=case.at(case.begin(last + 1)), **what)
            first = None
        first = slot if first is None else first
        last = slot
