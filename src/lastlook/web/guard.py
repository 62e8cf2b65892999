"""Who may ask: pages of this program on this machine, and nobody else.

Every answer says what a page may load (its own files), and a change is taken only from a page of our own. The name
asked for is checked as well, so that a foreign name which was pointed at this machine gets nothing.
"""

from __future__ import annotations

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

HERE = frozenset({"127.0.0.1", "localhost"})
READING = frozenset({"GET", "HEAD"})
MOST_BODY = 80 * 1024 * 1024
"""Bytes of one request: a mailed outfit has at most 64 MB."""
SAID_WITH_ALL = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
        "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
    ),
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}


class Guard:
    """Stands before the screens."""

    def __init__(self, app: ASGIApp) -> None:
        """Guard this application."""
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or say why not."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return

        async def say(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in SAID_WITH_ALL.items():
                    headers[name] = value
                headers.setdefault("cache-control", kept_for(scope["path"]))
            await send(message)

        refusal = refused(scope["method"], Headers(scope=scope))
        answer = PlainTextResponse(refusal, 403) if refusal else self.app
        await answer(scope, receive, say)


def kept_for(path: str) -> str:
    """Say how long a browser may keep an answer: founts long, the look until it changes, an outfit not at all."""
    if path.startswith("/look/founts/"):
        return "max-age=604800"
    return "no-cache" if path.startswith("/look/") else "no-store"


def refused(method: str, headers: Headers) -> str | None:
    """Return why a request is not taken, None where it is."""
    host = headers.get("host", "")
    if host.rsplit(":", 1)[0] not in HERE:
        return "Last Look answers only on this machine, by the name 127.0.0.1 or localhost."
    if method in READING:
        return None
    if int(headers.get("content-length") or 0) > MOST_BODY:
        return "That is more than an outfit holds; nothing was changed."
    site = headers.get("sec-fetch-site")
    own = headers.get("origin") == f"http://{host}"
    if own and site in (None, "same-origin"):
        return None
    return "A change is taken only from a page of Last Look itself; nothing was changed."
