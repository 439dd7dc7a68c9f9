"""What a method of joining is given, and what it hands back."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.geometry import Box, Face, Vec
from setout.join import problems
from setout.join.ground import Ground
from setout.join.layout import Rule, row, row_count, shifted
from setout.join.model import Bore, Cavity, Contact, Fastening
from setout.join.seats import Seat
from setout.place.model import Board, Joint, Method
from setout.practice import Practice
from setout.source import Span


@dataclass(frozen=True)
class Task:
    """One contact to be held by one method. `end` is where the entering board ends; `cheek` where its face lies in a
    rabbet. The ground's solids have their tongues and housings."""

    ground: Ground
    joint: Joint
    contact: Contact
    method: Method
    end: Seat
    cheek: Seat | None
    cut: Cavity | None
    drilled: tuple[Way, ...] = ()
    """What is drilled in the two boards before: pockets, screws and dowels keep clear of it."""
    layers: tuple[str, ...] = ()
    """Of a wall's: boards joined flat to the front of `a`, which screws go through too."""
    covers: tuple[str, ...] = ()
    """Of a wall's: boards that come up against the front of `a` or its layers, where no screw can be driven."""

    @property
    def a(self) -> Board:
        return self.ground.board(self.contact.a)

    @property
    def b(self) -> Board:
        """The receiver. Not for walls."""
        assert self.contact.b is not None
        return self.ground.board(self.contact.b)

    @property
    def source(self) -> str:
        """Names the fasteners of one method in one contact: they don't hit each other."""
        return f"{self.contact.id} {self.method.kind}"

    @property
    def practice(self) -> Practice:
        return self.ground.practice


@dataclass(frozen=True)
class Way:
    """The room a bore or fastener takes up in a board. `what` names it, `at` is where it starts.

    Ways of one `source` never hit. The `box` of a slanting hole only bounds it; `finer` makes smaller boxes of it.
    """

    board: str
    at: Vec
    box: Box
    what: str
    source: str
    span: Span
    finer: Callable[[], Sequence[Box]] | None = field(default=None, compare=False)  # follows from the rest

    def hits(self, other: Way, apart: Fraction = Fraction(0)) -> bool:
        """Whether they run through the same wood, or leave less than `apart` between them. Boxes stand for round
        holes."""
        if not self.box.grown(apart).overlaps(other.box):
            return False
        mine, theirs = (way.finer() if way.finer else (way.box,) for way in (self, other))
        return any(a.grown(apart).overlaps(b) for a in mine for b in theirs)


@dataclass(frozen=True)
class Laid:
    """`bores` with the board each is drilled in. `narrow` is set when nothing fits: worth saying only if nothing
    else that the joint names alike is held."""

    fastening: Fastening | None = None
    bores: tuple[tuple[str, Bore], ...] = ()
    ways: tuple[Way, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()
    narrow: Diagnostic | None = None


def wrong(diagnostic: Diagnostic) -> Laid:
    return Laid(diagnostics=(diagnostic,))


def seen(task: Task, path: str, face: Face) -> Iterator[Diagnostic]:
    """That heads or pockets come to lie in the face that is to be seen. In what a `drawers` clause is made into they
    may."""
    driven, second = (task.a, task.b) if path == task.a.path else (task.b, task.a)
    if driven.show == face and task.joint.owner not in task.ground.drawers:
        through = task.ground.solids[second.path].box.size(face.axis)
        turnable = through < max(task.practice.choices("screw_lengths"))
        yield problems.good_face_pierced(task.joint, task.method, driven, second, face, turnable)


def rule(task: Task, kind: str, **more: Fraction) -> Rule:
    """The spacing rule of `kind` (a prefix of the practice rows); the joint's own `every` goes first."""
    spacing = task.method.every if task.method.every is not None else task.practice.value(f"{kind}_spacing")
    return Rule(task.practice.value(f"{kind}_first"), spacing, task.practice.value(f"{kind}_single_below"), **more)


def crowded(task: Task, length: Fraction, how: Rule) -> Diagnostic | None:
    """A spacing that no one can mean. Checked before anything is laid out, so that no slip makes a million holes."""
    closest, most = task.practice.value("fastener_closest"), task.practice.value("fastener_most")
    if how.spacing < closest:
        return problems.too_close(task.ground, task.method, how.spacing, closest)
    if row_count(length, how) > most:
        return problems.too_many(task.ground, task.method, length, most)
    return None


def clear(task: Task, length: Fraction, how: Rule, lay: Callable[[Rule], Laid]) -> Laid:
    """What `lay` makes of the rule, the row's ends set in as far as it takes to leave wood to what is drilled already;
    as the rule has it when nothing helps."""
    no = crowded(task, length, how)
    if no is not None:
        return wrong(no)
    practice, laid = task.practice, lay(how)
    step, closest = practice.value("fastener_shift"), practice.value("fastener_closest")
    tries = (laid if rule is how else lay(rule) for rule in shifted(length, how, step, closest))
    return next((one for one in tries if one.fastening is None or not _in_the_way(task, one)), laid)


def _in_the_way(task: Task, laid: Laid) -> bool:
    apart = task.practice.value("hole_apart")
    for way in laid.ways:
        room = way.box.grown(apart)  # once: most holes are far off
        if any(hole.board == way.board and room.overlaps(hole.box) and way.hits(hole, apart) for hole in task.drilled):
            return True
    return False


def grid(task: Task, seat: Seat, how: Rule) -> list[Vec]:
    """Points of one row; of several where two broad faces lie on each other."""
    across: tuple[Fraction, ...] = (seat.area.size(seat.short) / 2,)
    if seat.broad_a and seat.broad_b:
        wide = Rule(how.first, how.spacing, task.practice.value("screw_one_row_up_to"))
        across = row(seat.area.size(seat.short), wide)
    return seat.points(seat.long, row(seat.area.size(seat.long), how), across)


def in_wood(task: Task, seat: Seat, points: list[Vec]) -> list[Vec]:
    """The points at which both boards have wood: another housing may run through one of them. All, if none has."""
    assert seat.b is not None
    mine, theirs = task.ground.solids[seat.a], task.ground.solids[seat.b]
    if not (mine.gone or theirs.gone):
        return points
    back = seat.face_a.opposite
    sound = [p for p in points if mine.depth_at(p, seat.face_a) > 0 and theirs.depth_at(seat.on_b(p), back) > 0]
    return sound or points


def driven_first(task: Task) -> Seat:
    """The seat turned so that its `a` is the board that screws or brads are driven through."""
    through = task.method.through
    end = task.end
    if task.contact.b in through and task.contact.a not in through:
        return end.turned()
    seat = task.cheek or end
    if task.contact.a in through or (seat.broad_a and not seat.broad_b) or task.cheek is not None:
        return seat
    if seat.broad_b and not seat.broad_a:
        return seat.turned()
    mine, theirs = (task.ground.solids[board.path].box.size(seat.axis) for board in (task.a, task.b))
    return seat if mine <= theirs else seat.turned()


def area(contact: Contact) -> Fraction:
    """Square inches of a contact."""
    sizes = [contact.area.size(k) for k in range(3) if k != contact.face_a.axis]
    return sizes[0] * sizes[1]


def rod(point: Vec, toward: Vec, radius: Fraction) -> Box:
    """The box round a straight hole from one point to another along an axis."""
    lo, hi = zip(*((p - radius, p + radius) if p == q else sorted((p, q)) for p, q in zip(point, toward)))
    return Box(lo, hi)
