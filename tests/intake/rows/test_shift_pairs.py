from datetime import time

from tracker.domain.tables import Pair
from tracker.intake.rows.pairs import fits

SHIFT = Pair("shift_start", "!=", "shift_end")


def test_a_shift_from_midnight_to_midnight_is_the_whole_day_and_another_of_no_length_is_none():
    assert fits(SHIFT, time(0), time(0))
    assert not fits(SHIFT, time(6), time(6))
    assert fits(SHIFT, time(22), time(6)) and fits(SHIFT, time(6), None)
