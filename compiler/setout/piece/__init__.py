"""Equal boards are one piece, and each piece has its mark for good."""

from setout.piece.model import Entry, Member, Piece, Pieces, Register, Run, Size
from setout.piece.register import parse_register, register_text
from setout.piece.stage import flat, piece, ways_flat

__all__ = [
    "Entry",
    "Member",
    "Piece",
    "Pieces",
    "Register",
    "Run",
    "Size",
    "flat",
    "parse_register",
    "piece",
    "register_text",
    "ways_flat",
]
