"""Who is signed in, the way out, and the way back in once a session is over."""

from html import escape
from json import dumps

import streamlit as st

from dashboards.speaking import SPEAKER, say
from tracker.domain.people import in_order
from tracker.services.context import Actor

SIGN_IN, SIGN_OUT, SIGNED_IN = "/sign-in", "/sign-out", "/signed-in"
EVERY_MS = 5_000


def say_who_is_here(actor: Actor) -> None:
    """A line with the name, the roles and the way out; nothing where nobody need sign in."""
    if actor.session is None:
        return
    roles = ", ".join(SPEAKER.word(role) for role in in_order(actor.roles))
    st.html(
        f'<div class="who">{escape(actor.name)} ({escape(roles)}) · '
        f'<a href="/own-password" target="_self">{escape(say("own-password"))}</a> · '
        f'<a href="{SIGN_OUT}" target="_self">{escape(say("sign-out-button"))}</a></div>'
    )
    st.html(_watch(), unsafe_allow_javascript=True)


def offer_sign_in() -> None:
    st.html(f'<a class="who" href="{SIGN_IN}" target="_blank">{escape(say("sign-in-again"))}</a>')


def _watch() -> str:
    """Once a page: says when its session is over and offers to sign in in another tab, so that what was typed here stays. Without a
    tag inside it: the screen library would drop the whole."""
    over, again = dumps(say("session-over") + " "), dumps(say("sign-in-again"))
    return f"""
<script>
if (!window.watchesSession) {{
  window.watchesSession = true;
  const bar = document.createElement("div"), link = document.createElement("a");
  bar.id = "session-over";
  bar.hidden = true;
  bar.setAttribute("role", "alert");
  bar.textContent = " ";
  link.href = "{SIGN_IN}?next={SIGNED_IN}";
  link.target = "_blank";
  bar.append(link);
  document.body.append(bar);
  /* the library's own dialog about the connection takes everything beside it out of reach */
  new MutationObserver(() => {{
    if (bar.inert) bar.inert = false;
    if (bar.ariaHidden) bar.ariaHidden = null;
  }}).observe(bar, {{attributes: true}});
  setInterval(async () => {{
    try {{
      bar.hidden = (await fetch("{SIGNED_IN}", {{cache: "no-store"}})).status !== 401;
    }} catch (error) {{ /* the server cannot be reached: that is said elsewhere */ }}
  }}, {EVERY_MS});
}}
document.getElementById("session-over").firstChild.data = {over};
document.getElementById("session-over").lastChild.textContent = {again};
</script>
"""
