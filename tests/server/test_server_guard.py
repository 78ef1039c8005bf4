"""Who may ask the screens, and what every answer says: asked over a socket, as no browser would."""

import socket
import threading

import pytest
from served import Served, ask, served, shake


@pytest.fixture(scope="module")
def internet():
    """A proxy of ours that stands for the internet: its address, and whether it was called."""
    called = threading.Event()
    with socket.socket() as line:
        line.bind(("127.0.0.1", 0))
        line.listen()

        def answer_calls() -> None:
            while True:
                try:
                    caller, _ = line.accept()
                except OSError:
                    return
                called.set()
                caller.close()

        threading.Thread(target=answer_calls, daemon=True).start()
        yield f"http://127.0.0.1:{line.getsockname()[1]}", called
    assert not called.is_set()  # nor until the server had ended


@pytest.fixture(scope="module")
def screens(tmp_path_factory, internet):
    proxy, _ = internet
    db = str(tmp_path_factory.mktemp("guard") / "mill.db")
    with served(db, "--new", http_proxy=proxy, https_proxy=proxy, no_proxy="") as running:
        yield running


@pytest.mark.parametrize("name", ["127.0.0.1", "localhost", "LocalHost", "[::1]"])
def test_this_machine_may_be_asked_under_its_own_names(screens: Served, name: str):
    answer = ask(screens.port, "/", f"Host: {name}:{screens.port}")
    assert answer.status == 200 and b"<div id=" in answer.body


@pytest.mark.parametrize(
    "hosts",
    [["mill.example:{port}"], ["127.0.0.1.mill.example:{port}"], ["127.0.0.1"], ["127.0.0.1:1"], ["localhost.:{port}"],
     ["0.0.0.0:{port}"], [""], [], ["127.0.0.1:{port}", "mill.example:{port}"]],
)  # fmt: skip
def test_under_any_other_name_nothing_is_answered(screens: Served, hosts: list[str]):
    lines = [f"Host: {host}".format(port=screens.port) for host in hosts]
    for path in ("/", "/health", "/_stcore/health"):
        answer = ask(screens.port, path, *lines)
        assert answer.status in (400, 421) and b"<div id=" not in answer.body  # 400: the protocol itself forbids it


def test_a_stream_needs_the_origin_of_the_page_itself(screens: Served):
    host = f"Host: {screens.host}"
    assert shake(screens.port, host, f"Origin: {screens.url}").status == 101
    refused = [
        shake(screens.port, host),
        shake(screens.port, host, "Origin: null"),
        shake(screens.port, host, "Origin: http://mill.example"),
        shake(screens.port, host, "Origin: http://127.0.0.1:1"),
        shake(screens.port, host, f"Origin: http://localhost:{screens.port}"),
        shake(screens.port, host, f"Origin: https://{screens.host}"),
        shake(screens.port, f"Host: mill.example:{screens.port}", f"Origin: http://mill.example:{screens.port}"),
        shake(screens.port, host, f"Origin: {screens.url}", path="/stream"),
    ]
    assert [answer.status for answer in refused] == [403] * len(refused)
    two = shake(screens.port, host, f"Origin: {screens.url}", "Origin: http://mill.example")
    assert two.status == 400  # the protocol itself forbids it


def test_another_site_gets_no_answer_by_a_form_or_a_script(screens: Served):
    host = f"Host: {screens.host}"
    assert ask(screens.port, "/_stcore/health", host, f"Origin: {screens.url}").status == 200
    for origin in ("http://mill.example", "null", "http://localhost:1"):
        answer = ask(screens.port, "/_stcore/health", host, f"Origin: {origin}")
        assert answer.status == 403 and "access-control-allow-origin" not in answer.headers


def test_a_rejected_origin_does_not_make_the_server_call_out(screens: Served, internet):
    answer = shake(screens.port, f"Host: {screens.host}", "Origin: http://mill.example")
    assert answer.status == 403
    _, called = internet
    assert not called.is_set()


@pytest.mark.parametrize("path", ["/", "/bookings", "/health", "/favicon.png", "/_stcore/health", "/_stcore/metrics"])
def test_every_answer_tells_the_browser_to_keep_it_to_itself(screens: Served, path: str):
    headers = ask(screens.port, path, f"Host: {screens.host}").headers
    assert "frame-ancestors 'none'" in headers["content-security-policy"]
    assert "default-src 'self'" in headers["content-security-policy"]
    assert headers["x-frame-options"] == "DENY"
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "same-origin"
    assert headers["cross-origin-resource-policy"] == "same-origin"
    assert "server" not in headers


@pytest.mark.parametrize(
    "path",
    ["/_stcore/metrics", "/_stcore/metrics/", "/_stcore/script-health-check", "/_stcore/agent/openapi.json",
     "/_stcore/agent/interact", "/_stcore/agent/mcp", "/_stcore/agent/mcp/", "/auth/login", "/auth/logout",
     "/oauth2callback", "/component/x/index.html", "/app/static/x"],
)  # fmt: skip
def test_what_the_screens_do_not_need_of_the_library_is_closed(screens: Served, path: str):
    for method in ("GET", "POST", "OPTIONS"):
        assert ask(screens.port, path, f"Host: {screens.host}", method=method).status == 404
