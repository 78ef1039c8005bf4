"""Processes that play runs side by side."""

import sys
from math import sqrt
from types import ModuleType

from tracker.services.plans.players import players


def test_they_do_not_run_the_callers_program_again(tmp_path, monkeypatch):
    """A page of the screens is such a program: it would be drawn in every process."""
    page = tmp_path / "page.py"
    page.write_text("raise SystemExit('ran again')")
    main = ModuleType("__main__")
    main.__file__ = str(page)
    monkeypatch.setitem(sys.modules, "__main__", main)
    with players(2) as two:
        assert two.submit(sqrt, 9.0).result() == 3.0
    assert sys.modules["__main__"] is main
