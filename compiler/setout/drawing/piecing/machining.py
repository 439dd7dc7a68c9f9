"""What is done to one board, gathered into kinds that share a letter on the drawing and a line in its key."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.drawing.piecing.laying import across_edge
from setout.geometry import Face
from setout.join.model import Bore, Cavity, JoinedBoard

_LETTERS = "abcdefghkmnprtuvwxy"  # none that reads as a figure or as another letter when pencilled


@dataclass(frozen=True)
class Kind:
    """Work that is all alike. `size` is a cavity's width or a hole's diameter; `depth` None is right through.

    `faces` are those it is cut or drilled into, `toward` the edges that pockets point at. `off` is how far from the
    seen face the centre of a hole in an edge lies. `setting` is the drill stop's, `fitted` the hardware that holes are
    for.
    """

    letter: str
    what: str
    size: Fraction
    depth: Fraction | None
    count: int
    faces: tuple[Face, ...]
    toward: tuple[Face, ...]
    off: Fraction | None
    fastener: str
    setting: Fraction | None
    fitted: str
    cuts: tuple[Cavity, ...]
    bores: tuple[Bore, ...]


def kinds(
    board: JoinedBoard, seen: Face, settings: Mapping[str, Fraction], titles: Mapping[str, str]
) -> tuple[Kind, ...]:
    """Cavities first, then holes, in the order they first turn up. `settings`: drill stops by contact; `titles`: of
    hardware by a bore's source."""
    groups: dict[tuple[object, ...], list[Cavity | Bore]] = {}
    for cut in board.cuts:
        groups.setdefault((cut.kind, cut.face, cut.width, cut.depth), []).append(cut)
    for bore in board.bores:
        groups.setdefault(_bore_key(board, bore, seen, settings, titles), []).append(bore)
    lettered = ((_letter(n), list(group)) for n, group in enumerate(groups.values()))
    return tuple(_kind(letter, group, board, seen, settings, titles) for letter, group in lettered)


def _bore_key(
    board: JoinedBoard, bore: Bore, seen: Face, settings: Mapping[str, Fraction], titles: Mapping[str, str]
) -> tuple[object, ...]:
    broad = bore.face if bore.face.axis == board.board.thick else _off(board, bore, seen)
    by = settings.get(bore.source), titles.get(bore.source)
    return (bore.kind, broad, bore.diameter, bore.depth, bore.fastener, *by)


def _off(board: JoinedBoard, bore: Bore, seen: Face) -> Fraction | None:
    axis = board.board.thick
    return None if bore.face.axis == axis else across_edge(bore, axis, board.box, seen)


def _kind(
    letter: str,
    group: Sequence[Cavity | Bore],
    board: JoinedBoard,
    seen: Face,
    settings: Mapping[str, Fraction],
    titles: Mapping[str, str],
) -> Kind:
    first = group[0]
    faces = tuple(dict.fromkeys(g.face for g in group))
    if isinstance(first, Cavity):
        cuts = tuple(g for g in group if isinstance(g, Cavity))
        return Kind(letter, first.kind, first.width, first.depth, len(group), faces, (), None, "", None, "", cuts, ())
    bores = tuple(g for g in group if isinstance(g, Bore))
    toward = tuple(dict.fromkeys(b.toward for b in bores if b.toward))
    off, setting = _off(board, first, seen), settings.get(first.source)
    return Kind(
        letter,
        first.kind,
        first.diameter,
        first.depth,
        len(group),
        faces,
        toward,
        off,
        first.fastener,
        setting,
        titles.get(first.source, ""),
        (),
        bores,
    )


def _letter(n: int) -> str:
    """a, b, c …, then aa, ab …"""
    rounds, n = divmod(n, len(_LETTERS))
    return (_LETTERS[(rounds - 1) % len(_LETTERS)] if rounds else "") + _LETTERS[n]
