"""What hangs on the wall by screws alone, and what they would have to hold: an estimate."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis, Box, Face
from setout.inspect.model import Hung
from setout.inspect.view import View
from setout.join.model import Contact, Fastening
from setout.strength import Cleat, figure, wall_cleat

_FOOT = Fraction(144)
Held = tuple[Contact, Fastening]


def hung(view: View) -> tuple[Hung, ...]:
    """One estimate for all that hangs together, in the order placed."""
    by_unit = _wall_screws(view)
    found = []
    for group in _groups(view, set(by_unit)):
        held = [one for unit in group for one in by_unit.get(unit, ())]
        if held and not any(_stands(view, unit, group) for unit in group):
            found.append(_estimate(view, group, held))
    return tuple(found)


def fixed_units(view: View) -> set[str]:
    """The units that are screwed to a wall, or joined to something that is."""
    beside: dict[str, set[str]] = {}
    for contact in view.joined.contacts:
        if contact.b is not None:
            a, b = view.unit_of[contact.a], view.unit_of[contact.b]
            beside.setdefault(a, set()).add(b)
            beside.setdefault(b, set()).add(a)
    fixed, waiting = set(_wall_screws(view)), sorted(_wall_screws(view))
    while waiting:
        new = beside.get(waiting.pop(), set()) - fixed
        fixed |= new
        waiting += sorted(new)
    return fixed


def _wall_screws(view: View) -> dict[str, list[Held]]:
    contacts = {c.id: c for c in view.joined.contacts if c.b is None and c.face_a.axis != Axis.HIGH}
    found: dict[str, list[Held]] = {}
    for fastening in view.joined.fastenings:
        contact = contacts.get(fastening.contact)
        if contact is not None and fastening.kind == "screws" and fastening.count:
            found.setdefault(view.unit_of[contact.a], []).append((contact, fastening))
    return found


def _groups(view: View, screwed: set[str]) -> list[tuple[str, ...]]:
    """What is screwed to the wall, each with the units that one of its own boards (a cleat) holds."""
    joined: dict[str, set[str]] = {unit: {unit} for unit in view.units if unit in screwed}
    for contact in view.joined.contacts:
        if contact.b is None:
            continue
        a, b = view.unit_of[contact.a], view.unit_of[contact.b]
        for cleat, other in ((a, b), (b, a)):
            if cleat != other and cleat in joined and view.units[cleat] == (cleat,):
                joined[cleat].add(other)
    groups: list[set[str]] = []
    for some in joined.values():
        touching = [group for group in groups if group & some]
        groups = [group for group in groups if not group & some]
        groups.append(some.union(*touching))
    order = list(view.units)
    return sorted((tuple(sorted(g, key=order.index)) for g in groups), key=lambda g: order.index(g[0]))


def _stands(view: View, unit: str, group: tuple[str, ...]) -> bool:
    """Whether it stands on the floor, or on something outside the group."""
    if view.outline(view.units[unit]).lo[Axis.HIGH] <= view.floor:
        return True
    down = Face(Axis.HIGH, -1)
    below = [t.other for board in view.units[unit] for t in view.touching[board] if t.face == down]
    return any(other is None or view.unit_of[other] not in group for other in below)


def _estimate(view: View, group: tuple[str, ...], held: list[Held]) -> Hung:
    boards = [board for unit in group for board in view.units[unit]]
    weight, inside = view.total(boards), contents(view, boards)
    first = held[0][1]
    assert first.gauge is not None and first.length is not None
    estimate = None
    if weight is not None:
        estimate = wall_cleat(_cleat(view, view.outline(boards), held, weight + inside))
    through = tuple(dict.fromkeys(contact.a for contact, _ in held))
    screws = sum(fastening.count for _, fastening in held)
    return Hung(group, through, weight, inside, screws, first.gauge, first.length, estimate)


def _cleat(view: View, outline: Box, held: list[Held], weight: Fraction) -> Cleat:
    """All the screws as one row at their middle height; the shortest of them; the deepest board they pass."""
    contact = held[0][0]
    screws = sum(f.count for _, f in held)
    height = sum((c.area.lo[Axis.HIGH] + c.area.hi[Axis.HIGH]) / 2 * f.count for c, f in held) / screws
    axis = contact.face_a.axis
    gauge = max(min(f.gauge or 0 for _, f in held), 0)
    value = view.practice.value
    return Cleat(
        weight=weight,
        reach=outline.size(axis) / 2,
        arm=max(height - outline.lo[Axis.HIGH], Fraction(1, 16)),
        screws=screws,
        diameter=value("screw_diameter_first") + gauge * value("screw_diameter_step"),
        length=min(f.length or Fraction(0) for _, f in held),
        through=max(view.joined.boards[c.a].box.size(axis) for c, _ in held) + value("drywall_thickness"),
        gravity=figure("stud_gravity"),
    )


def contents(view: View, boards: list[str]) -> Fraction:
    """The spec's loads; on other level panels under the topmost, what cabinets are tested with."""
    top = view.outline(boards).hi[Axis.HIGH]
    total = Fraction(0)
    for path in boards:
        board = view.joined.boards[path].board
        if board.thick != Axis.HIGH or (
            board.load is None and (board.run is not None or board.box.hi[Axis.HIGH] == top)
        ):
            continue
        load = board.load if board.load is not None else figure("cabinet_load")
        total += load * board.box.size(Axis.WIDE) * board.box.size(Axis.DEEP) / _FOOT
    return total
