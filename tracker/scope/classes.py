"""Values of an attribute that the method cannot tell apart, and words for them."""

from collections.abc import Iterable, Sequence
from typing import Any

from tracker.domain.words import fold
from tracker.scope.cells import Scalar, UnaryTest, scalar
from tracker.scope.rules import Outcome, bounds, sample_values


class Classes:
    """The classes of one attribute; values with the same outcome of every test belong together."""

    def __init__(self, heading: str, tests: Sequence[UnaryTest]):
        self.heading = heading
        """As the method writes it."""
        self.tests = tests
        self._numbers = [value for value in sample_values(tests) if isinstance(value, float)]
        named = (bound for test in tests for item in test.tests for bound in bounds(item))
        self._limits = {bound for bound in named if isinstance(bound, float)}
        self._words: dict[Outcome, dict[str, None]] = {}

    def outcome(self, value: Any) -> Outcome:
        """The class of a value as the loom list has it; its words are remembered for `words`."""
        outcome = tuple(test.holds(value) for test in self.tests)
        compared = scalar(value)
        if compared is not None:
            self._words.setdefault(outcome, {}).setdefault(self._word(compared, value, outcome))
        return outcome

    def words(self, outcomes: Iterable[Outcome]) -> str:
        """`vertical creel` for creel, `rail undrilled`, `no drop wires`, `frames > 12`, `reed width > 230 to 300`."""
        words = sorted({word for outcome in outcomes for word in self._words.get(outcome, {"unknown": None})})
        if words == ["yes"]:
            return self.heading
        if words == ["no"]:
            return f"no {self.heading}"
        listed = " or ".join(words) if len(words) < 5 else f"{len(words)} values"
        return listed if all(fold(self.heading) in fold(word) for word in words) else f"{self.heading} {listed}"

    def _word(self, compared: Scalar, written: Any, outcome: Outcome) -> str:
        if isinstance(compared, bool):
            return "yes" if compared else "no"
        return self._range(compared, outcome) if isinstance(compared, float) else str(written).strip()

    def _range(self, value: float, outcome: Outcome) -> str:
        """The widest range around a number in which no test turns out otherwise."""
        if not self._limits:
            return f"{value:g}"
        line = sorted({*self._numbers, value})
        first = last = line.index(value)
        while first > 0 and self._outcome(line[first - 1]) == outcome:
            first -= 1
        while last < len(line) - 1 and self._outcome(line[last + 1]) == outcome:
            last += 1
        if first == last and value in self._limits:
            return f"{value:g}"
        start = "" if first == 0 else self._from(line[first], line[first - 1])
        end = "" if last == len(line) - 1 else self._to(line[last], line[last + 1], start)
        return f"{start} {end}".strip() or "any"

    def _outcome(self, value: Scalar) -> Outcome:
        return tuple(test.holds(value) for test in self.tests)

    def _from(self, least: float, below: float) -> str:
        return f">= {least:g}" if least in self._limits else f"> {below:g}"

    def _to(self, most: float, above: float, start: str) -> str:
        if most in self._limits:
            return f"to {most:g}" if start else f"<= {most:g}"
        return f"to below {above:g}" if start else f"< {above:g}"
