"""Messages as the database and JSON have them: code and parameters, so that they can be said in any language later.

A text in place of them was kept before messages had codes; it is said as it stands.
"""

from collections.abc import Iterable, Mapping
from datetime import date, datetime, time
from typing import Any

from tracker.domain.mill import LoomKey
from tracker.errors import Message, as_it_stands


def kept(message: Message) -> dict[str, Any]:
    """As it is kept: {code, params}."""
    return {"code": message.code, "params": kept_params(message)}


def kept_params(message: Message) -> dict[str, Any]:
    """Its parameters: texts, numbers and None as they are, moments with their offset."""
    return {name: _kept(value) for name, value in message.params.items()}


def read(record: str | Mapping[str, Any]) -> Message:
    """What `kept` gave, or a text from before there were codes."""
    if isinstance(record, str):
        return as_it_stands(record)
    return of_columns(record["code"], record["params"])


def of_columns(code: str, params: Mapping[str, Any] | None) -> Message:
    """A message whose code and parameters are kept in columns of their own; without parameters the code is a text from
    before there were codes."""
    if params is None:
        return as_it_stands(code)
    return Message(code, {name: _read(value) for name, value in params.items()})


def _kept(value: object) -> Any:
    match value:
        case None | bool() | int() | float():
            return value
        case Message():
            return kept(value)
        case LoomKey():
            return {"loom": value.loom, "hall": value.hall}
        case datetime():
            return {"moment": value.isoformat()}
        case date():
            return {"day": value.isoformat()}
        case time():
            return {"time": value.isoformat()}
        case str():
            return str(value)
        case Iterable():
            return [_kept(item) for item in value]
    raise ValueError(f"a message cannot keep {value!r}")


def _read(value: Any) -> object:
    match value:
        case list():
            return tuple(_read(item) for item in value)
        case {"moment": text}:
            return datetime.fromisoformat(text)
        case {"day": text}:
            return date.fromisoformat(text)
        case {"time": text}:
            return time.fromisoformat(text)
        case {"loom": loom, "hall": hall}:
            return LoomKey(hall, loom)
        case {"code": _, "params": _}:
            return read(value)
    return value
