"""The marks file: one line an entry, only ever added to.

    marks 1                                                        the version, above all else
    A letter base                                              an assembly's letter ("the job": the job's own boards)
    A1 cut 1 sheet ply 30 x 11 x 23/32 grain length            a board that can be cut
    A2 held 1 sheet ply (40 - bed) x 11 x 23/32 grain length   a board that hangs on a measure
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from setout.diagnostics import Checked, Diagnostic
from setout.piece import problems
from setout.piece.letters import JOB, LETTERS
from setout.piece.model import Entry, Register
from setout.piece.parse import is_shape, measures_of
from setout.source import Source, Span

FILE_VERSION = "1"
HEADER = f"""\
# The marks of this job's boards. Keep this file beside the spec, in version control with it.
# Setout adds lines and never changes one: a mark that is pencilled on a board stays that board's.
marks {FILE_VERSION}
"""
_MARK = re.compile(rf"[{LETTERS}]{{1,4}}[1-9][0-9]{{0,8}}")
_LETTER = re.compile(rf"[{LETTERS}]{{1,4}}")
_ASSEMBLY = re.compile(rf"[^\W\d]\w*(\.[^\W\d]\w*)*|{JOB}")  # `chest.bay.drawer`: what an opening is filled with
_SHOWN = 40


@dataclass(frozen=True)
class _Line:
    entry: Entry
    span: Span
    measures: frozenset[str]


def parse_register(source: Source) -> Checked[Register]:
    """The entries of a marks file ("" is an empty one). Lines that can't be trusted are errors and left out."""
    lines: list[_Line] = []
    found: list[Diagnostic] = []
    for text, span in _lines(source):
        version = re.fullmatch(r"marks +(\S+)", text)
        if version:
            if version[1] != FILE_VERSION:
                return Checked(None, (problems.unknown_version(version[1], FILE_VERSION, span),))
            continue
        line = _line(text, span)
        if line is None:
            found.append(problems.damaged(text[:_SHOWN], span))
        else:
            lines.append(line)
    found.extend(_doubled([line for line in lines if line.entry.kind != "letter"]))
    return Checked(Register(tuple(line.entry for line in lines)), tuple(found))


def register_text(entries: Iterable[Entry], fresh: bool = False) -> str:
    """The lines to add to the marks file; `fresh`: there is no file yet."""
    lines = "".join(f"{e.mark} {e.kind} {e.shape}\n" for e in entries)
    return (HEADER if fresh else "") + lines


def _lines(source: Source) -> Iterable[tuple[str, Span]]:
    at = 0
    for raw in source.text.split("\n"):
        text = raw.strip()
        if text and not text.startswith("#"):
            start = at + raw.index(text)
            yield text, Span(source.name, start, start + len(text))
        at += len(raw) + 1


def _line(text: str, span: Span) -> _Line | None:
    mark, _, rest = text.partition(" ")
    kind, _, said = rest.partition(" ")
    if kind == "letter":
        fits = _LETTER.fullmatch(mark) and _ASSEMBLY.fullmatch(said)
        return _Line(Entry(mark, kind, said), span, frozenset()) if fits else None
    if not _MARK.fullmatch(mark) or kind not in ("cut", "held") or not is_shape(said):
        return None
    measures = measures_of(said)
    return None if kind == "cut" and measures else _Line(Entry(mark, kind, said), span, measures)


def _doubled(lines: list[_Line]) -> Iterable[Diagnostic]:
    """A mark may stand in several lines only while its piece comes off hold, each line hanging on fewer measures; a
    shape in several only when the mark it had has since moved on."""
    by_mark: dict[str, _Line] = {}
    by_shape: dict[tuple[str, str], _Line] = {}
    for line in lines:
        entry = line.entry
        before, same = by_mark.get(entry.mark), by_shape.get((entry.kind, entry.shape))
        if same and by_mark[same.entry.mark] is same:
            yield problems.shape_twice(same.entry.mark, same.span, entry.mark, line.span)
        elif before and not _comes_off(before, line):
            yield problems.mark_twice(entry.mark, before.span, line.span)
        by_mark[entry.mark] = line
        by_shape[entry.kind, entry.shape] = line


def _comes_off(before: _Line, after: _Line) -> bool:
    if before.entry.kind == "cut":
        return False
    return after.entry.kind == "cut" or after.measures < before.measures
