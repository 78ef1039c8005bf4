"""The interface for programs: what is read is what the command writes, what is posted is written once, and only with a token."""

import json
from datetime import timedelta

import pytest
from asgi import Browser
from click.testing import CliRunner
from sqlalchemy import func, select
from three_looms import MONDAY, make
from typer.main import get_command

from tracker.cli import app as command
from tracker.errors import TrackerError
from tracker.server.api.app import LARGEST_BODY, api
from tracker.server.api.reads import READS
from tracker.server.application import WhenAsked
from tracker.server.gate import BY_TOKEN
from tracker.services.context import Context
from tracker.services.loading import posted
from tracker.services.own_clock import give_own_clock, set_clock
from tracker.services.people.audit import deeds
from tracker.services.people.tokens import give_token, tokens, withdraw_token
from tracker.services.plans.plan import PlanRequest, plan
from tracker.store.models import AnsweredPostRow, LoadRow
from tracker.words import ENGLISH

STOPS = {
    "loom": "1",
    "hall": "H",
    "from_at": "2027-01-04T00:00",
    "to_at": "2027-01-05T00:00+00:00",
    "stops": 12,
    "picks": 500_000,
}
READING = {"loom": "3", "hall": "H", "read_at": "2027-01-04T08:00:00", "warp_left_m": 12000.5}


@pytest.fixture(scope="module")
def mill(tmp_path_factory):
    """Three looms with a published plan."""
    context = Context(make(str(tmp_path_factory.mktemp("api") / "mill.db")))
    give_own_clock(context, MONDAY)
    plan(context, PlanRequest(publish=True))
    set_clock(context, MONDAY + timedelta(days=2))
    return context


class Program(Browser):
    """Shows a token with everything it asks."""

    token = ""

    def read(self, path):
        return self.get(path, accept="*/*", authorization=f"Bearer {self.token}")

    def send(self, path, rows, key="1", **headers):
        body = json.dumps({"rows": rows}).encode()
        return self.post_body(path, body, {"authorization": f"Bearer {self.token}", "idempotency-key": key,
                                           "content-type": "application/json", **headers})  # fmt: skip


@pytest.fixture(scope="module")
def interface(mill):
    return WhenAsked(mill)


def program(mill, interface, may="read"):
    found = Program(interface)
    found.token = give_token(mill, f"a program that may {may}", may).text
    return found


LIKE_THE_COMMAND = {
    "/status": "status", "/scope": "scope", "/scope?loom=1": "scope 1", "/hours": "export --what hours", "/forecast": "forecast",
    "/forecast?loom=2&hall=H&as_of=2027-01-04T06:00": "forecast 2 --hall H --as-of 2027-01-04T06:00",
    "/backtest": "forecast --backtest", "/plan": "plan --show", "/plan?number=1": "plan --show --number 1", "/plans": "plan --list",
    "/dates?loom=1": "plan --dates 1", "/baseline": "plan --baseline", "/verify": "verify", "/rehearsal": "export --what rehearsal",
    "/kits": "kits", "/choices": "kits --choices", "/needs": "needs", "/needs?part=X": "needs X",
    "/orders?left_over=false": "needs --orders --no-left-over", "/stock": "stock moves", "/settings": "settings", "/worth": "worth",
    "/tables?what=looms": "export --what looms", "/tables?what=crews&what=terms": "export --what crews --what terms",
    "/tables?what=x": "export --what x", "/origins?loom=1&field=speed": "load --origin 1 speed",
    "/audit?who=root": "audit --who root",
    "/clock": "clock",
}  # fmt: skip
"""Path → the command whose `--json` it answers with, or whose refusal."""


def test_what_is_read_is_what_the_command_writes(mill, interface):
    reader = program(mill, interface)
    other, built = [], get_command(command)
    for path, words in LIKE_THE_COMMAND.items():
        answer = reader.read(path)
        said = CliRunner().invoke(built, ["--db", mill.database, *words.split(), "--json", "-"])
        refused = said.exception if isinstance(said.exception, TrackerError) else None
        same = (
            json.loads(answer.body)["words"] == ENGLISH.line(refused) if refused else answer.body == said.output.strip()
        )
        if not (same and (answer.status == 200) == (refused is None)):
            other.append((path, answer.status, answer.body[:300], said.output[:300], refused))
    assert other == []
    assert {path.split("?")[0].strip("/") for path in LIKE_THE_COMMAND} == {read.__name__ for read in READS}


def test_it_describes_itself(mill, interface):
    reader = program(mill, interface)
    told = json.loads(reader.read("/openapi.json").body)
    assert told["openapi"].startswith("3.") and told["servers"] == [{"url": "/api"}]
    paths = {f"/{read.__name__}" for read in READS} | {f"/{table}" for table in posted.POSTABLE}
    assert told["paths"].keys() == paths and all(
        BY_TOKEN.fullmatch(f"/api{path}") for path in [*paths, "/openapi.json"]
    )
    body = told["paths"]["/stops"]["post"]["requestBody"]["content"]["application/json"]["schema"]
    row = json.dumps(told["components"]["schemas"][body["$ref"].split("/")[-1]])
    assert '"picks"' in row and '"required": ["from_at", "to_at", "stops", "picks"' in row.replace('"loom", ', "")


@pytest.mark.parametrize(
    "shown", [{}, {"authorization": "Bearer x"}, {"authorization": "Basic QW5uOng="}, {"cookie": "beamslot-8501=x"}]
)
def test_without_a_token_nothing_is_answered(interface, shown):
    for path in ("/status", "/openapi.json"):
        answer = Browser(interface).get(path, **shown)
        assert (answer.status, answer.header("www-authenticate")) == (401, "Bearer")
    assert Browser(interface).get("/docs").status == Browser(interface).get("/redoc").status == 404


def test_a_token_opens_only_what_it_is_for(mill, interface):
    reads, calendar = program(mill, interface), Program(interface)
    calendar.token = give_token(mill, "phones", "calendar", "F1").text
    assert calendar.read("/status").status == 401
    assert reads.send("/stops", [STOPS]).status == 403
    number = tokens(mill).tokens[-2].number
    withdraw_token(mill, number)
    assert reads.read("/status").status == 401


def test_the_same_post_is_written_once_and_answered_alike(mill, interface):
    poster = program(mill, interface, "post")
    first = poster.send("/stops", [STOPS], "stops of Monday")
    again = poster.send("/stops", [STOPS], "stops of Monday")
    assert (first.status, again.status) == (200, 200) and first.body == again.body
    assert (first.header("idempotent-replayed"), again.header("idempotent-replayed")) == ("", "true")
    assert json.loads(first.body)["tables"][0]["rows"]["added"] == 1 and json.loads(first.body)["written"]
    with mill.reading() as uow:
        kept = uow.session.scalar(select(func.count()).select_from(AnsweredPostRow))
    other = poster.send("/stops", [STOPS | {"stops": 13}], "stops of Monday")
    assert other.status == 400 and "something else was posted under the key stops of Monday" in other.body
    with mill.reading() as uow:
        assert uow.session.scalar(select(func.count()).select_from(AnsweredPostRow)) == kept
    newest = deeds(mill).deeds[0]
    assert (newest.who, newest.through, newest.roles) == ("a program that may post", "interface", ("fitter",))


def test_readings_and_set_values_are_taken_with_the_findings_of_a_load(mill, interface):
    poster = program(mill, interface, "post")
    assert poster.send("/readings", [READING], "r1").status == 200
    refused = poster.send(
        "/readings", [READING | {"loom": "9"}, READING | {"warp_left_m": -1, "read_at": "noon"}], "r2"
    )
    found = json.loads(refused.body)
    assert refused.status == 422 and not found["written"]
    assert {(f["severity"], f["heading"]) for f in found["findings"]} >= {
        ("refused", "Warp left"),
        ("refused", "Read at"),
    }
    assert (
        poster.send("/readings", [READING | {"warp_left_m": 11000}], "r2").status == 200
    )  # what was refused used no key up
    unknown = {
        "loom": "1",
        "hall": "H",
        "setting": "crossing angle",
        "value": 310,
        "at": "2027-01-04T07:00",
        "why": "read out",
    }
    (finding,) = json.loads(poster.send("/set_values", [unknown], "s1").body)["findings"]
    assert finding["severity"] == "refused" and "crossing angle" in finding["message"]


@pytest.mark.parametrize(("rows", "key", "says"), [
    ([], "k", "0 rows in one post; it takes 1 to 10,000"), ([STOPS | {"colour": "red"}], "k", "row 1 has colour"),
    ([STOPS | {"waived_because": "x"}], "k", "row 1 has waived_because"), ("no rows", "k", "cannot be read"),
    ([STOPS], "x" * 201, "cannot be read"), ([STOPS], "", "1 to 200 signs"),
])  # fmt: skip
def test_what_cannot_be_read_is_one_line_and_writes_nothing(mill, interface, rows, key, says):
    with mill.reading() as uow:
        before = uow.session.scalar(select(func.count()).select_from(LoadRow))
    answer = program(mill, interface, "post").send("/stops", rows, key)
    assert answer.status == 400 and says in json.loads(answer.body)["words"]
    with mill.reading() as uow:
        assert uow.session.scalar(select(func.count()).select_from(LoadRow)) == before


def test_a_body_that_is_too_large_is_not_read(mill, interface):
    poster = program(mill, interface, "post")
    for header in (
        {"content-length": str(LARGEST_BODY + 1)},
        {"content-length": "x"},
        {"transfer-encoding": "chunked"},
    ):
        assert poster.send("/stops", [STOPS], "large", **header).status == 413


def test_the_answers_to_keys_are_forgotten_after_a_month(mill):
    interface = api(Context(mill.database, clock=lambda: MONDAY + timedelta(days=33)))
    poster = program(mill, interface, "post")
    poster.send("/stops", [STOPS | {"cause": "weft"}], "a later one")
    with mill.reading() as uow:
        assert list(uow.session.scalars(select(AnsweredPostRow.key))) == ["a later one"]
