"""One board with everything cut and drilled in it, as JSON."""

from __future__ import annotations

from collections.abc import Container, Iterable

from setout.geometry import Axis
from setout.join import Footprint
from setout.join.model import Bore, Cavity, JoinedBoard
from setout.place.model import LooseBoard, Mitre, Notch
from setout.plan.model import Plan
from setout.write.job.buy import band
from setout.write.job.values import Json, box_of, face_word, length, maybe, mm


def board_of(joined: JoinedBoard, plan: Plan, prints: Iterable[Footprint], waiting: Container[tuple]) -> Json:
    """`prints` are where others land on it, `waiting` those of all that hang on a measure."""
    board = joined.board
    return {
        "path": board.path,
        "mark": plan.pieces.mark_of[board.path],
        "assembly": board.owner,
        "stock": board.stock.name,
        "box": box_of(board.box),
        "cut_box": box_of(joined.box),
        "thickness_axis": board.thick.word,
        "grain": board.grain if board.grain is None or isinstance(board.grain, str) else board.grain.word,
        "good_face": face_word(board.show),
        "bands": [band(one) for one in board.bands],
        "bores": [_bore(bore) for bore in joined.bores],
        "housings": [_cavity(cavity) for cavity in joined.cuts],
        "features": [_notch(f) for f in joined.features if isinstance(f, Notch)]
        + [_mitre(f) for f in joined.features if isinstance(f, Mitre)],
        "layout": [_footprint(one, joined, waiting) for one in prints],
    }


def _bore(bore: Bore) -> Json:
    return {
        "kind": bore.kind,
        "face": bore.face.word,
        "at": [str(v) for v in bore.at],
        "at_mm": [mm(v) for v in bore.at],
        "diameter": length(bore.diameter),
        "depth": maybe(bore.depth),
        "toward": face_word(bore.toward),
        "fastener": bore.fastener,
        "source": bore.source,
    }


def _cavity(cavity: Cavity) -> Json:
    return {
        "kind": cavity.kind,
        "face": cavity.face.word,
        "box": box_of(cavity.box),
        "depth": length(cavity.depth),
        "width": length(cavity.width),
        "for": cavity.for_board,
        "stopped": [face.word for face in cavity.stopped],
        "joint": cavity.joint,
    }


def _footprint(one: Footprint, joined: JoinedBoard, waiting: Container[tuple]) -> Json:
    """Measured from the left, bottom and front of the board as it is cut."""
    lo, across = joined.box.lo, [axis for axis in Axis if axis != one.face.axis]
    return {
        "for": one.partner,
        "face": one.face.word,
        "spans": [
            {"axis": a.word, "from": length(one.area.lo[a] - lo[a]), "to": length(one.area.hi[a] - lo[a])}
            for a in across
        ],
        "final": (one.board, one.partner, one.face) not in waiting,
    }


def _notch(notch: Notch) -> Json:
    return {"kind": notch.kind, "box": box_of(notch.box)}


def _mitre(mitre: Mitre) -> Json:
    return {"kind": "mitre", "end": mitre.end.word, "degrees": str(mitre.angle), "long": mitre.long.word}


def loose_of(board: LooseBoard, plan: Plan) -> Json:
    return {"path": board.path, "mark": plan.pieces.mark_of[board.path], "count": board.count, "assembly": board.owner}
