"""Backups on the screens: the last one with a button for another, and that the last one is old."""

import streamlit as st

from dashboards import access, forms
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say
from tracker.services.backups import backup_folder, keep_backup, last_backup, old_backup
from tracker.services.people.permissions import May


def warn_of_old() -> None:
    """A line where the mill keeps backups and the last one is older than two days; nothing else."""
    if said := old_backup(access.context()):
        st.warning(literal(SPEAKER.line(said)))


def show_backups() -> None:
    """For who may back up: the last backup, and the button that makes one now."""
    if not access.may(May.BACK_UP):
        return
    st.header(say("backups"))
    last = last_backup(access.context())
    if last:
        st.write(literal(say("backups-last", file=last.file, at=last.at, who=last.who, hash=last.last_hash)))
    else:
        st.write(say("backups-none"))
    folder = backup_folder()
    if folder is None:
        st.caption(say("backups-not-kept"))
        return
    forms.button("backup", say("backups-now"), lambda: keep_backup(access.context(), folder))
