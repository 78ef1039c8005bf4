"""The best choice so far: an option or left over for each loom, and what is still free of each row."""

from dataclasses import dataclass

import numpy as np

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.options import stays, times
from tracker.planning.model.programme import LEFT, Programme
from tracker.planning.search.relaxation import Relaxation

_DUST = 1e-9
"""Of a row's unit: what adding and taking away again leaves."""


@dataclass
class Incumbent:
    programme: Programme
    chosen: Ints
    """By loom of the programme: its option, or LEFT."""
    used: Floats
    """By row."""

    @property
    def cost(self) -> float:
        return self.programme.cost(self.chosen)

    def taken(self, looms: Ints) -> Ints:
        """The options of these looms, those left over passed by."""
        options = self.chosen[looms]
        return options[options >= 0]

    def used_without(self, looms: Ints) -> Floats:
        """What all the others use."""
        left = self.used - self.programme.used(self.taken(looms))
        return np.where(np.abs(left) < _DUST, 0.0, left)

    @property
    def calm(self) -> bool:
        """Whether it moves no more than the programme lets it."""
        row = self.programme.rows.kept
        return row < 0 or bool(self.used[row] <= self.programme.rows.upper[row] + _DUST)

    def move(self, looms: Ints, options: Ints) -> None:
        """Give these looms other options."""
        self.used = self.used_without(looms)
        self.chosen[looms] = options
        self.used += self.programme.used(self.taken(looms))


def nothing_booked(programme: Programme) -> Incumbent:
    return Incumbent(
        programme, np.full(programme.looms.size, LEFT, dtype=np.int64), np.zeros(programme.rows.upper.size)
    )


def as_published(programme: Programme, relaxation: Relaxation) -> Incumbent:
    """The bookings of the last published plan that still fit, in order of their start, and what `greedy` makes of the
    other looms. Without a published plan it is `greedy`'s."""
    found = _with_kept(programme)
    published = _published(programme)
    published = published[found.chosen[programme.number[published]] == LEFT]
    looms, first = np.unique(programme.number[published], return_index=True)  # they fit together, as a rule
    used = found.used + programme.used(published[first])
    if (programme.rows.over(used) <= _DUST).all():
        found.chosen[looms], found.used = published[first], used
        return _completed(found, relaxation)
    for option in published:
        if found.chosen[programme.number[option]] != LEFT:
            continue
        if programme.lookup.fits(programme.rows.free(found.used), np.array([option]))[0]:
            found.move(programme.number[[option]], np.array([option]))
    return _completed(found, relaxation)


def _published(programme: Programme) -> Ints:
    """The options with the start and the choices that were published, those of a loom in order: a window of another kind may have
    the same start, and hold its crew and tools at other hours, so that its own kind comes first, and the cheapest of it."""
    instance, options = programme.instance, programme.options
    start = times(instance, options).start
    found = np.flatnonzero(stays(instance, options))
    loom = options.loom[found]
    another = instance.windows.kind[options.window[found]] != instance.previous.kind[loom]
    return found[np.lexsort((options.cost[found], another, loom, start[found]))]


def greedy(programme: Programme, relaxation: Relaxation) -> Incumbent:
    """One loom after the other takes the option that fits and has the least reduced cost, unless leaving it over has
    less. Looms about which the relaxation is surest go first."""
    return _completed(nothing_booked(programme), relaxation)


def calmest(programme: Programme, relaxation: Relaxation) -> Incumbent:
    """What `greedy` makes of the looms besides those that the fewest moves leave where they are."""
    return _completed(_with_kept(programme), relaxation)


def _with_kept(programme: Programme) -> Incumbent:
    found = nothing_booked(programme)
    found.move(programme.number[programme.kept], programme.kept)
    return found


def _completed(found: Incumbent, relaxation: Relaxation) -> Incumbent:
    programme = found.programme
    free = programme.rows.free(found.used)
    for number in _order(programme, relaxation):
        if found.chosen[number] != LEFT:
            continue
        options = programme.options_of(int(number))
        worth = options[relaxation.reduced[options] < relaxation.reduced_left[number]]
        fits = worth[programme.lookup.fits(free, worth)]
        if fits.size:
            best = fits[np.argmin(relaxation.reduced[fits])]
            found.chosen[number] = best
            _, row, amount = programme.lookup.entries(np.array([best]))
            np.add.at(found.used, row, amount)
            programme.rows.follow(free, found.used, row)
    return found


def _order(programme: Programme, relaxation: Relaxation) -> Ints:
    """Looms by the largest share that the relaxation gives one of their options, the largest first."""
    share = np.zeros(programme.looms.size)
    np.maximum.at(share, programme.number[relaxation.index[: relaxation.share.size]], relaxation.share)
    return np.argsort(-share.round(3), kind="stable")
