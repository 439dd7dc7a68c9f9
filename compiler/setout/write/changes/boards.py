"""Stocks that became others, boards that are cut otherwise, joints that are made otherwise."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from setout.compare.model import BoardChange, BoardSide, Changes
from setout.units import Style
from setout.write.changes import wording
from setout.write.changes.model import Table
from setout.write.changes.wording import ALL_ITS, ALL_THEIR
from setout.write.facts.paths import fold

MANY = 8
"""Of boards of more than so many sizes that change by as much, the marks alone are told, and the rest left to the cut
list."""


# --- stocks ----------------------------------------------------------------------------------------------


def stocks(changes: Changes, style: Style) -> Table:
    """What all changes of material and thickness come to."""
    rows: dict[str, list[BoardChange]] = {}
    for change in changes.boards:
        says = wording.material(change, style)
        if says:
            rows.setdefault(says, []).append(change)
    cells = tuple((says, _how_many(some), _of_which(some)) for says, some in rows.items())
    measured = any(map(_is_measured, changes.boards))
    return Table("stocks", "Stock", MEASURED if measured else "", ("Change", "Boards", "Which"), cells)


MEASURED = (
    "If the boards were measured better, and not bought otherwise, they are the boards that are cut already, and none "
    "is lost for its thickness: what hangs on it, housings and boards between others, is what changes."
)
CALIPER = Fraction(1, 16)
"""The same board measured twice differs by less."""


def _is_measured(change: BoardChange) -> bool:
    thick = [sized for sized in change.sized if sized.axis == "thick"]
    return "restocked" not in change.how and any(abs(sized.by) < CALIPER for sized in thick)


def _how_many(some: Iterable[BoardChange]) -> str:
    return str(sum(change.new.count for change in some if change.new))


def _of_which(some: Sequence[BoardChange]) -> str:
    """A stock that measures otherwise does so in all its boards."""
    return f"{_marks(some)} {_which(some)}" if "restocked" in some[0].how else "all of it"


# --- boards ----------------------------------------------------------------------------------------------


def boards(changes: Changes, style: Style) -> Table:
    """Those of assemblies that came or went are told of with them."""
    with_all = tuple(f"{path}." for a in changes.assemblies for path in (_alone(a),) if path)
    rows: dict[str, dict[str, list[BoardChange]]] = {}
    for change in changes.boards:
        side = change.new or change.old
        assert side is not None
        says = "; ".join(wording.board(change, style))
        if says and ((change.old and change.new) or not side.path.startswith(with_all)):
            rows.setdefault(says, {}).setdefault(wording.cut_size(change, style), []).append(change)
    cells = tuple(cell for says, by_size in rows.items() for cell in _cells(says, by_size))
    return Table("boards", "Boards", "", ("Mark", "Cut size", "Change", "Board"), cells)


def _cells(says: str, by_size: Mapping[str, list[BoardChange]]) -> Iterator[tuple[str, str, str, str]]:
    if len(by_size) > MANY:
        yield "", "", says.replace(ALL_ITS, ALL_THEIR), _marks(change for some in by_size.values() for change in some)
        return
    for size, some in by_size.items():
        several = sum(change.new.count for change in some if change.new) > 1
        yield _marks(some), size, says.replace(ALL_ITS, ALL_THEIR) if several else says, _which(some)


def _alone(assembly) -> str | None:
    return assembly.new if assembly.old is None else assembly.old if assembly.new is None else None


def _marks(some: Iterable[BoardChange]) -> str:
    pairs = (dict.fromkeys(side.mark for side in (c.old, c.new) if side) for c in some)
    return ", ".join(dict.fromkeys(" → ".join(pair) for pair in pairs))


def _which(some: Iterable[BoardChange]) -> str:
    return where(c.new or c.old for c in some if c.new or c.old)  # type: ignore[misc]


def where(sides: Iterable[BoardSide]) -> str:
    return at_places((side.owner, side.name) for side in sides)


def at_places(places: Iterable[tuple[str, str]]) -> str:
    """`left base, right base: kick; worktop`"""
    parts = []
    for group in fold(places):
        owners, names = ", ".join(group.owners), ", ".join(group.names)
        parts.append(f"{owners}: {names}" if owners else names)
    return "; ".join(parts)


# --- joints ----------------------------------------------------------------------------------------------


def joints(changes: Changes, style: Style) -> Table:
    """Each joint once, though both its boards tell of it."""
    to_new = {pair.old: pair.new for pair in changes.pairs}
    by_path = {c.new.path: (c.new.owner, c.new.name) for c in changes.boards if c.new}
    partners: dict[tuple[str, str], list[str]] = {}
    seen = set()
    for change in changes.boards:
        if change.new is None or not (change.unjoined or change.joined):
            continue
        for partner, says in _rejoined(change, to_new, style).items():
            if frozenset((change.new.path, partner)) not in seen:
                seen.add(frozenset((change.new.path, partner)))
                partners.setdefault((change.new.path, says), []).append(partner)
    rows: dict[str, dict[tuple[str, ...], list[str]]] = {}
    for (path, says), others in partners.items():
        rows.setdefault(says, {}).setdefault(tuple(others), []).append(path)
    which = ("; ".join(_with(paths, others, by_path) for others, paths in some.items()) for some in rows.values())
    return Table("joints", "Joints", "", ("Change", "Boards"), tuple(zip(rows, which)))


def _rejoined(change: BoardChange, to_new: Mapping[str, str], style: Style) -> dict[str, str]:
    """By partner, in the new plan's paths."""
    gone: dict[str, list[str]] = {}
    come: dict[str, list[str]] = {}
    for method in change.unjoined:
        gone.setdefault(to_new.get(method.partner, method.partner), []).append(wording.method(method, style))
    for method in change.joined:
        come.setdefault(method.partner, []).append(wording.method(method, style))
    both = dict.fromkeys((*gone, *come))
    return {partner: wording.instead(gone.get(partner, ()), come.get(partner, ())) for partner in both}


def _with(paths: Iterable[str], others: Iterable[str], by_path: Mapping[str, tuple[str, str]]) -> str:
    one, other = ([by_path.get(path, ("", path)) for path in some] for some in (paths, others))
    owners = {owner for owner, _ in (*one, *other)}
    if len(owners) == 1 and (owner := owners.pop()):
        names = (at_places(("", name) for _, name in some) for some in (one, other))
        return at_places([(owner, " with ".join(names))])
    return f"{at_places(one)} with {at_places(other)}"
