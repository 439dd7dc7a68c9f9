"""Bytes as they lie in a file, turned into text."""

from __future__ import annotations

from setout.diagnostics import Checked
from setout.read import problems
from setout.read.limits import MAX_BYTES
from setout.source import Source

_BOM = b"\xef\xbb\xbf"


def decode(name: str, data: bytes) -> Checked[Source]:
    """The text of the file called `name`: UTF-8, a byte order mark skipped, every line end made a newline."""
    if len(data) > MAX_BYTES:
        return Checked(None, (problems.file_too_large(name, len(data)),))
    if b"\0" in data:
        return Checked(None, (problems.not_text(name, data[: data.index(b"\0")].count(b"\n") + 1, "a NUL byte"),))
    data = data.removeprefix(_BOM)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as e:
        line = data[: e.start].count(b"\n") + 1
        return Checked(None, (problems.not_text(name, line, f"the byte {data[e.start]:#04x}"),))
    return Checked(Source(name, text.replace("\r\n", "\n").replace("\r", "\n")))
