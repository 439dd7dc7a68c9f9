"""Every joint's methods applied to its contacts."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from setout.diagnostics import Diagnostic
from setout.geometry import Axis, Face
from setout.join.fronts import Flat, covers, flat_on, layers
from setout.join.ground import Ground
from setout.join.housings import Housed
from setout.join.methods import METHODS, Laid, Task, Way
from setout.join.methods.task import area
from setout.join.model import Bore, Contact, Fastening
from setout.join.seats import cheek_seat, end_seat
from setout.place.model import Joint, Method, Side

# Where two boards meet in several ways (a kick board in its notches), the way each method likes best.
_LIKES = {
    "pockets": ("butt", "edge", "lap", "face"),
    "dowels": ("butt", "lap", "face", "edge"),
    "screws": ("face", "lap", "butt", "edge"),
    "brads": ("face", "lap", "butt", "edge"),
}


Known = dict[str, tuple[tuple[object, ...], Laid]]
"""What was laid on each contact by each method in the scenes before, with all that it hangs on."""


@dataclass(frozen=True)
class Fastened:
    fastenings: tuple[Fastening, ...]
    bores: Mapping[str, tuple[Bore, ...]]
    ways: tuple[Way, ...]
    diagnostics: tuple[Diagnostic, ...]


def fasten(
    ground: Ground, contacts: Iterable[Contact], housed: Housed, holes: Sequence[Way], known: Known
) -> Fastened:
    """Lay out the fasteners of every contact whose housing, if it has one, is sound. Pockets make room for the
    `holes` of the spec and of hardware, screws and dowels for pockets too. Adds to `known`."""
    contacts = tuple(contacts)
    together, drilled = _tasks(ground, contacts, housed), _by_board(holes)
    together = [[_beside(task, drilled, "pockets") for task in tasks] for tasks in together]
    pockets = [_lay(task, known) for tasks in together for task in tasks if task.method.kind == "pockets"]
    drilled = _by_board((*holes, *(way for one in pockets for way in one.ways)))
    together = [[_beside(task, drilled, "screws", "dowels") for task in tasks] for tasks in together]
    return _gathered(_told([(tasks, [_lay(task, known) for task in tasks]) for tasks in together if tasks]))


def _by_board(ways: Iterable[Way]) -> dict[str, list[Way]]:
    inside: dict[str, list[Way]] = defaultdict(list)
    for way in ways:
        inside[way.board].append(way)
    return inside


def _tasks(ground: Ground, contacts: Sequence[Contact], housed: Housed) -> list[list[Task]]:
    """What is to be laid, the contacts that one method holds of two boards together."""
    joints = {joint.id: joint for joint in ground.scene.joints}
    by_pair, flat = defaultdict(list), flat_on(contacts)
    for contact in contacts:
        if contact.id not in housed.spoiled:
            by_pair[contact.joint, contact.a, contact.b].append(contact)
    return [
        [_task(ground, joints[joint], method, c, housed, flat) for c in _held(sound, method)]
        for (joint, _, _), sound in by_pair.items()
        for method in joints[joint].methods
        if method.kind in METHODS
    ]


def _beside(task: Task, drilled: Mapping[str, list[Way]], *methods: str) -> Task:
    """The task with what is drilled in its boards, if it is one of the `methods`."""
    if task.method.kind not in methods:
        return task
    boards = (path for path in (task.contact.a, task.contact.b, *task.layers) if path is not None)
    return replace(task, drilled=tuple(way for path in boards for way in drilled.get(path, ())))


def _told(done: list[tuple[list[Task], list[Laid]]]) -> list[Laid]:
    """All that was laid. Too narrow is told only if nothing that the joint names so is held: of an assembly some boards
    hardly meet the other side, and others hold it."""
    held = {_named(tasks[0]) for tasks, laid in done if any(one.narrow is None for one in laid)}
    found = [one for _, laid in done for one in laid]
    narrow = (laid[0].narrow for tasks, laid in done if _named(tasks[0]) not in held)
    return found + [Laid(diagnostics=(one,)) for one in narrow if one is not None]


def _named(task: Task) -> tuple[str, str, str, str]:
    """What the joint calls the two, a board by itself or the assembly it is of, and by which method it holds them."""
    sides = ((task.joint.entering, task.contact.a), (task.joint.receiving, task.contact.b))
    enters, receives = ("" if path is None else _called(task, some, path) for some, path in sides)
    return task.joint.id, task.method.kind, enters, receives


def _called(task: Task, sides: Sequence[Side], path: str) -> str:
    """Of several alike each counts for itself."""
    text = next((side.text for side in sides if path in side.boards), "")
    assembly = f"{task.joint.owner}.{text}" if task.joint.owner else text
    return assembly if assembly in task.ground.scene.instances else path


def _lay(task: Task, known: Known) -> Laid:
    """Few boards hang on a measure: what is laid on the others is the same in every scene."""
    hangs_on = _facts(task)
    if task.source not in known or known[task.source][0] != hangs_on:
        known[task.source] = hangs_on, METHODS[task.method.kind](task)
    return known[task.source][1]


def _facts(task: Task) -> tuple[object, ...]:
    """All that differs from scene to scene in what a method looks at."""
    paths = (task.contact.a, task.contact.b, *task.layers, *task.covers)
    boards = [task.ground.board(path) for path in paths if path is not None]
    sites = [(board.box, board.thick, board.show, task.ground.solids[board.path]) for board in boards]
    return (task.contact, task.method, task.end, task.cheek, task.cut, task.drilled, task.layers, *sites)


def _held(contacts: list[Contact], method: Method) -> list[Contact]:
    """Those of two boards' contacts that the method works on."""
    return contacts if method.kind == "glue" else _best(contacts, _LIKES[method.kind])


def _best(contacts: list[Contact], likes: tuple[str, ...]) -> list[Contact]:
    """The contacts on one face of the entering board: the kind liked best, and of those the face with most contact."""
    kind = min((c.kind for c in contacts), key=likes.index)
    liked = sorted((c for c in contacts if c.kind == kind), key=lambda c: c.face_a)
    faces: dict[Face, list[Contact]] = {face: list(cs) for face, cs in groupby(liked, key=lambda c: c.face_a)}
    best = max(faces.values(), key=lambda cs: sum(area(c) for c in cs))
    return [c for c in contacts if c in best]


def _task(ground: Ground, joint: Joint, method: Method, contact: Contact, housed: Housed, flat: Flat) -> Task:
    a, b = ground.board(contact.a), None if contact.b is None else ground.board(contact.b)
    cut = housed.cavities.get(contact.id)
    end = end_seat(contact, a, b, ground.solids, cut)
    cheek = cheek_seat(contact, a, b, ground.solids, cut) if cut is not None and cut.kind == "rabbet" and b else None
    if b is not None or contact.face_a.axis is Axis.HIGH or method.kind != "screws":
        return Task(ground, joint, contact, method, end, cheek, cut)
    passed = layers(ground, flat, contact)
    return Task(ground, joint, contact, method, end, cheek, cut, (), passed, covers(ground, contact, passed))


def _gathered(laid: list[Laid]) -> Fastened:
    bores = defaultdict(list)
    for one in laid:
        for path, bore in one.bores:
            bores[path].append(bore)
    return Fastened(
        tuple(one.fastening for one in laid if one.fastening is not None),
        {path: tuple(b) for path, b in bores.items()},
        tuple(way for one in laid for way in one.ways),
        tuple(d for one in laid for d in one.diagnostics),
    )
