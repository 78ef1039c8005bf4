"""Whose name may stand at an electrical hold point, and who may waive: by the roles of who writes it down."""

import shutil
from dataclasses import replace

import pytest
from card_mill import card_mill, fill_cards, now_here, well_done
from three_looms import at

from tracker.domain.people import Role
from tracker.errors import NotAllowed
from tracker.services.context import Actor
from tracker.services.loading.load import LoadRequest, load
from tracker.services.people.permissions import May
from tracker.services.work.entering import enter_records
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """Loom 1 is in work since Tuesday 08:00."""
    mill = card_mill(str(tmp_path_factory.mktemp("made") / "mill.db"))
    record_stage(now_here(mill), "1", "in work", told=StageTold(at(1, 8)))
    return mill


@pytest.fixture
def db(made, tmp_path):
    return shutil.copy(made, tmp_path / "mill.db")


def by(db, role):
    return replace(now_here(db), actor=Actor("Ann", frozenset({role}), "screen"))


def done(db, role, operation):
    row = {"operation": operation, "done_by": "M. Berg", "torque_nm": 40.0 if operation == "Mount" else None}
    return enter_records(by(db, role), "1", None, {"work_done": [row]}, {"at": at(1, 12)})


def recorded(db):
    with open_store(db).reading() as uow:
        return {row["operation"] for row in uow.rows("work_done").values()}


@pytest.mark.parametrize("role", [Role.FITTER, Role.PLANNER, Role.ELECTRICIAN])
def test_an_electrical_hold_point_is_signed_by_electricians_only(db, role):
    """Of the method Electrics is held and an electrician's; Mount is the fitters'."""
    assert done(db, role, "Mount").written
    if role is Role.ELECTRICIAN:
        assert done(db, role, "Electrics").written
    else:
        with pytest.raises(NotAllowed) as refused:
            done(db, role, "Electrics")
        assert refused.value.message.params["what"] is May.SIGN_ELECTRICAL
    assert recorded(db) == {"Mount"} | ({"Electrics"} if role is Role.ELECTRICIAN else set())


@pytest.mark.parametrize("role", [Role.FITTER, Role.PLANNER])
def test_what_may_be_waived_the_planner_waives(db, role):
    told = {"at": at(1, 12), "waived_because": "yarn not here", "waived_by": "M. Berg"}
    rows = {"check_results": [{"check": "Fringe"}]}
    if role is Role.PLANNER:
        assert enter_records(by(db, role), "1", None, rows, told).written
    else:
        with pytest.raises(NotAllowed):
            enter_records(by(db, role), "1", None, rows, told)


@pytest.mark.parametrize("role", [Role.FITTER, Role.ELECTRICIAN, Role.PURCHASING])
def test_a_filled_card_with_the_electricians_name_is_his_to_load(db, tmp_path, role):
    card = fill_cards(db, tmp_path / "card.xlsx", well_done)
    if role is Role.ELECTRICIAN:
        assert load(by(db, role), [card], LoadRequest(records_only=True)).written
    else:
        with pytest.raises(NotAllowed):
            load(by(db, role), [card], LoadRequest(records_only=True))
        assert recorded(db) == set()


@pytest.mark.parametrize(("role", "may"), [(Role.PURCHASING, True), (Role.FITTER, False), (Role.PLANNER, True)])
def test_a_list_of_receipts_may_be_loaded_by_purchasing(db, tmp_path, role, may):
    (tmp_path / "receipts.csv").write_text("Order;Part;Quantity;Due\nPO-7;RAIL;3;2027-02-01\n")
    if may:
        assert load(by(db, role), [tmp_path / "receipts.csv"]).written
    else:
        with pytest.raises(NotAllowed):
            load(by(db, role), [tmp_path / "receipts.csv"])
