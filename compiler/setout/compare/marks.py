"""The marks of one revision carried on to the next."""

from __future__ import annotations

from collections.abc import Iterator

from setout.piece import Entry, Register, parse_register, register_text
from setout.piece.letters import JOB, letter_of
from setout.plan.model import Plan
from setout.source import Source


def carried_on(register: Source, old: Plan) -> Source:
    """The marks file of a later revision, with what the earlier one has and it lacks.

    A spec that was never built has no marks yet; counted anew for each revision, the same mark would be two boards.
    Where the two contradict each other the later one's own marks stand. A damaged file is handed back for others to
    tell of.
    """
    known = parse_register(register)
    if known.value is None or known.failed:
        return register
    more = register_text(tuple(_unknown(known.value, old)))
    gap = "" if not register.text or register.text.endswith("\n") else "\n"
    return Source(register.name, f"{register.text}{gap}{more}") if more else register


def _unknown(register: Register, old: Plan) -> Iterator[Entry]:
    marks = {entry.mark for entry in register.entries}
    shapes = {(entry.kind, entry.shape) for entry in register.entries}
    used = {letter_of(entry.mark) for entry in register.entries}
    for definition, letter in old.pieces.letters.items():
        entry = Entry(letter, "letter", definition or JOB)
        if letter not in used and (entry.kind, entry.shape) not in shapes:
            yield entry
    for piece in old.pieces.pieces:
        entry = Entry(piece.mark, "held" if piece.held else "cut", piece.shape)
        if entry.mark not in marks and (entry.kind, entry.shape) not in shapes:
            yield entry
