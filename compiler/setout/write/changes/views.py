"""What changed, drawn: before and after, and the cut lines on boards that are trimmed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from setout.compare.model import ANEW, BoardChange, Changes, Way
from setout.drawing import Apart, Drawing, Front, exploded_alike, fronts_alike, trimmed
from setout.geometry import Axis, Face
from setout.join.model import JoinedBoard
from setout.piece import flat
from setout.piece.model import Piece
from setout.write.facts import Facts
from setout.write.facts.paths import ranges
from setout.write.facts.ticks import ticks
from setout.write.facts.turning import squared, squared_scene, turned_board

CUT = ANEW | {"turned"}
"""How a board is another than before; one that is held otherwise, moved or renamed is not."""
GAP = 14.0
HIGH = 290.0  # points; two assemblies to a page
JOB_HIGH = 330.0
LOW = 0.6  # of it, each of two that stand one over the other
LINES_HIGH = 150.0


@dataclass(frozen=True)
class Both:
    """Before and after, `stacked` one over the other or else side by side. `names` of the assemblies that it is true
    of, as they are called now."""

    title: str
    names: tuple[str, ...]
    stacked: bool
    before: Drawing
    after: Drawing


@dataclass(frozen=True)
class CutLines:
    """Cut lines on `count` boards of the mark `old`, by which each becomes one of `new`."""

    old: str
    new: str
    count: int
    drawing: Drawing

    @property
    def ticks(self) -> int:
        return ticks(self.count)


@dataclass(frozen=True)
class Views:
    job: Both | None
    assemblies: tuple[Both, ...]
    cuts: tuple[CutLines, ...]


def views(changes: Changes, old: Facts, new: Facts) -> Views:
    """`old` and `new`: the facts of the two plans that were compared."""
    return Views(_job(changes, old, new), tuple(_assemblies(changes, old, new)), tuple(_cuts(changes, old, new)))


def _rooms(facts: Facts, high: float) -> tuple[tuple[float, float], ...]:
    """Side by side, or one over the other."""
    return ((facts.width - GAP) / 2, high), (facts.width, high * LOW)


def _is_cut_anew(change: BoardChange) -> bool:
    return change.old is None or change.new is None or bool(CUT.intersection(change.how))


def _is_placed(change: BoardChange, old: Facts, new: Facts) -> bool:
    """Whether it stands in either job, and is no loose board."""
    return any(side and side.path in f.joined.boards for side, f in ((change.old, old), (change.new, new)))


# --- the job ---------------------------------------------------------------------------------------------


def _job(changes: Changes, old: Facts, new: Facts) -> Both | None:
    """None where nothing in place is cut otherwise, or moves."""
    placed = [change for change in changes.boards if _is_placed(change, old, new)]
    if not (placed or changes.assemblies) or not (old.joined.boards and new.joined.boards):
        return None
    anew = [c for c in placed if _is_cut_anew(c)]
    before = Front(old.joined, old.mark_of, frozenset(c.old.path for c in anew if c.old), old.other_scenes)
    after = Front(new.joined, new.mark_of, frozenset(c.new.path for c in anew if c.new), new.other_scenes)
    best, drawn = fronts_alike((before, after), _rooms(new, JOB_HIGH), new.style)
    return Both("", (), best > 0, *drawn)


# --- assemblies ------------------------------------------------------------------------------------------


def _assemblies(changes: Changes, old: Facts, new: Facts) -> Iterator[Both]:
    """One for all that changed alike."""
    alike: dict[tuple, list[tuple[str, str]]] = {}
    for pair, some in _by_owner(changes, old, new).items():
        key = (
            *(facts.scene.instances[path].definition for facts, path in zip((old, new), pair)),
            *map(_likeness, some),
        )
        alike.setdefault(key, []).append(pair)
    for pairs in alike.values():
        yield _apart(changes, old, new, pairs)


def _by_owner(changes: Changes, old: Facts, new: Facts) -> dict[tuple[str, str], list[BoardChange]]:
    """What is cut anew, by the assembly that both plans have, before and now; each with boards of its own in both."""
    to_old = {new.place(pair.new)[0]: old.place(pair.old)[0] for pair in changes.pairs}
    to_new = {before: now for now, before in to_old.items()}
    found: dict[tuple[str, str], list[BoardChange]] = {}
    for change in filter(_is_cut_anew, changes.boards):
        before = change.old.owner if change.old else to_old.get(change.new.owner) if change.new else None
        now = change.new.owner if change.new else to_new.get(before or "")
        if before is None or now is None or before not in old.boards_of or now not in new.boards_of:
            continue
        if _is_placed(change, old, new):
            found.setdefault((before, now), []).append(change)
    return found


def _likeness(change: BoardChange) -> tuple:
    return tuple((side.name, side.mark, side.sizes) if side else () for side in (change.old, change.new))


def _apart(changes: Changes, old: Facts, new: Facts, pairs: list[tuple[str, str]]) -> Both:
    before, now = pairs[0]
    best, drawn = exploded_alike(
        (_side(old, before, [(c.old, c.new is None) for c in changes.boards if _is_cut_anew(c)], "left out"),
         _side(new, now, [(c.new, c.old is None) for c in changes.boards if _is_cut_anew(c)], "new")),
        _rooms(new, HIGH),
    )  # fmt: skip
    title = new.definition_title(new.scene.instances[now].definition)
    names = tuple(ranges(path for _, path in pairs)) if now else ()
    return Both(title, names, best > 0, *drawn)


def _side(facts: Facts, path: str, changed: Iterable[tuple], word: str) -> Apart:
    """`changed`: boards, and whether they are in this plan alone."""
    marks: dict[str, str] = dict(facts.mark_of)
    heavy = set()
    for board, alone in changed:
        if board is not None:
            heavy.add(board.path)
            marks[board.path] = f"{board.mark} {word}" if alone else board.mark
    motion = facts.scene.instances[path].motion
    return Apart(squared_scene(facts.joined, motion), path, marks, frozenset(heavy))


# --- cut lines -------------------------------------------------------------------------------------------


def _cuts(changes: Changes, old: Facts, new: Facts) -> Iterator[CutLines]:
    """Loose boards have no drawing, here as on the joinery sheets."""
    count: dict[tuple[str, str, Way], int] = {}
    for fate in changes.reuse.fates:
        if fate.way is not None and fate.way.trims and fate.new is not None:
            key = fate.old, fate.new, fate.way
            count[key] = count.get(key, 0) + fate.count
    for (before, now, way), copies in count.items():
        was, becomes = old.piece_by_mark[before], new.piece_by_mark[now]
        if was.exemplar is not None:
            board = turned_board(was.exemplar, squared(old.scene.instances[was.exemplar.board.owner].motion))
            ends = tuple(_ends(was, becomes, way, board))
            yield CutLines(before, now, copies, trimmed(board, ends, new.style, (new.width - GAP) / 2, LINES_HIGH))


def _ends(was: Piece, becomes: Piece, way: Way, board: JoinedBoard) -> Iterator[tuple[Face, Fraction]]:
    """The faces of the old board at which it is trimmed, and by how much: from where the new board lies in it, as a
    face's name may be another for each of the boards that bear the mark."""
    lying = flat(board)
    long = was.length.amount, was.width.amount, was.thick
    for axis, wanted in enumerate((becomes.length.amount, becomes.width.amount)):
        low = way.offset[axis]
        for sign, by in ((-1, low), (1, long[way.axes[axis]] - low - wanted)):
            if by:
                own = lying.to.index(way.axes[axis])
                yield Face(Axis(own), sign * way.signs[axis] * lying.sign[own]), by
