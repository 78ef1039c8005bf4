"""Scenarios that are listed no more, and listed again. Their plans stay, as all do; who did it stands in the account of who did
what."""

from tracker.errors import DataError, Message, message
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.store.plans import ASIDE, newest_of_scenarios, scenarios_aside


def aside(context: Context) -> set[str]:
    """The scenarios that are listed no more."""
    with context.reading() as uow:
        return scenarios_aside(uow.session)


def set_aside(context: Context, name: str) -> Message:
    """List a scenario no more. DataError where none of that name is listed."""
    return _write(context, name, True)


def list_again(context: Context, name: str) -> Message:
    """List a scenario that was set aside. DataError where none of that name is."""
    return _write(context, name, False)


def _write(context: Context, name: str, out: bool) -> Message:
    context.require(May.PLAN)
    with context.reading() as uow:
        newest, are_aside = newest_of_scenarios(uow.session), scenarios_aside(uow.session)
    if name not in newest or (name in are_aside) == out:
        raise DataError("scenario-not-listed", scenario=name, aside=out)
    with context.unit_of_work(May.PLAN, {"scenario": name, ASIDE: newest[name] if out else None}) as uow:
        uow.commit()
    return message("scenario-aside", scenario=name, aside=out)
