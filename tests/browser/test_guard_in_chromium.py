"""What a page of another site can do with the screens in a real browser: nothing."""

import threading
from http.server import BaseHTTPRequestHandler, HTTPServer

import pytest

pytestmark = pytest.mark.browser
PAGE = b"<!DOCTYPE html><title>another site</title><h1>another site</h1>"


@pytest.fixture(scope="module")
def other_site():
    """A page from another port of this machine, as another program's would be."""

    class Page(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            self.send_response(200)
            self.send_header("Content-Type", "text/html")
            self.end_headers()
            self.wfile.write(PAGE)

        def log_message(self, *_: object) -> None:
            pass

    server = HTTPServer(("127.0.0.1", 0), Page)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


@pytest.fixture
def page(browser, other_site):
    context = browser.new_context()
    page = context.new_page()
    page.goto(other_site)
    yield page
    context.close()


def test_another_site_cannot_show_the_screens_in_a_frame(small, page):
    page.evaluate(
        "url => new Promise(end => { const f = document.createElement('iframe'); f.src = url; f.onload = end; "
        "document.body.append(f); })",
        small.url,
    )
    assert [frame.url for frame in page.frames[1:]] == ["chrome-error://chromewebdata/"]


def test_another_site_cannot_open_the_stream(small, page):
    ended = page.evaluate(
        "url => new Promise(end => { const s = new WebSocket(url, ['streamlit']); "
        "s.onopen = () => end('opened'); s.onerror = () => end('refused'); })",
        f"ws://{small.host}/_stcore/stream",
    )
    assert ended == "refused"


def test_another_site_cannot_read_an_answer(small, page):
    said = page.evaluate("url => fetch(url).then(r => r.text(), () => 'refused')", f"{small.url}/_stcore/health")
    assert said == "refused"


def test_a_page_of_the_screens_cannot_call_out(small, other_site, browser):
    """Were a script to get into a page, it could send nothing anywhere."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(small.url)
    page.wait_for_selector("h1:has-text('Programme status')", timeout=60_000)
    assert (
        page.evaluate("url => fetch(url, {mode: 'no-cors'}).then(() => 'sent', () => 'refused')", other_site)
        == "refused"
    )
    context.close()
