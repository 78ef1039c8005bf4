"""What each booking costs, term by term, and what the plan as a whole does (MODEL.md, sections 5 and 7)."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import fields
from datetime import datetime, timedelta
from functools import cached_property
from statistics import fmean

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, PlanStatus
from tracker.domain.shifts import crews_of
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.errors import Message, message
from tracker.planning.checks.case import SLOT, Case, parts_needed
from tracker.planning.checks.late import LateBeams
from tracker.planning.checks.order import pilot_end
from tracker.planning.checks.second_chance import SecondChance

SHARES = np.arange(1, 100) / 100
CENT = 0.01
_MOVES_SOON = timedelta(days=14)
_CLOSE = 1e-7
"""Relative difference of sums of money that is a rounding error."""


def costs_of_bookings(case: Case) -> Iterator[Message]:
    """Each cost term of each booking is what the data say."""
    prices = Prices(case, [window for booking in case.plan.bookings if (window := case.window(booking))])
    for booking in case.plan.bookings:
        window, content = case.window(booking), case.content(booking)
        if window is None or content is None:
            continue
        due = prices.of_booking(booking, window, content)
        for term in fields(CostTerms):
            has, should = getattr(booking.cost, term.name), getattr(due, term.name)
            if not _same(has, should):
                words = term.name.replace("_", " ")
                yield message(
                    "other-cost", loom=booking.key, term=words, booked=has, due=should, currency=case.terms.currency
                )


def costs_of_left_over(case: Case) -> Iterator[Message]:
    prices = Prices(case, [])
    for item in case.plan.left_over:
        if item.key in case.mill.looms:
            due = prices.of_left_over(item.key)
            if not _same(item.cost, due):
                yield message(
                    "other-left-over-cost", loom=item.key, booked=item.cost, due=due, currency=case.terms.currency
                )


def no_booking_dearer_than_leaving(case: Case) -> Iterator[Message]:
    """Only what was given or held, and the pilot that its type waits for, may cost more than leaving its loom over."""
    prices, held = Prices(case, []), case.problem.held
    for booking in case.plan.bookings:
        if booking.key not in case.mill.looms or case.given(booking) or _opens_its_type(case, booking):
            continue
        if booking.key in held:
            continue
        has, left = booking.cost.total, prices.of_left_over(booking.key)
        if has > left and not _same(has, left):
            yield message("dearer-than-leaving", loom=booking.key, booked=has, left=left, currency=case.terms.currency)


def _opens_its_type(case: Case, booking: Booking) -> bool:
    machine_type = case.mill.looms[booking.key].machine_type
    return booking.pilot and bool(case.terms.soak_days) and pilot_end(case, machine_type) is None


def status_fits_gap(case: Case) -> Iterator[Message]:
    """What is called optimal is within the gap that was asked for, what is not is not."""
    plan, most = case.plan, case.plan.asked.gap
    if plan.status is PlanStatus.INFEASIBLE:
        if plan.bookings:
            yield message("infeasible-but-booked", status=plan.status, bookings=len(plan.bookings))
        return
    gap = plan.objective - plan.bound
    said = {"status": plan.status, "gap": f"{plan.gap:.3%}", "limit": f"{most:.3%}"}
    if plan.status is PlanStatus.OPTIMAL and gap > most * plan.objective + CENT:
        yield message("gap-and-status", how="above", **said)
    if plan.status is not PlanStatus.OPTIMAL and plan.objective > 0 and gap <= most * plan.objective:
        yield message("gap-and-status", how="within", **said)


def sums_agree(case: Case) -> Iterator[Message]:
    """Objective = bookings + left over, and the bound does not lie above it."""
    plan = case.plan
    if plan.status is PlanStatus.INFEASIBLE:
        return
    total = sum(booking.cost.total for booking in plan.bookings) + sum(item.cost for item in plan.left_over)
    if not _same(plan.objective, total):
        yield message("other-objective", objective=plan.objective, total=total)
    if plan.bound > plan.objective and not _same(plan.bound, plan.objective):
        yield message("bound-above-objective", bound=plan.bound, objective=plan.objective)


class Prices:
    """Costs straight from MODEL.md, section 5, one booking at a time."""

    def __init__(self, case: Case, windows: Iterable[Window]):
        """`windows` are those that bookings will be priced in."""
        self.case, self.terms = case, case.terms
        self.previous = {b.key: b for b in case.problem.previous_bookings}
        self.late = LateBeams(case)
        self._hours = quantiles(sorted({self._firmed(window) for window in windows}))

    def of_booking(self, booking: Booking, window: Window, content: WorkContent) -> CostTerms:
        outs = self._beam_outs(window)
        ends = [self.late.end(booking, window, content, out) for out in outs]
        end = self.case.origin + fmean((at - self.case.origin) / SLOT for at in ends or [booking.end]) * SLOT
        return CostTerms(
            lost_production=self._lost_production(booking, window, content, outs, ends)
            + self.lost_beside(booking.key, content),
            late_beam_out=self._late_beam_out(booking, window, outs),
            labour=self.labour(content),
            parts=self.parts(content),
            saving_foregone=self._saving(booking.key) * (end - self.case.start).total_seconds() / 86400,
            moves=self._moves(booking),
            surviving=self._surviving(window),
        )

    def of_left_over(self, key: LoomKey) -> float:
        """Saving × horizon + penalty + the cheapest labour and parts, and the move of a booked loom that is not put off."""
        contents = [content for contents in self.case.problem.contents.get(key, {}).values() for content in contents]
        cheapest = min((self.labour(content) + self.parts(content) for content in contents), default=0.0)
        old = None if key in self.case.problem.put_off else self.previous.get(key)
        moved = self._move_cost(old) if old else 0.0
        return self._saving(key) * self.terms.horizon_days + self.terms.left_over_penalty + cheapest + moved

    def labour(self, content: WorkContent) -> float:
        return sum(minutes / 60 * self.rates.get(fold(trade), 0.0) for trade, minutes in content.labour_min.items())

    def parts(self, content: WorkContent) -> float:
        return sum(quantity * self.case.mill.parts[part].price for part, quantity in content.parts.items())

    @cached_property
    def rates(self) -> dict[str, float]:
        """Trade → currency per head and hour, the mean over the heads of its crews; a crew in several rows counts
        once for each rate."""
        crews = {(fold(c.trade), c.crew, c.heads, c.rate_per_head_h) for c in self.case.mill.crews if c.heads > 0}
        by_trade: dict[str, list[float]] = {}
        for trade, _, heads, rate in crews:
            by_trade.setdefault(trade, []).extend([rate] * heads)
        return {trade: fmean(rates) for trade, rates in by_trade.items()}

    def _saving(self, key: LoomKey) -> float:
        return self.case.mill.saving_per_day(key)

    def _moves(self, booking: Booking) -> float:
        old = self.previous.get(booking.key)
        if old is None or (old.start, old.choices) == (booking.start, booking.choices):
            return 0.0
        return self._move_cost(old)

    def _surviving(self, window: Window) -> float:
        """The cost of its loom left over × the chance that it misses this and all later chances, as often as the term says."""
        times = self.terms.no_second_chance
        return times * self.of_left_over(window.key) * self._second_chance.lost(window) if times else 0.0

    @cached_property
    def _second_chance(self) -> SecondChance:
        return SecondChance(self.case, quantiles)

    def _move_cost(self, old: Booking) -> float:
        return self.terms.move_cost if old.start <= self.case.problem.as_of + _MOVES_SOON else self.terms.move_cost / 4

    def _lost_production(
        self,
        booking: Booking,
        window: Window,
        content: WorkContent,
        outs: Sequence[datetime],
        ends: Sequence[datetime],
    ) -> float:
        """Contribution × running hours from each beam-out (or from when the rest of its warp is cut) to the end that follows,
        less what others do meanwhile, or the whole of the ordinary change where that comes in between; while a span lasts
        its loom stands anyway."""
        if self.case.mill.looms[booking.key].capacity_unsold:
            return 0.0
        running = self.case.running(booking.key.hall)
        parted = len(parts_needed(content, window)) > 1
        if not outs:
            return window.contribution_per_h * self._converting_h(booking, window, parted)
        cut = booking.start + timedelta(hours=self.terms.patience_h)
        stopped = []
        for out, end in zip(outs, ends, strict=True):
            stopped_h = running.hours_between(min(out, cut), end)
            begins = self.case.works_from(booking.key.hall, self.late.begins(booking, out))
            done_h = min(window.meanwhile_h, max(0.0, running.hours_between(begins, end)))
            stopped.append(stopped_h - (window.ordinary_change_h if parted else done_h))
        return window.contribution_per_h * fmean(stopped)

    def lost_beside(self, key: LoomKey, content: WorkContent) -> float:
        """What the looms beside it lose during the steps for which they stand, with the warps that are in work now."""
        stand_h = sum(step.minutes for step in content.steps if step.stops_neighbours) / 60
        problem, earned = self.case.problem, 0.0
        for other in problem.beside.get(key, ()):
            if not problem.mill.looms[other].capacity_unsold:
                earned += sum(w.contribution_per_h for w in problem.windows.get(other, ()) if w.number == 0)
        return stand_h * earned

    def _converting_h(self, booking: Booking, window: Window, parted: bool) -> float:
        """Running hours that a loom which stands, or is stopped mid-warp, does not weave because of its conversion."""
        stops = booking.start
        if window.kind is WindowKind.STANDING and window.ends_at:
            stops = max(stops, (window.warp_in_at if parted else None) or window.ends_at)
        running = self.case.running(booking.key.hall)
        return running.hours_between(stops, booking.end) if stops < booking.end else 0.0

    def _late_beam_out(self, booking: Booking, window: Window, outs: Iterable[datetime]) -> float:
        """A warp that is not out at the start: the crew waits up to the patience, then the rest is cut."""
        running, patience_h = self.case.running(booking.key.hall), self.terms.patience_h
        rate = self.crew_rate(booking.key.hall, booking.start)
        costs = []
        for out in outs:
            late_h = (out - booking.start).total_seconds() / 3600
            cost = rate * min(max(0.0, late_h), patience_h)
            if late_h > patience_h:
                left_h = running.hours_between(booking.start, out) - running.hours_between(
                    booking.start, booking.start + patience_h * 2 * SLOT
                )
                cost += left_h * window.warp_rate_m_per_h * window.warp_value_per_m
            costs.append(cost)
        return fmean(costs) if costs else 0.0

    def crew_rate(self, hall: str, start: datetime) -> float:
        """Currency an hour of a crew of the lead trade: the mean of those at work at the start."""
        slot = self.case.slot_of(start)
        crews = crews_of(self.case.mill, self.terms.lead_trade)
        there = [
            self.case.heads_in(c, hall)[slot] * c.rate_per_head_h
            for c in crews
            if slot in self.case.crew_slots(c, hall)
        ]
        return fmean(there) if there else 0.0

    def _beam_outs(self, window: Window) -> list[datetime]:
        """The 99 quantiles of the firmed spread as clock times, laid around the mean on the running calendar."""
        if window.kind not in (WindowKind.REPEAT, WindowKind.STYLE):
            return []
        running = self.case.running(window.key.hall)
        mean_h, spread_h = self._firmed(window)
        return [running.after(window.mean_at, h - mean_h) for h in self._hours[mean_h, spread_h]]

    def _firmed(self, window: Window) -> tuple[float, float]:
        """Mean and spread, hours, of what is still open when the booking is made firm."""
        return min(window.mean_running_h, self.terms.firm_h), window.spread_h


def quantiles(pairs: Sequence[tuple[float, float]]) -> dict[tuple[float, float], list[float]]:
    """The 99 quantiles of inverse Gaussians, by (mean, spread); the variance is mean × spread.

    The distribution function is scipy's; its own quantiles take a third of a millisecond each, so the values are found
    by halving an interval that surely holds them, all at once.
    """
    from scipy.stats import invgauss  # takes its time, and only a plan that is checked needs it

    varying = [(mean, spread) for mean, spread in pairs if mean > 0 and spread > 0]
    mean, spread = np.array(varying).reshape(-1, 2, 1).transpose(1, 0, 2)
    shape = mean**2 / spread
    low, high = np.zeros((len(varying), 99)), mean + 12 * np.sqrt(mean * spread) + 20 * spread + np.zeros(99)
    for _ in range(60):
        middle = (low + high) / 2
        above = invgauss.cdf(middle, mu=mean / shape, scale=shape) > SHARES
        low, high = np.where(above, low, middle), np.where(above, middle, high)
    found = dict(zip(varying, ((low + high) / 2).tolist(), strict=True))
    return {pair: found.get(pair, [max(pair[0], 0.0)] * 99) for pair in pairs}


def _same(a: float, b: float) -> bool:
    return abs(a - b) <= CENT + _CLOSE * max(abs(a), abs(b))
