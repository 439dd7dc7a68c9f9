"""Where things stand and how far they reach."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error
from setout.geometry import Axis, Face
from setout.place.problems.words import amount
from setout.source import Span
from setout.units import Style


def no_position(name: str, axis: Axis, at: Span, kind: str) -> Diagnostic:
    low, high = Face(axis, -1).word, Face(axis, 1).word
    how = {
        "panel": f"say where it stands: `{_LIES[axis]} at {low}`, `... at {high}` or `against SOMETHING.{low}`",
        "stick": f"say where it stands: `at {low}`, `at {high} - 1` or `centred {axis.word}`",
        "place": f"say where it stands: `at {low}`, `at {high}` or `{axis.word} from SOMETHING.{high}`",
    }[kind]
    return error(
        "rod253", f"`{name}` has no place along {axis.word}", at, f"nothing says where it is on {axis.word}", help=how
    )


def size_is_settled(name: str, axis: Axis, at: Span, head: Span, by: str) -> Diagnostic:
    return error(
        "rod254",
        f"How {axis.word} `{name}` is comes from {by}",
        at,
        "so this says too much",
        Label(head, f"`{name}`"),
        help="leave the length out and say one place; an assembly's size is changed with `(w = ...)`",
    )


def size_without_position(name: str, axis: Axis, at: Span) -> Diagnostic:
    low, high = Face(axis, -1).word, Face(axis, 1).word
    return error(
        "rod255",
        f"`{name}` has a length along {axis.word}, but no place",
        at,
        "from where?",
        help=f"write `{axis.word} ... from {low}`, `{axis.word} ... to {high}` or `{axis.word} ... centred`",
    )


def middle_without_size(name: str, axis: Axis, at: Span) -> Diagnostic:
    return error(
        "rod256",
        f"`{name}` is centred, but nothing says how {axis.word} it is",
        at,
        "the middle alone",
        help=f"write the length with it: `{axis.word} 12 centred`",
    )


def said_twice(name: str, axis: Axis, first: Span, second: Span) -> Diagnostic:
    a, b = sorted((first, second), key=lambda s: (s.file, s.start))
    return error(
        "rod257",
        f"`{name}` is placed twice along {axis.word}",
        b,
        "and here again",
        Label(a, "placed here"),
        help="keep one of the two",
    )


def nothing_left(style: Style, path: str, axis: Axis, low: Fraction, high: Fraction, at: Span) -> Diagnostic:
    ends = (
        f"its {Face(axis, -1).word} would be at {amount(style, low)}, its {Face(axis, 1).word} at {amount(style, high)}"
    )
    what = "nothing is left" if low == high else f"it is {amount(style, low - high)} less than nothing"
    return error(
        "rod258",
        f"Along {axis.word} nothing is left of `{path}`",
        at,
        f"{what}: {ends}",
        help="look whether the two ends are the right way round, and whether there is room between them",
    )


def not_above_zero(style: Style, what: str, value: Fraction, at: Span) -> Diagnostic:
    return error(
        "rod259",
        f"A length must be more than nothing: {what}",
        at,
        f"this comes to {amount(style, value)}",
        help="a size is what is left to cut; look at what is taken off",
    )


def no_gap(style: Style, a: str, b: str, axis: Axis, over: Fraction, at: Span) -> Diagnostic:
    how = f"they share {amount(style, over)} of {axis.word}" if over > 0 else f"they touch along {axis.word}"
    return error(
        "rod260",
        f"There is no gap along {axis.word} between `{a}` and `{b}`",
        at,
        how,
        help=f"name two things that stand apart, or say both ends: `{axis.word} from {a}.{Face(axis, 1).word} to ...`",
    )


def same_thing(name: str, at: Span) -> Diagnostic:
    return error(
        "rod261",
        f"Both sides are `{name or 'the assembly'}`",
        at,
        "two different things are wanted here",
        help="name the other one",
    )


_LIES = {Axis.WIDE: "upright", Axis.HIGH: "level", Axis.DEEP: "facing"}
