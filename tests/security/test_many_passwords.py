"""Many wrong passwords: hardly any of them is even looked at, the account stays open to who knows it, and all that were looked at
are told in the account of who did what."""

import asyncio
from datetime import UTC, datetime

import pytest
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from sqlalchemy import select

from tracker.server import keeper as keeper_module
from tracker.server.keeper import Keeper
from tracker.server.waits import FREE
from tracker.services.context import Context
from tracker.services.people.accounts import add_person
from tracker.store.models import ActRow


@pytest.mark.parametrize(("addresses", "each"), [(4, 25), pytest.param(100, 100, marks=pytest.mark.long)])
def test_passwords_are_guessed_in_vain(tmp_path, quick_passwords, monkeypatch, addresses, each):  # noqa: F811
    """100 (10,000) tries: of each address five are looked at and no more, since all come at one moment, within the first wait."""
    monkeypatch.setattr(keeper_module, "now", lambda: datetime(2027, 1, 4, 6, tzinfo=UTC))
    mill = Context(str(tmp_path / "mill.db"), make=True)
    add_person(mill, "Ann", PASSWORD, ["planner"])
    keeper = Keeper(mill, 8501)

    async def guess() -> list[str | None]:
        found = []
        for i in range(addresses):
            for j in range(each):
                token, _ = await keeper.try_password("Ann", f"wrong password {j}", f"10.0.0.{i}")
                found.append(token)
        return found

    assert asyncio.run(guess()) == [None] * (addresses * each)
    with mill.reading() as uow:
        looked_at = [act.what for act in uow.session.scalars(select(ActRow).where(ActRow.who == "Ann"))]
    assert looked_at == ["sign-in-refused"] * (FREE * addresses)
    from_there = asyncio.run(keeper.try_password("Ann", PASSWORD, "10.0.0.1"))
    assert from_there[0] is None and from_there[1] > 0  # the right one is not looked at either while that address waits
    assert asyncio.run(keeper.try_password("Ann", PASSWORD, "10.0.1.1"))[0]  # and Ann herself comes in as ever
