"""A message is kept as plain values and read back as it was, whatever kinds of values it holds."""

import json
from datetime import UTC, date, datetime, time

from tracker.domain.messages import kept, read
from tracker.domain.mill import LoomKey
from tracker.errors import message


def test_what_is_kept_reads_back_as_it_was():
    params = {"at": datetime(2027, 1, 4, 6, tzinfo=UTC), "day": date(2027, 1, 4), "row": ("F1", None, time(6, 30)), "many": 2,
              "loom": LoomKey("Hall 1", "7"), "why": message("nothing-in-horizon")}  # fmt: skip
    said = message("row-undone", **params)
    assert read(json.loads(json.dumps(kept(said)))) == said
