"""The reader on the corpus: a sample on every run, all of it with `python -m pytest -m corpus`."""

import random
from dataclasses import replace

import pytest
from opened import here

from tracker.services.loading.export import export_records
from tracker.services.loading.load import LoadRequest, load

from .draft import Finished
from .files import write
from .lists import SEED, all_lists
from .not_yet import NOT_YET, kinds_of
from .score import by_trait, judged, summary
from .verdict import TODAY, Outcome, judge, looms_of

SAMPLE = 32


def floor() -> list[Finished]:
    """The lists of which nothing is known to go wrong."""
    return [made for made in all_lists() if not kinds_of(made.traits)]


def test_there_are_enough_lists_and_each_is_made_the_same_way_again():
    lists = all_lists()
    assert len(lists) >= 400 and len({made.name for made in lists}) == len(lists)
    again = all_lists.__wrapped__(SEED)
    assert [made.truth.looms for made in again] == [made.truth.looms for made in lists]


def test_a_sample_of_the_corpus_is_read_right(capsys):
    verdicts = judged(random.Random(SEED).sample(floor(), SAMPLE))
    with capsys.disabled():
        print(f"\ncorpus, a sample: {summary(verdicts)[0]}")
    assert [v.line() for v in verdicts if not v.outcome.good or v.silent] == []


def test_a_load_writes_what_its_dry_run_says(tmp_path):
    """The corpus is judged by dry runs."""
    plain = [
        made for made in floor() if not made.truth.questions and not made.truth.refused and not made.truth.may_stop
    ]
    for i, made in enumerate(random.Random(SEED).sample(plain, 4)):
        (tmp_path / str(i)).mkdir()
        paths = [write(file, tmp_path / str(i)) for file in made.files]
        db = str(tmp_path / f"{i}.db")
        report = load(here(db), paths, LoadRequest(today=TODAY))
        assert report.written
        told = [_without_empty(loom) for loom in looms_of(report)]
        assert sorted(told, key=_by_loom) == sorted(
            (_without_empty(one) for one in export_records(here(db))), key=_by_loom
        )


def _without_empty(record: dict) -> dict:
    filled = {
        name: value.isoformat() if hasattr(value, "isoformat") else value for name, value in record.items() if value
    }
    return filled | {"attributes": {h: v for h, v in record["attributes"].items() if v is not None}}


def _by_loom(record: dict) -> tuple[str, str]:
    return record.get("hall", ""), record["loom"]


def test_the_judge_sees_a_wrong_value_a_missing_loom_and_a_question_that_is_not_asked(tmp_path):
    """The same list with another truth: what was right is wrong, silently."""
    made = next(one for one in floor() if one.traits[1:] == ("numbering: padded",))
    truth = made.truth
    wrong = replace(made, truth=replace(truth, looms=[{**truth.looms[0], "frames": 99}, *truth.looms[1:]]))
    more = replace(made, truth=replace(truth, looms=[*truth.looms, {**truth.looms[0], "loom": "777", "key": 777}]))
    refused = replace(made, truth=replace(truth, refused=[(3, "loom")]))
    verdicts = [
        judge(one, tmp_path / str(i), str(tmp_path / "e.db")) for i, one in enumerate((made, wrong, more, refused))
    ]
    assert [(v.outcome, v.silent) for v in verdicts] == [
        (Outcome.RIGHT, 0), (Outcome.WRONG, 1), (Outcome.WRONG, 1), (Outcome.UNASKED, 1)]  # fmt: skip


@pytest.fixture(scope="module")
def verdicts():
    return judged(all_lists())


@pytest.mark.corpus
def test_every_list_of_which_nothing_is_known_to_go_wrong_is_read_right(verdicts, capsys):
    with capsys.disabled():
        print("", *by_trait(verdicts), *summary(verdicts), sep="\n")
    known = [v for v in verdicts if not kinds_of(v.made.traits)]
    assert [v.line() for v in known if not v.outcome.good or v.silent] == []


@pytest.mark.corpus
@pytest.mark.parametrize("kind", NOT_YET)
def test_what_has_become_right_is_not_called_wrong_any_more(verdicts, kind):
    """If this fails, take the kind off NOT_YET."""
    alone = [v for v in verdicts if kinds_of(v.made.traits) == [kind]]
    assert alone and not all(v.outcome.good for v in alone)
