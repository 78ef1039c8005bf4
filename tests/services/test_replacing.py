"""A sheet that is declared the whole truth: what is gone from it has ended, is told, and stays in the change log."""

from datetime import date

import pytest
from opened import here
from said import lines

from tracker.errors import UsageError
from tracker.services.loading.export import export_records
from tracker.services.loading.load import LoadRequest, load

LOOMS = "Loom;Hall;Machine type;Speed (picks/min)\n1;H;T;600\n2;H;T;600\n3;H;T;600"
ARTICLES = "Article;Pick density (picks/cm);Take-up (%)\nA;24;6\nB;20;6"
WARPS = "Loom;Hall;Sequence;Article;Warp left (m)"


def loaded(tmp_path, name, text, **more):
    path = tmp_path / f"{name}.csv"
    path.write_text(text, encoding="utf-8")
    return load(here(str(tmp_path / "mill.db")), [path], LoadRequest(today=date(2026, 11, 25), **more))


@pytest.fixture
def mill(tmp_path):
    """Looms 1 and 2 have two warps each, loom 3 has one."""
    for name, text in (("looms", LOOMS), ("articles", ARTICLES)):
        assert loaded(tmp_path, name, text).written
    rows = ["1;H;0;A;900", "1;H;1;B;", "2;H;0;A;800", "2;H;1;B;", "3;H;0;A;700"]
    assert loaded(tmp_path, "warps", "\n".join([WARPS, *rows])).written
    return tmp_path


def warps(tmp_path):
    return [(w["loom"], w["sequence"]) for w in export_records(here(str(tmp_path / "mill.db")), ["warps"])["warps"]]


def test_without_it_rows_that_are_gone_stay(mill):
    assert loaded(mill, "warps", f"{WARPS}\n1;H;0;A;850").written
    assert len(warps(mill)) == 5


def test_rows_of_the_looms_in_it_end_and_those_of_other_looms_are_asked_about(mill):
    today = f"{WARPS}\n1;H;0;A;850\n2;H;0;A;750\n2;H;1;B;"
    asked = loaded(mill, "warps", today, replaces=["Warps"])
    (question,) = asked.questions
    assert (question.code, question.params["who"], asked.written) == ("no-longer-listed", ["3 H"], False)
    stays = loaded(mill, "warps", today, replaces=["warps"], answers={"warps": "stay"})
    assert stays.written and warps(mill) == [("1", 0), ("2", 0), ("2", 1), ("3", 0)]
    assert [line for line in lines(stays) if "retired" in line] == [
        "Warps 1, H, 1: retired; the list has it no longer.", "Loaded: 0 rows added, 2 changed, 1 retired."]  # fmt: skip
    assert stays.record()["retired"]["warps"][0]["article"] == "B"
    again = loaded(mill, "warps", today, replaces=["warps"])
    assert again.questions, "what has ended is asked anew each day"
    ended = loaded(mill, "warps", today, replaces=["warps"], answers={"warps": "ended"})
    assert ended.written and not ended.missing
    assert ("3", 0) not in warps(mill)


def test_what_has_ended_comes_back_with_a_list_that_has_it(mill):
    for text in (f"{WARPS}\n1;H;0;A;850", f"{WARPS}\n1;H;0;A;850\n1;H;1;B;"):
        assert loaded(mill, "warps", text, replaces=["warps"], answers={"warps": "stay"}).written
    assert ("1", 1) in warps(mill)


def test_a_list_with_refused_rows_is_not_whole(mill):
    report = loaded(mill, "warps", f"{WARPS}\n1;H;0;A;850\n1;H;one;B;", replaces=["warps"], partial=True)
    assert report.written and len(warps(mill)) == 5
    assert "list-not-whole" in [finding.code for finding in report.findings]


def test_a_dry_run_retires_nothing_and_says_what_it_would(mill):
    report = loaded(mill, "warps", f"{WARPS}\n1;H;0;A;850", replaces=["warps"], answers={"warps": "stay"}, dry_run=True)
    assert "Warps 1, H, 1: would be retired; the list has it no longer." in lines(report)
    assert len(warps(mill)) == 5


@pytest.mark.parametrize(
    ("names", "code"),
    [(["readings"], "cannot-replace"), (["looms"], "cannot-replace"), (["standing"], "replaces-nothing")],
)
def test_what_cannot_be_replaced(mill, names, code):
    with pytest.raises(UsageError) as wrong:
        loaded(mill, "warps", f"{WARPS}\n1;H;0;A;850", replaces=names)
    assert wrong.value.message.code == code
    assert len(warps(mill)) == 5
