"""What a program can post: readings, set values and stops, as rows with the fields of those sheets."""

from typing import Annotated, Any

from fastapi import APIRouter, Body, Header

from tracker.domain.columns import Column, Kind
from tracker.domain.tables import TABLES
from tracker.domain.tokens import TokenMay
from tracker.errors import NotAllowed
from tracker.server.api.holders import Held
from tracker.server.api.reads import Record
from tracker.services.loading.posted import LONGEST_KEY, MOST_ROWS, POSTABLE, Post, fields_of, post_rows
from tracker.words import ENGLISH

KINDS = {Kind.NUMBER: "number", Kind.INTEGER: "integer", Kind.FRACTION: "number", Kind.YES_NO: "boolean"}
Key = Annotated[
    str,
    Header(
        alias="Idempotency-Key", max_length=LONGEST_KEY,
        description="A name of your own for this post: the same post under the same key is written once, and answered again.",
    ),
]  # fmt: skip


def posts() -> APIRouter:
    """`POST /readings` and so on, each with its fields in the interface's own description."""
    router = APIRouter(tags=["post"], default_response_class=Record)
    for table in POSTABLE:
        router.add_api_route(
            f"/{table}", _posting(table), methods=["POST"], summary=ENGLISH.say(TABLES[table].meaning), response_model=None,
            responses={422: {"description": "Rows are refused and nothing was written; the findings say which and why."}},
        )  # fmt: skip
    return router


def _posting(table: str) -> Any:
    schema = {"type": "array", "minItems": 1, "maxItems": MOST_ROWS, "items": _row_schema(table)}
    rows_of = Annotated[list[dict[str, Any]], Body(embed=True, json_schema_extra=schema)]

    def post(holder: Held, key: Key, rows: rows_of) -> Record:  # type: ignore[valid-type]
        """All of the rows are written, or none; the answer is what `beamslot load --json` writes."""
        if holder.token.may is not TokenMay.POST:
            raise NotAllowed("token-reads-only", name=holder.token.name)
        done = post_rows(holder.context, Post(holder.token.number, key, table, rows))
        headers = {"Idempotent-Replayed": "true"} if done.again else None
        return Record(done.record, 200 if done.written else 422, headers)

    post.__name__ = f"post_{table}"
    return post


def _row_schema(table: str) -> dict[str, Any]:
    columns = fields_of(table)
    needed = [column.field for column in columns if column.needed and not column.unless]
    return {
        "type": "object", "additionalProperties": False, "required": needed,
        "properties": {column.field: _field_schema(column) for column in columns},
    }  # fmt: skip


def _field_schema(column: Column) -> dict[str, Any]:
    means = ENGLISH.say(column.meaning) if column.meaning else ""
    told = {"description": f"{column.title}. {means}".rstrip()}
    if column.kind is not Kind.ANY:
        told["type"] = KINDS.get(column.kind, "string")
    if column.kind is Kind.MOMENT:
        told["format"] = "date-time"
    if column.words:
        told |= {"enum": list(column.words)}
    bounds = {"minimum": column.low, "maximum": column.high}
    return told | {name: bound for name, bound in bounds.items() if bound is not None}
