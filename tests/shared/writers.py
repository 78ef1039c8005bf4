"""Which functions of the services write: read from their sources, so that a new one cannot be forgotten."""

import ast
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
SERVICES = ROOT / "tracker" / "services"
Name = tuple[str, str]
"""Module (`parts.stock`) and function."""


@cache
def writers() -> frozenset[Name]:
    """Every function of a service that opens a unit of work for writing, itself or by a function that it calls."""
    calls = {name: found for path in sorted(SERVICES.rglob("*.py")) for name, found in _calls(path).items()}
    found = {name for name, called in calls.items() if ("", "unit_of_work") in called}
    while more := {name for name, called in calls.items() if called & found} - found:
        found |= more
    return frozenset(found)


def _calls(path: Path) -> dict[Name, set[Name]]:
    """Function → the functions that its body names, each by the module in which it is defined."""
    module = ".".join(path.relative_to(SERVICES).with_suffix("").parts)
    tree = ast.parse(path.read_text("utf-8"))
    known = {node.name: (module, node.name) for node in tree.body if isinstance(node, ast.FunctionDef)}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("tracker.services."):
            where = str(node.module).removeprefix("tracker.services.")
            known |= {each.asname or each.name: (where, each.name) for each in node.names}
    return {
        (module, node.name): {known[n.id] for n in ast.walk(node) if isinstance(n, ast.Name) and n.id in known}
        | {("", n.attr) for n in ast.walk(node) if isinstance(n, ast.Attribute) and n.attr == "unit_of_work"}
        for node in tree.body
        if isinstance(node, ast.FunctionDef)
    }


def public_writers() -> frozenset[Name]:
    """Those that others may call, the context itself and its helpers left out."""
    return frozenset(name for name in writers() if not name[1].startswith("_"))


def units_of_work() -> list[tuple[str, ast.Call]]:
    """(path and line, call) of every unit of work for writing that a service opens by its context."""
    found = []
    for path in sorted(SERVICES.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "unit_of_work":
                found.append((f"{path.relative_to(ROOT)}:{node.lineno}", node))
    return found
