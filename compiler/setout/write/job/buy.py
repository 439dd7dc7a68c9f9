"""What is bought and how it is sold, as JSON. Money and amounts are exact, as text."""

from __future__ import annotations

from fractions import Fraction

from setout.place.model import Banding
from setout.plan.buying.model import BuyLine, BuyList
from setout.resolve.model import Hardware, Serves, Stock
from setout.write.job.values import Json, length, maybe


def text(value: Fraction | None) -> str | None:
    return None if value is None else str(value)


def sold(stock: Stock) -> Json:
    """A stock's prices and numbers, and what it weighs and how stiff it is."""
    return {
        "prices": [{"each": maybe(each), "price": str(price)} for each, price in stock.prices],
        "on_hand": [{"each": maybe(each), "count": count} for each, count in stock.on_hand],
        "lb_per_ft3": text(stock.density),
        "psi": text(stock.stiffness),
    }


def kind_of_hardware(hardware: Hardware) -> Json:
    edging = hardware.edging
    return {
        "name": hardware.name,
        "title": hardware.title,
        "price": text(hardware.price),
        "price_of": "pack" if hardware.boxed else "each",
        "pack": hardware.pack,
        "on_hand": hardware.on_hand,
        "edging": None
        if edging is None
        else {"width": length(edging.width), "thick": length(edging.thick), "length": length(edging.length)},
        "serves": None if hardware.serves is None else _serves(hardware.serves),
    }


def _serves(serves: Serves) -> Json:
    return {
        "kind": serves.kind,
        "gauge": serves.gauge,
        "length": maybe(serves.length),
        "diameter": maybe(serves.diameter),
        "square_inches": text(serves.covers),
    }


def band(one: Banding) -> Json:
    return {"face": one.face.word, "edging": one.edging.name, "added": one.added}


def buy(bought: BuyList | None) -> Json | None:
    if bought is None:
        return None
    return {
        "lines": [_line(line) for line in bought.lines],
        "total": str(bought.total),
        "unpriced": [bought.lines.index(line) for line in bought.unpriced],
    }


def _line(line: BuyLine) -> Json:
    return {
        "kind": line.kind,
        "name": line.name,
        "title": line.title,
        "need": str(line.need),
        "on_hand": str(line.on_hand),
        "pack": str(line.pack),
        "packs": line.packs,
        "price": text(line.price),
        "cost": text(line.cost),
        "sizes": [length(size) for size in line.sizes],
        "gauge": line.gauge,
        "length": maybe(line.length),
        "diameter": maybe(line.diameter),
        "estimate": line.estimate,
    }
