"""What becomes of boards that are cut already, and what is still to be cut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import partial

from setout.compare.model import Changes, Fate, ToCut
from setout.units import Style
from setout.write.changes import wording
from setout.write.changes.boards import at_places
from setout.write.changes.model import Table

Places = Mapping[str, tuple[str, str]]
MANY = 8
"""Of more marks than so many it isn't said which boards they are: that stands under `Boards`."""


def cut_already(changes: Changes, style: Style) -> Iterator[Table]:
    of: dict[str, list[Fate]] = {}
    for fate in changes.reuse.fates:
        of.setdefault(fate.kind, []).append(fate)
    old, new = _places(changes)
    size = {c.new.mark: c.new.sizes for c in changes.boards if c.new}
    heads = ("Mark", "Board", "Do")
    pencil = tuple((_marks(f), _where(f.becomes, new)) for f in of.get("right", ()) if f.old != f.new)
    counts = tuple(f.count for f in of.get("right", ()) if f.old != f.new)
    yield Table("remark", "Cut already: right, under another mark", "", heads[:2], pencil, counts)
    done = partial(wording.done, sizes=size, style=style)
    rows = tuple((_marks(f), _where(f.becomes, new), done(f)) for f in of.get("reworked", ()))
    note = _packet(of.get("reworked", ()))
    yield Table("rework", "Cut already: to be reworked", note, heads, rows, _counts(of, "reworked"))
    rows = tuple((_marks(f), _from_to(f, old, new), done(f)) for f in of.get("serves", ()))
    note = "" if of.get("reworked") else _packet(of.get("serves", ()))
    yield Table("serve", "Cut already: to serve elsewhere", note, heads, rows, _counts(of, "serves"))
    yield Table("lost", "Cut already: lost", "", ("Why", "Boards"), tuple(_lost(of.get("lost", ()), changes, old)))
    yield Table("cut", "Still to be cut", "", ("Of", "Boards"), tuple(_to_cut(changes, of.get("uncut", ()))))


def _counts(of: Mapping[str, Sequence[Fate]], kind: str) -> tuple[int, ...]:
    return tuple(fate.count for fate in of.get(kind, ()))


def _packet(fates: Iterable[Fate]) -> str:
    work = any(task.kind != "plug" for fate in fates if fate.way for task in fate.way.tasks)
    return "Where holes, housings and notches go, and their sizes, stand in the new packet." if work else ""


def _places(changes: Changes) -> tuple[Places, Places]:
    """Owner and name of every board of which something is said, by its path before, and now."""
    old = {c.old.path: (c.old.owner, c.old.name) for c in changes.boards if c.old}
    return old, {c.new.path: (c.new.owner, c.new.name) for c in changes.boards if c.new}


def _where(paths: Iterable[str], places: Places) -> str:
    return at_places(places.get(path, ("", path)) for path in dict.fromkeys(paths))


def _from_to(fate: Fate, old: Places, new: Places) -> str:
    return f"{_where(fate.boards, old)} → {_where(fate.becomes, new)}"


def _marks(fate: Fate) -> str:
    """`A2 × 2 → A8`."""
    start = _count(fate.old, fate.count)
    return start if fate.new in (None, fate.old) else f"{start} → {fate.new}"


def _count(mark: str, count: int) -> str:
    return mark if count == 1 else f"{mark} × {count}"


def _lost(fates: Sequence[Fate], changes: Changes, old: Places) -> Iterator[tuple[str, str]]:
    kept = {path for fate in changes.reuse.fates if fate.new for path in fate.boards}
    by_why: dict[tuple[str, str], list[Fate]] = {}
    for fate in fates:
        spare = fate.why in ("unwanted", "taken") and kept.issuperset(fate.boards)
        by_why.setdefault(("spare" if spare else fate.why, fate.hint), []).append(fate)
    for (why, hint), some in by_why.items():
        rest = list(some)
        words = list(_whole_stocks(rest, changes)) if why in ("thickness", "stock") else []
        says = f"{wording.WHY_LOST[why]}: say `grain {hint}` and it can be trimmed" if hint else wording.WHY_LOST[why]
        yield says, "; ".join([*words, *_grouped(rest, old, len(rest) > MANY)])


def _whole_stocks(fates: list[Fate], changes: Changes) -> Iterator[str]:
    """Stocks of which nothing is of use any more; their boards are taken out of `fates`."""
    material = {c.old.mark: c.old.material for c in changes.boards if c.old}
    for loss in changes.reuse.losses:
        some = [fate for fate in fates if material.get(fate.old) == loss.stock]
        if some and loss.lost == loss.cut:
            yield f"all of {loss.stock}, {wording.counted(sum(fate.count for fate in some), ('board', 'boards'))}"
            fates[:] = [fate for fate in fates if fate not in some]


def _grouped(fates: Iterable[Fate], old: Places, short: bool) -> Iterator[str]:
    """Boards of one assembly together: `C3, C4 left base: kick, worktop (2 holes)`. `short`: of all assemblies."""
    groups: dict[tuple, list[Fate]] = {}
    for fate in fates:
        owners = tuple(dict.fromkeys(old.get(path, ("", path))[0] for path in fate.boards))
        groups.setdefault((() if short else owners, wording.left_over(fate)), []).append(fate)
    for (_, left), some in groups.items():
        marks = ", ".join(_count(fate.old, fate.count) for fate in some)
        where = _where((path for fate in some for path in fate.boards), old)
        yield f"{marks} {where}{f' ({left})' if left else ''}"


def _to_cut(changes: Changes, uncut: Iterable[Fate]) -> Iterator[tuple[str, str]]:
    """By stock; but not what waited for its measure before, and still does."""
    waited = {fate.old for fate in uncut}
    rows: dict[str, list[ToCut]] = {}
    for cut in changes.reuse.to_cut:
        if not (cut.waits and cut.mark in waited):
            rows.setdefault(f"{cut.material}, once measured" if cut.waits else cut.material, []).append(cut)
    for material, some in rows.items():
        yield material, ", ".join(_count(cut.mark, cut.count) for cut in some)
