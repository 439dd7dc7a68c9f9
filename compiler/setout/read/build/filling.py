"""What openings hold: drawers, doors, shelves, items; and the numbers that slides and hinges are described by."""

from __future__ import annotations

from typing import Any

from setout.read import model as m
from setout.read.build.parts import Clause, all_of, exprs, first_of, once, paths, text, tokens
from setout.read.build.work import _head
from setout.read.machine import Action, Tell
from setout.source import Span

REST = "rest"


def _drawers(parts: list[Any], span: Span, tell: Tell) -> m.DrawersStatement:
    get = once(all_of(parts, Clause), tell).get
    mode, heights = get("heights") or ("", ())
    bottom, groove = get("bottom") or (None, False)
    fronts, style, overlay, reveal = get("fronts") or (None, "", None, None)
    return m.DrawersStatement(
        opening=paths(parts, span)[0],
        mode=mode,
        heights=heights,
        count=get("count"),
        slides=get("slides") or (),
        box=get("box"),
        bottom=bottom,
        groove=groove,
        fronts=fronts,
        style=style,
        overlay=overlay,
        reveal=reveal,
        corners=get("corners") or "",
        brace=bool(get("brace")),
        dummies=get("dummy") or (),
        trays=bool(get("trays")),
        packers=get("packers"),
        load=get("load"),
        span=span,
        head=_head(parts, span),
    )


def _heights(mode: str) -> Action:
    def build(parts: list[Any], span: Span, tell: Tell) -> Clause:
        given = [None if p == REST else p for p in parts if p == REST or exprs([p])]
        return Clause("heights", (mode, tuple(given)), span)

    return build


def _rest(parts: list[Any], span: Span, tell: Tell) -> str:
    return REST


def _stock(key: str) -> Action:
    """`box of half`"""

    def build(parts: list[Any], span: Span, tell: Tell) -> Clause:
        return Clause(key, paths(parts, span)[0], span)

    return build


def _flag(key: str) -> Action:
    def build(parts: list[Any], span: Span, tell: Tell) -> Clause:
        return Clause(key, True, span)

    return build


def _one(key: str) -> Action:
    def build(parts: list[Any], span: Span, tell: Tell) -> Clause:
        return Clause(key, exprs(parts)[0], span)

    return build


def _slides(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("slides", tuple(paths(parts, span)), span)


def _bottom(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("bottom", (paths(parts, span)[0], bool(tokens(parts, "GROOVE"))), span)


def _fronts(parts: list[Any], span: Span, tell: Tell) -> Clause:
    amounts = list(exprs(parts))
    style = next((t.text for t in tokens(parts, "INSET", "OVERLAY", "INTEGRAL")), "")
    overlay = amounts.pop(0) if style == "overlay" else None
    reveal = amounts.pop(0) if amounts else None
    return Clause("fronts", (paths(parts, span)[0], style, overlay, reveal), span)


def _corners(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("corners", parts[1].text, span)


def _dummy(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("dummy", exprs(parts), span)


# --- doors, shelves, items -----------------------------------------------------------------------------


def _door(parts: list[Any], span: Span, tell: Tell) -> m.DoorStatement:
    get = once(all_of(parts, Clause), tell).get
    opening, of = paths(parts, span)
    hinges, side = get("hinges") or (None, None)
    overlay = get("inset or overlay")
    return m.DoorStatement(
        opening, of, overlay, get("reveal"), hinges, side, bool(get("pair")), span, _head(parts, span)
    )


def _door_inset(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("inset or overlay", None, span)


def _hinges(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("hinges", (paths(parts, span)[0], first_of(parts, m.Name)), span)


def _shelves(parts: list[Any], span: Span, tell: Tell) -> m.ShelvesStatement:
    get = once(all_of(parts, Clause), tell).get
    opening, of = paths(parts, span)
    pin, pitch, start, inset = get("pins") or (None, None, None, None)
    return m.ShelvesStatement(
        opening, of, get("count"), pin, pitch, start, inset, get("clear"), span, _head(parts, span)
    )


def _pins(parts: list[Any], span: Span, tell: Tell) -> Clause:
    named = tokens(parts, "PATH")
    before = parts.index(tokens(parts, "EVERY")[0])
    pin = paths(named[:1], span)[0] if named and parts.index(named[0]) < before else None
    pitch, start, inset = (*exprs(parts), None)[:3]
    return Clause("pins", (pin, pitch, start, inset), span)


def _item(parts: list[Any], span: Span, tell: Tell) -> m.ItemStatement:
    wide, deep, high, clear = (*exprs(parts), None)[:4]
    return m.ItemStatement(text(parts, span), (wide, deep, high), paths(parts, span)[0], clear, span)


# --- slides and hinges as hardware ---------------------------------------------------------------------


def _slide(parts: list[Any], span: Span, tell: Tell) -> m.StockClause:
    return m.StockClause(f"slide_{parts[1].text}", (), span)


def _number(key: str) -> Action:
    def build(parts: list[Any], span: Span, tell: Tell) -> m.StockClause:
        return m.StockClause(key, exprs(parts), span)

    return build


FILLING: dict[str, Action] = {
    "drawers": _drawers,
    "heights_given": _heights("given"),
    "heights_equal": _heights("equal"),
    "heights_shares": _heights("shares"),
    "height_rest": _rest,
    "drawer_slides": _slides,
    "drawer_box": _stock("box"),
    "drawer_bottom": _bottom,
    "drawer_fronts": _fronts,
    "corners": _corners,
    "brace": _flag("brace"),
    "dummy": _dummy,
    "trays": _flag("trays"),
    "packers": _stock("packers"),
    "drawer_load": _one("load"),
    "hung_door": _door,
    "door_inset": _door_inset,
    "door_overlay": _one("inset or overlay"),
    "door_reveal": _one("reveal"),
    "door_hinges": _hinges,
    "door_pair": _flag("pair"),
    "shelves": _shelves,
    "shelf_pins": _pins,
    "shelf_clear": _one("clear"),
    "item": _item,
    "slide": _slide,
    "slide_length": _number("length"),
    "slide_clearance": _number("clearance"),
    "slide_height": _number("height"),
    "slide_setback": _number("setback"),
    "slide_load": _number("slideload"),
    "slide_screws": _number("screws"),
    "cup": _number("cup"),
    "plate": _number("plate"),
}
