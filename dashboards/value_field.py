"""A field of a form for one value of a column: a day, a choice, or text, which a person may write with a unit or a comma."""

from collections.abc import Sequence
from typing import Any

import streamlit as st

from dashboards.speaking import SPEAKER, say, shown, typed_day
from tracker.domain.columns import Column, Kind, word_named


def value_field(column: Column | None, label: str, value: Any, key: str, names: Sequence[str] = ()) -> Any:
    """What is in it; None or `` while it is empty. `names`: what the mill has to choose from."""
    about = SPEAKER.say(column.meaning) if column and column.meaning else None
    if column and column.kind is Kind.DATE:
        return st.date_input(label, value, key=key, format=typed_day(), help=about)
    if column and column.kind is Kind.YES_NO:
        return st.radio(label, [True, False], 0 if value else 1, shown, key=key, horizontal=True, help=about)
    if words := names or (column.words if column else ()):
        at = words.index(value) if value in words else None
        return st.selectbox(
            label, words, at, str if names else _word, key=key, help=about, placeholder=say("value-choose")
        )
    text = f"{value:g}" if isinstance(value, float) else value
    return st.text_input(label, "" if text is None else str(text), key=key, help=about)


def _word(word: str) -> str:
    return SPEAKER.say(word_named(word))


def as_typed(column: Column | None, value: Any) -> Any:
    """What was typed, as a cell of the column would say it: a share in percent, also without the sign."""
    share = column is not None and column.kind is Kind.FRACTION and value and "%" not in str(value)
    return f"{value} %" if share else value
