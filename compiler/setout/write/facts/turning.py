"""An assembly turned to stand square before the reader, so that left and front are what one sees on the bench.

A mirrored copy stays the mirror image it is: only its turning is undone.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from setout.geometry import Axis, Face, Motion
from setout.join.model import Bore, Cavity, Contact, JoinedBoard, JoinedScene
from setout.place.model import Board, Feature, Fitting, Instance, Mitre, Notch

_ZERO = (Fraction(0), Fraction(0), Fraction(0))
_MIRROR = Motion((0, 1, 2), (-1, 1, 1), _ZERO)


def squared(motion: Motion) -> Motion:
    """Takes the job's coordinates to those of the assembly placed by `motion`, front to the reader."""
    return (motion.after(_MIRROR) if motion.reflects else motion).inverse


def is_turned(motion: Motion) -> bool:
    """Whether squaring changes any direction."""
    back = squared(motion)
    return (back.to, back.sign) != ((0, 1, 2), (1, 1, 1))


def turned_board(joined: JoinedBoard, by: Motion) -> JoinedBoard:
    return JoinedBoard(
        board=_board(joined.board, by),
        box=by.box(joined.box),
        grown={by.face(face): amount for face, amount in joined.grown.items()},
        cuts=tuple(_cavity(cut, by) for cut in joined.cuts),
        bores=tuple(_bore(bore, by) for bore in joined.bores),
        features=tuple(_feature(feature, by) for feature in joined.features),
    )


def turned_scene(joined: JoinedScene, by: Motion) -> JoinedScene:
    """The whole job turned; good for drawing what hangs on none of its walls."""
    boards = {path: turned_board(board, by) for path, board in joined.boards.items()}
    scene = replace(
        joined.scene,
        boards={path: board.board for path, board in boards.items()},
        instances={path: _instance(instance, by) for path, instance in joined.scene.instances.items()},
        fittings=tuple(_fitting(fitting, by) for fitting in joined.scene.fittings),
        room=None,
    )
    contacts = tuple(_contact(contact, by) for contact in joined.contacts)
    return replace(joined, scene=scene, boards=boards, contacts=contacts)


def squared_scene(joined: JoinedScene, motion: Motion) -> JoinedScene:
    """The job turned so that the assembly placed by `motion` stands square."""
    return turned_scene(joined, squared(motion)) if is_turned(motion) else joined


def _board(board: Board, by: Motion) -> Board:
    x, y, z = (by.to.index(axis) for axis in range(3))
    return replace(
        board,
        box=by.box(board.box),
        thick=by.axis(board.thick),
        run=None if board.run is None else by.axis(board.run),
        grain=by.axis(board.grain) if isinstance(board.grain, Axis) else board.grain,
        show=_face(board.show, by),
        proud=frozenset(by.face(face) for face in board.proud),
        features=tuple(_feature(feature, by) for feature in board.features),
        bands=tuple(replace(band, face=by.face(band.face)) for band in board.bands),
        why=(board.why[x], board.why[y], board.why[z]),
        held=(board.held[x], board.held[y], board.held[z]),
    )


def _face(face: Face | None, by: Motion) -> Face | None:
    return None if face is None else by.face(face)


def _cavity(cut: Cavity, by: Motion) -> Cavity:
    stopped = tuple(by.face(face) for face in cut.stopped)
    return replace(cut, face=by.face(cut.face), box=by.box(cut.box), run=by.axis(cut.run), stopped=stopped)


def _bore(bore: Bore, by: Motion) -> Bore:
    return replace(bore, face=by.face(bore.face), at=by.point(bore.at), toward=_face(bore.toward, by))


def _feature(feature: Feature, by: Motion) -> Feature:
    if isinstance(feature, Notch):
        return replace(feature, box=by.box(feature.box))
    if isinstance(feature, Mitre):
        return replace(feature, end=by.face(feature.end), long=by.face(feature.long))
    return replace(feature, face=by.face(feature.face), at=by.point(feature.at))


def _instance(instance: Instance, by: Motion) -> Instance:
    box = None if instance.box is None else by.box(instance.box)
    return replace(instance, box=box, motion=by.after(instance.motion))


def _fitting(fitting: Fitting, by: Motion) -> Fitting:
    return replace(fitting, face=by.face(fitting.face), points=tuple(by.point(point) for point in fitting.points))


def _contact(contact: Contact, by: Motion) -> Contact:
    return replace(contact, face_a=by.face(contact.face_a), face_b=by.face(contact.face_b), area=by.box(contact.area))
