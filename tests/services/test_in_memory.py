"""Services on a mill that lives in memory, which leaves no file: what one context wrote it reads again."""

from tracker.domain.mill import LoomKey
from tracker.services.context import Context
from tracker.services.loading.load import load
from tracker.services.work.record import StageTold, record_stage


def test_what_was_loaded_and_recorded_is_there(tmp_path):
    (tmp_path / "looms.csv").write_text("Loom;Hall;Machine type\n1;H;AJ\n", encoding="utf-8")
    mill = Context("sqlite://", make=True)
    assert load(mill, [tmp_path / "looms.csv"]).written
    record_stage(mill.telling("Berg"), "1", "put off", told=StageTold(why="rail cracked"))
    with mill.reading() as uow:
        (change,) = uow.stage_history()
    assert (change.key, change.who, change.reason) == (LoomKey("H", "1"), "Berg", "rail cracked")
