"""Every loom to be planned is booked once or left over once, and no other loom appears."""

from collections import Counter
from collections.abc import Iterator

from tracker.errors import Message, message
from tracker.planning.checks.case import Case


def one_answer_per_loom(case: Case) -> Iterator[Message]:
    booked = Counter(booking.key for booking in case.plan.bookings)
    left = Counter(item.key for item in case.plan.left_over)
    for key, times in booked.items():
        if times > 1:
            yield message("booked-again", loom=key, times=times)
        if key in left:
            yield message("booked-and-left-over", loom=key)
    for key, times in left.items():
        if times > 1:
            yield message("left-over-again", loom=key, times=times)
    for key in case.problem.planned:
        if key not in booked and key not in left:
            yield message("neither-booked-nor-left-over", loom=key)


def only_looms_to_plan(case: Case) -> Iterator[Message]:
    problem = case.problem
    to_plan = set(problem.planned)
    for key in dict.fromkeys(booking.key for booking in case.plan.bookings):
        if key not in problem.mill.looms:
            yield message("booked-unlisted", loom=key)
        elif key not in to_plan:
            yield message("not-to-plan", loom=key, why=_why_not(case, key), answer="booked")
    for item in case.plan.left_over:
        if item.key not in to_plan and item.key not in problem.put_off:
            yield message("not-to-plan", loom=item.key, why=_why_not(case, item.key), answer="left-over")


def _why_not(case: Case, key) -> str:
    problem = case.problem
    if key in problem.put_off:
        return "put-off"
    if key in problem.left_out:
        return "left-out"
    if key in problem.converted:
        return "converted"
    return "in-work" if key in problem.mill.looms else "unlisted"
