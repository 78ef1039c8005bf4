"""From where the screens can be reached: this machine only, or the mill's network, and how what travels is protected."""

import socket
import ssl
from dataclasses import dataclass
from ipaddress import ip_address
from pathlib import Path

import psutil

from tracker.errors import TrackerError, UsageError
from tracker.server.provider_settings import ProviderSettings
from tracker.services.context import Context
from tracker.services.people.sessions import door

HERE, EVERYWHERE = "127.0.0.1", "0.0.0.0"
OWN_NAMES = ("127.0.0.1", "localhost", "[::1]")


@dataclass(frozen=True, slots=True)
class Reach:
    address: str = HERE
    """The network address that is listened on."""
    names: tuple[str, ...] = ()
    """What a browser may call this server beside the names of this machine for itself: `planning.mill.example`, `10.0.0.7`."""
    certificate: Path | None = None
    key: Path | None = None
    proxy: str | None = None
    """The address of the proxy in front of it, whose word on where a request comes from is taken."""

    plain: bool = False
    """Whether it was accepted that what travels is not protected."""
    provider: ProviderSettings | None = None
    """The mill's identity provider; with it whoever comes must sign in, also while nobody has an account."""

    @property
    def secure(self) -> bool:
        """Whether nothing is answered that did not come by https, be it here or at the proxy."""
        return bool(self.certificate or self.proxy) and not self.plain

    def hosts(self, port: int) -> frozenset[str]:
        """What may stand as `Host` in a request, for a server on `port`."""
        names = [name.lower() for name in (*OWN_NAMES, *self.names)]
        usual = port == (443 if self.certificate else 80)
        bare = names if usual else [name.lower() for name in self.names] if self.proxy else []
        return frozenset([*(f"{name}:{port}" for name in names), *bare])

    def url(self, port: int) -> str:
        """Where to look, for who started it."""
        if self.proxy:
            return f"https://{self.names[0]}"
        name = self.names[0] if self.names and self.address != HERE else HERE
        return f"{'https' if self.certificate else 'http'}://{name}:{port}"


LOCAL = Reach()


def reach(
    share: bool = False,
    names: tuple[str, ...] = (),
    certificate: Path | None = None,
    key: Path | None = None,
    proxy: str | None = None,
    plain: bool = False,
) -> Reach:
    """What was asked for. UsageError where it does not fit together or passwords would travel unprotected without a word,
    TrackerError for a certificate that cannot be used."""
    if (certificate is None) != (key is None):
        raise UsageError("certificate-and-key")
    if certificate and key:
        _check(certificate, key)
    if proxy and not _is_address(proxy):
        raise UsageError("proxy-no-address", proxy=proxy)
    if proxy and not names:
        raise UsageError("proxy-without-name")
    if share and not (certificate or proxy or plain):
        raise UsageError("share-unprotected")
    address = EVERYWHERE if share else HERE
    return Reach(address, (*names, *(_own_names() if share else ())), certificate, key, proxy, plain)


def require_people(context: Context) -> None:
    """Beyond this machine nothing is shown without sign-in: TrackerError while nobody has an account."""
    if context.is_missing or not door(context, None).accounts:
        raise TrackerError("share-without-people")


def _is_address(text: str) -> bool:
    try:
        ip_address(text)
    except ValueError:
        return False
    return True


def _own_names() -> tuple[str, ...]:
    """The names and addresses of this machine in its networks."""
    addresses = [a.address for of in psutil.net_if_addrs().values() for a in of if a.family == socket.AF_INET]
    names = [socket.gethostname(), socket.getfqdn()]
    return tuple(dict.fromkeys(name for name in (*names, *addresses) if name not in OWN_NAMES))


def _check(certificate: Path, key: Path) -> None:
    for file in (certificate, key):
        if not file.is_file():
            raise TrackerError("certificate-missing", file=str(file))
    try:
        ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(certificate, key, password=_none)
    except (ssl.SSLError, ValueError, OSError) as error:
        fits = "KEY_VALUES_MISMATCH" not in str(error)
        code = "certificate-unusable" if fits else "certificate-not-of-key"
        raise TrackerError(code, certificate=str(certificate), key=str(key)) from error


def _none() -> str:
    """A key that has a password is not asked for it: a server starts by itself."""
    return ""
