"""What pieces and the marks file have to say, in words."""

from __future__ import annotations

from setout.diagnostics import Diagnostic, Label, error, note
from setout.piece.gather import Group
from setout.source import Span
from setout.units import Style, exact, printed


def unknown_version(found: str, known: str, span: Span) -> Diagnostic:
    return error(
        "rod450",
        "The marks file is of another version",
        span,
        f"version {found} stands here, this setout reads version {known}",
        help="build with the setout that wrote this file, or with a newer one; nothing was changed",
    )


def damaged(text: str, span: Span) -> Diagnostic:
    return error(
        "rod451",
        "A line of the marks file can't be read",
        span,
        f"`{text}` is not a mark and a shape as setout writes them",
        help="take the line back from version control as it was; where two versions were merged, keep both sides' "
        "lines and strike out the merge tool's own",
    )


def mark_twice(mark: str, first: Span, again: Span) -> Diagnostic:
    return error(
        "rod452",
        f"The mark {mark} stands for two different boards",
        again,
        f"{mark} is given a second time",
        Label(first, f"{mark} was this board's already"),
        help="strike out the line whose board is not cut yet; the next build gives that board a new mark. If boards of "
        f"both are cut, rub out {mark} on one of them first",
    )


def shape_twice(mark: str, first: Span, other: str, again: Span) -> Diagnostic:
    again_says = f"{other} is the same board as {mark}" if mark != other else f"{mark} stands here a second time"
    return error(
        "rod453",
        "One board has two lines in the marks file",
        again,
        again_says,
        Label(first, "the first line for it"),
        help="strike out one of the two lines: the one whose mark is not pencilled on a board yet",
    )


def prints_alike(one: Group, mark: str, other: Group, other_mark: str, style: Style) -> Diagnostic:
    size = " x ".join(printed(s.amount, style).text for s in (one.is_.length, one.is_.width))
    unit = "mm" if style.metric else "in"
    return note(
        "rod454",
        f"{mark} and {other_mark} print the same size but are not",
        other.span,
        f"{other_mark} is {_exactly(other)} in",
        Label(one.span, f"{mark} is {_exactly(one)} in"),
        help=f"both print as {size} {unit}: keep the two apart by their marks, give them one size, "
        "or name a finer mark (`mark to …`)",
    )


def _exactly(group: Group) -> str:
    return " x ".join(exact(s.amount) for s in (group.is_.length, group.is_.width))
