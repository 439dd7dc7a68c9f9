"""Printing fetches nothing and leaves the machine's settings alone."""

from __future__ import annotations

import os

import pytest

from setout.write.printing import Refused, pdf

SVG = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="9" height="9">{}</svg>'


@pytest.mark.parametrize(
    "page",
    [
        '<img src="file:///etc/passwd">',
        '<img src="beside.png">',
        '<link rel="stylesheet" href="http://localhost/a.css">',
        "<style>p { background: url(http://localhost/b) }</style><p>x",
        SVG.format('<image width="5" height="5" xlink:href="http://localhost/c.png"/>'),
    ],
)
def test_any_address_stops_the_printing(page):
    with pytest.raises(Refused):
        pdf(page)


def test_fontconfig_is_as_before(monkeypatch):
    monkeypatch.setenv("FONTCONFIG_FILE", "/somewhere/fonts.conf")
    pdf("<p>x")
    assert os.environ["FONTCONFIG_FILE"] == "/somewhere/fonts.conf"
