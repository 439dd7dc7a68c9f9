"""Reads a drawing back: its words with the room they take, and its straight lines."""

from __future__ import annotations

import re
from xml.etree import ElementTree

from setout.drawing import Drawing
from setout.drawing.ink.lettering import CAP, SMALL
from setout.drawing.ink.svg import Area, text_area

SVG = "{http://www.w3.org/2000/svg}"


def words(drawing: Drawing) -> list[str]:
    return [t.text or "" for t in _texts(drawing)]


def rooms(drawing: Drawing) -> list[tuple[str, Area]]:
    return [_room(t) for t in _texts(drawing)]


def sizes(drawing: Drawing) -> list[float]:
    return [float(t.get("font-size", SMALL)) for t in _texts(drawing)]


def clashes(drawing: Drawing) -> list[tuple[str, str]]:
    """Pairs of words that stand over each other, a hair's breadth of the air round letters allowed."""
    all_rooms = [(w, a.grown(-0.6)) for w, a in rooms(drawing)]
    return [(v, w) for n, (v, a) in enumerate(all_rooms) for w, b in all_rooms[n + 1 :] if a.meets(b)]


def lines(drawing: Drawing, look: str = "") -> list[tuple[float, float, float, float]]:
    """The straight strokes of paths whose attributes hold `look`, dash and all."""
    out = []
    for path in ElementTree.fromstring(drawing.svg).iter(f"{SVG}path"):
        if look in f"{path.get('stroke-width', '')} {path.get('stroke-dasharray', '')}":
            out += _strokes(path.get("d", ""))
    return out


def _strokes(d: str):
    x = y = 0.0
    for op, rest in re.findall(r"([MLHV])([^MLHVaz]*)", d):
        numbers = [float(n) for n in rest.split()]
        to = (numbers[0], y) if op == "H" else (x, numbers[0]) if op == "V" else (numbers[0], numbers[1])
        if op != "M":
            yield (x, y, *to)
        x, y = to


def _texts(drawing: Drawing):
    return list(ElementTree.fromstring(drawing.svg).iter(f"{SVG}text"))


def _room(t) -> tuple[str, Area]:
    size, bold = float(t.get("font-size", SMALL)), t.get("font-weight") == "700"
    turned = re.match(r"translate\((\S+) (\S+)\)rotate", t.get("transform", ""))
    said, drop = t.text or "", CAP * size / 2
    if turned:
        at = (float(turned[1]) - drop, float(turned[2]))
        return said, text_area(at, said, size, anchor="start", bold=bold, turned=True)
    return said, text_area((float(t.get("x")), float(t.get("y")) - drop), said, size, anchor="start", bold=bold)
