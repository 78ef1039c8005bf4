"""Ask an ASGI application in this process: a request, or a websocket that stays open while a test looks at it."""

import asyncio
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlencode

HOST = "127.0.0.1:8501"


@dataclass
class Heard:
    status: int
    headers: list[tuple[str, str]]
    body: str

    def header(self, name: str) -> str:
        """The last of that name; empty where there is none."""
        return next((value for said, value in reversed(self.headers) if said == name), "")


@dataclass
class Browser:
    """Keeps its cookies, as a browser does."""

    app: Any
    address: str = "10.0.0.7"
    scheme: str = "http"
    cookies: dict[str, str] = field(default_factory=dict)

    def get(self, path: str, **headers: str) -> Heard:
        return asyncio.run(self._ask("GET", path, b"", {"accept": "text/html", **headers}))

    def post(self, path: str, form: Mapping[str, str], **headers: str) -> Heard:
        return asyncio.run(self._ask("POST", path, urlencode(form).encode(), headers))

    def post_body(self, path: str, body: bytes, headers: Mapping[str, str]) -> Heard:
        """What a program sends, with exactly these headers."""
        return asyncio.run(self._ask("POST", path, body, headers))

    async def _ask(self, method: str, path: str, body: bytes, headers: Mapping[str, str]) -> Heard:
        said: list[Any] = []
        sent = iter([{"type": "http.request", "body": body, "more_body": False}])

        async def receive() -> Any:
            return next(sent, {"type": "http.disconnect"})

        async def send(message: Any) -> None:
            said.append(message)

        await self.app(self.scope("http", path, headers) | {"method": method}, receive, send)
        start = said[0]
        heard = Heard(
            start["status"],
            [(name.decode().lower(), value.decode()) for name, value in start["headers"]],
            b"".join(message.get("body", b"") for message in said[1:]).decode(),
        )
        self._keep(heard)
        return heard

    def scope(self, kind: str, path: str, headers: Mapping[str, str] | None = None) -> dict[str, Any]:
        where, _, query = path.partition("?")
        lines = {"host": HOST, **({} if kind == "http" else {"origin": f"{self.scheme}://{HOST}"}), **(headers or {})}
        if self.cookies:
            lines["cookie"] = "; ".join(f"{name}={value}" for name, value in self.cookies.items())
        scheme = self.scheme if kind == "http" else {"http": "ws", "https": "wss"}[self.scheme]
        return {
            "type": kind, "asgi": {"version": "3.0"}, "http_version": "1.1", "scheme": scheme, "path": where,
            "raw_path": where.encode(), "query_string": query.encode(), "root_path": "", "client": (self.address, 50000),
            "server": ("127.0.0.1", 8501), "subprotocols": [],
            "headers": [(name.encode(), value.encode()) for name, value in lines.items()],
        }  # fmt: skip

    def _keep(self, heard: Heard) -> None:
        for name, line in heard.headers:
            if name == "set-cookie":
                (cookie, _, value), *_ = [part.partition("=") for part in line.split("; ")]
                self.cookies[cookie] = value.strip('"')
                if "Max-Age=0" in line:
                    del self.cookies[cookie]


@dataclass
class Socket:
    """An open websocket: what the browser brings is put in, what it hears is read off."""

    brings: asyncio.Queue[Any] = field(default_factory=asyncio.Queue)
    heard: list[Any] = field(default_factory=list)
    task: Any = None

    @classmethod
    def opened(cls, app: Any, scope: dict[str, Any]) -> "Socket":
        made = cls()
        made.brings.put_nowait({"type": "websocket.connect"})

        async def send(message: Any) -> None:
            made.heard.append(message)

        made.task = asyncio.create_task(app(scope, made.brings.get, send))
        return made

    def bring(self, data: bytes) -> None:
        self.brings.put_nowait({"type": "websocket.receive", "bytes": data})

    @property
    def closed(self) -> int | None:
        """The code with which it was closed."""
        return next((message["code"] for message in self.heard if message["type"] == "websocket.close"), None)
