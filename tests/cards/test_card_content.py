"""What stands on a card."""

from dataclasses import replace

import pytest
from card_samples import BOOKING, CONTENT, KEY, MILL, PLAN, SLING, WINDOW, at

from tracker.cards.content import BookedLoom, card_numbers, make_card
from tracker.domain.mill import LoomKey
from tracker.domain.windows import WindowKind

SHORT = {"RAIL-190": 1}


def card(**more):
    given = {"booking": BOOKING, "content": CONTENT, "short": SHORT, "window": WINDOW} | more
    return make_card("C3-0001-5", 3, MILL, BookedLoom(**given), lambda row: row.minutes)


def test_numbers_follow_the_looms_of_the_plan():
    """In natural order: 007, A-2, A-10. Check of 30001: 3·2⁵ + 1·2 = 98; 98 mod 11 = 10; 12 − 10 = 2."""
    numbers = card_numbers(PLAN, 3)
    assert numbers[KEY] == "C3-0001-2"
    assert [key.loom for key in numbers] == ["007", "A-2", "A-10"]
    backwards = replace(PLAN, bookings=PLAN.bookings[::-1])
    assert card_numbers(backwards, 3) == numbers and card_numbers(PLAN, 4)[KEY] != numbers[KEY]
    assert numbers[LoomKey("Hall 1", "A-10")].startswith("C3-0003-")


def test_operations_stand_in_the_order_they_are_done():
    assert [o.row.step for o in card().operations] == [95, 20, 30, 40, 90]


def test_minutes_are_those_that_the_plan_counted():
    """Booked with 75 person-minutes instead of 140: of the 130 that learn it was to take (75 − 10)/130 = half. The bench, the
    restart and what does not learn stay."""
    booked = replace(BOOKING, labour_h=75 / 60)
    assert [o.minutes for o in card(booking=booked).operations] == pytest.approx([15, 10, 15, 10, 15])


def test_each_caution_of_the_method_once_with_its_steps():
    made = card()
    assert [(c.text, c.steps) for c in made.cautions] == [(SLING, (20, 30))]
    assert [o.cautions for o in made.operations] == [(), (1,), (1,), (), ()]


def test_tools_with_their_steps_and_the_hours_they_are_booked():
    """`hoist` and `Hoist` are one tool."""
    (hoist,) = card().tools
    assert (hoist.tool, hoist.how_many, hoist.steps, hoist.spans) == ("hoist", 1, (20, 30), ((at(5, 5), at(5, 6)),))


def test_parts_by_location_with_what_lacks_and_what_comes_back():
    found = [(p.part, p.location, p.quantity, p.short, p.comes_back) for p in card().parts]
    assert found == [("LOCK", "A-10", 2, 0, True), ("RAIL-190", "B-04", 1, 1, False), ("PIN", "", 4, 0, False)]


def test_settings_stand_left_beside_right():
    angle, current = card().settings
    assert angle.left and angle.right and (angle.setting, angle.unit, angle.left.low) == ("crossing angle", "deg", 305)
    assert current.whole and current.whole.target == 2 and current.left is None


def test_a_setting_given_twice_for_a_side_stands_twice():
    twice = replace(CONTENT, setpoints=(*CONTENT.setpoints, replace(CONTENT.setpoints[0], target=300)))
    angles = [s for s in card(content=twice).settings if s.setting == "crossing angle"]
    assert [s.left.target for s in angles if s.left] == [310, 300]


def test_what_nobody_may_waive_comes_first_and_is_held():
    """Safety without a word on waiving is held; safety that may be waived is not."""
    made = card()
    assert [c.check for c in made.checks] == [
        "Guards are refitted", "Bond of the rail", "Selvedge holds on the first 50 m", "Noise",
    ]  # fmt: skip
    assert [o.is_hold for o in made.operations] == [False, False, False, True, False]


def test_the_article_that_comes_in():
    made = card()
    assert (made.article, made.article_in, made.beam_out) == ("A-out", "B-in", at(5, 3))
    mid = card(booking=replace(BOOKING, kind=WindowKind.MID_WARP, beam_out_p50=None), window=None)
    assert (mid.article, mid.article_in, mid.beam_out) == ("A-now", "A-now", None)
    unknown = card(window=None)
    assert (unknown.article, unknown.article_in) == ("A-now", None), "which one comes in is not guessed"
