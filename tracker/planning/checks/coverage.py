"""Every loom to be planned is booked once or left over once, and no other loom appears."""

from collections import Counter
from collections.abc import Iterator

from tracker.planning.checks.case import Case


def one_answer_per_loom(case: Case) -> Iterator[str]:
    booked = Counter(booking.key for booking in case.plan.bookings)
    left = Counter(item.key for item in case.plan.left_over)
    for key, times in booked.items():
        if times > 1:
            yield f"loom {key} is booked {times} times"
        if key in left:
            yield f"loom {key} is booked and left over"
    for key, times in left.items():
        if times > 1:
            yield f"loom {key} is left over {times} times"
    for key in case.problem.planned:
        if key not in booked and key not in left:
            yield f"loom {key} is neither booked nor left over"


def only_looms_to_plan(case: Case) -> Iterator[str]:
    problem = case.problem
    to_plan = set(problem.planned)
    for key in dict.fromkeys(booking.key for booking in case.plan.bookings):
        if key not in problem.mill.looms:
            yield f"loom {key} is booked but not in the list of looms"
        elif key not in to_plan:
            yield f"loom {key} is booked, though it is {_why_not(case, key)}"
    for item in case.plan.left_over:
        if item.key not in to_plan and item.key not in problem.put_off:
            yield f"loom {item.key} is left over, though it is {_why_not(case, item.key)}"


def _why_not(case: Case, key) -> str:
    problem = case.problem
    if key in problem.put_off:
        return "put off"
    if key in problem.left_out:
        return "left out of the programme"
    if key in problem.converted:
        return "converted already"
    return "in work" if key in problem.mill.looms else "not in the list of looms"
