"""Which looms must be looked at in the hall, and for what."""

from collections.abc import Iterable, Mapping

from tracker.domain.mill import Loom, LoomKey, Mill
from tracker.domain.scopes import LoomScope
from tracker.domain.survey import SurveyColumn, SurveyList, SurveyRow
from tracker.domain.tables import LOOMS
from tracker.domain.words import fold, natural_key
from tracker.scope.cells import Equal, UnaryTest
from tracker.scope.rules import Rules, attribute_name, compile_method, distinct, known_values

_TITLES = {fold(column.heading): column.title for column in LOOMS.columns}


def survey_rows(mill: Mill, scopes: Mapping[LoomKey, LoomScope]) -> SurveyList:
    """One row for each loom to survey, with the columns that matter for at least one of them."""
    looms = [mill.looms[key] for key, scope in scopes.items() if scope.to_survey]
    wanted = {attribute_name(heading) for loom in looms for heading in scopes[loom.key].unknown}
    rules = compile_method(mill.method)
    names = [name for name in rules.names if name in wanted]
    headings = {name: _heading(mill, rules, name) for name in names}
    rows = [_row(loom, scopes[loom.key], headings) for loom in sorted(looms, key=_walk)]
    return SurveyList(tuple(_column(mill, rules, name, headings[name]) for name in names), tuple(rows))


def allowed_values(tests: Iterable[UnaryTest], known: Iterable[object]) -> tuple[str, ...]:
    """Values to choose from: those that the tests name and those in use. Nothing where numbers or dates are put in
    order, or where there would be one value alone."""
    items = [item for test in tests for item in test.tests]
    named = [item for item in items if isinstance(item, Equal)]
    if len(named) < len(items):
        return ()
    if any(isinstance(item.value, bool) for item in named):
        return ("yes", "no")
    words = {fold(item.written): item.written for item in named}
    for value in known:
        words.setdefault(fold(value), str(value))
    return tuple(sorted(words.values(), key=natural_key)) if len(words) > 1 else ()


def _column(mill: Mill, rules: Rules, name: str, heading: str) -> SurveyColumn:
    tests = rules.tests[rules.names.index(name)]
    allowed = allowed_values(tests, distinct(mill.looms.values(), name).values())
    asked = "; ".join(str(test) for test in tests)
    return SurveyColumn(heading, allowed, asked)


def _row(loom: Loom, scope: LoomScope, headings: Mapping[str, str]) -> SurveyRow:
    known = known_values(loom)
    asked = {attribute_name(heading) for heading in scope.unknown}
    return SurveyRow(
        loom.key,
        loom.machine_type,
        loom.row,
        loom.place,
        {heading: known.get(name) for name, heading in headings.items()},
        tuple(heading for name, heading in headings.items() if name in asked),
    )


def _heading(mill: Mill, rules: Rules, name: str) -> str:
    """As the loom list writes it; the method's heading where the list has no such column yet."""
    if name in _TITLES:
        return _TITLES[name]
    written = (heading for loom in mill.looms.values() for heading in loom.attributes if fold(heading) == name)
    return next(written, rules.headings[rules.names.index(name)])


def _walk(loom: Loom) -> tuple:
    return natural_key(loom.hall), natural_key(loom.row or ""), natural_key(loom.place or ""), natural_key(loom.loom)
