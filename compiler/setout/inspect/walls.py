"""What hangs on the wall by screws alone, and what they would have to hold: an estimate."""

from __future__ import annotations

from collections import deque
from fractions import Fraction

from setout.geometry import Axis, Box
from setout.inspect.bearing import hanging
from setout.inspect.model import Hung
from setout.inspect.view import View
from setout.join.model import Contact, Fastening
from setout.strength import Cleat, figure, wall_cleat

_FOOT = Fraction(144)
Held = tuple[Contact, Fastening]


def hung(view: View) -> tuple[Hung, ...]:
    """One estimate for all that hangs together, in the order placed."""
    by_unit = _wall_screws(view)
    return tuple(
        _estimate(view, group, carried, [one for unit in group for one in by_unit.get(unit, ())])
        for group, carried in hanging(view, by_unit).items()
    )


def held_through(view: View) -> dict[str, tuple[str, ...]]:
    """The units that a wall holds: () for those that are screwed to it, else what they are joined to, from there to the
    wall by the fewest units."""
    found: dict[str, tuple[str, ...]] = {unit: () for unit in sorted(_wall_screws(view))}
    waiting = deque(found)
    while waiting:
        unit = waiting.popleft()
        for other in sorted(view.joined_to[unit] - found.keys()):
            found[other] = (unit, *found[unit])
            waiting.append(other)
    return found


def _wall_screws(view: View) -> dict[str, list[Held]]:
    contacts = {c.id: c for c in view.joined.contacts if c.b is None and c.face_a.axis != Axis.HIGH}
    found: dict[str, list[Held]] = {}
    for fastening in view.joined.fastenings:
        contact = contacts.get(fastening.contact)
        if contact is not None and fastening.kind == "screws" and fastening.count:
            found.setdefault(view.unit_of[contact.a], []).append((contact, fastening))
    return found


def _estimate(view: View, group: tuple[str, ...], carried: tuple[str, ...], held: list[Held]) -> Hung:
    boards = [board for unit in group for board in view.units[unit]]
    bodies = [boards, *(list(view.units[unit]) for unit in carried)]
    weight, inside = view.total(board for body in bodies for board in body), sum(contents(view, b) for b in bodies)
    first = held[0][1]
    assert first.gauge is not None and first.length is not None
    estimate = None
    if weight is not None:
        estimate = wall_cleat(_cleat(view, view.outline(boards), held, weight + inside, _reach(view, bodies, held)))
    through = tuple(dict.fromkeys(path for contact, f in held for path in (*reversed(f.also), contact.a)))
    screws = sum(fastening.count for _, fastening in held)
    least = view.practice.value("wall_thinnest")
    thin = all(_passed(view, contact, fastening) < least for contact, fastening in held)
    return Hung(group, through, weight, Fraction(inside), screws, first.gauge, first.length, estimate, carried, thin)


def _reach(view: View, bodies: list[list[str]], held: list[Held]) -> Fraction:
    """From the wall to the middle of all the weight, each body's in the middle of its outline."""
    contact = held[0][0]
    axis, wall = contact.face_a.axis, contact.area.lo[contact.face_a.axis]
    out, total = Fraction(0), Fraction(0)
    for body in bodies:
        box, heavy = view.outline(body), (view.total(body) or Fraction(0)) + contents(view, body)
        out += heavy * abs((box.lo[axis] + box.hi[axis]) / 2 - wall)
        total += heavy
    return out / total if total else Fraction(0)


def _cleat(view: View, outline: Box, held: list[Held], weight: Fraction, reach: Fraction) -> Cleat:
    """All the screws as one row at their middle height; the shortest of them; the deepest board they pass."""
    screws = sum(f.count for _, f in held)
    height = sum(_height(view, c) * f.count for c, f in held) / screws
    gauge = max(min(f.gauge or 0 for _, f in held), 0)
    value = view.practice.value
    return Cleat(
        weight=weight,
        reach=reach,
        arm=max(height - outline.lo[Axis.HIGH], Fraction(1, 16)),
        screws=screws,
        diameter=value("screw_diameter_first") + gauge * value("screw_diameter_step"),
        length=min(f.length or Fraction(0) for _, f in held),
        through=max(_passed(view, c, f) for c, f in held) + value("drywall_thickness"),
        gravity=figure("stud_gravity"),
    )


def _height(view: View, contact: Contact) -> Fraction:
    """The middle height of the holes, or of the contact where they are bored on the wall."""
    bores = view.joined.boards[contact.a].bores
    holes = [bore.at[Axis.HIGH] for bore in bores if bore.source == contact.id]
    holes = holes or [contact.area.lo[Axis.HIGH], contact.area.hi[Axis.HIGH]]
    return sum(holes, Fraction(0)) / len(holes)


def _passed(view: View, contact: Contact, fastening: Fastening) -> Fraction:
    """The thickness of all the boards that the screws go through."""
    axis = contact.face_a.axis
    return sum((view.joined.boards[path].box.size(axis) for path in (contact.a, *fastening.also)), Fraction(0))


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
