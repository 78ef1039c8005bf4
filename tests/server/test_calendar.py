"""A crew's calendar: the format by the text of RFC 5545, UIDs that stay and SEQUENCEs that rise, and who may see it."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from asgi import Browser
from icalendar import Calendar
from refusals import refused
from sqlalchemy import update
from starlette.applications import Starlette
from starlette.middleware import Middleware
from three_looms import FITTERS, added, crew, write

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, CrewTurn, Plan, PlanStatus
from tracker.domain.progress import Stage, StageChange
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, UsageError
from tracker.server.calendar import calendar_route
from tracker.server.gate import Gate
from tracker.server.keeper import Keeper
from tracker.services.context import Context
from tracker.services.people.tokens import give_token, shown, tokens, withdraw_token
from tracker.services.plans.crew_calendar import crew_calendar
from tracker.store import open_store
from tracker.store.models import TokenRow

BERLIN = ZoneInfo("Europe/Berlin")
HALL = "Weberei Süd, obere Halle mit den Webmaschinen für die Gardinen und Schleier"


@pytest.fixture
def mill(tmp_path):
    """Looms 1 and 2 in a hall of a long name with a comma, crews F1 and F2, German cards, the zone of Berlin."""
    context = Context(str(tmp_path / "mill.db"))
    open_store(context.database, make=True)
    said = {
        "time zone": "Europe/Berlin",
        "language of cards": "de",
        "address of the screens": "https://screens.mill.example/",
    }
    with context.store.unit_of_work("planner") as uow:
        writer = uow.load_writer()
        writer.change_zone(writer.zone, BERLIN)
        writer.write([added("terms", name, term=name, value=value) for name, value in said.items()], {})
        uow.commit()
    looms = (added("looms", loom, HALL, loom=loom, hall=HALL, machine_type="AJ-190") for loom in ("1", "2"))
    write(context.database, *looms, crew(FITTERS), crew({**FITTERS, "crew": "F2"}))
    return context


def at(day, hour):
    """A moment of March 2027 as clocks in Berlin show it; they go forward on the 28th."""
    return datetime(2027, 3, day, hour, tzinfo=BERLIN).astimezone(UTC)


def booking(loom, *turns, firm=False):
    mine = tuple(CrewTurn(*turn) for turn in turns)
    return Booking(
        LoomKey(HALL, loom), 1, WindowKind.STYLE, (), mine[0].start, mine[-1].end, None, 12, 10.0, {}, CostTerms(),
        firm=firm, crews=mine,
    )  # fmt: skip


def publish(mill, *bookings, published=True, on=1):
    plan = Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", at(1, 0), at(31, 0), bookings, (), (), (), start=None)
    with mill.store.unit_of_work("planner", lambda: at(on, 5)) as uow:
        uow.save_plan(plan, published=published)
        uow.commit()


def title(loom):
    return f"Webmaschine {loom} ({HALL}) umbauen"


def events(mill, crew="F1"):
    return Calendar.from_ical(crew_calendar(mill, crew)).events


def test_a_moved_booking_keeps_its_uid_and_raises_its_sequence(mill):
    publish(mill, booking("1", ("F1", at(1, 6), at(1, 12))), booking("2", ("F1", at(2, 6), at(2, 12))))
    before = {event["SUMMARY"]: event for event in events(mill)}
    publish(mill, booking("1", ("F1", at(3, 6), at(3, 12)), firm=True), booking("2", ("F1", at(2, 6), at(2, 12))), on=2)
    publish(
        mill, booking("1", ("F1", at(9, 6), at(9, 12))), published=False
    )  # a plan that nobody published moves nothing
    publish(mill, booking("1", ("F1", at(4, 6), at(4, 12)), firm=True), booking("2", ("F1", at(2, 6), at(2, 12))), on=2)
    moved, stays = events(mill)[1], events(mill)[0]
    assert (stays["UID"], stays["SEQUENCE"]) == (before[title("2")]["UID"], 0)
    assert (moved["UID"], moved["SEQUENCE"]) == (before[title("1")]["UID"], 2)
    assert moved["UID"] != stays["UID"]
    assert (moved.start, moved.end) == (at(4, 6), at(4, 12))
    assert (moved["STATUS"], stays["STATUS"]) == ("CONFIRMED", "TENTATIVE")
    assert (stays["DTSTAMP"].dt, moved["DTSTAMP"].dt) == (at(1, 5), at(2, 5))


def test_each_turn_of_a_crew_is_an_entry_and_other_crews_see_none_of_it(mill):
    publish(mill, booking("1", ("F1", at(1, 6), at(1, 14)), ("F2", at(1, 14), at(1, 22)), ("F1", at(2, 6), at(2, 9))))
    first, second = events(mill)
    assert (first.start, second.start) == (at(1, 6), at(2, 6)) and first["UID"] != second["UID"]
    assert "2. Einsatz der Mannschaft" in second["DESCRIPTION"]
    (other,) = events(mill, "F2")
    assert other.start == at(1, 14) and other["UID"] not in (first["UID"], second["UID"])


def test_what_is_over_left_out_or_booked_no_more_is_not_there(mill):
    assert events(mill) == []
    publish(mill, booking("1", ("F1", at(1, 6), at(1, 12))), booking("2", ("F1", at(2, 6), at(2, 12))))
    with mill.store.unit_of_work("planner") as uow:
        uow.add_stage(StageChange(LoomKey(HALL, "1"), Stage.PUT_OFF, at(1, 1), "Ann", "asked"))
        uow.commit()
    assert [event["SUMMARY"] for event in events(mill)] == [title("2")]
    publish(mill, booking("1", ("F1", at(1, 6), at(1, 12))))
    assert events(mill) == []


def test_the_text_is_as_rfc_5545_has_it(mill):
    """Sections 3.1 (lines end with CRLF, none is longer than 75 octets, one that goes on begins with a space), 3.3.5 (local time
    with its zone), 3.3.11 (a comma in a text is escaped), 3.6 (PRODID and VERSION once), 3.6.5 (the zone is defined),
    3.8.4.7 and 3.8.7.4 (UID and SEQUENCE)."""
    publish(mill, booking("1", ("F1", at(27, 22), at(28, 6))))
    file = crew_calendar(mill, "F1")
    assert file == crew_calendar(mill, "F1")
    assert file.endswith(b"\r\n") and file.count(b"\n") == file.count(b"\r\n")
    assert max(len(line) for line in file.split(b"\r\n")) <= 75
    assert b"\r\n " in file
    lines = file.replace(b"\r\n ", b"").decode().split("\r\n")
    assert lines[0] == "BEGIN:VCALENDAR" and lines[-2:] == ["END:VCALENDAR", ""]
    assert sum(line.startswith("PRODID:") for line in lines) == lines.count("VERSION:2.0") == 1
    # the night in which clocks go forward: 22:00 by winter time to 06:00 by summer time are seven hours
    assert {
        "DTSTART;TZID=Europe/Berlin:20270327T220000",
        "DTEND;TZID=Europe/Berlin:20270328T060000",
        "SEQUENCE:0",
    } <= set(lines)
    assert "BEGIN:VTIMEZONE" in lines and "TZID:Europe/Berlin" in lines
    assert "TZOFFSETTO:+0100" in lines and "TZOFFSETTO:+0200" in lines
    assert "LOCATION:Weberei Süd\\, obere Halle mit den Webmaschinen für die Gardinen und Schleier" in lines
    (event,) = Calendar.from_ical(file).events
    assert event.end.astimezone(UTC) - event.start.astimezone(UTC) == timedelta(hours=7)
    assert event["URL"].startswith("https://screens.mill.example/looms?loom=1&hall=Weberei+S%C3%BCd")
    assert str(event["DTSTAMP"].to_ical(), "ascii").endswith("Z")


@pytest.fixture
def screens(mill):
    keeper = Keeper(mill, 8501, closed=True)
    return Starlette(routes=[calendar_route(mill)], middleware=[Middleware(Gate, keeper=keeper)])


def test_only_the_token_of_a_crew_opens_its_calendar_as_long_as_it_lasts(screens, mill):
    publish(mill, booking("1", ("F1", at(1, 6), at(1, 12))))
    given, reads = give_token(mill, "phones", "calendar", "f1"), give_token(mill, "terminal", "read")
    assert given.token.crew == "F1" and given.text not in str(tokens(mill).record())
    phone = Browser(screens)
    answer = phone.get(given.path)
    assert answer.status == 200 and "BEGIN:VEVENT" in answer.body and "text/calendar" in answer.header("content-type")
    for path in (reads.path, f"/calendar/{reads.text}/crew.ics", f"/calendar/{'x' * 43}/crew.ics"):
        assert phone.get(path, accept="").status in (401, 404), path
    for path in (
        f"{given.path}/",
        f"/calendar/{given.text}/other.ics",
        f"/calendar/{given.text}",
        "/calendar/x/crew.ics",
    ):
        assert phone.get(path, accept="").status == 401, path
    with mill.store.unit_of_work() as uow:
        uow.session.execute(update(TokenRow).values(expires_at=datetime.now(UTC)))
        uow.commit()
    assert phone.get(given.path, accept="").status == 404


def test_a_token_that_was_withdrawn_opens_nothing_and_what_cannot_be_is_one_line(mill):
    given = give_token(mill, "phones", "calendar", "F1", days=2)
    assert given.token.expires_at - given.token.made_at == timedelta(days=2)
    assert shown(mill, given.text, {"calendar"}) and not shown(mill, given.text, {"read", "post"})
    assert withdraw_token(mill, 1).ended_at and not shown(mill, given.text, {"calendar"})
    with refused(DataError, "there is no token 1 that could be withdrawn"):
        withdraw_token(mill, 1)
    with refused(DataError, "there is no crew F9; the crews are F1, F2"):
        give_token(mill, "phones", "calendar", "F9")
    with refused(UsageError, "a token for a crew's calendar names the crew"):
        give_token(mill, "phones", "calendar")
    with refused(UsageError, "a token for read names no crew"):
        give_token(mill, "phones", "read", "F1")
    with refused(UsageError, "write is nothing that a token is for; it may be read, read and post, a crew's calendar"):
        give_token(mill, "phones", "write")
    with refused(UsageError, "a token lasts 1 to 3,?660 days, not 0"):
        give_token(mill, "phones", "read", days=0)
