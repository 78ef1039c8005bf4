"""How long scoping takes, beside judging every row for every loom.

Run with `pytest tests/benchmarks/test_scope_speed.py --benchmark-only`. No times are asserted; compare the groups' rows.
"""

import sys
from dataclasses import replace
from importlib import import_module
from pathlib import Path
from random import Random

import pytest

from sample_data.big import make_mill
from tracker.domain.mill import Loom, Mill
from tracker.scope.content import scope_looms
from tracker.scope.review import review
from tracker.scope.variants import variants

sys.path.insert(0, str(Path(__file__).parents[1] / "scope"))
plain_scope = import_module("plain_scoping").plain_scope


def scattered(mill: Mill) -> Mill:
    """The same looms with every attribute drawn alone, so that nearly every loom is unlike the others."""
    rng = Random(7)
    columns = {
        name: [loom.attributes.get(name) for loom in mill.looms.values()]
        for name in next(iter(mill.looms.values())).attributes
    }
    looms = {
        key: Loom(key.hall, key.loom, loom.machine_type, insertion=rng.choice(["air-jet", "rapier"]),
                  reed_width_cm=rng.choice([190.0, 230.0, 280.0, 320.0, 360.0]), frames=rng.randint(4, 20),
                  attributes={name: rng.choice(values) for name, values in columns.items()})
        for key, loom in mill.looms.items()
    }  # fmt: skip
    return Mill(looms, parts=mill.parts, tools=mill.tools, crews=mill.crews, method=mill.method, terms=mill.terms)


@pytest.fixture(scope="module")
def hall() -> Mill:
    return make_mill(5000, 26, 8, halls=2)


@pytest.mark.benchmark(group="5,000 looms")
def test_a_hall_of_the_samples_makes(benchmark, hall: Mill) -> None:
    scopes = benchmark.pedantic(scope_looms, (hall,), rounds=3)
    benchmark.extra_info["operations"] = len(hall.method.operations)
    benchmark.extra_info["variants"] = len({scope.variant for scope in scopes.values()})


@pytest.mark.benchmark(group="5,000 looms")
def test_nearly_every_loom_another(benchmark, hall: Mill) -> None:
    scopes = benchmark.pedantic(scope_looms, (scattered(hall),), rounds=3)
    benchmark.extra_info["variants"] = len({scope.variant for scope in scopes.values()})


def half_surveyed(mill: Mill) -> Mill:
    """The scattered looms with three attributes in ten missing, so that nearly every loom lacks others."""
    rng = Random(8)
    looms = {
        key: replace(loom, attributes={name: None if rng.random() < 0.3 else value for name, value in loom.attributes.items()})
        for key, loom in scattered(mill).looms.items()
    }  # fmt: skip
    return replace(mill, looms=looms)


@pytest.mark.benchmark(group="5,000 looms")
def test_nearly_every_loom_lacks_something_else(benchmark, hall: Mill) -> None:
    scopes = benchmark.pedantic(scope_looms, (half_surveyed(hall),), rounds=1)
    benchmark.extra_info["to survey"] = sum(scope.to_survey for scope in scopes.values())


@pytest.mark.benchmark(group="5,000 looms")
def test_baseline_every_row_for_every_loom(benchmark, hall: Mill) -> None:
    benchmark.pedantic(lambda: [plain_scope(hall, loom) for loom in hall.looms.values()], rounds=1)


@pytest.mark.benchmark(group="5,000 looms")
def test_review_of_the_method(benchmark, hall: Mill) -> None:
    of = (hall.method, hall.looms, hall.parts, hall.tools, hall.crews, hall.terms)
    benchmark.pedantic(review, of, rounds=3)


@pytest.mark.benchmark(group="5,000 looms")
def test_variants(benchmark, hall: Mill) -> None:
    scopes = scope_looms(hall)
    benchmark.pedantic(variants, (hall, scopes), rounds=3)
