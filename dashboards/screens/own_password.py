"""My password: changed by whoever knows the one before."""

import streamlit as st

from dashboards import access
from dashboards.forms import Form, say_done
from dashboards.parts import literal
from dashboards.speaking import say
from tracker.services.people.own_password import change_own_password
from tracker.services.people.passwords import SHORTEST


def page() -> None:
    st.title(say("own-password"))
    say_done()
    if access.context().actor.session is None:
        st.info(literal(say("own-password-nobody")))
        return
    st.caption(literal(say("own-password-about")))
    with Form("own password") as form:
        before = st.text_input(say("own-password-before"), type="password", key=form.key("before"))
        form.beside("own-password-wrong", "own-password-by-provider")
        after = st.text_input(say("own-password-after", least=SHORTEST), type="password", key=form.key("after"))
        form.beside("password-length", "password-common")
        form.act(say("own-password-change"), lambda: change_own_password(access.context(), before, after))
