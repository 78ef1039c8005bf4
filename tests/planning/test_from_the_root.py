"""Where looms are too many for the proof, an integer programme over all of them looks for a better plan at its root."""

import pytest
from other_solver import cp_sat, programme_of
from small_halls import small_problem

from tracker.planning.model.programme import Control
from tracker.planning.search import solver


@pytest.mark.parametrize("seed", (4, 8, 10))
def test_it_finds_what_another_solver_finds(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """No neighbourhood is tried and every hall counts as too large for the proof, so that the first plan, which is not the
    best in these halls, is bettered at the root or not at all."""
    monkeypatch.setattr(solver, "MOST_LOOMS", 0)
    monkeypatch.setattr(solver._Search, "_sweep", lambda *_: None)
    programme = programme_of(small_problem(seed, looms=6))
    cost, _ = cp_sat(programme)
    assert solver.optimise(programme, Control()).cost == pytest.approx(cost, abs=0.05)
