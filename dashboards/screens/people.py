"""People: accounts, their roles, passwords and ends; who is signed in, from where."""

from collections.abc import Sequence

import streamlit as st

from dashboards import access, forms
from dashboards.backup_parts import show_backups
from dashboards.forms import Form
from dashboards.parts import table
from dashboards.speaking import SPEAKER, moment, say
from dashboards.tables import Cell, Head
from dashboards.token_parts import show_given, show_tokens
from tracker.domain.people import Person, Role
from tracker.services.people.accounts import (
    PeopleReport,
    add_person,
    change_password,
    change_roles,
    end_person,
    people,
)
from tracker.services.people.passwords import SHORTEST
from tracker.services.people.sessions import OpenSessions, end_session, open_sessions


def page() -> None:
    st.title(say("screen-people"))
    st.caption(say("people-about"))
    forms.say_done()
    show_given()
    report = people(access.context())
    if report.people:
        _table(report)
        _sessions(open_sessions(access.context()))
    _add(first=not report.people)
    here = [person for person in report.people if person.ended_at is None]
    if here:
        _change(here)
    show_tokens()
    show_backups()


def _table(report: PeopleReport) -> None:
    def said(person: Person) -> list[Cell | str]:
        moments = [Cell(moment(at, report.zone), at) if at else Cell("") for at in (person.added_at, person.ended_at)]
        return [person.name, ", ".join(map(SPEAKER.word, person.roles)), *moments]

    heads = [Head(say("people-name")), Head(say("people-roles"))]
    whole = [Head(say(code), whole=True) for code in ("people-since", "people-ended")]
    table([*heads, *whole], [*map(said, report.people)])


def _sessions(found: OpenSessions) -> None:
    st.header(say("people-sessions"))
    if not found.sessions:
        st.info(say("people-sessions-none"))
        return
    whole = [Head(say(code), whole=True) for code in ("people-since", "people-seen")]
    table([Head(say("people-name")), *whole, Head(say("people-from"))], [
        [one.person.name, *(Cell(moment(at, found.zone), at) for at in (one.since, one.seen_at)), one.address]
        for one in found.sessions
    ])  # fmt: skip
    named = {
        say(
            "people-session-named", person=one.person.name, address=one.address, at=moment(one.seen_at, found.zone)
        ): one
        for one in found.sessions
    }
    with Form("end a session", framed=False) as form:
        chosen = named[st.selectbox(say("people-session"), list(named), key=form.key("session"))]
        will = say("people-end-session-asks", person=chosen.person.name, address=chosen.address)
        label = say("people-end-session")
        form.act(label, lambda: end_session(access.context(), chosen.number), asks=will, primary=False)


def _add(first: bool) -> None:
    st.header(say("people-add-somebody"))
    if first:
        st.info(say("people-first"))
    with Form("add somebody") as form:
        name = st.text_input(say("people-name"))
        form.beside("person-known", "person-name")
        roles = _roles(say("people-roles"), [], form.key("roles"))
        form.beside("role-unknown")
        password = st.text_input(say("people-password", least=SHORTEST), type="password")
        form.beside("password-length", "password-common")
        form.act(say("people-add"), lambda: add_person(access.context(), name, password, roles))


def _change(here: Sequence[Person]) -> None:
    st.header(say("people-change"))
    names = {person.name: person for person in here}
    chosen = names[st.selectbox(say("people-whose"), list(names))]
    roles_at, password_at, end_at = st.columns(3)
    with roles_at, Form(f"roles of {chosen.number}") as form:
        before = form.as_shown(chosen.roles)
        roles = _roles(say("people-roles-new"), list(before), form.key("roles"))
        form.act(say("people-change-roles"), lambda: change_roles(
            form.having_shown("roles", (chosen.name,), roles=before), chosen.name, roles), primary=False)  # fmt: skip
    with password_at, Form(f"password of {chosen.number}") as form:
        password = st.text_input(say("people-password-new"), type="password")
        change = lambda: change_password(access.context(), chosen.name, password)  # noqa: E731
        form.act(say("people-change-password"), change, primary=False)
    with end_at, Form(f"end of {chosen.number}") as form:
        will = say("people-end-asks", person=chosen.name)
        form.act(say("people-end"), lambda: end_person(access.context(), chosen.name), asks=will, primary=False)


def _roles(label: str, before: list[Role], key: str) -> list[Role]:
    placeholder = say("people-at-least-one")
    return st.multiselect(label, list(Role), before, key=key, format_func=SPEAKER.word, placeholder=placeholder)
