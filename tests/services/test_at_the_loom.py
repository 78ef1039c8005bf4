"""What a crew taps at the loom, without the screen: records of its card, refused and waived as those of a filled card."""

from dataclasses import replace

from card_mill import LOOM, card_mill, now_here
from refusals import refused
from three_looms import at

from tracker.domain.progress import Stage
from tracker.errors import InputRefused
from tracker.services.screens.work_card import work_card
from tracker.services.work import at_the_loom
from tracker.services.work.at_the_loom import AtLoom
from tracker.services.work.record import record_stage


def test_a_conversion_from_the_start_to_nothing_open(tmp_path):
    db = card_mill(str(tmp_path / "mill.db"))
    begun, later = now_here(db, at(1, 8)), now_here(db, at(1, 12))
    here = AtLoom(LOOM, work_card(begun, "1", "H").number, "F1", "M. Berg")
    at_the_loom.begin(begun, here)
    here = replace(here, started_at=at(1, 8))
    at_the_loom.note_time(later, here, "locked_at", at(1, 8.25))
    with refused(InputRefused, "nothing was written"):
        at_the_loom.tick(later, here, "Mount", 60.0)  # 4/3 of the 40 N·m asked for is 53.3
    for operation, torque in (("Mount", 41.0), ("Electrics", None)):
        at_the_loom.tick(later, here, operation, torque)
    for side, value in (("left", 320.0), ("right", 311.0)):
        at_the_loom.set_value(later, here, "crossing angle", side, value, "set")
    at_the_loom.check(later, here, "Guards are refitted", None, "yes")
    at_the_loom.check(later, here, "Fringe", None, "5")
    work = work_card(later, "1", "H")
    assert [one.within for one in work.settings] == [False, True] and [point.code for point in work.open_points] == [
        "open-setting"
    ]
    told = {"setting": "crossing angle", "side": "left", "value": 320.0, "why": "set"}
    at_the_loom.waive(now_here(db, at(1, 13)), here, "set_values", told, "the frame allows no more", "A. Planner")
    at_the_loom.finish(now_here(db, at(1, 13)), here)
    work = work_card(now_here(db, at(1, 14)), "1", "H")
    assert (work.stage, work.open_points) == (Stage.RUN_IN, ())
    assert {one.operation.row.operation: one.row.get("torque_nm") for one in work.operations if one.done_by} == {
        "Mount": 41.0, "Electrics": None,
    }  # fmt: skip
    record_stage(now_here(db, at(1, 14)), "1", "signed off", "H")
