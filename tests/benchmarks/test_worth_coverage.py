"""How often the 95 % interval of the stepped comparison holds the truth, scenario by scenario, and the plain before and after
beside it; the speed of a big mill (DEVELOPERS.md has the figures). Set WORTH_PROGRAMMES for more or fewer."""

import os

import numpy as np
import pytest
from made_programmes import programme

from tracker.commissioning.worth.plain import pooled
from tracker.commissioning.worth.stepped import Stepped, stepped
from tracker.commissioning.worth.verdict import judged

PROGRAMMES = int(os.environ.get("WORTH_PROGRAMMES", "500"))
SCENARIOS = {
    "constant": {}, "growing": {"growing": True}, "bad looms gain more": {"bad_gain_more": True},
    "12 looms": {"looms": 12, "halls": 1}, "seasons of their own": {"own_seasons": True},
    "overdispersion 1": {"overdispersion": 1.0},
    "overdispersion 8": {"overdispersion": 8.0},
}  # fmt: skip


@pytest.mark.parametrize("name", SCENARIOS)
def test_the_interval_holds_the_truth(name):
    """In at least 93 % of programmes; chance leaves room of two standard errors."""
    held = plain = told = 0
    for seed in range(PROGRAMMES):
        made = programme(seed, **SCENARIOS[name])
        panel = made.panel
        found = stepped(panel, by_weeks=False)
        if not isinstance(found, Stepped):
            continue
        truth, paper = made.truth(found.rows), pooled(panel, True)
        told += 1
        held += found.told.low <= truth <= found.told.high
        plain += paper is not None and paper.low <= truth <= paper.high
    print(f"{name}: {held} of {told} hold the truth ({held / told:.1%}); plain before and after {plain / told:.1%}")
    assert held / told >= 0.93 - 2 * np.sqrt(0.95 * 0.05 / told)


def test_a_thousand_looms(benchmark):
    """A verdict over 1,000 looms × 104 weeks."""
    made = programme(1, looms=1000, weeks=104, first=30, last=90, halls=4)
    benchmark.pedantic(judged, (made.panel, True, 0.1, made.decided_at.date()), rounds=1)
