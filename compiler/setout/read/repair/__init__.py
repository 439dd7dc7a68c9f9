"""What to do at a token that can't stand where it stands, in the order in which it is tried."""

from setout.read.parse import Repair
from setout.read.repair.blocks import (
    closed_twice,
    end_of_file,
    forgotten_brace,
    missing_brace,
    missing_separator,
    stray_separator,
)
from setout.read.repair.skipping import unexpected
from setout.read.repair.words import (
    bad_character,
    depth_unsaid,
    everyday,
    glued_by,
    minus,
    misspelt,
    mixed_apart,
    no_such_function,
    rests,
    unit_apart,
    unit_in_words,
)

REPAIRS: tuple[Repair, ...] = (
    stray_separator,
    bad_character,
    minus,
    glued_by,
    mixed_apart,
    depth_unsaid,
    unit_in_words,
    unit_apart,
    no_such_function,
    rests,
    everyday,
    misspelt,
    forgotten_brace,
    missing_brace,
    missing_separator,
    end_of_file,
    closed_twice,
    unexpected,
)

__all__ = ["REPAIRS"]
