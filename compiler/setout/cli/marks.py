"""The marks file beside a spec: read before a build, and only ever appended to."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from setout.cli import problems
from setout.cli.files import DISK, Reading, Refusal, read_bytes, said_by_system
from setout.cli.output import rewrite
from setout.diagnostics import Checked, Diagnostic
from setout.source import Source

LIMIT = 1_000_000  # bytes; some 10,000 marks


@dataclass(frozen=True)
class MarksFile:
    """`path` has its links resolved. `data` is None while there is no file yet, and `source` is then empty."""

    path: Path
    source: Source
    data: bytes | None


def read_marks(spec: Path, typed: str, reading: Reading = DISK) -> Checked[MarksFile]:
    """The marks file of a spec. `spec` has its links resolved; the marks must not lead out of its folder."""
    from setout.read import decode

    name = os.path.join(os.path.dirname(typed), spec.stem + ".marks")
    path = reading.resolved(spec.with_name(spec.stem + ".marks"))
    if isinstance(path, Path) and not path.is_relative_to(spec.parent):
        path = Refusal("outside")
    data = path if isinstance(path, Refusal) else reading.read_bytes(path, LIMIT + 1)
    if isinstance(path, Path) and data == Refusal("missing"):
        return Checked(MarksFile(path, Source(name, ""), None))
    if isinstance(path, Refusal) or isinstance(data, Refusal):
        assert isinstance(data, Refusal)
        return Checked(None, (problems.register_refused(name, data.reason, data.detail),))
    text = decode(name, data)
    return Checked(MarksFile(path, text.value, data) if text.value else None, text.diagnostics)


def changed_since(marks: MarksFile) -> bool:
    data = read_bytes(marks.path, LIMIT + 1)
    return (None if data == Refusal("missing") else data) != marks.data


def append(marks: MarksFile, text: str) -> Diagnostic | None:
    """Add lines at the end. What stood there stays byte for byte: a new file is written beside and renamed over it."""
    old = marks.data or b""
    joint = b"\n" if old and not old.endswith(b"\n") else b""
    try:
        rewrite(marks.path, old + joint + text.encode())
    except OSError as trouble:
        return problems.register_unwritable(marks.source.name, said_by_system(trouble))
    return None


@contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """Keep other builds out of the folder for a moment, where the system can lock one."""
    try:
        from fcntl import LOCK_EX, flock

        handle = os.open(folder, os.O_RDONLY)
    except (ImportError, OSError):
        yield
        return
    try:
        try:
            flock(handle, LOCK_EX)
        except OSError:  # some network drives can't; the file is compared again before it is replaced
            pass
        yield
    finally:
        os.close(handle)
