"""People: accounts, their roles, passwords and ends."""

from collections.abc import Sequence

import streamlit as st

from dashboards import access, forms
from dashboards.forms import Form
from dashboards.parts import table
from dashboards.speaking import SPEAKER, moment
from dashboards.tables import Cell, Head
from tracker.domain.people import Person, Role
from tracker.services.people.accounts import (
    PeopleReport,
    add_person,
    change_password,
    change_roles,
    end_person,
    people,
)


def page() -> None:
    st.title("People")
    st.caption(
        "Who may sign in, in which roles. Once somebody has an account, everybody signs in, on this machine too."
    )
    forms.say_done()
    report = people(access.context())
    if report.people:
        _table(report)
    _add(first=not report.people)
    here = [person for person in report.people if person.ended_at is None]
    if here:
        _change(here)


def _table(report: PeopleReport) -> None:
    def said(person: Person) -> list[Cell | str]:
        moments = [Cell(moment(at, report.zone), at) if at else Cell("") for at in (person.added_at, person.ended_at)]
        return [person.name, ", ".join(map(SPEAKER.word, person.roles)), *moments]

    table(
        [Head("Name"), Head("Roles"), Head("Since", whole=True), Head("Ended", whole=True)], [*map(said, report.people)]
    )


def _add(first: bool) -> None:
    st.header("Add somebody")
    if first:
        st.info("Give the first account the role of an administrator too, and sign in with it afterwards.")
    with Form("add somebody") as form:
        name = st.text_input("Name")
        form.beside("person-known", "person-name")
        roles = _roles("Roles", [])
        form.beside("role-unknown")
        password = st.text_input("Password, at least 12 characters", type="password")
        form.beside("password-length", "password-common")
        form.act("Add", lambda: add_person(access.context(), name, password, roles))


def _change(here: Sequence[Person]) -> None:
    st.header("Change an account")
    names = {person.name: person for person in here}
    chosen = names[st.selectbox("Whose", list(names))]
    roles_at, password_at, end_at = st.columns(3)
    with roles_at, Form(f"roles of {chosen.number}") as form:
        roles = _roles("Roles from now on", list(chosen.roles))
        form.act("Change the roles", lambda: change_roles(access.context(), chosen.name, roles), primary=False)
    with password_at, Form(f"password of {chosen.number}") as form:
        password = st.text_input("New password", type="password")
        form.act("Change the password", lambda: change_password(access.context(), chosen.name, password), primary=False)
    with end_at, Form(f"end of {chosen.number}") as form:
        will = f"{chosen.name} can no longer sign in; open pages end."
        form.act("End the account", lambda: end_person(access.context(), chosen.name), asks=will, primary=False)


def _roles(label: str, before: list[Role]) -> list[Role]:
    return st.multiselect(label, list(Role), before, format_func=SPEAKER.word, placeholder="at least one")
