"""The card of one loom, open to be told at: cautions first, as they stand on the card, then what is told by taps."""

from datetime import datetime, timedelta
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

import streamlit as st

from dashboards import access, forms
from dashboards.card_ends import remarks_and_end
from dashboards.card_lines import checks, operations, settings
from dashboards.card_parts import kit, parts_used
from dashboards.downloads import download
from dashboards.forms import Form
from dashboards.hand import Hand
from dashboards.parts import facts, literal
from dashboards.speaking import SPEAKER, moment, say, shown, typed_day
from tracker.domain.cards import SIX_TIMES, TIME_FIELDS, USUAL_CAUTIONS
from tracker.errors import DataError
from tracker.services.context import Actor, Context
from tracker.services.people.permissions import May
from tracker.services.screens.work_card import WorkCard, work_card
from tracker.services.work import at_the_loom
from tracker.services.work.at_the_loom import AtLoom
from tracker.services.work.cards import cards, write_cards

PARTS = {
    "today-tab-times": lambda hand: _times(hand),
    "today-tab-operations": operations,
    "today-tab-settings": settings,
    "today-tab-checks": checks,
    "today-tab-parts": parts_used,
    "today-tab-end": remarks_and_end,
}
"""Code of the part → what it shows."""


def open_card(loom: str, hall: str | None, crew: str) -> None:
    try:
        work = access.ask(work_card, loom, hall)
    except DataError as error:
        st.info(literal(SPEAKER.line(error)))
        return
    context = access.context()
    _facts(work)
    _cautions(work)
    kit(work)
    key = work.card.key
    download(say("today-print"), lambda now: _pdf(now, key.loom, key.hall), f"card {key.loom}.pdf")
    if forms.allowed(May.RECORD, say_why=True, actor=context.actor):
        _told(Hand(context, work, _at_loom(work, crew, context.actor)))


def _told(hand: Hand) -> None:
    if not hand.work.begun:
        _start(hand)
        st.caption(say("today-before"))
        return
    part = st.segmented_control(say("today-part"), list(PARTS), default="today-tab-times", format_func=say, required=True,
                                key=f"part of {hand.work.card.key}")  # fmt: skip
    PARTS[part](hand)


def _at_loom(work: WorkCard, crew: str, actor: Actor) -> AtLoom:
    """Who tells it: whoever is signed in, else the name that the address keeps."""
    who = actor.name
    if actor.session is None:
        who = st.text_input(say("today-who"), st.query_params.get("who", who)).strip() or who
        if who != actor.name:
            st.query_params["who"] = who
    return work.at_loom(crew, who)


def _facts(work: WorkCard) -> None:
    card, booking = work.card, work.card.booking
    held = [one for one in work.operations if one.operation.is_hold]
    rows = [
        (say("card-number"), work.number or card.number),
        (say("card-machine-type"), card.loom.machine_type),
        (say("card-window"), say(f"card-window-{booking.kind.value}")),
        (say("card-start"), moment(booking.start, work.zone)),
        (say("card-end"), moment(booking.end, work.zone)),
        (say("card-crew"), booking.crew_names),
        *((choice, taken) for choice, taken in booking.choices),
        (say("card-article"), card.article or ""),
        (say("card-article-in"), card.article_in or ""),
        *((f"{tool.how_many} × {tool.tool}", "") for tool in card.tools),
    ]
    facts([(name, value) for name, value in rows if value or name.startswith(tuple("123456789"))])
    done = sum(bool(one.done_by) for one in held)
    st.write(say("today-holds", done=done, all=len(held), electrical=sum(one.electrical for one in held)))


def _cautions(work: WorkCard) -> None:
    """All of them, always in sight, as they stand on the card."""
    own = [f"{one.text} ({', '.join(map(str, one.steps))})" for one in work.card.cautions]
    lines = [
        *own,
        *map(say, USUAL_CAUTIONS),
        say("card-holds-always"),
        say("card-holds-electrical"),
        say("card-defers"),
    ]
    with st.container(key="cautions", border=True):
        st.write(f"**{say('card-cautions')}**")
        st.write("\n".join(f"- {literal(line)}" for line in lines))


def _pdf(context: Context, loom: str, hall: str) -> bytes:
    with TemporaryDirectory(prefix="beamslot-") as folder:
        write_cards(cards(context, loom, hall), target := Path(folder) / "card.pdf")
        return target.read_bytes()


def _start(hand: Hand) -> None:
    work = hand.work
    with Form(f"start {work.card.key} {work.number}", framed=not work.kit_issued) as form:
        why = "" if work.kit_issued else st.text_input(say("today-start-why"))
        form.beside("record-needs-remark")
        form.act(say("today-start"), lambda: at_the_loom.begin(hand.context, hand.here, why))


# ---- the six times


def _times(hand: Hand) -> None:
    work = hand.work
    for name, code in zip(TIME_FIELDS, SIX_TIMES, strict=True):
        told: datetime | None = work.whole.get(name)
        with st.container(horizontal=True, vertical_alignment="center"):
            if told:
                st.write(say("today-time-told", name=say(code), at=shown(told)))
            else:
                note = partial(at_the_loom.note_time, hand.context, hand.here, name, None)
                forms.button(f"time {name} {work.card.key}", say("today-time-now", name=say(code)), note)
            if name != "started_at":
                _other_time(hand, name, say(code))


def _other_time(hand: Hand, name: str, said: str) -> None:
    work = hand.work
    now = access.state().as_of.astimezone(work.zone)
    first = work.started_at.astimezone(work.zone).date() - timedelta(days=1) if work.started_at else now.date()
    with st.popover(say("today-time-other")), Form(f"other {name} {work.card.key}") as form:
        told = work.whole.get(name) or now
        day = st.date_input(
            say("today-time-day"), told.date(), min_value=first, max_value=now.date(), format=typed_day()
        )
        clock = st.time_input(say("today-time-clock"), told.time().replace(microsecond=0), step=timedelta(minutes=5))
        at = datetime.combine(day, clock, work.zone)
        again = say("today-noted-anew") if work.whole.get(name) else ""
        note = partial(at_the_loom.note_time, hand.context, hand.here, name, at, again)
        form.act(say("today-time-note", name=said), note)
