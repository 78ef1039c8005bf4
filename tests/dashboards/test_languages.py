"""The screens speak the language of whoever looks: chosen by the address or on the page, and kept while the page is open."""

import pytest
from screen_mill import put, small_mill
from screen_texts import APP, words
from streamlit.testing.v1 import AppTest

from dashboards.speaking import SPEAKER, day, language, say


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
