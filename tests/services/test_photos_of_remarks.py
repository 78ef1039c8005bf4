"""A photo is kept with its remark: shown, withdrawn and undone with it, part of a backup (of PostgreSQL: test_backup)."""

from io import BytesIO

import pytest
from card_mill import LOOM, card_mill, now_here
from opened import here
from PIL import Image
from refusals import refused
from three_looms import at
from typer.testing import CliRunner

from tracker.cli import app
from tracker.errors import DataError
from tracker.services.backup import backup, restore
from tracker.services.own_clock import give_own_clock
from tracker.services.people.audit import Which, check_history, deeds
from tracker.services.screens.loom_records import loom_records
from tracker.services.screens.remarks import picture
from tracker.services.screens.work_card import work_card
from tracker.services.undoing.undo import undo
from tracker.services.work import at_the_loom
from tracker.services.work.at_the_loom import ToldRemark
from tracker.services.work.withdrawing import RowMeant, withdraw_reading, withdraw_stage


@pytest.fixture
def db(tmp_path) -> str:
    """Loom 1 in work since Tuesday 5 January 2027, 08:00 UTC."""
    db = card_mill(str(tmp_path / "mill.db"))
    begun = now_here(db, at(1, 8))
    at_the_loom.begin(begun, work_card(begun, "1", "H").at_loom("F1", "M. Berg"))
    return db


def photo() -> bytes:
    file = BytesIO()
    Image.new("RGB", (40, 30), "red").save(file, "PNG")
    return file.getvalue()


def remark(db: str, hour: float, text: str, operation: str | None = None, file: bytes | None = None):
    now = now_here(db, at(1, hour))
    work = work_card(now, "1", "H")
    before = work.remarked(operation)
    told = ToldRemark(text, operation, before, file)
    return at_the_loom.remark(now, work.at_loom("F1", "M. Berg"), told, "noted anew" if before else "")


def shown(db: str):
    """About what, text, what was said with its photos."""
    work = work_card(now_here(db, at(1, 12)), "1", "H")
    return [(one.about, one.text, [photo.remark for photo in one.photos]) for one in work.remarks]


def test_a_photo_lives_and_goes_with_its_remark(db, tmp_path):
    with refused(DataError, "a photo needs a remark"):
        remark(db, 9, " ", "Mount", photo())
    with refused(DataError, "no picture"):
        remark(db, 9, "clamp was loose", "Mount", b"no photo")
    assert shown(db) == []
    remark(db, 9, "clamp was loose", "Mount", photo())
    remark(db, 10, "tightened", "Mount")
    give_own_clock(here(db), at(1, 11))
    (tmp_path / "rail.png").write_bytes(photo())
    for more, code in (((), 0), (("--about", "Moutn"), 1)):  # no such operation
        told = ["--remark", "dirt below the rail", "--photo", str(tmp_path / "rail.png"), *more]
        assert CliRunner().invoke(app, ["--db", db, "record", "1", *told]).exit_code == code
    both = [("", "dirt below the rail", ["dirt below the rail"]),
            ("Mount", "clamp was loose · tightened", ["clamp was loose"])]  # fmt: skip
    assert shown(db) == both
    assert [(one.about, len(one.photos)) for one in loom_records(here(db), "1").remarks] == [("Mount", 1), ("", 1)]
    assert check_history(here(db)).seals

    file = tmp_path / "mill.zip"
    backup(here(db), file)
    other = str(tmp_path / "other.db")
    restore(here(other), file)
    number = work_card(now_here(other, at(1, 12)), "1", "H").remarks[0].photos[0].number
    assert shown(other) == both and picture(here(other), number) == picture(here(db), number)
    assert Image.open(BytesIO(picture(here(db), number))).size == (40, 30)

    act = next(one.act for one in deeds(here(db), Which(loom="1")).deeds if one.table == "remark_photos")
    undone = undo(here(db), act)
    assert shown(db) == both[1:]
    with refused(DataError, "not there any more"):
        picture(here(db), number)
    undo(here(db), undone.by)
    assert shown(db) == both
    withdraw_reading(now_here(db), "1", "of loom 2", RowMeant("work_done", {"operation": "Mount"}))
    assert shown(db) == both[:1]
    withdraw_stage(now_here(db), "1", "it was loom 2")
    with now_here(db).reading() as uow:
        assert uow.photos([LOOM]) == []
