"""HTML to PDF. The only importer of weasyprint.

A page sees the bundled fonts and nothing else: a private fontconfig file stands in for the machine's own while
the font map is made. Nothing is fetched: an address anywhere in a page is our bug and stops the printing.
"""

from __future__ import annotations

import gc
import os
import re
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from hashlib import sha256
from pathlib import Path

from setout.write.fonts import FOLDER

_FONTCONFIG = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>{fonts}</dir>
  <cachedir>{cache}</cachedir>
</fontconfig>
"""


_DRAWING = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
_TITLE = re.compile(r"<title>(.*?)</title>", re.DOTALL)
_DRAWN = "setout:/drawing/"
_NO_TEXT = re.compile(r"<style\b.*?</style>|<[^>]*>", re.DOTALL)
_LONG = 15
"""Letters of a word that a column might be too narrow for."""
_WHOLE_WORDS = "<style>td { overflow-wrap: break-word }</style></head>"
_NUMBER = re.compile(r'<span class="n">(≈?[0-9./-]+)</span>')


class Refused(RuntimeError):
    """A page asked for something outside itself. `addresses` in the order asked for."""

    def __init__(self, addresses: tuple[str, ...]) -> None:
        super().__init__(f"the page asks for {', '.join(addresses)}")
        self.addresses = addresses


def pdf(html: str) -> bytes:
    """The PDF of a self-contained page; the same text gives the same bytes. Raises Refused."""
    with _bundled_fonts():
        from weasyprint import HTML
        from weasyprint.text.fonts import FontConfiguration

        fonts = FontConfiguration()
    text, drawings = _drawings_apart(html)
    if not _has_long_words(text):
        text = _NUMBER.sub(r"\1", text.replace("</head>", _WHOLE_WORDS, 1))
    fetcher = _denying_fetcher(drawings)
    name = sha256(html.encode()).digest()[:16].hex().encode()
    with _without_collecting():
        page = HTML(string=text, base_url="setout:/", url_fetcher=fetcher, media_type="print")
        made = page.write_pdf(font_config=fonts, pdf_identifier=name, pdf_tags=True)
    # weasyprint goes on after a refusal, so ask the fetcher itself
    if fetcher.refused:
        raise Refused(tuple(fetcher.refused))
    return made


def _drawings_apart(html: str) -> tuple[str, list[bytes]]:
    """The page with images in place of its drawings, and the drawings: weasyprint would work out a style for each of
    their lines, which none of them needs."""
    drawings: list[bytes] = []

    def image(found: re.Match[str]) -> str:
        drawings.append(found.group().encode())
        title = _TITLE.search(found.group())
        alt = title.group(1).replace('"', "&quot;") if title else ""
        return f'<img src="{_DRAWN}{len(drawings) - 1}" alt="{alt}">'

    return _DRAWING.sub(image, html), drawings


def _has_long_words(html: str) -> bool:
    """Whether a table's columns might have to be narrower than a word. Where none has to, weasyprint need not measure
    every letter of every cell, which takes it a quarter of its time; nor need a number be kept whole, which in our type
    is all that its own element does, and there are thousands of them."""
    return any(len(word) >= _LONG for word in _NO_TEXT.sub(" ", html).split())


def _denying_fetcher(drawings: list[bytes]):
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    own = {f"{_DRAWN}{i}": drawing for i, drawing in enumerate(drawings)}

    class Denying(URLFetcher):
        def __init__(self) -> None:
            super().__init__(allowed_protocols=(), allow_redirects=False)
            self.refused: list[str] = []

        def fetch(self, url, headers=None):
            if url in own:
                return URLFetcherResponse(url, own[url], {"Content-Type": "image/svg+xml"})
            self.refused.append(url[:200])
            raise ValueError(f"refused: {url[:200]}")

    return Denying()


@contextmanager
def _without_collecting() -> Iterator[None]:
    """All that the printing makes is kept until it is done: looking for garbage meanwhile finds none and takes a tenth
    of the time."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


@contextmanager
def _bundled_fonts() -> Iterator[None]:
    """FONTCONFIG_FILE names a file with the bundled fonts alone for as long as this lasts.

    Fontconfig reads it whenever a font map is made, so it need not stay set, and child processes never see it.
    """
    before = os.environ.get("FONTCONFIG_FILE")
    with tempfile.TemporaryDirectory(prefix="setout-fonts-") as folder:
        file = Path(folder) / "fonts.conf"
        file.write_text(_FONTCONFIG.format(fonts=FOLDER, cache=Path(folder) / "cache"), "utf-8")
        os.environ["FONTCONFIG_FILE"] = str(file)
        try:
            yield
        finally:
            if before is None:
                del os.environ["FONTCONFIG_FILE"]
            else:
                os.environ["FONTCONFIG_FILE"] = before
