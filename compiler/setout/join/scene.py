"""One scene joined: contacts, housings, fasteners, holes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from setout.diagnostics import Diagnostic
from setout.geometry import Box
from setout.join import problems
from setout.join.contacts import meetings
from setout.join.crossings import crossings
from setout.join.fastening import Known, fasten
from setout.join.ground import Ground
from setout.join.hanging import moving_fronts, unheld
from setout.join.holes import holes
from setout.join.housings import Housed, drawn_in, house
from setout.join.model import Bore, JoinedBoard, JoinedScene
from setout.join.touching import Pair, Touches, touches
from setout.place.model import Board, Hole


def join_scene(ground: Ground, known: Known) -> tuple[JoinedScene, list[Diagnostic]]:
    """The scene's boards with their joints cut in. `ground.solids` are the boards less their notches.

    `known` is what the scenes before can hand on; this one adds to it.
    """
    found = touches(ground.solids)
    if found.full:
        return _unjoined(ground), [problems.too_many_touch(ground)]
    met = meetings(ground, found)
    housed = house(ground, met.contacts, found)
    cut = replace(ground, solids=housed.solids)
    own = holes(cut)
    fastened = fasten(cut, met.contacts, housed, own.ways, known)
    told = [
        *_overlaps(ground, found),
        *met.diagnostics,
        *housed.diagnostics,
        *fastened.diagnostics,
        *own.diagnostics,
        *crossings(cut, housed, (*fastened.ways, *own.ways)),
        *_unfastened(ground, found, met.covered),
    ]
    told += unheld(ground, found, met.contacts, fastened.fastenings, told)
    boards = _boards(ground, housed, (fastened.bores, own.bores))
    return JoinedScene(ground.scene, boards, met.contacts, fastened.fastenings), told


def _unjoined(ground: Ground) -> JoinedScene:
    boards = {
        path: JoinedBoard(board, _less_banding(board, board.box), {}, (), (), board.features)
        for path, board in ground.scene.boards.items()
    }
    return JoinedScene(ground.scene, boards, (), ())


def _boards(
    ground: Ground, housed: Housed, bores: tuple[Mapping[str, tuple[Bore, ...]], ...]
) -> dict[str, JoinedBoard]:
    boards = {}
    for path, board in ground.scene.boards.items():
        features = tuple(f for f in board.features if not isinstance(f, Hole))
        boards[path] = JoinedBoard(
            board,
            _less_banding(board, housed.solids[path].box),
            housed.grown.get(path, {}),
            housed.cuts.get(path, ()),
            tuple(bore for some in bores for bore in some.get(path, ())),
            (*features, *housed.notches.get(path, ())),
        )
    return boards


def _less_banding(board: Board, box: Box) -> Box:
    """What is cut: banding that isn't added comes off the size."""
    for band in board.bands:
        if not band.added:
            box = box.stretched(band.face, -band.thick)
    return box


def _overlaps(ground: Ground, found: Touches) -> list[Diagnostic]:
    """Boards that share wood. Where a joint houses one in the other, the span was drawn too far."""
    told = []
    housing = drawn_in(ground.scene.joints)
    for (a, b), how in found.pairs.items():
        if how.intricate:
            told.append(problems.too_intricate(ground.board(a), ground.board(b)))
        elif how.shared is not None and (a, b) in housing:
            joint, method = housing[a, b]
            entering = {path for side in joint.entering for path in side.boards}
            enters, receives = (a, b) if a in entering else (b, a)
            one, other = ground.board(enters), ground.board(receives)
            told.append(problems.drawn_in_already(ground, joint, method, one, other, how.shared))
        elif how.shared is not None:
            told.append(problems.parts_overlap(ground, ground.board(a), ground.board(b), how.shared))
    return told


def _unfastened(ground: Ground, found: Touches, covered: frozenset[Pair]) -> list[Diagnostic]:
    """Parts that touch in a face with nothing said about it. Fronts and doors lie against the case, and are moved."""
    moved = moving_fronts(ground.scene)
    return [
        problems.touch_unfastened(ground, ground.board(a), ground.board(b), how.meetings[0])
        for (a, b), how in found.pairs.items()
        if how.meetings and how.shared is None and (a, b) not in covered and a not in moved and b not in moved
    ]
