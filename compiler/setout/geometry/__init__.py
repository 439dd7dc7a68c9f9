"""Exact boxes, faces and quarter turns. Every coordinate is a Fraction of an inch."""

from setout.geometry.model import (
    ALL_FACES,
    AXIS_WORDS,
    FACE_WORDS,
    IDENTITY,
    Axis,
    Box,
    Face,
    Motion,
    Vec,
    bounding,
    face_named,
)

__all__ = [
    "ALL_FACES",
    "AXIS_WORDS",
    "FACE_WORDS",
    "IDENTITY",
    "Axis",
    "Box",
    "Face",
    "Motion",
    "Vec",
    "bounding",
    "face_named",
]
