"""A mill in a database whose stops, widths and conversions are those of a made programme. Zone UTC; all looms weave one article
per family of six, 20 picks a centimetre, at 600 picks a minute and 90 %: 16.2 m an hour, worth 0.5 a metre."""

from datetime import UTC, datetime, timedelta
from typing import Any

import numpy as np
from made_programmes import Programme, programme

from tracker.domain.mill import LoomKey
from tracker.domain.progress import Conversion, Stage, StageChange
from tracker.domain.rows import Change, SourceTable, TypedRow
from tracker.store import open_store

NARROWER_MM = 12.0
CAUSES = ("warp", "weft")
OPERATIONS = SourceTable("method.xlsx", "Operations", "operations", 1)
FIT = {"step": 10, "operation": "Fit", "minutes": 480.0, "trade": "fitter", "heads": 2}
NOW = datetime(2027, 8, 2, 6, tzinfo=UTC)


def added(table: str, *key: object, **values: object) -> Change:
    return Change(table, key, "", None, values)


def make_worth_mill(path: str, seed: int = 1, seed_of: dict[str, Any] | None = None, **terms: Any) -> Programme:
    """Two causes: `warp` has 40 % of the stops; the width on both sides falls from about 60 mm by NARROWER_MM."""
    made = programme(seed, **({"looms": 24, "weeks": 26, "first": 8, "last": 22} | (seed_of or {})))
    keys = sorted({one.key for one in made.observed}, key=lambda key: key.sort_key)
    with open_store(path, make=True).unit_of_work("planner") as uow:
        writer = uow.load_writer(at=NOW)
        writer.write([*_mill(keys, made.decided_at, terms), *_figures(made)], {})
        writer.write_method({"operations": [TypedRow("operations", FIT, {}, 0, 2)]}, [OPERATIONS])
        for key, one in made.conversions.items():
            _convert(uow, key, one.started_at, one.restarted_at)
        uow.commit()
    return made


def _mill(keys: list[LoomKey], decided_at: datetime, terms: dict[str, Any]) -> list[Change]:
    said = {"time zone": "UTC", "order decided": f"{decided_at:%Y-%m-%d}", "leno yarn (tex)": 12.0} | terms
    run = {"machine_type": "AJ", "speed_ppm": 600.0, "efficiency": 0.9, "saving_per_day": 2.0}
    return [
        *(added("terms", term, term=term, value=value) for term, value in said.items()),
        *(added("looms", k.loom, k.hall, loom=k.loom, hall=k.hall, **run) for k in keys),
        *(added("articles", str(a), article=str(a), pick_density_per_cm=20.0, take_up=0.0, contribution_per_m=0.5,
                weft_tex=20.0, weft_price_per_kg=3.0) for a in range(6)),
        *(added("warps", k.loom, k.hall, 0, loom=k.loom, hall=k.hall, sequence=0, article="1", set_length_m=20000.0)
          for k in keys),
        added("crews", "F1", None, None, None, crew="F1", trade="fitter", heads=2, rate_per_head_h=30.0),
    ]  # fmt: skip


def _figures(made: Programme) -> list[Change]:
    rng, found = np.random.default_rng(7), []
    for one in made.observed:
        done = made.conversions.get(one.key)
        local = {name: getattr(one, name).replace(tzinfo=None) for name in ("from_at", "to_at")}
        where = {"loom": one.key.loom, "hall": one.key.hall, "article": one.article, **local}
        warp = float(rng.binomial(int(one.value), 0.4))
        for cause, stops in zip(CAUSES, (warp, one.value - warp), strict=True):
            found.append(added("stops", one.key.loom, one.key.hall, local["from_at"], cause, cause=cause, stops=int(stops),
                               picks=one.picks, **where))  # fmt: skip
        after = done is not None and one.from_at >= done.started_at
        width = 60 + 0.5 * rng.standard_normal() - NARROWER_MM * after
        found.append(added("waste", one.key.loom, one.key.hall, local["from_at"], None, waste_width_mm=width, **where))
    return found


def _convert(uow: Any, key: LoomKey, start: datetime, end: datetime | None) -> None:
    uow.add_stage(StageChange(key, Stage.IN_WORK, start, "Berg"))
    uow.add_stage(StageChange(key, Stage.SIGNED_OFF, end or start + timedelta(days=1), "Berg"))
    uow.add_conversion(Conversion(key, "AJ", "F1", 1, start, end, {}, 480.0))
