"""HTML to PDF. The only importer of weasyprint.

A page sees the bundled fonts and nothing else: a private fontconfig file stands in for the machine's own while
the font map is made. Nothing is fetched: an address anywhere in a page is our bug and stops the printing.
"""

from __future__ import annotations

import os
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
    fetcher = _denying_fetcher()
    page = HTML(string=html, base_url="setout:/", url_fetcher=fetcher, media_type="print")
    name = sha256(html.encode()).digest()[:16].hex().encode()
    made = page.write_pdf(font_config=fonts, pdf_identifier=name, pdf_tags=True)
    # weasyprint goes on after a refusal, so ask the fetcher itself
    if fetcher.refused:
        raise Refused(tuple(fetcher.refused))
    return made


def _denying_fetcher():
    from weasyprint.urls import URLFetcher

    class Denying(URLFetcher):
        def __init__(self) -> None:
            super().__init__(allowed_protocols=(), allow_redirects=False)
            self.refused: list[str] = []

        def fetch(self, url, headers=None):
            self.refused.append(url[:200])
            raise ValueError(f"refused: {url[:200]}")

    return Denying()


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
