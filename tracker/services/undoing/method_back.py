"""The method and the answers of a load: what was in force before it is so again, as a new version and new answers."""

from collections.abc import Iterator

from tracker.errors import Message, message
from tracker.services.moved import Moved
from tracker.store import UnitOfWork
from tracker.store.models import AnswerRow, MethodVersion
from tracker.store.undoing import Written, given_answers, versions


class MethodBack:
    """Looked at once; `apply` writes what is left of it."""

    def __init__(self, uow: UnitOfWork, written: Written):
        self.uow, self.written = uow, written
        self.version: int | None = None
        """That which is to be in force again."""
        self.answers: dict[str, str] = {}
        """Question → the answer of before; empty where there was none."""
        self.stays: list[Message] = []
        self.moved = [*self._method(), *self._answers()]

    def _method(self) -> Iterator[Moved]:
        known = versions(self.uow.session)
        first, last = (where.get(MethodVersion.__tablename__, 0) for where in (self.written.first, self.written.last))
        if not first:
            return
        newest = known[-1]
        if newest.version > last:
            yield Moved(message("undo-method"), newest.who, newest.at, last, newest.version)
        elif first == 1:
            self.stays.append(message("undo-method-stays"))
        else:
            self.version = first - 1

    def _answers(self) -> Iterator[Moved]:
        rows = given_answers(self.uow.session)
        table = AnswerRow.__tablename__
        first, last = self.written.first.get(table), self.written.last.get(table, 0)
        if first is None:
            return
        before = {row.question: row.answer for row in rows if row.id < first}
        now = {row.question: row for row in rows}
        for row in (row for row in rows if first <= row.id <= last):
            newest, old = now[row.question], before.get(row.question, "")
            if newest.answer == row.answer:
                self.answers[row.question] = old
            elif newest.answer != old:
                yield Moved(
                    message("undo-answer", question=row.question), newest.who, newest.at, row.answer, newest.answer
                )

    def apply(self) -> None:
        if self.version is not None:
            self.uow.load_writer().write_method_again(self.version)
        if self.answers:
            self.uow.add_answers(self.answers)
