"""Writing a set of documents: all of them or none, each beside its place first and then renamed into it."""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Iterable, Mapping
from pathlib import Path, PurePosixPath

from setout.cli import problems
from setout.cli.codes import FAILED, USAGE
from setout.cli.files import Refusal, resolved, said_by_system
from setout.diagnostics import Diagnostic

KEPT_SUFFIXES = (".rod", ".marks", ".daybook")  # the builder's own files, never written over


class Delivery:
    """Documents on their way into a folder: `lay_out` writes them beside their places, `put_in_place` renames them.

    Left without `put_in_place`, everything written is taken away again, new folders too.
    """

    def __init__(self, folder: Path, typed: str) -> None:
        self._folder = folder
        self._typed = typed
        self._made: list[Path] = []
        self._waiting: list[tuple[Path, Path]] = []

    def __enter__(self) -> Delivery:
        return self

    def __exit__(self, *_: object) -> None:
        for beside, _place in self._waiting:
            _without_complaint(os.unlink, beside)
        for folder in reversed(self._made):
            _without_complaint(os.rmdir, folder)

    def refusal(self, names: Iterable[str], kept: Iterable[Path]) -> Diagnostic | None:
        """Why documents of these names must not be written here: something is in the way, or it is the spec's own."""
        folder = resolved(self._folder)
        if isinstance(folder, Refusal):
            return problems.out_unusable(self._typed, folder.detail)
        for above in (folder, *folder.parents):
            if above.exists():
                if not above.is_dir():
                    return problems.out_unusable(self._typed, f"{above.name} is a file")
                break
        own = set(kept)
        for name in names:
            place = folder / name
            if place in own or place.suffix in KEPT_SUFFIXES:
                return problems.out_would_overwrite(os.path.join(self._typed, name))
            if place.is_dir():
                return problems.out_unusable(self._typed, f"{name} is a folder there")
        return None

    def lay_out(self, documents: Mapping[str, bytes]) -> Diagnostic | None:
        """Write each document beside its place."""
        try:
            for name, data in documents.items():
                place = self._folder / _inside(name)
                self._make(place.parent)
                beside = _beside(place)
                self._waiting.append((beside, place))
                write_new(beside, data)
        except OSError as trouble:
            return problems.out_unusable(self._typed, said_by_system(trouble))
        return None

    def put_in_place(self) -> Diagnostic | None:
        """Rename what `lay_out` wrote. From here on the documents count as written."""
        self._made.clear()
        try:
            while self._waiting:
                os.replace(*self._waiting[0])
                self._waiting.pop(0)
        except OSError as trouble:
            return problems.out_unusable(self._typed, said_by_system(trouble))
        return None

    def _make(self, folder: Path) -> None:
        missing = [f for f in (folder, *folder.parents) if not f.exists()]
        for one in reversed(missing):
            one.mkdir(exist_ok=True)
            self._made.append(one)


def code_of(trouble: Diagnostic) -> int:
    """The exit code where that kept documents from being written."""
    return USAGE if trouble.code == "rod903" else FAILED


def write_new(path: Path, data: bytes) -> None:
    """Write a file that doesn't exist yet; a left-over of that name is taken away, a link is not followed."""
    _without_complaint(os.unlink, path)
    create(path, data)


def create(path: Path, data: bytes) -> None:
    """Never over a file, whoever made it at the last moment: FileExistsError. What could not be written whole is taken
    away again."""
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
    try:
        with open(handle, "wb") as file:
            file.write(data)
    except OSError:
        _without_complaint(os.unlink, path)
        raise


def rewrite(path: Path, data: bytes) -> None:
    """The file anew, with the permissions that it had: written beside and renamed over it. Raises OSError, and then
    it is as it was."""
    mode = stat.S_IMODE(os.stat(path).st_mode) if path.exists() else None
    if mode is not None and not os.access(path, os.W_OK):
        raise PermissionError(errno.EACCES, "it is write-protected")
    beside = _beside(path)
    try:
        write_new(beside, data)
        if mode is not None:
            os.chmod(beside, mode)
        os.replace(beside, path)
    except OSError:
        _without_complaint(os.unlink, beside)
        raise


def _beside(place: Path) -> Path:
    """Where a file is written before it is renamed into its place."""
    return place.with_name(f".{place.name}.{os.getpid()}.part")


def _inside(name: str) -> str:
    """The document's name, which must lead below the folder (a fault of setout's own if not)."""
    parts = PurePosixPath(name).parts
    if not parts or name.startswith("/") or ".." in parts or "\\" in name or ":" in name:
        raise ValueError(f"a document must not be named {name!r}")
    return name


def _without_complaint(remove, path: Path) -> None:
    try:
        remove(path)
    except OSError:
        pass
