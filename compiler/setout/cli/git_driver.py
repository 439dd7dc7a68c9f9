"""`setout diff --for-git`: what Git runs to tell what changed in a spec. It is told on standard output, and the end is
always a good one, as Git would go no further otherwise."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from setout.cli.codes import CLEAN, USAGE
from setout.cli.fault import report
from setout.cli.files import DISK, Reading, Refusal, read_bytes
from setout.cli.git import NAME, Entry, Revision, git, revision
from setout.cli.job import Job, compiled, sources_of
from setout.cli.report import tell
from setout.cli.revisions import called
from setout.cli.terminal import shown
from setout.diagnostics import Diagnostic
from setout.plan.model import Plan
from setout.write.changes import Names, as_text, build
from setout.write.changes.wording import counted

MOST_COMMITS = 500  # that changed the file; what lies farther back is not looked for
MOST_BYTES = 4_000_000  # of a file, to be compared line by line
_NO_BLOB = "0" * 40
_PROJECT = re.compile(r"^\s*project\b", re.MULTILINE)
_RAW = re.compile(r":\d+ \d+ ([0-9a-f]+) ([0-9a-f]+) ")


@dataclass(frozen=True)
class Side:
    """One of Git's two files: `file` holds the text that `path` had there. `hex` names its blob, "" for a file of the
    working folder, zeros where there is no file. `at` is the commit it was found in; `staged`: it is in none yet."""

    path: str
    file: Path
    hex: str
    ordinary: bool
    at: Revision | None = None
    staged: bool = False

    @property
    def there(self) -> bool:
        return self.hex.strip("0") != "" or self.hex == ""

    @property
    def behind(self) -> str:
        """What follows the file's name. Only a commit stands behind an @, where `setout diff` takes it again."""
        if self.at:
            return f"@{self.at.commit[:7]}"
        if self.staged:
            return " (staged)"
        return f" (blob {self.hex[:7]})" if self.hex else ""

    @property
    def name(self) -> str:
        return shown(self.path + self.behind)


def run(arguments: Sequence[str]) -> int:
    """`arguments` as Git gives them: path, old file, hex, mode, new file, hex, mode; after a renaming the new path too.
    A path alone is one with a merge not settled."""
    if len(arguments) == 1:
        print(f"{shown(arguments[0])}: its merge is not settled yet")
        return CLEAN
    if len(arguments) not in (7, 9):
        print(
            "setout diff --for-git is run by Git: git config diff.setout.command 'setout diff --for-git'",
            file=sys.stderr,
        )
        return USAGE
    old, new = _sides(arguments)
    try:
        _tell(*_pinned(old, new))
    except BrokenPipeError:
        raise
    except Exception as fault:  # a fault of our own, and Git has other files to show
        sys.stdout.write(report(fault))
        _lines(old, new)
    return CLEAN


def _sides(arguments: Sequence[str]) -> tuple[Side, Side]:
    path, *both = arguments[:7]
    now = arguments[7] if len(arguments) > 7 else path
    return _side(path, *both[:3]), _side(now, *both[3:])


def _side(path: str, file: str, hex: str, mode: str) -> Side:
    if file == os.devnull or not os.path.lexists(file):
        return Side(path, Path(os.devnull), _NO_BLOB, True)
    known = hex if NAME.fullmatch(hex) and hex.strip("0") else ""
    return Side(path, Path(os.path.abspath(file)), known, mode.startswith("100"))


# --- the commits that the two are from, for what they include ------------------------------------------------


def _pinned(old: Side, new: Side) -> tuple[Side, Side]:
    """Git tells blobs, not commits. The commit that changed the one into the other is looked for; else for each HEAD,
    where it has the blob, or the latest that had it, as marks are only added to. What none has is staged, or of the
    working folder."""
    if not new.hex:
        return _found(old, None), new
    history = list(_history(new.path))
    for commit, before, after in history:
        if after == new.hex and (before if old.path == new.path else _blob(old.path, f"{commit}^")) == old.hex:
            return _at(old, f"{commit}^"), _at(new, commit)
    return _found(old, history if old.path == new.path else None), _found(new, history)


def _history(path: str) -> Iterator[tuple[str, str, str]]:
    """Commits that changed the file of that name, the latest first, each with the blobs before and after."""
    place = _place(path, "HEAD")
    if place is None:
        return
    options = ("--all", "--raw", "--no-abbrev", "--no-renames", "--no-show-signature", "--no-color", "--format=%H")
    asked = git(place[0].top, "log", f"--max-count={MOST_COMMITS}", *options, "--", place[1])
    commit = ""
    for line in asked.out.decode("utf-8", "replace").split("\n"):
        if NAME.fullmatch(line):
            commit = line
        elif raw := _RAW.match(line):
            yield commit, raw[1], raw[2]


def _found(side: Side, history: Iterable[tuple[str, str, str]] | None) -> Side:
    """`history`: that of the side's path, where it is known already."""
    if not side.hex or not side.there:
        return side
    if _blob(side.path, "HEAD") == side.hex:
        return _at(side, "HEAD")
    for commit, before, after in _history(side.path) if history is None else history:
        if side.hex in (before, after):
            return _at(side, f"{commit}^" if before == side.hex else commit)
    return replace(side, staged=_staged(side))


def _at(side: Side, name: str) -> Side:
    found = revision(side.path, name) if side.there else None
    return replace(side, at=found) if isinstance(found, Revision) else side


def _blob(path: str, name: str) -> str:
    """The blob that the file was at that revision; zeros where there was none."""
    place = _place(path, name)
    entry = place[0].entry(place[1]) if place else None
    return entry.hex if isinstance(entry, Entry) and entry.kind == "blob" else _NO_BLOB


def _staged(side: Side) -> bool:
    place = _place(side.path, "HEAD")
    listed = git(place[0].top, "ls-files", "--stage", "-z", "--", place[1]).out if place else b""
    return any(re.match(rb"\d{6} %s " % side.hex.encode(), entry) for entry in listed.split(b"\0"))


def _place(path: str, name: str) -> tuple[Revision, str] | None:
    """The revision, and how the file is called in it, from the top."""
    found = revision(path, name)
    place = None if isinstance(found, Diagnostic) else found.resolved(Path(path))
    if isinstance(found, Diagnostic) or not isinstance(place, Path):
        return None
    called_there = found.name_of(place)
    return None if called_there is None else (found, called_there)


# --- what is told -------------------------------------------------------------------------------------------


def _tell(old: Side, new: Side) -> None:
    jobs: list[Job] = []
    for side in (old, new):
        if side.there and side.ordinary:
            jobs.append(_compiled(side, jobs[0].result.value if jobs else None))
    wrong = [job for job in jobs if job.failed]
    if not (old.ordinary and new.ordinary) or wrong or not any(map(_makes_boards, jobs)):
        wrong = [job for job in wrong if any(_PROJECT.search(source.text) for source in job.sources.values())]
        tell(sys.stdout, [d for job in wrong for d in job.result.diagnostics], sources_of(wrong))
        _lines(old, new)
    elif len(jobs) == 1:
        print(_alone(jobs[0], new if new.there else old, "a new spec" if new.there else "the spec is gone"))
    else:
        from setout.cli.diff import compared

        sys.stdout.write(as_text(build(compared(*jobs), Names(old.name, new.name))))
    print()


def _makes_boards(job: Job) -> bool:
    """Not so a file that is only there to be included."""
    return job.result.value is not None and bool(job.result.value.pieces.pieces)


def _compiled(side: Side, before: Plan | None) -> Job:
    """Git's file as the spec's text; what it includes and its marks from beside the spec itself."""
    base = DISK if side.at is None else side.at.reading
    folder = base.resolved(Path(os.path.abspath(side.path)).parent)
    main = folder if isinstance(folder, Refusal) else folder / Path(side.path).name

    def resolved(path: Path) -> Path | Refusal:
        return main if os.path.abspath(path) == os.path.abspath(side.path) else base.resolved(path)

    def read(path: Path, limit: int) -> bytes | Refusal:
        if path != main:
            return base.read_bytes(path, limit)
        return read_bytes(Path(os.path.realpath(side.file)), limit)

    job = compiled(side.path, {}, lambda stage: None, reading=Reading(resolved, read), before=before)
    return called(job, side.behind) if side.behind else job


def _alone(job: Job, side: Side, says: str) -> str:
    assert job.result.value is not None
    pieces = job.result.value.pieces
    boards = counted(sum(piece.count for piece in pieces.pieces), ("board", "boards"))
    kinds = counted(len(pieces.pieces), ("kind", "kinds"))
    title = pieces.joined.placed.project.title
    return f"{shown(title)}: {side.name}\n{says}, {boards} of {kinds}"


def _lines(old: Side, new: Side) -> None:
    """Line by line, as Git shows other files."""
    print(f"--- {f'a/{shown(old.path)}' if old.there else os.devnull}")
    print(f"+++ {f'b/{shown(new.path)}' if new.there else os.devnull}")
    if any(side.there and os.path.getsize(side.file) > MOST_BYTES for side in (old, new)):
        print("(too large to be compared line by line)")
        return
    plain = ("--no-index", "--no-color", "--no-ext-diff", "--no-textconv", "--text", "--")
    made = git(Path(os.sep), "diff", *plain, os.fspath(old.file), os.fspath(new.file)).out.decode("utf-8", "replace")
    _, hunk, rest = made.partition("\n@@")
    for line in f"{hunk}{rest}".strip("\n").split("\n") if hunk else ():
        print("\t".join(shown(part) for part in line.split("\t")))
