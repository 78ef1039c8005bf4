"""Forms that act. A form calls the service that the command calls; what that refuses stands beside its field, and what was typed
stays; what was done is said once, and the page shown anew.

    if forms.allowed(May.PEOPLE):
        with Form("add somebody") as form:
            name = st.text_input(say("people-name"))
            form.beside("name", "person-known")
            form.act(say("people-add"), lambda: add_person(access.context(), name))

What is overwritten is shown first, and the save refused where somebody else changed it since the form was drawn:

        line = form.as_shown(line)
        form.act(…, lambda: expect(form.having_shown("receipts", (line.order, line.part), due=line.due), line.order, due=due))

`say_done` stands below the page's title. What cannot be undone is asked once: `form.act(…, asks="…")`.
"""

from collections.abc import Callable, Sequence
from typing import Protocol, Self, TypeVar

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from dashboards import access
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say
from tracker.domain.findings import Finding
from tracker.errors import ChangedSince, InputRefused, Message, PlanRefused, TrackerError
from tracker.services.context import Actor, Context
from tracker.services.ground import OnTheForm
from tracker.services.loading.load_report import LoadReport
from tracker.services.people.permissions import May, who_may
from tracker.words.findings import in_words

T = TypeVar("T")
SAID = "done-and-said"
OWN = "own-writes"
"""How often this session has written by its forms."""


class SaysOne(Protocol):
    @property
    def message(self) -> Message: ...


class SaysSeveral(Protocol):
    def messages(self) -> Sequence[Message]: ...


Done = Message | SaysOne | SaysSeveral | LoadReport
"""What a service gives, with what a person is told of it."""
Refusal = tuple[frozenset[str], str]
"""Field and code that it is about, folded; its line."""


def say_done() -> None:
    """What was done by the form just sent; said once, in one place that stays: what stands below keeps what is being typed."""
    with st.container():
        for line in st.session_state.pop(SAID, ()):
            st.success(literal(line))


def allowed(what: May, say_why: bool = False, actor: Actor | None = None) -> bool:
    """Whether who looks may do it, so that a form for it is drawn; `say_why`: else a line says whose it is.
    `actor`: who looks, where that is known already."""
    mine = (actor or access.context().actor).may(what)
    if say_why and not mine:
        st.caption(literal(say("form-not-yours", what=what, roles=who_may(what))))
    return mine


def button(name: str, label: str, do: Callable[[], Done], asks: str = "", primary: bool = False) -> None:
    """A single button that acts, with nothing to fill in."""
    with Form(name, framed=False) as form:
        form.act(label, do, asks, primary)


class Form:
    """One form. `name` tells it from all others of the session, so it names the loom or part that it is about; fields begin anew
    once something was done. `framed` False: its fields are sent as they are left, and it is no box."""

    def __init__(self, name: str, framed: bool = True):
        self.name, self.framed = name, framed
        self._left: list[Refusal] = []
        self._place: DeltaGenerator | None = None

    def __enter__(self) -> Self:
        named = f"{self.name} form {self._times()}"
        self._place = st.form(named, enter_to_submit=False) if self.framed else st.container(key=named)
        self._place.__enter__()
        self._left = list(st.session_state.get(self._at("refused"), ()))
        return self

    def __exit__(self, *failure: object) -> None:
        assert self._place is not None
        self._place.__exit__(*failure)  # pyright: ignore[reportArgumentType]

    def key(self, field: str) -> str:
        """A key for a field of this form, another one each time that something was done."""
        return " ".join(map(str, (self.name, field, self._times(), *st.session_state.get(self._at("moved"), ()))))

    def beside(self, *about: str) -> None:
        """Below the field just drawn: what was refused of it. `about`: the heading of the field as the sheets have it, the
        parameter `field` of a message, or codes."""
        names = {name.casefold() for name in about}
        for refusal in [one for one in self._left if one[0] & names]:
            self._left.remove(refusal)
            st.error(literal(refusal[1]))

    def as_shown(self, what: T) -> T:
        """What the form showed when its fields were first drawn, which stays in them while others write: `what` as it was then. To
        be called before the fields: where this session itself changed it, by another form, they begin anew with it. A save that is
        refused since it moved goes on from what is there now."""
        own = st.session_state.get(OWN, 0)
        kept = st.session_state.get(self._at("shown"), (own, what))
        if kept[0] != own and kept[1] != what:
            st.session_state[self._at("moved")] = [own]
            kept = own, what
        st.session_state[self._at("shown")] = own, kept[1]
        return kept[1]

    def having_shown(self, table: str, key: Sequence[object], **values: object) -> Context:
        """The context of a service that is to refuse where these values, as the form showed them, have changed meanwhile."""
        return access.context().having_shown(OnTheForm(table, tuple(key), values))

    def act(self, label: str, do: Callable[[], Done], asks: str = "", primary: bool = True) -> None:
        """The button that does it, with what was refused beside no field. `asks`: the sentence that names what will happen; it is
        done once that was said yes to. Nothing is done by another sentence than the one that was read."""
        for _, line in self._left:
            st.error(literal(line))
        self._left = []
        if asks and st.session_state.get(self._at("asked")) == (label, asks):
            self._ask(label, do, asks)
        elif self._pressed(label, primary):
            if asks:
                st.session_state[self._at("asked")] = label, asks
                st.rerun()
            self._do(do)

    def _ask(self, label: str, do: Callable[[], Done], asks: str) -> None:
        st.warning(literal(asks))
        with st.container(horizontal=True):
            yes, no = self._pressed(say("form-yes", what=label), True), self._pressed(say("form-no"), False)
        if yes or no:
            del st.session_state[self._at("asked")]
        if yes:
            self._do(do)
        if no:
            st.rerun()

    def _pressed(self, label: str, primary: bool) -> bool:
        kind = "primary" if primary else "secondary"
        if self.framed:
            return st.form_submit_button(label, type=kind)
        return st.button(label, type=kind, key=self.key(label))

    def _do(self, do: Callable[[], Done]) -> None:
        try:
            done = do()
            refusals = _of_report(done) if isinstance(done, LoadReport) else []
        except TrackerError as error:
            done, refusals = None, _refusals(error)
            if isinstance(error, ChangedSince):
                st.session_state.pop(self._at("shown"), None)
        st.session_state[self._at("refused")] = refusals
        if refusals or done is None:
            st.rerun()
        st.session_state[OWN] = st.session_state.get(OWN, 0) + 1
        st.session_state.pop(self._at("shown"), None)
        st.session_state[self._at("times")] = self._times() + 1
        access.show_again(SAID, [SPEAKER.line(one) for one in _said(done)])

    def _times(self) -> int:
        """How often something was done by this form."""
        return st.session_state.get(self._at("times"), 0)

    def _at(self, what: str) -> str:
        return f"form {self.name}: {what}"


def _said(done: Done) -> Sequence[Message]:
    if isinstance(done, Message):
        return [done]
    return done.messages() if hasattr(done, "messages") else [done.message]  # pyright: ignore[reportAttributeAccessIssue]


def _refusals(error: TrackerError) -> list[Refusal]:
    """A line for each finding, and the refusal's own."""
    findings = error.findings if isinstance(error, InputRefused | PlanRefused | ChangedSince) else ()
    lines = [_of_finding(one) if isinstance(one, Finding) else _of_message(one) for one in findings]
    return [*lines, _of_message(error.message)]


def _of_report(report: LoadReport) -> list[Refusal]:
    """What stands against records that were told on the screen: there is no cell to name."""
    return [_of_finding(one) for one in report.refused] if report.refusal else []


def _of_message(said: Message) -> Refusal:
    field = str(said.params.get("field", ""))
    return frozenset({said.code, field.casefold()}), SPEAKER.line(said)


def _of_finding(finding: Finding) -> Refusal:
    words = in_words(finding, SPEAKER)
    return frozenset({finding.code, finding.heading.casefold()}), f"{words.message} {words.hint}".rstrip()
