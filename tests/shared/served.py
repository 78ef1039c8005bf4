"""`beamslot serve` in a process of its own, and requests as no browser would send them."""

import os
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

MAIN = "from tracker.cli import main; main()"
SAYS = "The dashboards: http://127.0.0.1:{} (Ctrl-C ends them)\n"


@dataclass
class Served:
    port: int
    process: subprocess.Popen

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    @property
    def host(self) -> str:
        return f"127.0.0.1:{self.port}"


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


@contextmanager
def served(db: str, *options: str, port: int | None = None, **environment: str) -> Iterator[Served]:
    """The command on a database, once it has told its address; ended as a supervisor would end it."""
    port = port or free_port()
    command = [sys.executable, "-c", MAIN, "--db", db, "serve", "--port", str(port), *options]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=os.environ | environment) as process:
        try:
            assert process.stdout and process.stdout.readline() == SAYS.format(port)
            yield Served(port, process)
        finally:
            if process.poll() is None:
                process.send_signal(signal.SIGTERM)
                try:
                    process.wait(30)
                except subprocess.TimeoutExpired:
                    process.kill()


@dataclass(frozen=True)
class Answer:
    status: int
    headers: dict[str, str]
    body: bytes


def ask(port: int, path: str, *headers: str, method: str = "GET") -> Answer:
    """The answer to a request with exactly these header lines and no other."""
    with socket.create_connection(("127.0.0.1", port), timeout=30) as line:
        line.sendall("\r\n".join([f"{method} {path} HTTP/1.1", *headers, "Connection: close", "", ""]).encode())
        said = b"".join(iter(lambda: line.recv(65536), b""))
    return _parsed(said)


def shake(port: int, *headers: str, path: str = "/_stcore/stream") -> Answer:
    """The answer to the opening of a websocket with these headers beside what every opening has (RFC 6455, 1.3)."""
    opening = ["Upgrade: websocket", "Connection: Upgrade", "Sec-WebSocket-Version: 13",
               "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ=="]  # fmt: skip
    with socket.create_connection(("127.0.0.1", port), timeout=30) as line:
        line.sendall("\r\n".join([f"GET {path} HTTP/1.1", *headers, *opening, "", ""]).encode())
        said = b""
        while b"\r\n\r\n" not in said and (more := line.recv(65536)):
            said += more
    return _parsed(said)


def _parsed(said: bytes) -> Answer:
    head, _, body = said.partition(b"\r\n\r\n")
    first, *lines = head.decode("latin-1").split("\r\n")
    headers = {name.strip().lower(): value.strip() for name, _, value in (line.partition(":") for line in lines)}
    return Answer(int(first.split()[1]), headers, body)
