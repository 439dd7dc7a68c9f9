"""`setout fmt`: specs put into the canonical layout, each in place or as a difference."""

from __future__ import annotations

import re
import sys
from argparse import Namespace
from codecs import BOM_UTF8
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import unified_diff
from pathlib import Path

from setout.cli import problems
from setout.cli.codes import CLEAN, ERRORS, FAILED, USAGE
from setout.cli.files import STANDARD_INPUT, Refusal, read_bytes, resolved, said_by_system
from setout.cli.output import rewrite
from setout.cli.report import tell
from setout.cli.terminal import say, shown
from setout.diagnostics import Diagnostic
from setout.fmt import fmt
from setout.read import MAX_BYTES, decode
from setout.source import Source


@dataclass(frozen=True)
class _Laid:
    """A file read and laid out. `path` is None for standard input; `data` is what lay there."""

    path: Path | None
    data: bytes
    source: Source
    text: str

    @property
    def changed(self) -> bool:
        return self.text != self.source.text


def run(given: Namespace) -> int:
    """The worst that happened with any of the files."""
    return max(_one(name, given) for name in given.files)


def _one(name: str, given: Namespace) -> int:
    laid = _laid_out(name)
    if isinstance(laid, int):
        return laid
    if given.diff:
        _write_out("".join(_difference(laid)))
    if given.check and laid.changed:
        print(f"{shown(laid.source.name)} would be laid out anew", file=sys.stderr if given.diff else sys.stdout)
        return ERRORS
    return CLEAN if given.check or given.diff else _delivered(laid)


def _laid_out(name: str) -> _Laid | int:
    """The file of that name; or the exit code, when what is the matter with it was told."""
    path = None if name == "-" else resolved(Path(name))
    named = STANDARD_INPUT if path is None else Path(name).as_posix()
    data = path if isinstance(path, Refusal) else _bytes(path)
    if isinstance(data, Refusal) or isinstance(path, Refusal):
        assert isinstance(data, Refusal)
        return _told([problems.spec_refused(named, data.reason, data.detail)], None, USAGE)
    decoded = decode(named, data)
    if decoded.value is None:
        return _told(list(decoded.diagnostics), None, ERRORS)
    laid = fmt(decoded.value)
    if laid.value is None:
        return _told(list(laid.diagnostics), decoded.value, ERRORS)
    return _Laid(path, data, decoded.value, laid.value)


def _bytes(path: Path | None) -> bytes | Refusal:
    return sys.stdin.buffer.read(MAX_BYTES + 1) if path is None else read_bytes(path, MAX_BYTES + 1)


def _told(found: list[Diagnostic], source: Source | None, code: int) -> int:
    tell(sys.stderr, found, {source.name: source} if source else {})
    return code


def _delivered(laid: _Laid) -> int:
    """Written in place, its line ends and its byte order mark as they were, unless somebody else wrote it meanwhile."""
    path = laid.path
    if path is None:
        _write_out(laid.text)
    if path is None or not laid.changed:
        return CLEAN
    text = laid.text.replace("\n", "\r\n") if b"\r\n" in laid.data else laid.text
    start = BOM_UTF8 if laid.data.startswith(BOM_UTF8) else b""
    if read_bytes(path, MAX_BYTES + 1) != laid.data:
        return _told([problems.spec_unwritable(laid.source.name, "it was changed meanwhile")], None, FAILED)
    try:
        rewrite(path, start + text.encode())
    except OSError as trouble:
        return _told([problems.spec_unwritable(laid.source.name, said_by_system(trouble))], None, FAILED)
    say(f"{laid.source.name}: laid out anew")
    return CLEAN


def _difference(laid: _Laid) -> Iterator[str]:
    """As `patch` takes it."""
    name = shown(laid.source.name)
    old, new = (re.findall(r"[^\n]*\n|[^\n]+$", text) for text in (laid.source.text, laid.text))
    for line in unified_diff(old, new, name, name):
        yield line if line.endswith("\n") else f"{line}\n\\ No newline at end of file\n"


def _write_out(text: str) -> None:
    """A spec's text, in UTF-8 whatever the terminal is set to."""
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode())
    sys.stdout.flush()
