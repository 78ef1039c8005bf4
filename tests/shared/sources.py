"""What our own sources say: which codes they carry, and where a sentence for a person still stands in them."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tracker.domain.columns import unit_named, word_named
from tracker.domain.tables import TABLES, TERM_COLUMNS, acts
from tracker.services.plans.scenario_entries import ENTRIES

ROOT = Path(__file__).parents[2]
CODE = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
CARRIERS = dict.fromkeys(
    (
        "Message",
        "message",
        "TrackerError",
        "UsageError",
        "NotTold",
        "DataError",
        "InputRefused",
        "PlanRefused",
        "NotAllowed",
    ),
    0,
)
"""What takes a code and nothing else → at which place."""
WORD = re.compile(r"(?:^|\s)[A-Za-z'-]{2,}(?=[\s.,:;!?]|$)")
SENTENCE = 3
"""Words from which a text is taken for one that a person reads."""


@cache
def sources() -> dict[str, ast.Module]:
    """Path inside the repository → what stands there."""
    files = (path for folder in ("tracker", "dashboards") for path in sorted((ROOT / folder).rglob("*.py")))
    return {path.relative_to(ROOT).as_posix(): ast.parse(path.read_text("utf-8")) for path in files}


@cache
def nodes_of(path: str) -> tuple[ast.AST, ...]:
    """Every node of a file, which are walked once for all rules."""
    return tuple(ast.walk(sources()[path]))


def texts() -> Iterator[str]:
    """Every text that stands somewhere by itself."""
    nodes = (node for path in sources() for node in nodes_of(path))
    return (node.value for node in nodes if isinstance(node, ast.Constant) and isinstance(node.value, str))


def codes_given() -> Iterator[tuple[str, ast.expr]]:
    """(path and line, what is given) where only a code may be."""
    return _given(CARRIERS)


def codes_passed() -> Iterator[tuple[str, str]]:
    """(path and line, text with a hyphen) where a function or class of ours has a parameter or field `code`: what hands a
    finding on to the report, a cell's fault, a row's."""
    for place, given in _given(_with_code()):
        text = _text(given)
        if "-" in text and CODE.fullmatch(text):
            yield place, text


def words_of_enums() -> set[str]:
    """The values of all our enumerations, as the catalogue names them."""
    classes = (node for path in sources() for node in nodes_of(path) if isinstance(node, ast.ClassDef))
    ours = (node for node in classes if any("Enum" in ast.unparse(base) for base in node.bases))
    values = (item.value for node in ours for item in node.body if isinstance(item, ast.Assign))
    return {f"word-{value.value}".replace(" ", "-") for value in values if isinstance(value, ast.Constant)}


def codes_of_columns() -> set[str]:
    """Of our sheets, headings, hints, units and words, and of the terms, which are made from the declarations of the tables."""
    columns = [column for table in TABLES.values() for column in table.columns]
    of_entries = [column for entry in ENTRIES.values() for column in entry.fields]
    said = [one for each in (*columns, *TERM_COLUMNS, *of_entries) for one in (each.named, each.meaning)]
    said += [one for table in TABLES.values() for one in (table.named, table.meaning)]
    said += [unit_named(each.unit) for each in (*columns, *TERM_COLUMNS) if each.unit]
    said += [word_named(word) for each in columns for word in each.words]
    return {one.code for one in (*said, *map(acts, TERM_COLUMNS)) if one}


def sentences(path: str) -> list[str]:
    """Texts of so many words in a file that are no docstrings, and no ValueError, which only a programmer meets."""
    nodes = nodes_of(path)
    apart = {id(node.value) for node in nodes if isinstance(node, ast.Expr)}
    apart |= {id(text) for node in nodes if _is_value_error(node) for text in ast.walk(node)}
    apart |= {id(part) for node in nodes if isinstance(node, ast.JoinedStr) for part in node.values}
    said = (_text(node) for node in nodes if id(node) not in apart)
    return [text for text in said if len(WORD.findall(text)) >= SENTENCE]


@cache
def _with_code() -> dict[str, int]:
    found = {}
    for path in sources():
        if path.startswith(("tracker/office/writing", "tracker/intake/vocabulary", "tracker/cli")):
            continue  # a code there is the format of a number, or one of the command's ends
        for node in nodes_of(path):
            names: list[str] = []
            if isinstance(node, ast.FunctionDef):
                names = [arg.arg for arg in (*node.args.posonlyargs, *node.args.args) if arg.arg != "self"]
            elif isinstance(node, ast.ClassDef):
                names = [ast.unparse(item.target) for item in node.body if isinstance(item, ast.AnnAssign)]
                inner = (item for item in node.body if isinstance(item, ast.FunctionDef) and item.name == "__init__")
                names = names or [arg.arg for init in inner for arg in (*init.args.posonlyargs, *init.args.args)][1:]
            if "code" in names and isinstance(node, ast.FunctionDef | ast.ClassDef):
                found[node.name] = names.index("code")
    return found


def _given(carriers: dict[str, int]) -> Iterator[tuple[str, ast.expr]]:
    for path in sources():
        for node in (node for node in nodes_of(path) if isinstance(node, ast.Call)):
            name = getattr(node.func, "id", getattr(node.func, "attr", ""))
            given = [word.value for word in node.keywords if word.arg == "code"]
            given += node.args[carriers[name] : carriers[name] + 1] if name in carriers else []
            yield from ((f"{path}:{node.lineno}", one) for each in given for one in _ways(each))


def _ways(given: ast.expr) -> Iterator[ast.expr]:
    """Both sides of a choice."""
    sides = (given.body, given.orelse) if isinstance(given, ast.IfExp) else ()
    yield from (way for side in sides for way in _ways(side)) if sides else (given,)


def _is_value_error(node: ast.AST) -> bool:
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "ValueError"


def _text(node: ast.AST) -> str:
    if isinstance(node, ast.JoinedStr):
        return "".join(str(part.value) if isinstance(part, ast.Constant) else "…" for part in node.values)
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""
