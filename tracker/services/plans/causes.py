"""Why replanning moved a booking: what happened, what the data do not allow any more, or to which loom it gives way."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan, Undo
from tracker.domain.progress import BEFORE_BOOKING, Stage, StageChange
from tracker.errors import Message, message
from tracker.mill_state.happened import OTHER, PEOPLE, Happened
from tracker.services.plans.lacking import lack_of

Broken = Mapping[LoomKey | None, Sequence[Message]]
Reasons = dict[LoomKey, Message]
MOST_NAMED = 3
"""Looms to which a booking gives way that are named; the others are counted."""
MOST_NEWS = 2
"""Things that happened and took nobody's place that are named."""
SAME_BEAM_OUT_H = 72
"""A forecast moves by less than this; beyond it the booking waits for another beam-out. The numbers of the windows do not
tell, since they start again with every new warp."""


class Causes:
    """Of all that differs between two plans. `broken` says what of the one before does not hold any more, by loom and for
    several together; `happened` what has happened since it was made."""

    def __init__(
        self, before: Plan, after: Plan, mill: Mill, stages: Mapping[LoomKey, StageChange], broken: Broken,
        happened: Sequence[Happened],
    ):  # fmt: skip
        self.before, self.after, self.mill, self.stages, self.broken, self.happened = (
            before, after, mill, stages, broken, happened,
        )  # fmt: skip
        self.zone = mill.terms.zone
        self.old = {booking.key: booking for booking in before.bookings}
        self.new = {booking.key: booking for booking in after.bookings}
        self.undoing = {undo.key: undo for undo in after.undoing if undo.limit is None}
        self.own = self._own()
        self.began = (self._short_of() | self.own, self._forecasts())

    def of(self, key: LoomKey) -> Message:
        """Of a loom whose booking differs."""
        if key in self.own:
            return self.own[key]
        if key not in self.old:
            left = next((item.why for item in self.before.left_over if item.key == key), None)
            return message("moved-new", left=left)
        if key not in self.new:
            return message("moved-away")
        return self._given_way(self.undoing[key]) if key in self.undoing else self._for_the_plan(key)

    # ---- causes of its own

    def _own(self) -> Reasons:
        """What is by itself the cause that a loom's booking is another: the data, what was recorded, the pilot of its type."""
        new, after = self.new, self.after
        why = {
            key: self._since(of[0], key) for key, of in self.broken.items() if key and of and key not in self.undoing
        }
        why |= dict(self._shared())
        why |= {undo.key: self._since(undo.limit, undo.key) for undo in after.undoing if undo.limit}
        missed = {key: self._missed(old) for key, old in self.old.items() if old.start < after.as_of and key in new}
        why |= dict(self._pilots(why | missed)) | missed
        why |= {key: message("moved-broken-off", why=change.reason) for key, change in self.stages.items()
                if key in new and change.stage in (*BEFORE_BOOKING, Stage.STOPPED) and change.reason
                and change.at >= self.before.as_of}  # fmt: skip
        gone = {key: message("moved-stage", stage=change.stage) for key, change in self.stages.items()}
        gone |= {item.key: self._since(item.why, item.key) for item in after.left_over}
        return why | {key: reason for key, reason in gone.items() if key not in new}

    def _shared(self) -> Iterator[tuple[LoomKey, Message]]:
        """Bookings of which some had to go, since together they ask for more than there is."""
        for finding in self.broken.get(None, ()):
            lack = lack_of(finding, self.mill)
            for key, old in self.old.items():
                if lack and lack.takes(old, self.zone):
                    yield key, self._since(finding, key)

    def _missed(self, old: Booking) -> Message:
        """A start that passed without a record: who or what was not there then."""
        on, crews = old.start.astimezone(self.zone).date(), {None, *(turn.crew for turn in old.crews)}
        kept_off = (
            one.says for one in self.happened
            if one.on(on) and (old.key in one.looms or (one.of == PEOPLE and one.crew in crews
                                                        and one.hall in (None, old.key.hall)))
        )  # fmt: skip
        return self._with(message("moved-missed", start=old.start.astimezone(self.zone)), next(kept_off, None))

    def _pilots(self, why: Reasons) -> Iterator[tuple[LoomKey, Message]]:
        """Looms that became the pilot of their type, and those whose booking lay before the pilot has run for the soak time:
        pilots are decided first. `why`: what else is known of looms, and so of the pilot before."""
        terms, looms = self.mill.terms, self.mill.looms
        soak = timedelta(days=terms.soak_days)
        pilots = {looms[b.key].machine_type: b for b in self.after.bookings if b.pilot and b.key in looms and soak}
        was = {looms[b.key].machine_type: b.key for b in self.before.bookings if b.pilot and b.key in looms}
        for old in self.before.bookings:
            machine_type = looms[old.key].machine_type if old.key in looms else ""
            pilot, first = pilots.get(machine_type), was.get(machine_type)
            root = why.get(first) if first else None
            if pilot and pilot.key == old.key and not old.pilot:
                yield old.key, message("became-pilot", machine_type=machine_type, first=first, root=root)
            elif pilot and pilot.key != old.key and old.start < pilot.end + soak:
                at = (pilot.end + soak).astimezone(terms.zone)
                yield old.key, message("waits-for-pilot", at=at, machine_type=machine_type, pilot=pilot.key,
                                       days=terms.soak_days, first=first, root=root)  # fmt: skip

    # ---- what of others is the cause

    def _short_of(self) -> Reasons:
        """Bookings that could stay at a price, and lack what there is less of since something happened."""
        found = {key: self._event(undo.short, key) for key, undo in self.undoing.items() if undo.short}
        return {key: event for key, event in found.items() if event}

    def _forecasts(self) -> Reasons:
        both = self.old.keys() & self.new.keys()
        found = {key: forecast_moved(self.old[key], self.new[key]) for key in both}
        return {key: said for key, said in found.items() if said}

    def _given_way(self, undo: Undo) -> Message:
        """Why a booking moved that could have stayed: to whom it gives way or whose place it takes, and what began it."""
        key, old, new = undo.key, self.old[undo.key], self.new[undo.key]
        forecast, event = forecast_moved(old, new), self._event(undo.short, key) if undo.short else None
        looms = undo.taken_by if undo.short else self._place_of(key)
        root = None if event else self._root(key, looms)
        follows = forecast and not event and not root
        how = "follows" if follows else "room" if undo.short else "place" if looms else "free"
        return message(
            "moved-at-a-price", how=how, forecast=forecast, window=other_window(old, new), looms=looms[:MOST_NAMED],
            more=max(0, len(looms) - MOST_NAMED), short=undo.short, since=event, root=root,
            news=None if event or root or forecast else self._news(), instead=undo.instead,
            found=undo.costs is not None,
        )  # fmt: skip

    def _place_of(self, key: LoomKey) -> tuple[LoomKey, ...]:
        """The moved looms that were booked when one is now."""
        now = self.new[key]
        was = ((other, old) for other, old in self.old.items() if other != key and differs(old, self.new.get(other)))
        return tuple(other for other, old in was if old.start < now.end and now.start < old.end)

    def _for_the_plan(self, key: LoomKey) -> Message:
        old, new = self.old[key], self.new[key]
        return message("moved-cheaper", forecast=forecast_moved(old, new), window=other_window(old, new))

    def _root(self, key: LoomKey, looms: Sequence[LoomKey]) -> Message | None:
        """The nearest other loom with a cause of its own among these and those to which they give way, else the nearest whose
        forecast moved."""
        ahead = list(looms)
        for now in ahead:
            others = self.undoing[now].taken_by if now in self.undoing else ()
            ahead += [other for other in others if other not in (key, *ahead)]
        roots = (_rooted(loom, roots[loom]) for roots in self.began for loom in ahead if loom in roots)
        return next(roots, None)

    def _news(self) -> tuple[Message, ...] | None:
        """What happened and takes no place away, where no loom begins the chain: it may have made another plan cheaper."""
        return tuple(one.says for one in self.happened if one.of == OTHER)[:MOST_NEWS] or None

    # ---- what happened

    def _since(self, what: Message, key: LoomKey) -> Message:
        return self._with(what, self._event(what, key))

    def _with(self, what: Message, event: Message | None) -> Message:
        return message("moved-since", what=what, since=event) if event else what

    def _event(self, what: Message, key: LoomKey) -> Message | None:
        """What happened of which there is less by a limit that is named."""
        lack, old = lack_of(what, self.mill), self.old.get(key)
        if lack is None:
            return None
        days = lack.days or (_days(old, self.mill) if old else ())
        return next((one.says for one in self.happened if lack.by(one, days, key.hall)), None)


def _rooted(loom: LoomKey, why: Message) -> Message:
    """A loom and its cause; of one that waits for its pilot, that of the pilot."""
    if why.code in ("waits-for-pilot", "became-pilot") and isinstance(why.params["root"], Message):
        first = why.params["first"]
        return message("moved-root", loom=first, why=why.params["root"])
    return why if why.params.get("loom") == loom else message("moved-root", loom=loom, why=why)


def _days(old: Booking, mill: Mill) -> tuple[date, ...]:
    first, last = (at.astimezone(mill.terms.zone).date() for at in (old.start, old.end))
    return tuple(first + timedelta(days=i) for i in range((last - first).days + 1))


def differs(before: Booking | None, after: Booking | None) -> bool:
    """Whether a loom's booking moved, came, went or takes another choice."""
    return before is None or after is None or (before.start, before.choices) != (after.start, after.choices)


def forecast_moved(before: Booking, after: Booking) -> Message | None:
    """By how much the beam-out of a booking is expected earlier or later, where that is the same one."""
    later_h = _later_h(before, after)
    if later_h is None or not 1 <= abs(later_h) < SAME_BEAM_OUT_H:
        return None
    return message("moved-forecast", hours=abs(later_h), when="later" if later_h > 0 else "earlier")


def other_window(before: Booking, after: Booking) -> Message | None:
    """Which other kind of window, or other beam-out, a booking waits for."""
    later_h = _later_h(before, after)
    if later_h is None:
        return None if before.kind is after.kind else message("moved-window", before=before.kind, after=after.kind)
    when = "later" if later_h > 0 else "earlier"
    return message("moved-beam-out", when=when) if abs(later_h) >= SAME_BEAM_OUT_H else None


def _later_h(before: Booking, after: Booking) -> float | None:
    if before.beam_out_p50 is None or after.beam_out_p50 is None:
        return None
    return (after.beam_out_p50 - before.beam_out_p50).total_seconds() / 3600
