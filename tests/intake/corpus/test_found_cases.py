"""The numbered cases that mills' lists brought to light; one that has become right must be named as right."""

import pytest

from .found_cases import CASES
from .not_yet import FOUND_RIGHT
from .verdict import judge

NOT_YET = pytest.mark.xfail(strict=True, reason="is not read right yet")


@pytest.mark.parametrize("number", [n if n in FOUND_RIGHT else pytest.param(n, marks=NOT_YET) for n in CASES])
def test_a_found_case_comes_out_right(number, tmp_path):
    verdict = judge(CASES[number](), tmp_path / "files", str(tmp_path / "empty.db"))
    assert verdict.outcome.good and not verdict.silent, verdict.line()
