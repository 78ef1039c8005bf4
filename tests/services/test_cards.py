"""Cards of the published plan: a loom's, a week's, a crew's."""

from dataclasses import replace

import pytest
from opened import here
from published_sample import published_sample
from refusals import refused

from tracker.cards.content import BookedLoom, make_card
from tracker.domain.calendars import iso_week
from tracker.domain.card_numbers import read_card_number
from tracker.domain.tables import CARD_LANGUAGES
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, UsageError
from tracker.export.cards.packs import PackLine, write_packs
from tracker.scope.content import scope_looms
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.work import cards as service
from tracker.services.work.record import StageTold, record_stage


@pytest.fixture(scope="module")
def sample(tmp_path_factory):
    return published_sample(tmp_path_factory.mktemp("cards") / "mill.db")


def week_of(plan, booking):
    return iso_week(booking.start.date())


def test_a_looms_card_is_the_same_each_time(sample):
    db, plan = sample
    key = plan.bookings[0].key
    first, again = (service.cards(here(db), key.loom, key.hall).cards[0] for _ in range(2))
    assert first == again and first.key == key
    number, place = read_card_number(first.number)
    assert number == first.plan and sorted(b.key.sort_key for b in plan.bookings)[place - 1] == key.sort_key


def test_a_week_has_every_conversion_that_begins_in_it_once(sample):
    db, plan = sample
    week = week_of(plan, plan.bookings[0])
    report = service.cards(here(db), week=week)
    begun = {b.key for b in plan.bookings if week_of(plan, b) == week}
    assert sorted(card.key for card in report.cards) == sorted(begun) and not report.without
    for pack in report.packs:
        assert [line.start for line in pack.lines] == sorted(line.start for line in pack.lines)


def test_minutes_on_the_loom_are_those_of_the_booking(sample):
    """Steps side by side take as long as the longest of them; the baseline books in half hours, so at most so much more."""
    db, plan = sample
    booking = plan.bookings[0]
    card = service.cards(here(db), booking.key.loom, booking.key.hall).cards[0]
    longest: dict[int, float] = {}
    for operation in card.operations:
        if operation.row.place == "on loom":
            longest[operation.row.step] = max(longest.get(operation.row.step, 0), operation.minutes)
    assert 0 <= booking.slots * 30 - sum(longest.values()) < 30


def test_a_crew_that_takes_over_is_told_who_has_the_card(sample):
    from tracker.domain.plan import CrewTurn

    db, plan = sample
    booking = plan.bookings[0]
    half = booking.start + (booking.end - booking.start) / 2
    shared = replace(booking, crews=(CrewTurn("A", booking.start, half), CrewTurn("B", half, booking.end)))
    with here(db).reading() as uow:
        room = read_stockroom(uow)
    maker = service.CardMaker(replace(plan, bookings=(shared,)), 1, room.mill, {}, room)
    first, second = service._packs(maker, week_of(plan, booking))
    assert (first.crew, len(first.cards), second.crew, len(second.cards)) == ("A", 1, "B", 0)
    assert second.lines[0].taken_from == "A"


def test_no_card_for_a_loom_that_was_put_off_and_the_numbers_of_the_others_stay(tmp_path):
    db, plan = published_sample(tmp_path / "mill.db")
    booking, other = plan.bookings[:2]
    before = service.cards(here(db), other.key.loom, other.key.hall).cards[0].number
    record_stage(here(db), booking.key.loom, "left out", booking.key.hall, told=StageTold(why="sold"))
    with refused(DataError, "not booked"):
        service.cards(here(db), booking.key.loom, booking.key.hall)
    report = service.cards(here(db), week=week_of(plan, booking))
    assert booking.key not in {line.booking.key for pack in report.packs for line in pack.lines}
    assert service.cards(here(db), other.key.loom, other.key.hall).cards[0].number == before


def test_what_is_refused(sample, tmp_path):
    db, _ = sample
    with refused(UsageError, "no week like 2027-W02"):
        service.cards(here(db), week="2027-54")
    with refused(DataError, "crew Nobody has no conversion in week 2027-W02; .* have"):
        service.cards(here(db), week="2027-W02", crew="Nobody")
    with refused(DataError, "no conversion begins"):
        service.write_cards(service.cards(here(db), week="2040-W02"), tmp_path / "a.pdf")
    assert not list(tmp_path.iterdir())


def test_a_crews_own_language_comes_before_that_of_the_terms(sample):
    db, plan = sample
    with here(db).reading() as uow:
        room = read_stockroom(uow)
    mill = room.mill
    mill = replace(mill, crews=tuple(replace(c, language="tr") if i == 0 else c for i, c in enumerate(mill.crews)),
                   terms=replace(mill.terms, language_of_cards="de"))  # fmt: skip
    maker = service.CardMaker(plan, 1, mill, {}, room)
    assert maker.language(mill.crews[0].crew) == "tr" and maker.language("") == "de"


@pytest.mark.parametrize(
    "language",
    [pytest.param(one, marks=() if one in ("en", "de", "tr") else pytest.mark.long) for one in CARD_LANGUAGES],
)
def test_the_longest_card_of_the_sample_takes_two_pages(sample, tmp_path, language):
    """A stop in mid-warp has the most operations, parts and checks; that of the loom and the choices with the most rows."""
    db, plan = sample
    report = service.cards(here(db), plan.bookings[0].key.loom, plan.bookings[0].key.hall)
    scopes = scope_looms(report.mill)
    longest = (
        (key, content) for key, scope in scopes.items() for content in scope.contents.get(WindowKind.MID_WARP, ())
    )
    key, content = max(longest, key=lambda one: len(one[1].rows))
    booking = replace(plan.bookings[0], key=key, kind=WindowKind.MID_WARP, choices=content.choices)
    card = make_card("C1-0084-6", 1, report.mill, BookedLoom(booking, content), lambda row: row.minutes)
    pack = replace(report.packs[0], language=language, lines=(PackLine(booking, booking.start, booking.end, card),))
    assert write_packs(tmp_path / "card.pdf", [pack], report.mill.terms.zone, "Hall renewal", None, None) == 2
