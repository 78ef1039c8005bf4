"""The method by which a conversion was begun: its card keeps it, whatever changes meanwhile."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.scopes import LoomScope
from tracker.scope.content import scope_looms
from tracker.store import UnitOfWork


class MethodThen:
    """The mill of today with the method version that was in force at a moment, and the looms scoped by it; each worked out
    once."""

    def __init__(self, uow: UnitOfWork, mill: Mill):
        self._uow, self._today, self._versions = uow, mill, uow.method_versions()
        self._mills: dict[int, Mill] = {mill.method.version: mill}
        self._scopes: dict[int, Mapping[LoomKey, LoomScope]] = {}

    def version(self, at: datetime | None) -> int:
        """The version in force at a moment; before the first one that, without a moment that of today."""
        if at is None or not self._versions:
            return self._today.method.version
        return next((version for version, since in reversed(self._versions) if since <= at), self._versions[0][0])

    def mill(self, at: datetime | None) -> Mill:
        version = self.version(at)
        if version not in self._mills:
            self._mills[version] = replace(self._today, method=self._uow.method(version))
        return self._mills[version]

    def scope(self, key: LoomKey, at: datetime | None) -> LoomScope:
        version = self.version(at)
        if version not in self._scopes:
            self._scopes[version] = scope_looms(self.mill(at))
        return self._scopes[version][key]
