"""The command that writes down what was done: a stage, a conversion, or the rows of a card."""

from pathlib import Path
from typing import Annotated, Any

import typer

from tracker.cli import show
from tracker.cli.data import tell_load
from tracker.cli.options import Hall, Json, moment, numbers, pairs
from tracker.domain.record_tables import SIDES, WHYS

ENDINGS = (".xlsx", ".xls", ".xlsm", ".ods", ".csv")
"""What ends so is a file; a loom may be called `3/12`."""
Texts = list[str] | None


def add_commands(app: typer.Typer) -> None:
    app.command()(record)


def record(
    context: typer.Context,
    what: Annotated[
        list[str],
        typer.Argument(metavar="LOOM|FILE...", help="A loom's number, or filled cards (xlsx, xls, ods, csv)."),
    ],
    stage: Annotated[
        str | None,
        typer.Option(help="in work, run-in, signed off, stopped, put off, left out; scoped takes it back."),
    ] = None,
    hall: Hall = None,
    at: Annotated[
        str | None, typer.Option(metavar="T", help="When the stage began, or it was read; default now.")
    ] = None,
    why: Annotated[
        str | None,
        typer.Option(help="The reason: for stopped, put off, left out, going back, and what was skipped."),
    ] = None,
    crew: Annotated[
        str | None, typer.Option(help="The crew that did the conversion, which is recorded with it.")
    ] = None,
    started: Annotated[str | None, typer.Option(metavar="T", help="With --crew: when the conversion began.")] = None,
    total: Annotated[
        float | None, typer.Option(metavar="MIN", help="With --crew: minutes on the loom, pauses left out.")
    ] = None,
    minutes: Annotated[
        Texts, typer.Option(metavar="OPERATION=MIN", help="With --crew: minutes an operation took.")
    ] = None,
    window: Annotated[
        str | None, typer.Option(help="With --crew: repeat, style, standing or mid-warp; default as booked.")
    ] = None,
    choice: Annotated[
        Texts, typer.Option(metavar="CHOICE=ALTERNATIVE", help="With --crew: what was taken; default as booked.")
    ] = None,
    done: Annotated[Texts, typer.Option(metavar="OPERATION", help="An operation that --who did.")] = None,
    torque: Annotated[Texts, typer.Option(metavar="OPERATION=NM", help="A torque that was read.")] = None,
    setting: Annotated[Texts, typer.Option("--set", metavar="SETTING=VALUE", help="A setting as it was read.")] = None,
    reading: Annotated[str, typer.Option(help=f"With --set: {', '.join(WHYS)}.")] = "read out",
    check: Annotated[Texts, typer.Option(metavar="CHECK=RESULT", help="A check: yes, no or a number.")] = None,
    side: Annotated[str | None, typer.Option(help="With --set, --check, --waste: left or right.")] = None,
    waive: Annotated[
        str | None, typer.Option(metavar="REASON", help="With --set or --check: why it may be signed off as it is.")
    ] = None,
    by: Annotated[str | None, typer.Option(metavar="NAME", help="With --waive: who answers for it.")] = None,
    used: Annotated[Texts, typer.Option(metavar="PART=QUANTITY", help="What stays in the loom.")] = None,
    left_over: Annotated[Texts, typer.Option(metavar="PART=QUANTITY", help="What goes back to the stockroom.")] = None,
    broken: Annotated[Texts, typer.Option(metavar="PART=QUANTITY", help="What is scrapped.")] = None,
    bobbin: Annotated[Texts, typer.Option(metavar="SIDE=GRAMS", help="What is left on a leno bobbin.")] = None,
    stops: Annotated[int | None, typer.Option(metavar="N", help="Stops from --from to --to, with --picks.")] = None,
    picks: Annotated[float | None, typer.Option(metavar="N", help="Picks woven meanwhile.")] = None,
    cause: Annotated[str | None, typer.Option(help="With --stops: their cause; default all.")] = None,
    waste: Annotated[
        float | None, typer.Option(metavar="MM", help="Width of the waste selvedge from --from to --to.")
    ] = None,
    remark: Annotated[str | None, typer.Option(metavar="TEXT", help="A remark on a conversion that has begun.")] = None,
    about: Annotated[
        str | None, typer.Option(metavar="OPERATION", help="With --remark: on what; default the whole conversion.")
    ] = None,
    photo: Annotated[
        Path | None, typer.Option(metavar="FILE", help="With --remark: what it shows (JPEG, PNG, WebP).")
    ] = None,
    from_at: Annotated[str | None, typer.Option("--from", metavar="T", help="Where a period begins.")] = None,
    to_at: Annotated[str | None, typer.Option("--to", metavar="T", help="Where it ends.")] = None,
    article: Annotated[str | None, typer.Option(help="What was woven.")] = None,
    correct: Annotated[
        str | None,
        typer.Option(metavar="REASON", help="Replace what was mistyped under the same moment; both are kept."),
    ] = None,
    card: Annotated[str | None, typer.Option(help="The number of the work card.")] = None,
    who: Annotated[str | None, typer.Option(metavar="NAME", help="Who did or read it.")] = None,
    json_to: Json = None,
) -> None:
    """Record what was done: filled cards or a loom.

    Of one loom: its stage and conversion, or what was read: settings, checks, parts, bobbins, stops, waste.

    Filled cards are one load: all of it is written, or nothing and the cells are named. From booked a loom goes in work (its kit
    issued), run-in, signed off; what is out of this order needs --why.

    Example: beamslot record 007 --stage run-in --crew "Fitters 1" --started 2027-01-05T06:00 --at 2027-01-05T12:30
    """  # fmt: skip
    files = [one for one in what if one.lower().endswith(ENDINGS)]
    if files and len(files) == len(what):
        _load_cards(context.obj, [Path(file) for file in files], _reason(correct), json_to)
        return
    if len(what) != 1:
        raise typer.BadParameter("name one loom, or files only")
    here: Any = context.obj
    when = moment(here, at)
    why_read = _one_of("--reading", reading, WHYS)
    rows = {
        "set_values": [{"setting": s, "value": v, "why": why_read} for s, v in pairs(setting, "SETTING=VALUE")],
        "check_results": [{"check": c, "result": r} for c, r in pairs(check, "CHECK=RESULT")],
        "parts_used": _parts(used, left_over, broken, card),
        "bobbins": [{"side": _one_of("--bobbin", s, SIDES), "grams_left": g} for s, g in numbers(bobbin, "SIDE=GRAMS")],
        "work_done": _operations(done, torque, who, card),
        "stops": [{"stops": stops, "picks": picks, "cause": cause}] if stops is not None else [],
        "waste": [{"waste_width_mm": waste}] if waste is not None else [],
    }
    rows = {table: of for table, of in rows.items() if of}
    if remark is not None and stage is None and not rows:
        _remark(here, what[0], hall, remark, about, photo, who, json_to)
        return
    if remark is not None or about is not None or photo is not None:
        raise typer.BadParameter("--remark goes by itself, --about and --photo with it")
    if (stage is None) == (not rows):
        raise typer.BadParameter("give --stage by itself, or what was read or done: --set, --check, --used, --done …")
    if rows:
        told = {"side": side, "at": when, "who": who, "article": article, "waived_because": waive, "waived_by": by,
                "from_at": moment(here, from_at), "to_at": moment(here, to_at)}  # fmt: skip
        _enter(here, what[0], hall, rows, told, _reason(correct), json_to)
        return
    if correct is not None:
        raise typer.BadParameter(
            "--correct goes with files and with what was read or done; a stage goes back with --why"
        )
    details = {"--started": started, "--total": total, "--minutes": minutes, "--window": window, "--choice": choice}
    given = [name for name, value in details.items() if value is not None]
    if given and crew is None:
        raise typer.BadParameter(f"{', '.join(given)} tells of a conversion: say with --crew who did it")
    from tracker.services.work.record import StageTold, record_stage
    from tracker.services.work.taken import Taken
    from tracker.words import ENGLISH

    took, chosen = dict(numbers(minutes, "OPERATION=MIN")), dict(pairs(choice, "CHOICE=ALTERNATIVE"))
    taken = Taken(crew, moment(here, started), took, total, _kind(window), chosen) if crew else None
    recorded = record_stage(here, what[0], str(stage), hall, StageTold(when, why, taken))
    show.emit(json_to, recorded.record(), lambda: show.say(ENGLISH.line(recorded.message)))


def _load_cards(here: Any, files: list[Path], correct: str | None, json_to: str | None) -> None:
    from tracker.services.loading.load import LoadRequest, load

    with show.progress() as progress:
        report = load(here, files, LoadRequest(records_only=True, correct=correct), progress=progress)
    tell_load(report, json_to)


def _enter(
    here: Any, loom: str, hall: str | None, rows: Any, told: Any, correct: str | None, json_to: str | None
) -> None:
    from tracker.services.work.entering import HowTold, enter_records

    tell_load(enter_records(here, loom, hall, rows, told, HowTold(correct)), json_to)


def _remark(
    here: Any, loom: str, hall: str | None, text: str, about: str | None, photo: Path | None, who: str | None,
    json_to: str | None,
) -> None:  # fmt: skip
    from tracker.errors import DataError, message
    from tracker.services.screens.work_card import work_card
    from tracker.services.work.at_the_loom import ToldRemark
    from tracker.services.work.at_the_loom import remark as note
    from tracker.words import ENGLISH

    work = work_card(here, loom, hall)
    if not work.begun:
        raise DataError("remark-not-begun", loom=work.card.key)
    about = work.operation_named(about)
    before = work.remarked(about)
    told = ToldRemark(text, about, before, photo and _content(photo))
    again = ENGLISH.say(message("today-noted-anew")) if before else ""
    said = note(here.telling(who), work.at_loom("", who or here.actor.name), told, again)
    show.emit(json_to, {"hall": work.card.key.hall, "loom": work.card.key.loom, "about": about, "photo": photo is not None},
              lambda: show.say(ENGLISH.line(said)))  # fmt: skip


def _content(path: Path) -> bytes:
    from tracker.errors import InputRefused

    try:
        return path.read_bytes()
    except OSError as error:
        raise InputRefused("photo-unreadable", path=str(path), why=error.strerror or str(error)) from error


def _reason(correct: str | None) -> str | None:
    if correct is not None and not correct.strip():
        raise typer.BadParameter("--correct needs the reason")
    return correct


def _parts(used: Texts, left_over: Texts, broken: Texts, card: str | None) -> list[dict[str, Any]]:
    parts: dict[str, dict[str, Any]] = {}
    for name, given in (("used", used), ("left_over", left_over), ("broken", broken)):
        for part, quantity in numbers(given, "PART=QUANTITY"):
            parts.setdefault(part, {"part": part, "card": card, "used": 0.0})[name] = quantity
    return list(parts.values())


def _operations(done: Texts, torque: Texts, who: str | None, card: str | None) -> list[dict[str, Any]]:
    if done and not who:
        raise typer.BadParameter("say with --who NAME who did the operation")
    rows = {name: {"operation": name, "card": card, "done_by": who} for name in done or ()}
    for name, torque_nm in numbers(torque, "OPERATION=NM"):
        rows.setdefault(name, {"operation": name, "card": card, "done_by": who})["torque_nm"] = torque_nm  # type: ignore[assignment]
    return list(rows.values())


def _one_of(option: str, text: str, words: tuple[str, ...]) -> str:
    if text not in words:
        raise typer.BadParameter(f"{option} {text!r} is not one of {', '.join(words)}")
    return text


def _kind(window: str | None) -> Any:
    from tracker.domain.windows import WindowKind

    if window is None or window in list(WindowKind):
        return WindowKind(window) if window else None
    raise typer.BadParameter(f"--window {window!r} is not one of {', '.join(WindowKind)}")
