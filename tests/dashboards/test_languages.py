"""The screens speak the language of whoever looks: chosen by the address or on the page, and kept while the page is open."""

import pytest
from opened import here
from screen_mill import AS_OF, put, small_mill, small_plan
from screen_texts import APP, words
from streamlit.testing.v1 import AppTest

from dashboards import chart_locale, charts, frames, sentences, speaking
from dashboards.speaking import SPEAKER, day, language, say
from tracker.services.screens.status import status


def spoken(app: AppTest) -> str:
    """As the page tells it to readers of screens."""
    (told,) = [item.proto.body for item in app.get("html") if "documentElement.lang" in item.proto.body]
    return told


def test_a_language_is_chosen_by_the_address_or_on_the_page(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "m.db", small_mill()))
    app = AppTest.from_file(APP, default_timeout=60)
    app.query_params["lang"] = "de"
    app.run()
    assert not app.exception and 'lang = "de"' in spoken(app) and "beamslot-language=de" in spoken(app)
    assert "lang" not in app.query_params, "an address that is sent on chooses for nobody else"
    assert [one.label for one in app.button if str(one.key).startswith("speak")] == ["English"]
    app.button(key="speak en").click().run()
    assert 'lang = "en"' in spoken(app) and "Deutsch" in [one.label for one in app.button]
    assert words(app)


@pytest.mark.parametrize("what", [language, lambda: SPEAKER.language])
def test_where_nobody_looks_it_is_english(what):
    assert what() == "en" and say("word-yes") == "yes" and day(None) == ""


def test_figures_sentences_and_days_follow_the_language(tmp_path, monkeypatch):
    monkeypatch.setattr(speaking, "language", lambda: "de")
    report = status(here(put(tmp_path / "m.db", small_mill(), small_plan(small_mill()))), AS_OF)
    assert list(frames.stage_frame(report)["stage"])[:2] == ["aufzunehmen", "aufgenommen"]
    assert next(iter(frames.cost_frame(report)["term"])) == "verlorene Produktion"
    # 7,500 - 7,450 = 50; 50 / 7,500 = 0.67 %
    assert sentences.proof(small_plan(small_mill())).endswith("höchstens 50 EUR sparen (0,67 %).")


def test_charts_write_numbers_and_days_in_the_language(tmp_path, monkeypatch):
    report = status(here(put(tmp_path / "m.db", small_mill(), small_plan(small_mill()))), AS_OF)
    assert "locale" not in charts.stage_chart(frames.stage_frame(report)).to_dict()["config"]
    monkeypatch.setattr(speaking, "language", lambda: "de")
    monkeypatch.setattr(chart_locale, "language", lambda: "de")
    told = charts.stage_chart(frames.stage_frame(report)).to_dict()["config"]["locale"]
    assert (told["number"]["thousands"], told["time"]["shortDays"][0], told["time"]["shortMonths"][2]) == (
        ".",
        "So",
        "Mär",
    )


def test_the_first_screen_is_whole_in_german(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "m.db", small_mill(), small_plan(small_mill())))
    app = AppTest.from_string("from dashboards.screens import status\nstatus.page()\n", default_timeout=60)
    app.query_params["lang"] = "de"
    assert not app.run().exception and app.title[0].value == "Stand des Umbaus"
