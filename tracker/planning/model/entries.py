"""Contents and menus numbered, each once; and the same work as a pilot's beside it."""

from collections.abc import Mapping

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.windows import WindowKind
from tracker.domain.work import WorkContent
from tracker.planning.model.grid import Ints
from tracker.planning.problem import PlanningProblem


class Entries:
    """Numbers contents and menus; looms that share a scope (and have no parts issued) share both."""

    def __init__(self, problem: PlanningProblem):
        self.problem = problem
        self.found: list[tuple[WorkContent, Mapping[str, float]]] = []
        """Content and what it still takes out of stock."""
        self.menus: list[list[int]] = []
        self._known: dict[tuple, dict[WindowKind, int]] = {}
        self._numbers: dict[tuple, int] = {}

    def menus_of(self, key: LoomKey) -> dict[WindowKind, int]:
        kinds = self.problem.contents.get(key, {})
        issued = self.problem.issued.get(key) or {}
        sign = (id(kinds), tuple(sorted(issued.items())))
        if not kinds or key in self.problem.unplannable:
            return {}
        if sign not in self._known:
            self._known[sign] = {kind: self._menu(contents, issued) for kind, contents in kinds.items() if contents}
        return self._known[sign]

    def with_attended(self) -> Ints:
        """Number the same work as a pilot's, too; by content, which it is."""
        found = self.found.copy()
        of = np.arange(2 * len(found), dtype=np.int32)
        for number, (content, need) in enumerate(found):
            attended = self.problem.attended(content)
            if self.problem.mill.terms.soak_days and attended is not content:
                of[number] = len(self.found)
                self.found.append((attended, need))
        return of[: len(self.found)]

    def _menu(self, contents: tuple[WorkContent, ...], issued: Mapping[str, float]) -> int:
        self.menus.append([self._number(content, issued) for content in contents])
        return len(self.menus) - 1

    def _number(self, content: WorkContent, issued: Mapping[str, float]) -> int:
        sign = (id(content), tuple(sorted(issued.items())))
        if sign not in self._numbers:
            self._numbers[sign] = len(self.found)
            need = {part: max(0.0, q - issued.get(part, 0.0)) for part, q in content.parts.items()}
            self.found.append((content, need))
        return self._numbers[sign]
