"""Invented looms with the spread of a real hall: looms bought together are alike, halls are not."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from random import Random
from typing import Any

from tracker.domain.mill import Loom, LoomKey

Odds = Sequence[tuple[Any, float]]
"""(value, weight), …"""


@dataclass(frozen=True)
class Make:
    """A machine type of the mill and what its looms are like. Looms come in batches of four that are much alike."""

    machine_type: str
    insertion: str
    years: tuple[int, int]
    widths_cm: Odds
    frames: Odds
    weft_m_per_min: tuple[int, int]
    """Weft insertion rate: picks a minute × reed width."""
    rail: Odds
    creel: Odds
    saving_per_day: tuple[float, float]


MAKES = {
    make.machine_type: make
    for make in (
        Make("AJ-N", "air-jet", (2006, 2019), ((190, 5), (210, 3), (230, 2)), ((8, 4), (10, 3), (12, 2)), (1350, 1750),
             (("drilled", 4), ("undrilled", 6)), (("vertical creel", 6), ("horizontal creel", 1), ("no creel", 3)),
             (2.5, 4.5)),
        Make("AJ-W", "air-jet", (2011, 2020), ((280, 4), (300, 3), (340, 3)), ((8, 3), (12, 3), (14, 2)), (1500, 2050),
             (("drilled", 5), ("undrilled", 5)), (("vertical creel", 3), ("horizontal creel", 3), ("no creel", 4)),
             (3.5, 6)),
        Make("RP-N", "rapier", (1998, 2013), ((190, 4), (220, 4), (230, 2)), ((12, 3), (16, 4), (20, 3)), (900, 1150),
             (("drilled", 3), ("undrilled", 7)), (("vertical creel", 4), ("horizontal creel", 4), ("no creel", 2)),
             (2, 4)),
        Make("RP-W", "rapier", (2002, 2016), ((320, 4), (340, 3), (360, 3)), ((12, 3), (16, 4), (20, 2)), (950, 1250),
             (("drilled", 4), ("undrilled", 6)), (("vertical creel", 2), ("horizontal creel", 6), ("no creel", 2)),
             (3, 5.5)),
    )
}  # fmt: skip

SIDES: Odds = (("both", 9), ("left", 0.5), ("right", 0.5))
EXTRA_ENDS: Odds = (("kept", 4), ("taken out", 6))
WASTE_WIRES: Odds = (("present", 6), ("absent", 4))
DUCT: Odds = (("free", 6), ("full", 4))
ATTRIBUTES = (
    "rail", "leno side", "creel", "extra ends", "waste drop wires", "controller generation", "cable duct",
)  # fmt: skip
BATCH = 4
CHANGED_LATER = 0.15
"""Chance that one habit of a loom differs from its batch's."""
SPEEDS_APART = 0.03
"""Between the fastest and the slowest loom of a batch."""
PLACES_IN_ROW = 13
IN_SECTION = 8
"""Looms that one weaver minds."""


def make_looms(rng: Random, hall: str, numbers: Sequence[str], counts: Sequence[tuple[str, int]]) -> list[Loom]:
    """Looms of one hall, in rows of 13, machine type after machine type; `counts` must sum to len(numbers)."""
    kinds = [machine_type for machine_type, count in counts for _ in range(count)]
    looms, batch = [], {}
    for i, (number, machine_type) in enumerate(zip(numbers, kinds, strict=True)):
        if i == 0 or kinds[i - 1] != machine_type or i % BATCH == 0:
            batch = _batch(rng, MAKES[machine_type])
        loom = _loom(rng, MAKES[machine_type], batch, LoomKey(hall, number))
        looms.append(replace(loom, row=str(i // PLACES_IN_ROW + 1), place=str(i % PLACES_IN_ROW + 1),
                             section=f"W{i // IN_SECTION + 1}"))  # fmt: skip
    return looms


def _batch(rng: Random, make: Make) -> dict[str, Any]:
    """What looms bought together share."""
    year, width_cm = rng.randint(*make.years), float(pick(rng, make.widths_cm))
    return {
        "year": year,
        "reed width": width_cm,
        "speed": rng.uniform(*make.weft_m_per_min) / (width_cm / 100),
        "controller generation": 1 if year < 2004 else 2 if year < 2010 else 3 if year < 2016 else 4,
    } | {name: pick(rng, odds) for name, odds in _habits(make).items()}


def _habits(make: Make) -> dict[str, Odds]:
    """What looms bought together mostly share, since one or the other was changed later."""
    return {
        "frames": make.frames,
        "rail": make.rail,
        "leno side": SIDES,
        "creel": make.creel,
        "extra ends": EXTRA_ENDS,
        "waste drop wires": WASTE_WIRES,
        "cable duct": DUCT,
    }


def _loom(rng: Random, make: Make, batch: dict[str, Any], key: LoomKey) -> Loom:
    own = batch | {name: pick(rng, odds) for name, odds in _habits(make).items() if rng.random() < CHANGED_LATER}
    return Loom(
        hall=key.hall,
        loom=key.loom,
        machine_type=make.machine_type,
        insertion=make.insertion,
        year=own["year"],
        reed_width_cm=own["reed width"],
        frames=own["frames"],
        speed_ppm=float(round(own["speed"] * rng.uniform(1 - SPEEDS_APART / 2, 1 + SPEEDS_APART / 2))),
        efficiency=rng.randint(166, 187) / 200,
        saving_per_day=rng.randint(round(make.saving_per_day[0] * 4), round(make.saving_per_day[1] * 4)) / 4,
        attributes={name: own[name] for name in ATTRIBUTES},
    )


def pick(rng: Random, odds: Odds) -> Any:
    return rng.choices([value for value, _ in odds], [weight for _, weight in odds])[0]
