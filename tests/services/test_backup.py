"""A backup holds everything of one moment and brings it back, from either kind of database into either."""

import json
import threading
from datetime import UTC, datetime
from zipfile import ZipFile

import pytest
from opened import here
from postgres_server import new_database
from refusals import refused
from stock_room_samples import fill, fill_method, key

from tracker.domain.photos import Photo
from tracker.domain.progress import Stage, StageChange
from tracker.errors import InputRefused, TrackerError
from tracker.services.backup import backup, restore
from tracker.services.parts.stock import count
from tracker.services.people.audit import check_history
from tracker.services.work.record import StageTold, Taken, record_stage
from tracker.store import open_store
from tracker.store.photos import picture_of
from tracker.store.restore import read_backup

PICTURE = bytes(range(256))
STARTED, ENDED = datetime(2026, 1, 5, 6, tzinfo=UTC), datetime(2026, 1, 5, 12, tzinfo=UTC)


@pytest.fixture(params=["sqlite", "postgresql"])
def db(request, tmp_path):
    return a_mill(
        str(tmp_path / "mill.db") if request.param == "sqlite" else new_database(request.getfixturevalue("postgres"))
    )


@pytest.fixture
def mill(tmp_path):
    return a_mill(str(tmp_path / "mill.db"))


def a_mill(db: str) -> str:
    """Looms, parts, a plan with kits, a method, a conversion, an answer, a photo, words of other scripts."""
    fill(db)
    fill_method(db)
    record_stage(
        here(db, "Łukasz 李 \"'\\"),
        "1",
        "signed off",
        told=StageTold(at=ENDED, taken=Taken("F1", STARTED, {"mount": 61.5}), why="put in late"),
    )
    with open_store(db).unit_of_work() as uow:
        uow.add_answers({"unit|reed width": "cm\nor not"})
        uow.add_photo(Photo(key("1"), None, STARTED, "mount", "bent", ENDED, "Łukasz 李"), PICTURE)
        uow.commit()
    return db


def content(db):
    with open_store(db).reading() as uow:
        read = (uow.mill(), uow.published_plan(), uow.conversions(), uow.stage_history(), uow.movements())
        photos = uow.photos([key("1")])
        return *read, uow.reservations(), uow.answers(), [(one, picture_of(uow.session, one.number)) for one in photos]


def parts(file):
    """Name → rows and hash of each part."""
    with ZipFile(file) as archive:
        return json.loads(archive.read("manifest.json"))["parts"]


def test_everything_comes_back_in_the_other_kind_of_database_and_from_there(db, tmp_path, postgres):
    other = new_database(postgres) if db.endswith("mill.db") else str(tmp_path / "other.db")
    again = new_database(postgres) if other.endswith("other.db") else str(tmp_path / "again.db")
    before = content(db)
    for source, file, target in ((db, tmp_path / "1.zip", other), (other, tmp_path / "2.zip", again)):
        backup(here(source), file)
        restore(here(target), file)
        assert content(target) == before
    backup(here(again), tmp_path / "3.zip")
    assert parts(tmp_path / "1.zip") == parts(tmp_path / "2.zip") == parts(tmp_path / "3.zip")
    assert content(again)[-1][0][1] == PICTURE
    assert parts(tmp_path / "1.zip")["tables/looms.jsonl"]["rows"] == 4
    count(here(again), "NUT", 7)
    record_stage(
        here(again), "2", "in work", told=StageTold(at=ENDED, why="before its kit")
    )  # rows are numbered on from the last one restored
    with open_store(again).reading() as uow:
        assert (uow.mill().parts["NUT"].on_hand, uow.stages()[key("2")].stage) == (7, Stage.IN_WORK)


def test_a_backup_taken_while_others_write_holds_one_moment_and_comes_back(db, tmp_path, postgres):
    """Each unit of work adds an answer and a stage, so in any one moment there are as many of one as of the other."""
    done = threading.Event()

    def write() -> None:
        number = 0
        while not done.is_set():
            number += 1
            with open_store(db).unit_of_work() as uow:
                uow.add_answers({f"question {number}": "yes"})
                uow.add_stage(StageChange(key("2"), Stage.SCOPED, ENDED, "planner"))
                uow.commit()

    before = {name: part["rows"] for name, part in _backup_of(db, tmp_path, "before").items()}
    writer = threading.Thread(target=write)
    writer.start()
    found = [_backup_of(db, tmp_path, f"{i}") for i in range(5)]
    done.set()
    writer.join()
    target = str(tmp_path / "again.db") if db.endswith("mill.db") else new_database(postgres)
    restore(here(target), tmp_path / "3.zip")
    told = read_backup(tmp_path / "3.zip").manifest.last_hash
    assert check_history(here(target), told).known_at  # history reads as it was written, up to the last seal of then
    assert check_history(here(db), told).known_at  # and what stood then is still so where it was taken
    answers = [one["tables/answers.jsonl"]["rows"] - before["tables/answers.jsonl"] for one in found]
    assert answers == [
        one["tables/stage_changes.jsonl"]["rows"] - before["tables/stage_changes.jsonl"] for one in found
    ]
    assert answers[-1] > 0


def _backup_of(db, folder, name):
    backup(here(db), folder / f"{name}.zip")
    return parts(folder / f"{name}.zip")


def changed(source, target, change):
    """The backup with its parts (name → bytes) as `change` leaves them."""
    with ZipFile(source) as archive:
        content = {name: archive.read(name) for name in archive.namelist()}
    change(content)
    with ZipFile(target, "w") as archive:
        for name, data in content.items():
            archive.writestr(name, data)
    return target


def manifest(**values):
    def change(content):
        content["manifest.json"] = json.dumps(json.loads(content["manifest.json"]) | values).encode()

    return change


DAMAGE = {
    "a value": (lambda c: c.update({"tables/looms.jsonl": c["tables/looms.jsonl"].replace(b"600", b"601")}),
                "tables/looms.jsonl is not as it was written"),
    "a row less": (lambda c: c.update({"tables/parts.jsonl": c["tables/parts.jsonl"].split(b"\n", 1)[1]}),
                   "tables/parts.jsonl has another length"),
    "no part": (lambda c: c.pop("tables/loads.jsonl"), "tables/loads.jsonl"),
    "no manifest": (lambda c: c.pop("manifest.json"), "manifest.json"),
    "no JSON": (lambda c: c.update({"manifest.json": b"{"}), "it is no whole backup"),
    "another part": (lambda c: manifest(parts={})(c), "its parts are not those of tables"),
    "another program's": (manifest(kind="x"), "it is no backup of Beamslot"),
    "newer": (manifest(schema="9999", program="9.1"), r"written by Beamslot 9\.1 .* install the newer version"),
}  # fmt: skip


@pytest.mark.parametrize("damage", DAMAGE)
def test_a_backup_that_is_not_whole_is_refused_and_nothing_is_made(mill, tmp_path, damage):
    change, says = DAMAGE[damage]
    backup(here(mill), tmp_path / "mill.zip")
    file = changed(tmp_path / "mill.zip", tmp_path / "damaged.zip", change)
    with refused(InputRefused, says):
        restore(here(tmp_path / "new.db"), file)
    assert sorted(one.name for one in tmp_path.iterdir()) == ["damaged.zip", "mill.db", "mill.zip"]


def test_half_a_file_and_another_kind_of_file_are_no_backup(mill, tmp_path):
    backup(here(mill), tmp_path / "mill.zip")
    (tmp_path / "half.zip").write_bytes((tmp_path / "mill.zip").read_bytes()[:5000])
    for name in ("half.zip", "mill.db", "nowhere.zip"):
        with refused(InputRefused, name):
            restore(here(tmp_path / "new.db"), tmp_path / name)
    assert not (tmp_path / "new.db").exists()


def test_a_backup_is_restored_into_a_new_database_only(db, tmp_path):
    backup(here(db), tmp_path / "mill.zip")
    before = content(db)
    with refused(TrackerError, "already; a backup is restored into a new database only"):
        restore(here(db), tmp_path / "mill.zip")
    assert content(db) == before


def test_what_a_killed_restore_left_is_in_nobodys_way(mill, tmp_path):
    backup(here(mill), tmp_path / "mill.zip")
    (tmp_path / "new.db.restoring").write_bytes(b"half")
    restore(here(tmp_path / "new.db"), tmp_path / "mill.zip")
    assert content(str(tmp_path / "new.db")) == content(mill)
    assert sorted(one.name for one in tmp_path.iterdir()) == ["mill.db", "mill.zip", "new.db"]


def test_a_backup_overwrites_nothing_and_leaves_nothing_half_written(mill, tmp_path):
    (tmp_path / "there.zip").write_text("mine")
    with refused(TrackerError, r"there\.zip is there already"):
        backup(here(mill), tmp_path / "there.zip")
    assert (tmp_path / "there.zip").read_text() == "mine"
    with refused(TrackerError, r"cannot write .*mill\.zip: there is no folder .*nowhere"):
        backup(here(mill), tmp_path / "nowhere" / "mill.zip")
    assert sorted(one.name for one in tmp_path.iterdir()) == ["mill.db", "there.zip"]
