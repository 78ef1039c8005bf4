"""Worth through the store: a made programme of 24 looms whose truth is known (tests/shared/worth_mill)."""

import json
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from machine import needs, pdf_text
from opened import here
from refusals import refused
from said import texts
from worth_mill import NARROWER_MM, NOW, make_worth_mill

from tracker.commissioning.worth.verdict import Word
from tracker.errors import DataError
from tracker.services.work.taking_over import take_over
from tracker.services.work.worth import WIDTH, worth
from tracker.services.work.worth_record import worth_record
from tracker.services.work.worth_report import write_report
from tracker.services.work.worth_says import beside, savings_messages, verdicts

QUIET = {"ratio": 0.6, "overdispersion": 1.0}


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    path = str(tmp_path_factory.mktemp("worth") / "mill.db")
    return path, make_worth_mill(path, seed_of=QUIET)


@pytest.fixture(scope="module")
def report(made):
    return worth(here(made[0]), as_of=NOW)


def test_the_truth_lies_within_the_interval_of_every_figure(made, report):
    """The ratio put in is 0.6 for all stops and so for each cause; the width falls by NARROWER_MM."""
    stops, warp, weft, width = report.measures
    assert [one.cause for one in (stops, warp, weft)] == [None, "warp", "weft"] and width.name == WIDTH
    for one in (stops, warp, weft):
        assert one.verdict.whole.told.low < 0.6 < one.verdict.whole.told.high
    assert width.verdict.whole.told.low < -NARROWER_MM < width.verdict.whole.told.high
    assert {one.verdict.word for one in report.measures} == {Word.LESS}


def test_the_plain_figures_do_not_hold_the_truth(report):
    """Looms that stop most come first, and the article and season are in it: 0.6 lies outside."""
    plain = report.measures[0].plain
    assert not plain.low < 0.6 < plain.high


def test_verdicts_are_said_in_words(report):
    said = texts(verdicts(report))
    assert said[0].startswith("stops: fewer, surely: ")
    assert said[2].startswith("stops by weft: fewer, surely: ")
    assert said[3].startswith("waste width: narrower, surely: ")


def test_measured_and_claimed_stand_side_by_side(report):
    """The mill claims 2 a day of each loom: 2 × 30.4375 a month. Weft: picks × 12 mm × 20 tex / 10⁶ at 3 a kilogram."""
    saved = report.savings
    assert saved.claimed == pytest.approx(saved.looms * 2 * 365.25 / 12)
    kg = saved.picks_per_month * NARROWER_MM / 1000 * 20 / 1e6
    assert saved.weft_kg.low < kg < saved.weft_kg.high
    assert saved.weft_money.estimate == pytest.approx(3 * saved.weft_kg.estimate)
    assert saved.hours_money.estimate == pytest.approx(0.5 * 16.2 * saved.hours.estimate)
    said = " ".join(texts([*beside(report), *savings_messages(report)]))
    assert "claimed: " in said and "measured: " in said and "decided on Mon 1 Mar 2027" in said


def test_the_cost_of_a_conversion_is_its_labour_and_the_hours_it_stood(report):
    """8 h of two fitters at 30 are 480, and 8 h of weaving at 16.2 m × 0.5 are 64.80."""
    assert [one.cost for one in report.converted] == pytest.approx([544.8] * len(report.converted))


def test_the_record_is_json_without_infinities(report):
    record = json.loads(json.dumps(worth_record(report), allow_nan=False))
    assert record["measures"][0]["verdict"] == "less"
    assert record["measures"][0]["without_deciding_weeks"]["high"] < 1


def test_one_cause_and_one_article(made):
    report = worth(here(made[0]), cause="WARP", article="1", as_of=NOW)
    assert [(one.name, one.cause) for one in report.measures] == [("stops", "WARP")]
    assert {loom.article for loom in report.measures[0].looms} == {"1"}


def test_periods_outside_are_not_counted(made):
    """Up to 1 March, the day before the first conversion: nothing after, so nothing can be told."""
    report = worth(here(made[0]), to_at=datetime(2027, 3, 1, tzinfo=UTC), as_of=NOW)
    assert {one.verdict.word for one in report.measures} == {Word.CANNOT_TELL}
    assert "no converted loom has a period after its settling time yet" in texts(verdicts(report))[0]


def test_a_cause_that_no_row_names(made):
    with refused(DataError, "no stop was recorded of cause selvedge; causes are warp, weft"):
        worth(here(made[0]), cause="selvedge", as_of=NOW)


def test_an_article_of_which_nothing_is_loaded(made):
    with refused(DataError, "no stops and no waste widths are loaded of article 77; load the sheets Stops and Waste"):
        worth(here(made[0]), article="77", as_of=NOW)


@needs("pdftotext", "poppler-utils")
def test_the_report_is_two_pages_that_say_it(report, tmp_path):
    write_report(tmp_path / "worth.pdf", report)
    first, second, *rest = pdf_text(tmp_path / "worth.pdf").split("\f")
    assert not any(map(str.strip, rest))
    assert "was it worth it?" in first and "Stops: fewer, surely" in first and "claimed by the loom list" in first
    assert "since the restart" in second and "Loom by loom on its own article, stops per 100,000 picks" in second


def test_the_measured_saving_is_taken_over_as_a_recorded_change(tmp_path):
    """The claimed 2 a day stay in the list; a plan counts on the measured share of them, who took it over is recorded."""
    path = str(tmp_path / "mill.db")
    make_worth_mill(path, seed_of=QUIET)
    context = replace(here(path), clock=lambda: NOW)
    share = round(worth(context).savings.share, 3)
    assert take_over(context).share == share
    with context.reading() as uow:
        mill = uow.mill()
        (origin,) = uow.origin("terms", ("share of saving (%)",), "value")
    key = next(iter(mill.looms))
    assert mill.looms[key].saving_per_day == 2.0
    assert mill.saving_per_day(key) == pytest.approx(2 * share)
    assert (origin.at, origin.new) == (NOW, share)
    assert f"plans count on {share * 100:.1f}".rstrip("0").rstrip(".") in " ".join(
        texts(savings_messages(worth(context)))
    )


def test_nothing_is_taken_over_where_nothing_was_measured_or_claimed(made):
    with refused(DataError, "no saving was measured"):
        take_over(replace(here(made[0]), clock=lambda: datetime(2027, 3, 1, tzinfo=UTC)))
