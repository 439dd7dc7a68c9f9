"""What the foreman found, as JSON: weights in pounds, sags in inches, all as numbers, for none decides a size."""

from __future__ import annotations

from fractions import Fraction

from setout.inspect import CAUTION
from setout.inspect.model import Hung, Inspected, Lifted, Moves, Sag, Standing
from setout.write.job.values import Json, length, maybe


def inspection(found: Inspected | None) -> Json | None:
    if found is None:
        return None
    return {
        "caution": CAUTION,
        "weights": {path: number(weight) for path, weight in found.weights.items()},
        "lifts": [_lift(one) for one in found.lifts],
        "sags": [_sag(one) for one in found.sags],
        "hung": [_hung(one) for one in found.hung],
        "standing": [_standing(one) for one in found.standing],
        "moves": [_moves(one) for one in found.moves],
    }


def number(value: Fraction | float | None) -> float | None:
    """To six decimals."""
    return None if value is None else round(float(value), 6)


def _lift(lift: Lifted) -> Json:
    return {
        "path": lift.path,
        "kind": lift.kind,
        "sizes": [length(size) for size in lift.sizes],
        "lb": number(lift.weight),
        "unknown": list(lift.unknown),
        "limit_lb": number(lift.limit),
        "recommended_lb": number(lift.recommended),
        "alone": lift.alone,
        "people": lift.people,
    }


def _sag(sag: Sag) -> Json:
    return {
        "board": sag.board,
        "along": sag.along.word,
        "span": length(sag.span),
        "ends": sag.ends,
        "supports_found": sag.found,
        "lb_per_ft2": number(sag.load),
        "load_said": sag.said,
        "first_in": number(sag.first),
        "lasting_in": number(sag.lasting),
        "allowed_in": number(sag.allowed),
        "thickness_needed": maybe(sag.thickness_needed),
        "longest_span": maybe(sag.longest_span),
        "strip_high": maybe(sag.strip),
    }


def _hung(hung: Hung) -> Json:
    estimate = hung.estimate
    return {
        "units": list(hung.units),
        "boards": list(hung.boards),
        "carried": list(hung.carried),
        "lb": number(hung.weight),
        "contents_lb": number(hung.contents),
        "screws": hung.screws,
        "gauge": hung.gauge,
        "length": length(hung.length),
        "estimate": None
        if estimate is None
        else {
            "down_lb": number(estimate.down),
            "out_lb": number(estimate.out),
            "down_allowed_lb": number(estimate.down_allowed),
            "out_allowed_lb": number(estimate.out_allowed),
            "used": number(estimate.used),
        },
    }


def _standing(one: Standing) -> Json:
    return {
        "path": one.path,
        "high": length(one.high),
        "lb": number(one.weight),
        "fixed": one.fixed,
        "through": list(one.through),
        "tip_over_scope": one.scope,
    }


def _moves(one: Moves) -> Json:
    return {
        "board": one.board,
        "species": one.species,
        "across": one.across.word,
        "size": length(one.size),
        "grows_in": number(one.grows),
        "shrinks_in": number(one.shrinks),
        "gap_in": number(one.gap),
        "held": one.held,
    }
