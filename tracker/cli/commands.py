"""The list that commands are entered in: one that writes a file has the option --force without saying so."""

from collections.abc import Callable
from functools import wraps
from inspect import Parameter, signature
from typing import Any, get_args

import typer

from tracker.cli.options import Force, checked


class Commands(typer.Typer):
    """A list of commands, entered as the library has it: `app.command()(function)`."""

    def command(self, *names: Any, **settings: Any) -> Callable[[Callable], Callable]:
        enter = super().command(*names, **settings)

        def entered(function: Callable) -> Callable:
            enter(_with_force(function) if _writes(function) else function)
            return function

        return entered


def _writes(function: Callable) -> bool:
    """Whether one of its options or arguments names a file to write."""
    parameters = signature(function, eval_str=True).parameters.values()
    return any(getattr(info, "callback", None) is checked for p in parameters for info in get_args(p.annotation))


def _with_force(function: Callable) -> Callable:
    @wraps(function)
    def forced(*given: Any, force: bool = False, **named: Any) -> Any:
        return function(*given, **named)

    known = signature(function, eval_str=True)
    force = Parameter("force", Parameter.KEYWORD_ONLY, default=False, annotation=Force)
    forced.__signature__ = known.replace(parameters=[*known.parameters.values(), force])  # type: ignore[attr-defined]
    forced.__annotations__ = {**function.__annotations__, "force": Force}
    return forced
