"""Lengths and boxes as JSON: exact in inches as text, the same in millimetres as numbers."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from setout.geometry import Box, Face
from setout.write.facts.sizes import MM

Json = dict[str, Any]


def length(value: Fraction) -> Json:
    return {"in": str(value), "mm": mm(value)}


def mm(value: Fraction) -> float | int:
    exact = value * MM
    return exact.numerator if exact.denominator == 1 else round(float(exact), 6)


def maybe(value: Fraction | None) -> Json | None:
    return None if value is None else length(value)


def box_of(box: Box) -> Json:
    return {
        "lo": [str(v) for v in box.lo],
        "hi": [str(v) for v in box.hi],
        "lo_mm": [mm(v) for v in box.lo],
        "hi_mm": [mm(v) for v in box.hi],
    }


def face_word(face: Face | None) -> str | None:
    return None if face is None else face.word
