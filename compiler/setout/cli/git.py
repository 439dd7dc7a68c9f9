"""Files as they were at a revision. The only place that runs Git, and it only ever asks it.

Nothing that a user or a repository names is taken for an option, no pager, filter, hook or network is used, and what
the environment says of another repository (as within a hook) is left out of account.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from setout.cli import problems
from setout.cli.files import Reading, Refusal, resolved, said_by_system
from setout.diagnostics import Diagnostic

SECONDS = 30
LONGEST = 500  # letters of a revision's name
NAME = re.compile(r"[0-9a-f]{40}|[0-9a-f]{64}")  # of a commit or a blob, in full
_ENTRY = re.compile(rb"(\d{6}) (\w+) ([0-9a-f]{40,64})\t([^\0]*)")
_NO_REPOSITORY = re.compile(b"not a git repository|must be run in a work tree")
_KEPT = ("GIT_CEILING_DIRECTORIES",)  # how far up the user lets Git look for a repository
_ALWAYS = {
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_ALLOW_PROTOCOL": "none",
    "GIT_PAGER": "cat",
    "LC_ALL": "C",
}


@dataclass(frozen=True)
class Entry:
    """What a commit has under a name. `kind`: blob (a file or a link), tree or commit (a submodule). `path`: what it is
    called there, which is less than was asked for when that lies below a file or a submodule."""

    mode: str
    kind: str
    hex: str
    path: str


@dataclass(frozen=True)
class Revision:
    """One commit, as the files of the folder `root` were then. `root` is absolute with its links resolved; `typed` is
    the same folder as it was named, absolute. Below it names are looked up in the commit alone."""

    top: Path
    commit: str
    root: Path
    typed: Path

    @property
    def reading(self) -> Reading:
        return Reading(self.resolved, self.read_bytes)

    def resolved(self, path: Path) -> Path | Refusal:
        """Where the file is in the working folder, whether or not it is there now."""
        try:
            whole = Path(os.path.abspath(path))
        except ValueError as trouble:
            return Refusal("unreadable", said_by_system(trouble))
        return self.root / whole.relative_to(self.typed) if whole.is_relative_to(self.typed) else whole

    def read_bytes(self, path: Path, limit: int) -> bytes | Refusal:
        """All of an ordinary file, or a refusal when that is more than `limit`."""
        name = self.name_of(path)
        if name is None:
            return Refusal("outside")
        entry = self.entry(name)
        if isinstance(entry, Refusal):
            return entry
        if entry.kind == "blob" and entry.path != name:
            return Refusal("missing")
        if entry.mode not in ("100644", "100755", "100664"):
            return Refusal({"tree": "folder", "commit": "submodule"}.get(entry.kind, "link"))
        return self._blob(entry.hex, limit)

    def name_of(self, path: Path) -> str | None:
        """How a resolved path is called in the commit, from the top; None where it lies outside."""
        return path.relative_to(self.top).as_posix() if path.is_relative_to(self.top) else None

    def entry(self, name: str) -> Entry | Refusal:
        """What the commit has under a name from `name_of`."""
        listed = git(self.top, "ls-tree", "-z", "--full-tree", self.commit, "--", name)
        found = _ENTRY.match(listed.out)
        if listed.failed or found is None:
            return Refusal("unreadable", listed.said) if listed.failed else Refusal("missing")
        return Entry(*map(os.fsdecode, found.groups()))

    def _blob(self, blob: str, limit: int) -> bytes | Refusal:
        size = git(self.top, "cat-file", "-s", blob)
        if not size.failed and int(size.out) > limit:
            return Refusal("large", f"{int(size.out):,}")
        data = size if size.failed else git(self.top, "cat-file", "blob", blob)
        return Refusal("unreadable", data.said) if data.failed else data.out


def revision(spec: str, name: str) -> Revision | Diagnostic:
    """The revision that `name` is in the repository that the file `spec` is kept in."""
    typed = Path(os.path.abspath(spec)).parent
    root = resolved(typed)
    if isinstance(root, Refusal):
        return problems.spec_refused(spec, root.reason, root.detail)
    top = repository(root, spec)
    if isinstance(top, Diagnostic):
        return top
    commit = _commit(top, name)
    return Revision(top, commit, root, typed) if commit else problems.no_revision(spec, name)


def repository(folder: Path, spec: str) -> Path | Diagnostic:
    """The top folder of the repository that a folder is in, which need not be there any more."""
    there = next((one for one in (folder, *folder.parents) if one.is_dir()), folder)
    found = git(there, "rev-parse", "--show-toplevel")
    if found.failed:
        return problems.no_repository(spec) if _NO_REPOSITORY.search(found.err) else problems.git_unusable(found.said)
    return Path(os.fsdecode(found.out.removesuffix(b"\n"))).resolve()


def _commit(folder: Path, name: str) -> str:
    """The commit's full name; "" when there is none of that name."""
    if not name or name.startswith("-") or len(name) > LONGEST or not name.replace(" ", "").isprintable():
        return ""
    found = git(folder, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
    commit = found.out.decode("ascii", "replace").strip()
    return commit if not found.failed and NAME.fullmatch(commit) else ""


# --- running it ------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Answer:
    failed: bool
    out: bytes
    err: bytes

    @cached_property
    def said(self) -> str:
        """What went wrong, in a line."""
        line = self.err.decode("utf-8", "replace").strip().split("\n")[0]
        return line.removeprefix("fatal: ").removeprefix("error: ") or "it failed and did not say why"


def git(folder: Path, *words: str) -> Answer:
    """Git's answer. Every word that comes from outside must stand behind something that ends the options."""
    program = shutil.which("git")
    if program is None or not os.path.isabs(program):  # one of the folder itself, a stranger's perhaps, is not run
        return Answer(True, b"", b"it is not installed, or not where programs are looked for")
    command = [
        program,
        "--no-pager",
        "--literal-pathspecs",
        "-c",
        "core.fsmonitor=false",
        "-C",
        os.fspath(folder),
        *words,
    ]
    try:
        run = subprocess.run(
            command, stdin=subprocess.DEVNULL, capture_output=True, env=_environment(), timeout=SECONDS, check=False
        )
    except subprocess.TimeoutExpired:
        return Answer(True, b"", f"it took more than {SECONDS} seconds".encode())
    except (OSError, ValueError) as trouble:
        return Answer(True, b"", said_by_system(trouble).encode("utf-8", "replace"))
    return Answer(run.returncode != 0, run.stdout, run.stderr)


def _environment() -> dict[str, str]:
    own = {name: value for name, value in os.environ.items() if not name.startswith("GIT_") or name in _KEPT}
    return own | _ALWAYS
