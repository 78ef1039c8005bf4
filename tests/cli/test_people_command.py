"""Accounts by the command: the password comes in unseen, and what is refused writes nothing."""

import io

import pytest
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401

from tracker.store import open_store


@pytest.fixture
def typed(beamslot, tmp_path, monkeypatch, quick_passwords):  # noqa: F811
    """Run `beamslot people` with these lines on standard input."""
    open_store(tmp_path / "mill.db", make=True)

    def run(*arguments, says=PASSWORD):
        monkeypatch.setattr("sys.stdin", io.StringIO(f"{says}\n"))
        return beamslot("people", *arguments)

    return run


def test_an_account_from_its_beginning_to_its_end(typed):
    added = typed("add", "M. Berg", "--role", "planner", "--role", "administrator")
    assert (added.code, added.out) == (0, "M. Berg has an account now, as planner, administrator.\n")
    assert PASSWORD not in added.out + added.err
    typed("roles", "m. berg", "--role", "viewer")
    typed("password", "M. Berg", says="another long password")
    assert typed("end", "M. Berg").code == 0
    (one,) = typed("list", "--json", "-").json
    assert (one["name"], one["roles"], bool(one["ended_at"])) == ("M. Berg", ["viewer"], True)


@pytest.mark.parametrize(("arguments", "says", "code", "line"), [
    (("add", "Ann", "--role", "fitter"), "short", 1, "the password has 5 characters; it takes 12 to 200"),
    (("add", "Ann", "--role", "boss"), PASSWORD, 2, "there is no role boss; the roles are viewer, fitter"),
    (("end", "Ann"), PASSWORD, 1, "nobody has an account under the name Ann; `beamslot people list` shows them"),
])  # fmt: skip
def test_what_is_refused_is_one_line(typed, arguments, says, code, line):
    ran = typed(*arguments, says=says)
    assert ran.code == code and ran.line.startswith(line)
    assert typed("list", "--json", "-").json == []


def test_who_did_it_and_whether_it_is_whole(typed, beamslot, tmp_path):
    typed("add", "Ann", "--role", "planner")
    shown = beamslot("audit")
    assert "account of Ann added, as planner" in shown.out and "every role" in shown.out
    assert beamslot("audit", "--who", "nobody").out == "Nobody has done anything that fits.\n"
    hashed = beamslot("audit", "--check", "--json", "-").json["last_hash"]
    assert "stands unchanged" in beamslot("audit", "--check", hashed).out
    assert beamslot("audit", "--check", "abc").line.startswith("abc is none of the seals of this history")
    assert beamslot("audit", "abc").code == beamslot("audit", "--check", "--loom", "7").code == 2
    assert beamslot("audit", "--out", tmp_path / "a.xlsx").code == 0 and (tmp_path / "a.xlsx").exists()
