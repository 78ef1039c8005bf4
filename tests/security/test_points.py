"""The list of the standard is whole and true: each test that it names is there; and the points that no other test looks at."""

import ast
import re
from functools import cache
from pathlib import Path

import pytest
from asvs_level_1 import POINTS, Met, Open
from quick_passwords import quick_passwords  # noqa: F401

from tracker.server.sign_in import _SIGN_IN
from tracker.services.context import Context
from tracker.services.people.accounts import people
from tracker.services.people.passwords import hashed, is_right
from tracker.store.models import PersonRow

ROOT = Path(__file__).parents[2]
LEVEL_1 = {
    "1": 8,
    "2": 4,
    "3": 8,
    "4": 2,
    "5": 4,
    "6": 13,
    "7": 6,
    "8": 4,
    "9": 4,
    "10": 5,
    "11": 3,
    "12": 3,
    "13": 1,
    "14": 2,
    "15": 3,
}
"""Chapter → requirements of level 1, as counted in the text of the standard."""
OPEN = {"15.1.1", "15.2.1"}


def test_every_requirement_of_the_level_is_gone_through():
    chapters = [number.split(".")[0] for number in POINTS]
    assert {chapter: chapters.count(chapter) for chapter in chapters} == LEVEL_1 and len(POINTS) == 70


def test_what_is_open_is_said():
    assert {number for number, point in POINTS.items() if isinstance(point, Open)} == OPEN


@cache
def named_in(path: str) -> set[str]:
    return {node.name for node in ast.walk(ast.parse((ROOT / path).read_text())) if isinstance(node, ast.FunctionDef)}


@pytest.mark.parametrize("number", [number for number, point in POINTS.items() if isinstance(point, Met)])
def test_each_test_that_is_named_is_there(number):
    point = POINTS[number]
    assert isinstance(point, Met) and point.by
    for path, name in (one.split("::") for one in point.by):
        assert name in named_in(path), f"{path} has no {name}"


@cache
def sources() -> str:
    return "\n".join(
        path.read_text() for package in ("tracker", "dashboards") for path in (ROOT / package).rglob("*.py")
    )


def test_nothing_is_evaluated_as_code():
    assert (
        re.findall(
            r"(?<![\w.])(?:eval|exec|compile|__import__)\(|\b(?:pickle|marshal)\.loads?\(|\bos\.system\(", sources()
        )
        == []
    )


def test_no_weak_hash_is_used():
    assert set(re.findall(r"^\s*from hashlib import (.+)$", sources(), re.M)) == {"sha256"}
    assert re.findall(r"^\s*import hashlib", sources(), re.M) == []


@pytest.mark.parametrize("password", ["            x", "æø織机🧵 ünd noch", "ALLCAPITALSANDMORE", "4711 0815 1234"])
def test_a_password_may_be_of_any_characters(quick_passwords, password):  # noqa: F811
    assert is_right(hashed(password, "Ann"), password)


def test_a_password_counts_to_its_last_letter(quick_passwords):  # noqa: F811
    kept = hashed("w" * 199 + "x", "Ann")
    assert is_right(kept, "w" * 199 + "x")
    assert not any(is_right(kept, other) for other in ("w" * 199 + "y", "w" * 199, "W" * 199 + "x", "w" * 199 + "x "))


def test_password_fields_hide_and_take_what_a_manager_fills_in():
    assert 'type="password" autocomplete="current-password"' in _SIGN_IN and "onpaste" not in _SIGN_IN
    screen = (ROOT / "dashboards" / "screens" / "people.py").read_text()
    fields = [line for line in screen.splitlines() if "text_input" in line and "people-password" in line]
    assert len(fields) == 2 and all('type="password"' in line for line in fields)


def test_a_new_mill_has_no_account(tmp_path):
    mill = Context(str(tmp_path / "mill.db"), make=True)
    assert mill.store and people(mill).people == ()


def test_an_account_keeps_no_hint():
    columns = {"id", "name", "folded", "roles", "password_hash", "added_at", "ended_at"}
    assert {column.name for column in PersonRow.__table__.columns} <= columns | {"subject", "provider"}
