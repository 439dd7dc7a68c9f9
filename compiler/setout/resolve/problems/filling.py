"""What openings hold, and the hardware that it runs and hangs on."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, Label, error
from setout.read import model as r
from setout.resolve.problems.wording import listed, perhaps
from setout.source import Span

__all__ = [
    "drawers_at_odds",
    "filled_twice",
    "filling_lacks",
    "heights_unlike_count",
    "no_such_drawer",
    "not_an_opening",
    "not_such_hardware",
    "odd_drawer_count",
    "slides_lack",
    "slides_unlike",
    "slides_unsaid",
    "two_rests",
]

_DESCRIBED = {
    "slides": "slides say `slides side`, their `length`, `clearance` and `height`",
    "hinges": "a cup hinge says `cup 35mm depth 13mm from 4mm`",
    "shelf pins": "shelf pins say `hole 5mm depth 10mm`",
}


def not_such_hardware(path: r.Path, what: str, known: r.HardwareStatement) -> Diagnostic:
    return error(
        "rod205",
        f"`{path.text}` is not described as {what}",
        path.span,
        "",
        Label(known.span, "this is all that is said of it"),
        help=_DESCRIBED[what],
    )


def heights_unlike_count(at: Span, count: int, heights: int) -> Diagnostic:
    return error(
        "rod212",
        f"{count} drawers, but {heights} heights",
        at,
        "",
        help="give a height for each drawer from the top down, or leave the count out: the heights say it",
    )


def two_rests(at: Span) -> Diagnostic:
    return error(
        "rod212",
        "Only one drawer can take the rest of the height",
        at,
        "`rest` stands here more than once",
        help="give the others a height; for drawers that are all alike write `count 4` and `heights equal`",
    )


def odd_drawer_count(at: Span, most: int) -> Diagnostic:
    return error(
        "rod212",
        f"The number of drawers must be a plain number from 1 to {most}",
        at,
        "",
        help="write the number itself, `count 4`; where it differs from cabinet to cabinet, let `when` choose",
    )


def no_such_drawer(at: Span, count: int) -> Diagnostic:
    return error(
        "rod212",
        "There is no drawer of that number",
        at,
        f"there are {count}, counted from the top" if count > 1 else "there is one",
        help="write the number of the drawer that has a front only, `dummy 1`",
    )


def filling_lacks(what: str, at: Span, missing: Sequence[str]) -> Diagnostic:
    return error(
        "rod224",
        f"The {what} lack {listed(missing)}",
        at,
        "",
        help=f"add a line to the braces: `{missing[0]}`",
    )


def filled_twice(opening: r.Path, at: Span, before: Span) -> Diagnostic:
    return error(
        "rod228",
        f"`{opening.text}` is filled already",
        at,
        "",
        Label(before, "with this"),
        help="an opening has drawers, or a door, or shelves, or a door and shelves; give the other its own opening",
    )


def not_an_opening(path: r.Path, known: Sequence[str]) -> Diagnostic:
    return error(
        "rod232",
        f"There is no opening `{path.text}` here",
        path.span,
        "",
        help=perhaps(
            path.text,
            known,
            f"name the space first: `opening {path.parts[0]} {{ wide between left_side and right_side }}`",
        ),
    )


def slides_lack(hardware: r.HardwareStatement, missing: Sequence[str]) -> Diagnostic:
    return error(
        "rod234",
        f"`{hardware.name.text}` doesn't say its {listed(missing)}",
        hardware.name.span,
        "",
        help="slides are described by their own numbers: `slides side; length 20; clearance 1/2; height 1-3/4`",
    )


def slides_unsaid(hardware: r.HardwareStatement, clause: r.StockClause) -> Diagnostic:
    return error(
        "rod234",
        f"`{hardware.name.text}` has the numbers of slides, but isn't said to be slides",
        clause.span,
        "",
        help="add `slides side`, `slides under` or `slides runner`",
    )


def slides_unlike(path: r.Path, first: r.HardwareStatement) -> Diagnostic:
    return error(
        "rod187",
        f"`{path.text}` and `{first.name.text}` are not the same slides in two lengths",
        path.span,
        "its kind, clearance, height or setback differs",
        Label(first.name.span, "from these"),
        help="slides to choose from differ in length, load and price alone",
    )


def drawers_at_odds(message: str, at: Span, says: str) -> Diagnostic:
    return error(
        "rod188",
        f"These clauses don't go together: {message}",
        at,
        says,
        help="leave out the one that isn't meant",
    )
