"""Score the reader on the corpus: `PYTHONPATH=tests/intake:tests/shared python -m corpus.score [WORD…] [--seed N]`."""

import argparse
import sys
import tempfile
from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from pathlib import Path

from .draft import Finished
from .lists import SEED, all_lists
from .verdict import Outcome, Verdict, judge


def judged(lists: Iterable[Finished]) -> list[Verdict]:
    """The verdicts on lists, each loaded into a database without looms."""
    with tempfile.TemporaryDirectory() as folder:
        db = str(Path(folder) / "empty.db")
        return [judge(made, Path(folder) / str(i), db) for i, made in enumerate(lists)]


def summary(verdicts: Sequence[Verdict]) -> list[str]:
    """The score in one line, and a line for each outcome."""
    counts = Counter(verdict.outcome for verdict in verdicts)
    good = sum(count for outcome, count in counts.items() if outcome.good)
    silent = sum(verdict.silent for verdict in verdicts)
    lists = sum(bool(verdict.silent) for verdict in verdicts)
    first = f"{good} of {len(verdicts)} lists good; silent errors {silent} in {lists} lists"
    return [first, *(f"{counts[outcome]:5} {outcome.value}" for outcome in Outcome if counts[outcome])]


def by_trait(verdicts: Sequence[Verdict]) -> list[str]:
    """A line for each trait of which a list is not good, the worst first."""
    found: dict[str, list[Verdict]] = defaultdict(list)
    for verdict in verdicts:
        for trait in verdict.made.traits:
            found[trait].append(verdict)
    lines = []
    for trait, some in found.items():
        good = sum(verdict.outcome.good for verdict in some)
        if good < len(some):
            lines.append(
                (good / len(some), f"{trait}: {good} of {len(some)} good, silent errors {sum(v.silent for v in some)}")
            )
    return [line for _, line in sorted(lines)]


def main(given: Sequence[str]) -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("words", nargs="*", help="only lists whose name or traits hold one of these")
    parser.add_argument("--seed", type=int, default=SEED, help="draw other lists (default %(default)s)")
    asked = parser.parse_args(given)
    lists = [one for one in all_lists(asked.seed) if holds(one, asked.words)]
    verdicts = judged(lists)
    for verdict in verdicts:
        if not verdict.outcome.good:
            print(verdict.line())
    print(*by_trait(verdicts), *summary(verdicts), sep="\n")
    return 0 if all(verdict.outcome.good for verdict in verdicts) else 1


def holds(made: Finished, words: Sequence[str]) -> bool:
    return not words or any(word in f"{made.name}; {'; '.join(made.traits)}" for word in words)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
