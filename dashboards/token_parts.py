"""People: the tokens of programs and of the calendars of phones: give one, which is shown once, and withdraw one."""

import streamlit as st

from dashboards import access
from dashboards.forms import Form
from dashboards.parts import heads, literal, table
from dashboards.speaking import SPEAKER, moment, say
from dashboards.tables import Cell
from tracker.domain.tokens import Token, TokenMay
from tracker.errors import Message
from tracker.services.people.tokens import (
    LONGEST_DAYS,
    USUAL_DAYS,
    GivenToken,
    TokensReport,
    crews,
    give_token,
    says_withdrawn,
    tokens,
    withdraw_token,
)

GIVEN = "token given"
"""Where the session of the screens keeps it until it was copied."""


def show_given() -> None:
    """The token just given, which nobody can see again."""
    given: GivenToken | None = st.session_state.get(GIVEN)
    if given is None:
        return
    with st.container(border=True):
        st.code(given.path if given.token.may is TokenMay.CALENDAR else given.text, language=None)
        st.caption(literal(SPEAKER.line(given.messages()[1])))
        if st.button(say("people-token-copied")):
            del st.session_state[GIVEN]
            st.rerun()


def show_tokens() -> None:
    st.header(say("people-tokens"))
    st.caption(say("people-tokens-about"))
    report = tokens(access.context())
    if report.tokens:
        _table(report)
    else:
        st.info(say("people-tokens-none"))
    _give()
    there = {say("people-token-named", number=str(one.number), name=one.name): one
             for one in report.tokens if not one.ended_at}  # fmt: skip
    if there:
        _withdraw(there)


def _table(report: TokensReport) -> None:
    columns = [*heads("people-token-number", right=True), *heads("people-name", "people-token-may", "people-token-crew"),
               *heads("people-since", "people-token-until", "people-token-ended", whole=True),
               *heads("people-token-by")]  # fmt: skip
    table(columns, [
        [Cell(str(one.number), one.number), one.name, SPEAKER.word(one.may), one.crew or "",
         *(Cell(moment(at, report.zone), at) for at in (one.made_at, one.expires_at, one.ended_at)), one.made_by]
        for one in report.tokens
    ], name="tokens")  # fmt: skip


def _give() -> None:
    st.subheader(say("people-token-new"))
    may = st.selectbox(say("people-token-may"), list(TokenMay), format_func=SPEAKER.word, key="token may")
    with Form(f"give a token to {may}") as form:
        name = st.text_input(say("people-token-for"), key=form.key("name"))
        form.beside("person-name")
        crew = None
        if may is TokenMay.CALENDAR:
            crew = st.selectbox(say("people-token-crew"), crews(access.context()), key=form.key("crew"))
            form.beside("token-crew", "token-crew-unknown")
        days = st.number_input(say("people-token-days"), 1, LONGEST_DAYS, USUAL_DAYS, key=form.key("days"))
        form.beside("token-days")
        form.act(say("people-token-give"), lambda: _given(name, may, crew, int(days)))


def _given(name: str, may: TokenMay, crew: str | None, days: int) -> Message:
    """It stays in sight until it was copied, whatever is shown anew meanwhile."""
    done = give_token(access.context(), name, may, crew, days)
    st.session_state[GIVEN] = done
    return done.messages()[0]


def _withdraw(there: dict[str, Token]) -> None:
    st.subheader(say("people-token-withdraw-heading"))
    chosen = there[st.selectbox(say("people-token-which"), list(there), key="token to withdraw")]
    with Form(f"withdraw token {chosen.number}", framed=False) as form:
        will = say("people-token-withdraw-asks", name=chosen.name)
        label = say("people-token-withdraw")
        form.act(
            label, lambda: says_withdrawn(withdraw_token(access.context(), chosen.number)), asks=will, primary=False
        )
