"""One spec taken from the disk through the compiler."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from setout.cli import problems
from setout.cli.codes import CLEAN, ERRORS, USAGE
from setout.cli.files import DISK, STANDARD_INPUT, Folder, Reading, Refusal
from setout.cli.marks import MarksFile, read_marks
from setout.cli.output import KEPT_SUFFIXES
from setout.diagnostics import Checked, Diagnostic
from setout.plan import Cut
from setout.plan.model import Plan
from setout.source import Source


@dataclass(frozen=True)
class Job:
    """`result` is what the compiler made of the spec; `sources` what diagnostics point into.

    `spec` and `marks` are None when the spec came from standard input or could not be read.
    """

    result: Checked[Plan]
    sources: Mapping[str, Source]
    spec: Path | None
    marks: MarksFile | None
    read: tuple[Path, ...]  # every file that was read
    misused: bool = False  # the spec named on the command line is no file at all

    @property
    def failed(self) -> bool:
        return self.result.failed or self.result.value is None

    @property
    def code(self) -> int:
        """The exit code, as far as it depends on the spec alone."""
        if self.failed:
            return USAGE if self.misused else ERRORS
        return CLEAN

    @property
    def own_files(self) -> tuple[Path, ...]:
        """What no document may be written over."""
        beside = () if self.spec is None else (self.spec.with_name(self.spec.stem + end) for end in KEPT_SUFFIXES)
        return (*self.read, *beside)


def sources_of(jobs: Iterable[Job]) -> dict[str, Source]:
    return {name: source for job in jobs for name, source in job.sources.items()}


def compiled(
    spec: str,
    settings: Mapping[str, str],
    tell: Callable[[str], None],
    cut: Cut | None = None,
    reading: Reading = DISK,
    before: Plan | None = None,
    refused: Callable[[str, str], Diagnostic] | None = None,
) -> Job:
    """Read the spec, what it includes and its marks, and compile them; `cut` plans the cutting. `before`: an earlier
    revision, whose marks are carried on. `refused` words it, from a Refusal's reason and detail, when the
    spec itself can't be read."""
    if spec == "-" and reading is DISK:  # elsewhere it is a file of that name
        return _from_standard_input(settings, tell, before)
    path = reading.resolved(Path(spec))
    spec = Path(spec).as_posix()
    refused = refused or partial(problems.spec_refused, spec)
    if isinstance(path, Refusal):
        return _unread(path, (), refused)
    folder = Folder(path.parent, reading)
    refusal = folder.take(spec, path)
    if refusal is not None:
        return _unread(refusal, folder.found, refused)
    marks = read_marks(path, spec, reading)
    if marks.value is None:
        return Job(Checked(None, marks.diagnostics), {}, path, None, (path,))
    return _run(spec, folder, settings, marks.value, tell, cut, before)


def _from_standard_input(settings: Mapping[str, str], tell: Callable[[str], None], before: Plan | None) -> Job:
    from setout.read import MAX_BYTES, decode

    text = decode(STANDARD_INPUT, sys.stdin.buffer.read(MAX_BYTES + 1))
    if text.value is None:
        return Job(Checked(None, text.diagnostics), {}, None, None, ())
    folder = Folder(Path.cwd().resolve(), sources={STANDARD_INPUT: text.value})
    return _run(STANDARD_INPUT, folder, settings, None, tell, before=before)


def _run(
    name: str,
    folder: Folder,
    settings: Mapping[str, str],
    marks: MarksFile | None,
    tell: Callable[[str], None],
    cut: Cut | None = None,
    before: Plan | None = None,
) -> Job:
    from setout.pipeline import compile_spec, in_order

    register = marks.source if marks else Source("marks", "")
    if before is not None:
        from setout.compare import carried_on

        register = carried_on(register, before)
    result = compile_spec(folder.sources[name], folder.included, settings, register, tell, cut)
    if result.value is None and not result.failed:
        raise RuntimeError("a stage handed nothing on and did not say why")
    told = [_with_reason(d, folder) for d in result.diagnostics]
    found = in_order([*told, *folder.found], name)
    sources = {**folder.sources, register.name: register}
    return Job(Checked(result.value, found), sources, folder.paths.get(name), marks, tuple(folder.paths.values()))


def _with_reason(found: Diagnostic, folder: Folder) -> Diagnostic:
    """The stages know only that an included file was not to be had. Why, is known here."""
    for name, refusal in folder.refused.items():
        if found.code == problems.NOT_INCLUDED and found.message.endswith(f" {name}"):
            return problems.include_refused(found, refusal.reason, refusal.detail)
    return found


def _unread(refusal: Refusal, told: Sequence[Diagnostic], refused: Callable[[str, str], Diagnostic]) -> Job:
    if refusal.reason == "told":
        return Job(Checked(None, tuple(told)), {}, None, None, ())
    found = refused(refusal.reason, refusal.detail)
    return Job(Checked(None, (found,)), {}, None, None, (), misused=True)
