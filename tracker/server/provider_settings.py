"""The file that names the mill's identity provider, and which of its groups have which role.

issuer = "https://sign-in.mill.example"   # as the provider writes it; its own description lies below
client = "beamslot"                       # the name under which the screens are entered there
secret = "…"                              # left out where the provider asks for none
name = "preferred_username"               # the claim that holds a person's name; this is the default
groups = "groups"                         # the claim that holds the groups; this is the default
scopes = "openid profile email"           # what is asked for; this is the default

[roles]                                   # role → the groups that have it
planner = ["weaving planners"]
viewer = ["weaving", "purchasing"]
"""

import os
import stat
import tomllib
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from tracker.domain.people import Role
from tracker.errors import UsageError

TEXTS = {"issuer": None, "client": None, "secret": "", "name": "preferred_username", "groups": "groups",
         "scopes": "openid profile email"}  # fmt: skip
"""Each setting with its default; None = it has to be given."""
OF_THIS_MACHINE = ("127.0.0.1", "localhost", "::1")


@dataclass(frozen=True, slots=True)
class ProviderSettings:
    issuer: str
    client: str
    secret: str
    name: str
    groups: str
    scopes: str
    roles: Mapping[Role, frozenset[str]]
    """The groups that have it, written exactly as the provider does."""

    def roles_of(self, groups: Collection[str]) -> frozenset[Role]:
        return frozenset(role for role, theirs in self.roles.items() if theirs & set(groups))


def read_settings(file: Path) -> ProviderSettings:
    """UsageError for a file that is missing, can be read by everybody though it holds a secret, or says what cannot be."""
    try:
        said = tomllib.loads(file.read_text("utf-8"))
        open_to_all = os.name == "posix" and bool(file.stat().st_mode & stat.S_IROTH)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error).splitlines()[0]
        raise UsageError("provider-file", file=str(file), why=why) from error
    if open_to_all and said.get("secret"):
        raise UsageError("provider-file-open", file=str(file))
    for key in said.keys() - TEXTS.keys() - {"roles"}:
        raise UsageError("provider-setting", file=str(file), key=key, problem="unknown", known=[*TEXTS, "roles"])
    texts = {key: _text(file, said, key, usual) for key, usual in TEXTS.items()}
    if not is_protected(texts["issuer"]):
        raise UsageError("provider-setting", file=str(file), key="issuer", problem="address", known=None)
    return ProviderSettings(**texts, roles=_roles(file, said.get("roles")))


def is_protected(address: str) -> bool:
    """Whether nobody can listen on the way there: https, or this machine."""
    parts = urlsplit(address)
    return parts.scheme == "https" or (parts.scheme == "http" and parts.hostname in OF_THIS_MACHINE)


def _text(file: Path, said: Mapping[str, Any], key: str, usual: str | None) -> str:
    value = said.get(key, usual)
    if value is None or (usual is None and value == ""):
        raise UsageError("provider-setting", file=str(file), key=key, problem="missing", known=None)
    if not isinstance(value, str):
        raise UsageError("provider-setting", file=str(file), key=key, problem="text", known=None)
    return value


def _roles(file: Path, said: Any) -> Mapping[Role, frozenset[str]]:
    if not isinstance(said, dict) or not said:
        raise UsageError("provider-setting", file=str(file), key="[roles]", problem="missing", known=None)
    for role, groups in said.items():
        if role not in list(Role):
            raise UsageError("provider-setting", file=str(file), key=role, problem="role", known=list(Role))
        if not isinstance(groups, list) or not all(isinstance(group, str) for group in groups):
            raise UsageError("provider-setting", file=str(file), key=role, problem="groups", known=None)
    return {Role(role): frozenset(groups) for role, groups in said.items()}
