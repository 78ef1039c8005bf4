"""The lines of an open card: operations, settings and checks, each told by a tap."""

from collections.abc import Mapping
from functools import partial
from typing import Any

import streamlit as st

from dashboards import forms
from dashboards.forms import Form
from dashboards.hand import Hand
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, number, say
from tracker.domain.method import PLACES, Check, Setpoint
from tracker.services.people.permissions import May
from tracker.services.screens.work_card import CheckLine, OperationLine, SettingLine
from tracker.services.work import at_the_loom

MOST_TORQUE_NM = 5000.0


def operations(hand: Hand) -> None:
    place = ""
    for line in hand.work.operations:
        if line.operation.row.place != place:
            place = line.operation.row.place
            st.subheader(say(PLACES[place]) if place in PLACES else literal(place))
        words, act = st.columns([3, 2], vertical_alignment="center")
        with words:
            _says(line)
        with act:
            _tick(line, hand)


def _says(line: OperationLine) -> None:
    row = line.operation.row
    st.write(f"**{literal(say('today-operation', step=row.step, operation=row.operation))}**")
    minutes = number(line.operation.minutes)
    more = say("today-operation-more", heads=row.heads, trade=row.trade, minutes=minutes, tool=row.tool)
    st.caption(literal(more))
    if line.operation.is_hold:
        st.write(say("today-hold"))
    if row.warp:
        st.write(say("today-warp", state=row.warp))
    if row.stops_neighbours:
        st.write(say("today-neighbours"))
    if row.caution:
        st.write(literal(say("today-caution", caution=row.caution)))


def _tick(line: OperationLine, hand: Hand) -> None:
    row, name = line.operation.row, f"tick {line.operation.row.operation} {hand.work.card.key}"
    if line.done_by:
        st.write(literal(say("today-done-by", who=line.done_by, torque=line.row.get("torque_nm"))))
    elif line.electrical and not hand.context.actor.may(May.SIGN_ELECTRICAL):
        st.caption(say("today-for-electrician"))
    elif row.torque_nm:
        with Form(name) as form:
            label = say("today-torque", target=row.torque_nm)
            read = st.number_input(label, 0.0, MOST_TORQUE_NM, float(row.torque_nm), 1.0, key=form.key("torque"))
            form.beside("torque read", "torque-impossible")
            form.act(say("today-done"), lambda: at_the_loom.tick(hand.context, hand.here, row.operation, read))
    else:
        forms.button(name, say("today-done"), partial(at_the_loom.tick, hand.context, hand.here, row.operation))


# ---- settings


def settings(hand: Hand) -> None:
    for line in hand.work.settings:
        words, act = st.columns([3, 2], vertical_alignment="center")
        with words:
            st.write(f"**{literal(_named(line.point, line.point.setting))}**")
            st.caption(
                literal(
                    say(
                        "today-target",
                        target=_own(line.point.target),
                        low=_own(line.point.low),
                        high=_own(line.point.high),
                    )
                )
            )
            _setting_stands(line)
        with act:
            _set(line, hand)
            told = {"setting": line.point.setting, "side": line.point.side, "value": line.value, "why": "set"}
            if line.value is not None and not line.within and not line.waived:
                _waive(hand, "set_values", told)
    _bobbins(hand)


def _bobbins(hand: Hand) -> None:
    """What is left on them once the loom runs: from then on the next change is reckoned."""
    st.subheader(say("bobbins"))
    st.caption(say("bobbins-weighed"))
    for side in hand.work.card.sides:
        row = hand.work.bobbins.get(side, {})
        with Form(f"bobbin {side} {hand.work.card.key}") as form:
            if row:
                st.write(say("bobbins-told", side=side, grams=number(row["grams_left"], "g", 1)))
            grams = st.number_input(say("bobbins-grams", side=side), 0.0, value=None, step=10.0, key=form.key("grams"))
            form.beside("grams left")
            form.act(say("today-note-value"), partial(at_the_loom.bobbin, hand.context, hand.here, side, grams))


def _setting_stands(line: SettingLine) -> None:
    if line.found is not None:
        st.write(literal(say("today-was-found", value=_own(line.found))))
    if line.value is not None:
        st.write(literal(say("today-within" if line.within else "today-outside", value=_own(line.value))))
    _waived(line.waived)


def _set(line: SettingLine, hand: Hand) -> None:
    point = line.point
    with Form(f"set {point.setting} {point.side} {hand.work.card.key}") as form:
        value = _value_field(form, point, line.value if line.value is not None else point.target)
        form.beside("value", "setting")
        with st.container(horizontal=True):
            for code, why in (("today-set", "set"), ("today-found", "found")):
                do = partial(_set_value, hand, point, value, why)
                form.act(say(code), do, primary=why == "set")


def _set_value(hand: Hand, point: Setpoint, value: Any, why: str):
    return at_the_loom.set_value(hand.context, hand.here, point.setting, point.side, value, why)


def _value_field(form: Form, point: Setpoint, now: Any) -> Any:
    """A number with taps for more and less; a text where the setting is none."""
    limits = (point.target, point.low, point.high)
    if any(isinstance(one, str) for one in limits) or all(one is None for one in limits):
        return st.text_input(say("today-value"), str(now or ""), key=form.key("value")) or None
    step = 1.0 if all(float(one).is_integer() for one in limits if one is not None) else 0.1
    start = float(now) if isinstance(now, int | float) else None
    return st.number_input(say("today-value"), value=start, step=step, key=form.key("value"))


# ---- checks


def checks(hand: Hand) -> None:
    for line in hand.work.checks:
        words, act = st.columns([3, 2], vertical_alignment="center")
        with words:
            st.write(f"**{literal(_named(line.check, line.check.check))}**")
            if line.check.low is not None or line.check.high is not None:
                st.caption(literal(say("today-limits", low=_own(line.check.low), high=_own(line.check.high))))
            if line.held:
                st.write(say("today-hold"))
            if line.result is not None:
                st.write(literal(say("today-passed" if line.passed else "today-failed", value=_own(line.result))))
            _waived(line.waived)
        with act:
            _check(line, hand)
            told = {"check": line.check.check, "side": line.check.side, "result": line.result}
            if not line.passed and not line.held and line.result is not None and not line.waived:
                _waive(hand, "check_results", told)


def _check(line: CheckLine, hand: Hand) -> None:
    name = f"check {line.check.check} {line.check.side} {hand.work.card.key}"
    if line.check.kind == "number":
        with Form(name) as form:
            start = float(line.result) if isinstance(line.result, int | float) else None
            result = st.number_input(say("today-value"), value=start, step=1.0, key=form.key("result"))
            form.beside("result")
            form.act(say("today-note-value"), lambda: _result(hand, line.check, result))
        return
    with Form(name, framed=False) as form, st.container(horizontal=True):
        form.act(say("today-yes"), lambda: _result(hand, line.check, "yes"), primary=False)
        form.act(say("today-no"), lambda: _result(hand, line.check, "no"), primary=False)


def _result(hand: Hand, check: Check, result: Any):
    return at_the_loom.check(hand.context, hand.here, check.check, check.side, None if result is None else str(result))


# ---- waivers


def _waive(hand: Hand, table: str, told: Mapping[str, Any]) -> None:
    """For who may; else a line says whose it is."""
    if not forms.allowed(May.WAIVE, say_why=True, actor=hand.context.actor):
        return
    name = told.get("setting") or told.get("check")
    with st.popover(say("today-waive")), Form(f"waive {name} {told['side']} {hand.work.card.key}") as form:
        why = st.text_input(say("today-waive-why"))
        form.beside("waived because", "waiver-incomplete")
        by = st.text_input(say("today-waive-by"), hand.here.who)
        form.beside("waived by")
        form.act(say("today-waive"), lambda: at_the_loom.waive(hand.context, hand.here, table, told, why, by))


def _waived(row: Mapping[str, Any] | None) -> None:
    if row:
        st.write(literal(say("today-waived", by=row["waived_by"], why=row["waived_because"])))


def _named(row: Setpoint | Check, name: str) -> str:
    return say("today-setting", setting=name, side=row.side, unit=getattr(row, "unit", None))


def _own(value: Any) -> str | None:
    return None if value is None else SPEAKER.own(value)
