"""People: accounts, their roles, passwords and ends."""

from collections.abc import Callable, Sequence

import streamlit as st

from dashboards import access
from dashboards.parts import literal, table
from dashboards.speaking import SPEAKER
from dashboards.tables import Cell, Head
from tracker.domain.people import Person, Role
from tracker.errors import TrackerError
from tracker.services.people.accounts import (
    Changed,
    PeopleReport,
    add_person,
    change_password,
    change_roles,
    end_person,
    people,
)
from tracker.words.formats import moment


def page() -> None:
    st.title("People")
    st.caption(
        "Who may sign in, in which roles. Once somebody has an account, everybody signs in, on this machine too."
    )
    if done := st.session_state.pop("person changed", None):
        st.success(literal(done))
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
    with st.form("person"):
        name = st.text_input("Name")
        roles = _roles("Roles", [])
        password = st.text_input("Password, at least 12 characters", type="password")
        if st.form_submit_button("Add", type="primary"):
            _do(lambda: add_person(access.context(), name, password, roles))


def _change(here: Sequence[Person]) -> None:
    st.header("Change an account")
    names = {person.name: person for person in here}
    chosen = names[st.selectbox("Whose", list(names))]
    roles_at, password_at, end_at = st.columns(3)
    with roles_at.form(f"roles {chosen.number}"):
        roles = _roles("Roles from now on", list(chosen.roles))
        if st.form_submit_button("Change the roles"):
            _do(lambda: change_roles(access.context(), chosen.name, roles))
    with password_at.form(f"password {chosen.number}"):
        password = st.text_input("New password", type="password")
        if st.form_submit_button("Change the password"):
            _do(lambda: change_password(access.context(), chosen.name, password))
    with end_at.form(f"end {chosen.number}"):
        sure = st.checkbox(literal(f"{chosen.name} can no longer sign in; open pages end"))
        if st.form_submit_button("End the account") and sure:
            _do(lambda: end_person(access.context(), chosen.name))


def _roles(label: str, before: list[Role]) -> list[Role]:
    return st.multiselect(label, list(Role), before, format_func=SPEAKER.word, placeholder="at least one")


def _do(change: Callable[[], Changed]) -> None:
    """Each change ends the pages of whom it concerns; whose own it was signs in again."""
    try:
        done = change()
    except TrackerError as error:
        st.error(literal(SPEAKER.line(error)))
        return
    access.show_again("person changed", SPEAKER.line(done.message))
