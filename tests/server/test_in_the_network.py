"""The lines of DEVELOPERS.md for a mill's network, taken from there: the unit as systemd reads it, and a real proxy in front."""

import shutil
import socket
import ssl
import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path

import pytest
from quick_passwords import PASSWORD
from served import ask, free_port

from tracker.services.context import Context
from tracker.services.people.accounts import add_person
from tracker.store import open_store

NAME = "planning.mill.example"
TEXT = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text("utf-8")


def block(mark: str) -> str:
    """What stands in the block after a mark of the document."""
    return TEXT.split(f"<!-- {mark} -->\n```", 1)[1].split("\n", 1)[1].split("```", 1)[0]


def needs(*programs: str) -> None:
    for program in programs:
        if shutil.which(program, path="/usr/bin:/usr/sbin:/bin:/sbin") is None:
            pytest.skip(f"{program} is missing")


def test_the_unit_is_one_that_systemd_takes(tmp_path):
    needs("systemd-analyze")
    unit = block("the unit")
    assert "--behind-proxy 127.0.0.1 --name planning.mill.example" in unit
    (tmp_path / "beamslot.service").write_text(unit.replace("/opt/beamslot/bin/beamslot", sys.executable))
    command = ["systemd-analyze", "verify", "--recursive-errors=no", str(tmp_path / "beamslot.service")]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")


@contextmanager
def ended(command, **more):
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, **more) as process:
        try:
            yield process
        finally:
            process.terminate()


def through(port: int, text: str, since: str) -> bytes:
    """The first bytes of the answer to a text sent by TLS from an address of this machine."""
    context = ssl.create_default_context()
    context.check_hostname, context.verify_mode = False, ssl.CERT_NONE
    with (
        socket.create_connection(("127.0.0.1", port), 30, (since, 0)) as line,
        context.wrap_socket(line, server_hostname=NAME) as spoken,
    ):
        spoken.sendall(text.encode())
        return spoken.recv(65536)


@pytest.mark.long
def test_behind_the_proxy_the_screens_answer_by_https_with_websockets_and_the_address_of_who_asks(tmp_path):
    needs("nginx", "openssl")
    subprocess.run(
        ["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2",
         "-keyout", tmp_path / "mill.key", "-out", tmp_path / "mill.pem", "-subj", f"/CN={NAME}"],
        check=True, capture_output=True,
    )  # fmt: skip
    db, screens, plain, secure = str(tmp_path / "mill.db"), free_port(), free_port(), free_port()
    open_store(db, make=True)
    add_person(Context(db), "Ann", PASSWORD, ["viewer"])
    lines = block("the proxy").replace("/etc/beamslot", str(tmp_path)).replace("127.0.0.1:8501", f"127.0.0.1:{screens}")
    lines = lines.replace("listen 80;", f"listen {plain};").replace("listen 443 ssl;", f"listen {secure} ssl;")
    temporary = "".join(
        f"{kind}_temp_path {tmp_path}/{kind};" for kind in ("client_body", "proxy", "fastcgi", "uwsgi", "scgi")
    )
    (tmp_path / "nginx.conf").write_text(
        f"daemon off; pid {tmp_path}/pid; error_log {tmp_path}/log; events {{}} http {{ access_log off; {temporary}\n{lines}}}"
    )
    serve = [sys.executable, "-c", "from tracker.cli import main; main()", "--db", db, "serve", "--port", str(screens),
             "--behind-proxy", "127.0.0.1", "--name", NAME]  # fmt: skip
    nginx = ["/usr/sbin/nginx", "-p", str(tmp_path), "-c", "nginx.conf"]
    with ended(serve) as served, ended(nginx):
        assert served.stdout and served.stdout.readline().startswith(f"The dashboards: https://{NAME}")
        moved = ask(plain, "/bookings", f"Host: {NAME}")
        assert (moved.status, moved.headers["location"]) == (301, f"https://{NAME}/bookings")
        assert ask(screens, "/health", f"Host: {NAME}").status == 421
        page = through(secure, f"GET /sign-in HTTP/1.1\r\nHost: {NAME}\r\nConnection: close\r\n\r\n", "127.0.0.9")
        assert page.startswith(b"HTTP/1.1 200") and b"secure" in page.split(b"\r\n\r\n")[0].lower()
        cookie = page.split(b"set-cookie: ")[1].split(b";")[0].decode()
        token = cookie.partition("=")[2]
        body = f"token={token}&name=Ann&password={PASSWORD.replace(' ', '+')}"
        signed = through(
            secure,
            f"POST /sign-in HTTP/1.1\r\nHost: {NAME}\r\nCookie: {cookie}\r\nX-Forwarded-For: 10.9.9.9\r\n"
            f"Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {len(body)}\r\nConnection: close\r\n\r\n{body}",
            "127.0.0.9",
        )
        assert signed.startswith(b"HTTP/1.1 303"), signed
        session = signed.split(b"set-cookie: ")[1].split(b";")[0].decode()
        opening = (f"GET /_stcore/stream HTTP/1.1\r\nHost: {NAME}\r\nOrigin: https://{NAME}\r\nCookie: {session}\r\n"
                   "Upgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Version: 13\r\n"
                   "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n")  # fmt: skip
        assert through(secure, opening, "127.0.0.9").startswith(b"HTTP/1.1 101")
        assert through(secure, opening.replace(session, "x=y"), "127.0.0.9").startswith(b"HTTP/1.1 403")
    with Context(db).reading() as uow:
        from tracker.store.models import SessionRow

        assert [row.address for row in uow.session.query(SessionRow)] == ["127.0.0.9"]
