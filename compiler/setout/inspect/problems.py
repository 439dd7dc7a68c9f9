"""What a foreman has to say, in words. Every weight and sag is rounded here and nowhere else."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import isqrt

from setout.diagnostics import Diagnostic, Label, note, warning
from setout.geometry import Axis, Face
from setout.inspect.model import CarriedUnit, Hung, Lifted, Moves, OnFeet, Sag, Standing
from setout.inspect.view import View
from setout.place.model import Board
from setout.resolve.model import Room, RoomBox
from setout.source import Span
from setout.strength import rise_squared, smallest_section
from setout.units import said

_KG = 0.45359237  # kilograms in a pound
_KG_M2 = _KG / 0.09290304  # kg/m2 in a lb/ft2
_WORDS = {Axis.WIDE: "wide", Axis.HIGH: "high", Axis.DEEP: "deep"}


def too_heavy(view: View, lift: Lifted, also: int, span: Span) -> Diagnostic:
    more = f" (and {also} like it)" if also else ""
    return note(
        "rod550",
        f"`{lift.path}` weighs {_weight(view, lift.weight)}: {lift.people} people lift it{more}",
        span,
        f"one lifts up to {_weight(view, lift.limit)}",
        help="have the hands there at that step; fitted hardware and contents come on top. "
        "`practice { lift_alone 40 }` sets a lower limit",
    )


def sags_too_much(view: View, sag: Sag, also: int, board: Board) -> Diagnostic:
    assert sag.lasting is not None
    over = "sticks out" if sag.ends == "cantilever" else "bridges"
    more = f" (and {also} like it)" if also else ""
    at = _load(view, sag.load)
    make = warning if sag.said else note
    less = "" if sag.said else "say what it carries with `load`, if it is less"
    return make(
        "rod551" if sag.said else "rod552",
        f"`{sag.board}` would sag {_sag(view, sag.lasting)} under {at}{more}",
        board.head,
        f"it {over} {said(sag.span, view.style)}; {_sag(view, sag.allowed)} is the limit, a 144th of that",
        help="; ".join(way for way in (_mend(view, sag), less) if way),
    )


def _mend(view: View, sag: Sag) -> str:
    ways = []
    if sag.longest_span:
        word = "let it stick out" if sag.ends == "cantilever" else "put a divider in, so that it bridges"
        ways.append(f"{word} {said(sag.longest_span, view.style)} at most")
    if sag.strip is not None:
        wide, high = said(view.practice.value("edge_strip_thick"), view.style), said(sag.strip, view.style)
        ways.append(f"glue a strip {wide} thick and {high} high under the edge that runs along it")
    if sag.thickness_needed is not None:
        ways.append(f"make it {said(sag.thickness_needed, view.style)} thick")
    return ", or ".join(ways)


def wall_screws(view: View, hung: Hung, span: Span) -> Diagnostic:
    assert hung.estimate is not None
    used = hung.estimate.used
    much = "hold nothing by the published formulas" if used is None else f"would carry {used:.1f} times what they may"
    total = (hung.weight or Fraction(0)) + hung.contents
    more = f", with `{', '.join(hung.carried)}` on it," if hung.carried else ""
    return warning(
        "rod553",
        f"The screws that hold `{', '.join(hung.units)}`{more} to the wall {much}",
        span,
        f"{hung.screws} screws for {_weight(view, total)}, contents reckoned in",
        help="use longer screws into more studs, or let it stand on something. This is an estimate and no design: "
        "local codes and licensed practice govern",
    )


def hangs_by_thin(view: View, hung: Hung, board: Board) -> Diagnostic:
    least = said(view.practice.value("wall_thinnest"), view.style)
    thick = said(min(board.box.sizes), view.style)
    return warning(
        "rod558",
        f"`{', '.join(hung.units)}` hangs by a thin panel alone, `{board.path}`",
        board.head,
        f"{thick} thick; less than {least} holds no screw heads, and whatever fastens it to the rest carries all",
        help=f"put a rail flat in front of it at the top, joined to it, to the sides and to the top: "
        f"`joint rail to {board.name} {{ glue }}`. The wall screws go through both then",
    )


def held_by_nothing(view: View, units: Sequence[str], wall: Face | None, span: Span) -> Diagnostic:
    """`units` that touch each other; `wall`: the one that the first reaches."""
    first, *others = units
    more = f" and {len(others)} more that {'touches' if len(others) == 1 else 'touch'} it" if others else ""
    above = view.outline(view.units[first]).lo[Axis.HIGH] - view.floor
    stand = "stand it on the floor or on what stands"
    if wall is None:
        mend = f"join it to what is held, or {stand}"
    elif wall.axis is Axis.HIGH:
        mend = f"screw it to what is above: `joint {first} to room.{wall.word} {{ screws }}`, or {stand}"
    else:
        mend = f"screw it to the wall: `joint {first} to room.{wall.word} {{ screws into studs }}`, or {stand}"
    return warning(
        "rod557",
        f"Nothing holds `{first}`{more} up",
        span,
        f"{said(above, view.style)} above the floor, on nothing, and joined to no wall nor to what is held",
        help=mend,
    )


def could_tip(view: View, piece: Standing, also: int, span: Span) -> Diagnostic:
    more = f" (and {also} like it)" if also else ""
    return note(
        "rod554",
        f"`{piece.path}` stands free: tall, {_weight(view, piece.weight)}, and not joined to the wall{more}",
        span,
        f"{said(piece.high, view.style)} high",
        help="join it to a wall, as a chest of drawers this size must be kept from tipping: "
        "`joint back_panel to room.back { screws into studs }`",
    )


def feet_overloaded(view: View, feet: OnFeet, span: Span) -> Diagnostic:
    more = f", with `{', '.join(feet.carried)}` on it," if feet.carried else ""
    return warning(
        "rod556",
        f"`{feet.unit}`{more} is too heavy for its {feet.count} `{feet.hardware}`",
        span,
        f"{_weight(view, feet.weight)} with what may be put in; {_weight(view, feet.each)} may be on each",
        help="fit more of them, or others that carry more",
    )


def held_across(view: View, moves: Moves, board: Board) -> Diagnostic:
    return warning(
        "rod555",
        f"`{moves.board}` is held at both edges across its grain, and moves",
        board.head,
        f"{said(moves.size, view.style)} of {moves.species}: up to {_sag(view, float(moves.grows))} wider in the damp "
        f"season, {_sag(view, float(moves.shrinks))} narrower in the dry",
        help=f"hold it at one edge or in the middle and leave {_sag(view, float(moves.gap))} beside it, or use a sheet",
    )


def outside_room(view: View, unit: CarriedUnit, face: Face, by: Fraction, room: Room, span: Span) -> Diagnostic:
    size = said(unit.outline.size(face.axis), view.style)
    return warning(
        "rod560",
        f"`{unit.path}` doesn't fit the room: {said(by, view.style)} too far at the {face.word}",
        span,
        f"{size} {_WORDS[face.axis]} with its feet and all that sticks out",
        Label(room.span, f"{said(room.sizes[face.axis], view.style)} {_WORDS[face.axis]}"),
        help="make it smaller or move it; feet lift what stands on them",
    )


def in_the_way(view: View, box: RoomBox, hits: list[str], board: Board) -> Diagnostic:
    shared = board.box.shared(box.box)
    assert shared is not None
    how = " x ".join(said(size, view.style) for size in shared.sizes)
    more = f" and {len(hits) - 1} more" if len(hits) > 1 else ""
    if box.kind == "obstacle":
        return warning(
            "rod562",
            f"`{hits[0]}`{more} would stand where the {box.title} is",
            board.head,
            f"{how} of it",
            Label(box.span, "here"),
            help="move it clear, or cut a notch and say so with a smaller obstacle",
        )
    return warning(
        "rod561",
        f"`{hits[0]}`{more} is in what must stay clear: {box.title}",
        board.head,
        f"{how} of it",
        Label(box.span, "kept clear here"),
        help="move it out of there or make it smaller",
    )


def not_through_door(view: View, unit: CarriedUnit, room: Room, span: Span) -> Diagnostic:
    assert room.door is not None
    small, door = smallest_section(unit.outline.sizes), room.door
    section = f"{said(small[0], view.style)} x {said(small[1], view.style)}"
    return warning(
        "rod563",
        f"`{unit.path}` doesn't come through the doorway",
        span,
        f"{section} at its slimmest, tilted or not",
        Label(room.span, f"{said(door[0], view.style)} wide, {said(door[1], view.style)} high"),
        help="make it in two parts that are screwed together in the room, or put it together there",
    )


def not_stood_up(view: View, unit: CarriedUnit, room: Room, span: Span) -> Diagnostic:
    ceiling = room.ceiling or room.sizes[Axis.HIGH]
    rise = _root_up(rise_squared(unit.outline.sizes))
    return warning(
        "rod564",
        f"`{unit.path}` comes in lying and can't be stood up",
        span,
        f"its diagonal reaches {said(rise, view.style)} while it is raised",
        Label(room.span, f"the ceiling is at {said(ceiling, view.style)}"),
        help="make it lower or less deep, put it on its feet or plinth afterwards, or make it in two parts",
    )


def _root_up(square: Fraction) -> Fraction:
    """Its root, up to the next 1/16 in."""
    n = isqrt(square.numerator * 256 // square.denominator)
    root = Fraction(n, 16)
    return root if root * root >= square else Fraction(n + 1, 16)


def _weight(view: View, pounds: Fraction | None) -> str:
    if pounds is None:
        return "weight unknown"
    return f"{float(pounds) * _KG:.0f} kg" if view.style.metric else f"{float(pounds):.0f} lb"


def _load(view: View, psf: Fraction) -> str:
    return f"{float(psf) * _KG_M2:.0f} kg/m2" if view.style.metric else f"{float(psf):.4g} lb/ft2"


def _sag(view: View, inches: float) -> str:
    return f"{inches * 25.4:.1f} mm" if view.style.metric else f"{inches:.2f} in"
