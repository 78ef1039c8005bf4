"""A screen looked at by itself, as the navigation would run it, and its buttons pressed; what fails on it fails the test."""

import pytest
from streamlit.testing.v1 import AppTest

from dashboards import access
from tracker.domain.people import Role
from tracker.services.context import Actor


def look(name: str, **address: str) -> AppTest:
    """The screen of a module, at an address with these values."""
    app = AppTest.from_string(f"from dashboards.screens import {name}\n{name}.page()\n", default_timeout=60)
    for key, value in address.items():
        app.query_params[key] = value
    return run(app)


def run(app: AppTest) -> AppTest:
    app.run()
    assert not app.exception, app.exception
    return app


def press(app: AppTest, label: str, nth: int = 0) -> AppTest:
    [one for one in app.button if one.label == label][nth].click()
    return run(app)


def as_role(monkeypatch: pytest.MonkeyPatch, *roles: Role, name: str = "M. Berg") -> None:
    """Whoever looks from now on has these roles."""
    monkeypatch.setattr(access, "screen_actor", lambda *_: Actor(name, frozenset(roles), "screen", session=1))
