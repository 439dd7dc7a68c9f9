"""The words on a piece's drawing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise

from setout.drawing.piecing.laying import Lie
from setout.drawing.piecing.machining import Kind
from setout.geometry import Axis, Face
from setout.place.model import Board, Mitre
from setout.units import Style, drilled, printed, said, say, sunk

MANY = 5  # holes in a row, from which on the distance between them is worth saying
_KINDS = {
    "pocket": "pocket hole",
    "clearance": "screw hole",
    "pilot": "pilot hole",
    "dowel": "dowel hole",
    "hardware": "hole for hardware",
    "hole": "hole",
}


def edge_name(board: Board, face: Face) -> str:
    """`top edge`; of a stick the two ends of its run are ends."""
    return f"{face.word} {'end' if face.axis == board.run else 'edge'}"


def seen_from(board: Board, lie: Lie, measures: Iterable[str]) -> str:
    """What one looks at, which way it lies, and which face is the good one."""
    words = [f"Seen from {_stood(lie.face)}"]
    up = lie.edge("top")
    if lie.right.word == "top":
        words[0] += f", {edge_name(board, lie.right)} laid to the right"
    elif board.thick == 1:
        words[0] += f", {edge_name(board, up)} at the top of the page"
    if board.show:
        words.append(_good(board.show, lie))
    if board.bands:
        words.append(f"Banded: {_listed(board, dict.fromkeys(band.face for band in board.bands))}")
    held = ", ".join(sorted(measures))
    if held:
        words.append(f"HELD: numbers in brackets wait for {held.replace('_', ' ')}")
    return ". ".join(words) + "."


def _stood(face: Face) -> str:
    return {"top": "above", "bottom": "below"}.get(face.word, f"the {face.word}")


def _good(show: Face, lie: Lie) -> str:
    if show == lie.face:
        return "This is the good face"
    return (
        f"The good face is the other one ({show.word})"
        if show.axis == lie.face.axis
        else f"The good side is the {show.word}"
    )


def named(kind: Kind, board: Board, style: Style) -> str:
    """What a line of the key is about and where it is."""
    what = f"hole for {kind.fitted}" if kind.fitted else _KINDS.get(kind.what, kind.what)
    if kind.toward:
        return f"{what}, toward {_listed(board, kind.toward)}"
    if kind.cuts:
        served = dict.fromkeys(_plain(c.for_board) for c in kind.cuts if c.for_board)
        name = f"{what} for {_and(list(served))}" if served else what
        return name if kind.faces[0].axis == board.thick else f"{name}, in {_listed(board, kind.faces)}"
    if kind.off is None:
        return what + _pitched(kind, board, style)
    where = f"{what}, in {_listed(board, kind.faces)}"
    aside = abs(kind.off - board.box.size(board.thick) / 2)
    return f"{where}, centred" if aside < style.mark / 2 else f"{where}, {say(kind.off, style)} from this face"


def _pitched(kind: Kind, board: Board, style: Style) -> str:
    """`, 2 rows of 12, 32 mm apart`, for holes that all stand in such rows."""
    across = [axis for axis in Axis if axis != board.thick]
    for axis, other in (across, across[::-1]):
        lines: dict[Fraction, set[Fraction]] = {}
        for bore in kind.bores:
            lines.setdefault(bore.at[other], set()).add(bore.at[axis])
        steps = {b - a for line in lines.values() for a, b in pairwise(sorted(line))}
        most = {len(line) for line in lines.values()}
        if len(steps) == 1 and len(most) == 1 and max(most) >= MANY:
            rows = "in a row" if len(lines) == 1 else f"{len(lines)} rows of {max(most)}"
            step = pitch(steps.pop(), style)
            return f", {rows}, {step} apart" if step else f", {rows}, evenly spaced"
    return ""


def pitch(step: Fraction, style: Style) -> str:
    """A step that may be laid off again and again, so never rounded: in the job's unit, else in the other one with its
    name, else ""."""
    own = sunk(step, style)
    if own.exact:
        return own.text
    inches = Style(False, Fraction(1, 16))
    return said(step, inches) if style.metric and printed(step, inches).exact else ""


def _plain(path: str) -> str:
    """`shelf` for `bookcase.shelf.2`, whose brothers stand in the same kind of housing."""
    names = [n for n in path.split(".") if not n.isdigit()]
    return names[-1].replace("_", " ") if names else path


def _listed(board: Board, faces: Iterable[Face]) -> str:
    faces = list(faces)
    words = {edge_name(board, f).rpartition(" ")[2] for f in faces}
    if len(words) == 1 and len(faces) > 1:
        return f"{_and([f.word for f in faces])} {words.pop()}s"
    return _and([edge_name(board, f) for f in faces])


def _and(words: list[str]) -> str:
    return words[0] if len(words) == 1 else ", ".join(words[:-1]) + " and " + words[-1]


def depth(kind: Kind, style: Style) -> str:
    if kind.what == "pocket":
        return "slanting"
    if kind.depth is None:
        return "right through"
    return say(kind.depth, style) if kind.cuts else sunk(kind.depth, style).marked


def driven(kind: Kind, style: Style) -> str:
    """The fastener, and where the drill's stop stands."""
    stop = [] if kind.setting is None else [f"drill stop {say(kind.setting, style)}"]
    return ", ".join([w for w in [kind.fastener] if w] + stop)


def mitre(m: Mitre) -> str:
    return f"{_degrees(m.angle)}° mitre, long on the {m.long.word}"


def _degrees(angle: Fraction) -> str:
    return f"{float(angle):.2f}".rstrip("0").rstrip(".")


def row_title(board: Board, edge: Face, zero: Face, what: Sequence[str]) -> tuple[str, ...]:
    """What stands along a side with running dimensions, the longest wording first."""
    name, start = edge_name(board, edge), edge_name(board, zero)
    if {"holes", "holes in the edge"} <= set(what):
        what = [w for w in what if w != "holes in the edge"]
        what[what.index("holes")] = "holes in face and edge"
    return (
        f"{name} · {_and(list(what))}, from the {start}",
        f"{name} · from the {start}",
        f"{name} · 0 is {zero.word}",
        name,
    )


def out_of_scale(wider: bool) -> str:
    return "Drawn wider than to scale." if wider else "Drawn longer than to scale."


def across(kind: Kind, style: Style) -> str:
    """A housing's width in the builder's marks; a drill's size as it is sold, not rounded to them."""
    if kind.cuts:
        return say(kind.size, style)
    return drilled(kind.size, style).marked
