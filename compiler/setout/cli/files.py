"""Reading files, with every caution: a spec may name what it likes."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from setout.diagnostics import Diagnostic
from setout.source import Source

STANDARD_INPUT = "standard input"  # what messages call it
TOTAL_LIMIT = 4_000_000  # bytes in all of a spec's files; what a single one may hold is read's affair

_GUARDED = os.O_RDONLY | sum(getattr(os, name, 0) for name in ("O_NONBLOCK", "O_NOFOLLOW", "O_CLOEXEC", "O_BINARY"))


@dataclass(frozen=True)
class Refusal:
    """Why a file was not read: a key of the table in problems.py, and what the system said."""

    reason: str
    detail: str = ""


def read_bytes(path: Path, limit: int) -> bytes | Refusal:
    """The first `limit` bytes of an ordinary file. `path` has its links resolved: one found here is new."""
    try:
        if not stat.S_ISREG(os.lstat(path).st_mode):  # asked first: even to open a device may do something
            return Refusal("folder" if path.is_dir() else "special")
        handle = os.open(path, _GUARDED)
        with open(handle, "rb") as file:
            if not stat.S_ISREG(os.fstat(handle).st_mode):
                return Refusal("special")
            return file.read(limit)
    except (FileNotFoundError, NotADirectoryError):
        return Refusal("missing")
    except (OSError, ValueError) as trouble:  # ValueError: a NUL in the name
        return Refusal("unreadable", said_by_system(trouble))


def resolved(path: Path) -> Path | Refusal:
    """The absolute path with every link followed. What doesn't exist resolves too."""
    try:
        return path.resolve()
    except RuntimeError:  # links that lead round in a ring
        return Refusal("unreadable", "its links lead round in a ring")
    except (OSError, ValueError) as trouble:
        return Refusal("unreadable", said_by_system(trouble))


def said_by_system(trouble: Exception) -> str:
    return trouble.strerror if isinstance(trouble, OSError) and trouble.strerror else str(trouble)


@dataclass(frozen=True)
class Reading:
    """Where files are read from. `resolved(path)` and `read_bytes(path, limit)` are as those above, on the disk."""

    resolved: Callable[[Path], Path | Refusal] = resolved
    read_bytes: Callable[[Path, int], bytes | Refusal] = read_bytes


DISK = Reading()


@dataclass
class Folder:
    """A spec's own folder, the only place its files are read from. Remembers what was read and why something was not.

    `root` has its links resolved. Sources are named by the path that the builder would type.
    """

    root: Path
    reading: Reading = DISK
    sources: dict[str, Source] = field(default_factory=dict)
    paths: dict[str, Path] = field(default_factory=dict)
    refused: dict[str, Refusal] = field(default_factory=dict)
    found: list[Diagnostic] = field(default_factory=list)
    _total: int = 0

    def included(self, name: str) -> Source | None:
        """The file an `include` names, below this folder; None, and the reason remembered, when it must not be read."""
        if name not in self.sources and name not in self.refused:
            path = self._allowed(name)
            refusal = path if isinstance(path, Refusal) else self.take(name, path)
            if refusal is not None:
                self.refused[name] = refusal
        return self.sources.get(name)

    def take(self, name: str, path: Path) -> Refusal | None:
        """Read a file of the spec. One that is no text is told of in `found`, and then it is no source either."""
        from setout.read import MAX_BYTES, decode

        data = self.reading.read_bytes(path, MAX_BYTES + 1)
        if isinstance(data, Refusal):
            return data
        self._total += len(data)
        self.paths[name] = path
        checked = decode(name, data)
        self.found.extend(checked.diagnostics)
        if checked.value is None:
            return Refusal("told")
        self.sources[name] = checked.value
        return None

    def _allowed(self, name: str) -> Path | Refusal:
        if self._total >= TOTAL_LIMIT:
            return Refusal("many")
        path = self.reading.resolved(Path(name))
        if isinstance(path, Path) and not path.is_relative_to(self.root):
            return Refusal("outside")
        return path
