"""Text that a spreadsheet would run stays text in a delimited file, and comes back as it was."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tracker.domain.plain_text import guarded, is_risky, unguarded


@pytest.mark.parametrize("text", ["=1+1", "+4", "-4", "@x", "\tx", "\rx", "\n=x"])
def test_text_that_a_spreadsheet_runs(text):
    """The beginnings that OWASP's page on CSV Injection lists (seen)."""
    assert is_risky(text) and guarded(text) == "'" + text


def test_other_text_is_left_alone():
    assert not is_risky("007") and guarded("A-07") == "A-07" and guarded("'tis") == "'tis" == unguarded("'tis")
    assert guarded("'=x") == "''=x" and unguarded("'90") == "'90"


@given(st.text(alphabet="'=+-@\t\r\nab1", max_size=6))
def test_any_text_comes_back_and_never_runs(text):
    assert unguarded(guarded(text)) == text and not is_risky(guarded(text))
