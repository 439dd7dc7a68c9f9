"""job.json: the whole plan for other programs. `schema.json` beside this file says what each field means.

Lengths are exact: `in` a fraction of an inch as text ("719/32"), `mm` the same as a number.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from hashlib import sha256

from setout.join.model import Contact, Fastening
from setout.piece.model import Piece, Size
from setout.place.model import Fitting, Instance
from setout.plan.model import Plan
from setout.plan.order.model import Step, StepId
from setout.resolve.model import MeasureDef, Stock
from setout.write.facts.sizes import Count
from setout.write.facts.totals import Totals, totals
from setout.write.job.boards import board_of, loose_of
from setout.write.job.buy import buy, kind_of_hardware, sold
from setout.write.job.cutting import cutting_of
from setout.write.job.inspection import inspection
from setout.write.job.openings import openings
from setout.write.job.values import Json, box_of, face_word, length, maybe

VERSION = 1


@dataclass(frozen=True)
class Job:
    """The file's text and its revision: eight hex digits of the hash of everything in it but the revision itself."""

    text: str
    revision: str


def build(plan: Plan) -> Job:
    content = _content(plan)
    revision = sha256(_written(content).encode("utf-8")).hexdigest()[:8]
    return Job(_written({**content, "revision": revision}), revision)


def _written(content: Json) -> str:
    return json.dumps(content, ensure_ascii=False, indent=1, sort_keys=True) + "\n"


def _content(plan: Plan) -> Json:
    placed = plan.pieces.joined.placed
    project, scene, joined = placed.project, placed.drawn, plan.pieces.joined.drawn
    return {
        "setout_job": VERSION,
        "title": project.title,
        "units": "mm" if project.metric else "inch",
        "mark": length(project.mark),
        "paper": project.paper,
        "measures": [_measure(m, m.name in placed.open_measures) for m in project.measures.values()],
        "stocks": [_stock(stock) for stock in project.stocks.values()],
        "assemblies": [_instance(instance, plan) for instance in scene.instances.values()],
        "pieces": [_piece(piece) for piece in plan.pieces.pieces],
        "boards": _boards(plan),
        "loose": [loose_of(board, plan) for board in scene.loose],
        "contacts": [_contact(contact) for contact in joined.contacts],
        "fastenings": [_fastening(fastening) for fastening in joined.fastenings],
        "hardware": [_fitting(fitting) for fitting in scene.fittings],
        **openings(scene),
        "catalogue": [kind_of_hardware(kind) for kind in project.hardware.values()],
        "buy": buy(plan.buying),
        "inspection": inspection(plan.inspected),
        "cutting": cutting_of(plan.cutting),
        "order": _order(plan.order.steps),
        "totals": _totals(totals(plan)),
    }


def _boards(plan: Plan) -> list[Json]:
    joined = plan.pieces.joined
    prints, waiting = joined.drawn.footprints, joined.unsettled
    return [board_of(board, plan, prints.get(path, ()), waiting) for path, board in joined.drawn.boards.items()]


def _measure(measure: MeasureDef, is_open: bool) -> Json:
    return {
        "name": measure.name,
        "title": measure.title,
        "low": length(measure.low),
        "high": length(measure.high),
        "taken": None if is_open else maybe(measure.taken),
    }


def _stock(stock: Stock) -> Json:
    return {
        "name": stock.name,
        "title": stock.title,
        "kind": stock.kind,
        "long": maybe(stock.long),
        "short": length(stock.short),
        "thick": length(stock.thick),
        "grain": stock.grain,
        "lengths": [length(long) for long in stock.lengths],
        **sold(stock),
    }


def _instance(instance: Instance, plan: Plan) -> Json:
    return {
        "path": instance.path,
        "definition": instance.definition,
        "title": instance.title,
        "parent": instance.parent,
        "letter": plan.pieces.letters.get(instance.definition),
        "box": None if instance.box is None else box_of(instance.box),
    }


def _size(size: Size) -> Json:
    """`high` and `formula` only on a held size."""
    out = length(size.amount)
    if size.high is not None:
        out["high"] = length(size.high)
        out["formula"] = None
    if size.formula is not None:
        start, terms = size.formula
        out["formula"] = {"start": length(start), "terms": [{"measure": m, "times": str(k)} for m, k in terms]}
    return out


def _piece(piece: Piece) -> Json:
    return {
        "mark": piece.mark,
        "stock": piece.stock.name,
        "count": piece.count,
        "length": _size(piece.length),
        "width": _size(piece.width),
        "thick": length(piece.thick),
        "grain": piece.grain,
        "boards": list(piece.boards),
        "measures": list(piece.measures),
        "similar": list(piece.similar),
        "loose": piece.loose is not None,
        "bands": [
            {"along": b.along, "side": "low" if b.sign < 0 else "high", "edging": b.edging.name, "added": b.added}
            for b in piece.bands
        ],
    }


def _contact(contact: Contact) -> Json:
    return {
        "id": contact.id,
        "joint": contact.joint,
        "a": contact.a,
        "b": contact.b,
        "face_a": contact.face_a.word,
        "face_b": contact.face_b.word,
        "kind": contact.kind,
        "area": box_of(contact.area),
    }


def _fastening(fastening: Fastening) -> Json:
    return {
        "contact": fastening.contact,
        "joint": fastening.joint,
        "kind": fastening.kind,
        "count": fastening.count,
        "gauge": fastening.gauge,
        "length": maybe(fastening.length),
        "diameter": maybe(fastening.diameter),
        "setting": maybe(fastening.setting),
        "driven": fastening.driven,
        "face": face_word(fastening.face),
        "square_inches": str(fastening.area),
    }


def _fitting(fitting: Fitting) -> Json:
    return {
        "id": fitting.id,
        "hardware": fitting.hardware.name,
        "title": fitting.hardware.title,
        "count": fitting.count,
        "board": fitting.board,
        "face": fitting.face.word,
        "points": [[str(v) for v in point] for point in fitting.points],
    }


def _order(steps: tuple[Step, ...]) -> list[Json]:
    number: dict[StepId, int] = {step.id: step.number for step in steps}
    return [
        {
            "number": step.number,
            "verb": step.id.verb,
            "target": step.id.target,
            "assembly": step.owner,
            "pieces": [{"mark": mark, "count": count} for mark, count in step.marks],
            "joints": list(step.joints),
            "fittings": list(step.fittings),
            "wait_hours": str(step.wait),
            "reasons": [{"after": number[reason.after], "kind": reason.kind} for reason in step.reasons],
        }
        for step in steps
    ]


def _count(count: Count) -> Json:
    return {"least": count.low, "most": count.high}


def _totals(t: Totals) -> Json:
    return {
        "pieces": t.pieces,
        "boards": t.boards,
        "materials": [
            {
                "stock": m.stock.name,
                "boards": m.boards,
                "square_inches": str(m.area),
                "run": length(m.run),
                "least": m.least,
            }
            for m in t.materials
        ],
        "bores": [{"kind": b.kind, "diameter": length(b.diameter), "count": _count(b.count)} for b in t.bores],
        "fasteners": [
            {
                "kind": f.kind,
                "gauge": f.gauge,
                "length": maybe(f.length),
                "diameter": maybe(f.diameter),
                "count": _count(f.count),
            }
            for f in t.fasteners
        ],
        "hardware": [{"title": f.title, "count": f.count} for f in t.fitted],
        "glue_square_inches": str(t.glue),
    }
