"""What became of each board."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set

from setout.compare.joints import Held, rejoined
from setout.compare.known import Known, Place
from setout.compare.machining import machined
from setout.compare.model import ANEW, BoardChange, BoardSide, Sized
from setout.geometry import AXIS_WORDS
from setout.piece.parse import measures_of

LOOSE_AXES = ("long", "wide", "thick")


def changes(
    pairs: Sequence[tuple[Known, Known]],
    old: Sequence[Known],
    new: Sequence[Known],
    held: tuple[Held, Held],
    owners: Mapping[str, str],
) -> tuple[BoardChange, ...]:
    """In the order of the new plan; what is gone comes after what it stood behind."""
    to_new = {a.path: b.path for a, b in pairs}
    stayed = set(to_new.values())
    found = {b.path: _change(a, b, held, to_new, stayed, owners) for a, b in pairs}
    ordered: list[BoardChange] = []
    behind = _gone_behind(old, to_new)
    ordered.extend(behind.get("", ()))
    for board in new:
        change = found.get(board.path, BoardChange(("added",), None, board.side))
        ordered.extend([change] if change.how else [])
        ordered.extend(behind.get(board.path, ()))
    return tuple(ordered)


def _gone_behind(old: Sequence[Known], to_new: Mapping[str, str]) -> dict[str, list[BoardChange]]:
    found: dict[str, list[BoardChange]] = {}
    last = ""
    for board in old:
        if board.path in to_new:
            last = to_new[board.path]
        else:
            found.setdefault(last, []).append(BoardChange(("gone",), board.side, None))
    return found


def _change(
    old: Known,
    new: Known,
    held: tuple[Held, Held],
    to_new: Mapping[str, str],
    stayed: Set[str],
    owners: Mapping[str, str],
) -> BoardChange:
    same = old.key == new.key
    lying = old.thick == new.thick
    sized = _sized(old, new) if lying else ()
    work = machined(old, new) if lying and not (same and old.is_worked_like(new)) else ()
    gone, added = rejoined(old, new, held, to_new, stayed)
    grain = None if old.grain == new.grain or not lying else (old.grain, new.grain)
    face = None if old.face == new.face or not lying else (old.face, new.face)
    how = {
        "renamed": _renamed(old.side, new.side, owners),
        "restocked": old.stock != new.stock,
        "resized": bool(sized) or (not lying and old.side.sizes != new.side.sizes),
        "counted": old.side.count != new.side.count,
        "regrained": grain is not None,
        "refaced": face is not None,
        "machined": bool(work),
        "rejoined": bool(gone or added),
        "turned": not lying,
        "moved": old.low != new.low,
        "marked": same and old.side.mark != new.side.mark and not measures_of(new.side.shape),
    }
    cut_anew = any(how.get(word) for word in ANEW)
    how["other-hand"] = not same and old.mirrored != new.mirrored and not cut_anew
    how["machined"] |= not same and not cut_anew and not how["other-hand"]
    return BoardChange(
        tuple(word for word, is_so in how.items() if is_so),
        old.side,
        new.side,
        sized,
        grain,
        face,
        work,
        gone,
        added,
        _moved(old.low, new.low),
    )


def _renamed(old: BoardSide, new: BoardSide, owners: Mapping[str, str]) -> bool:
    return old.name != new.name or owners.get(old.owner) != new.owner


def _sized(old: Known, new: Known) -> tuple[Sized, ...]:
    words = LOOSE_AXES if old.low is None else AXIS_WORDS
    return tuple(
        Sized("thick" if k == old.thick else words[k], a, b)
        for k, (a, b) in enumerate(zip(old.sizes, new.sizes))
        if a != b
    )


def _moved(old: Place | None, new: Place | None):
    if old is None or new is None or old == new:
        return None
    return tuple(b.low - a.low for a, b in zip(old, new))
