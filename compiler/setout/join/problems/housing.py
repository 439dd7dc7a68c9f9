"""Dados, grooves and rabbets."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.geometry import Axis, Box, Face
from setout.join.ground import Ground
from setout.join.model import Cavity, Contact
from setout.join.problems.paths import written
from setout.place.model import Board, Joint, Method


def drawn_in_already(ground: Ground, joint: Joint, method: Method, a: Board, b: Board, shared: Box) -> Diagnostic:
    axis = min(Axis, key=lambda k: shared.size(k))
    by = ground.say(shared.size(axis))
    return error(
        "rod360",
        f"`{a.path}` is drawn {by} into `{b.path}` already, and its {method.kind} would count that twice",
        a.head,
        f"reaches {by} past the face of `{b.name}` on {axis.word}",
        Label(method.span, f"the {method.kind} adds its depth by itself"),
        Label(b.head, "let in here"),
        help=f"let the span end at the face of `{b.name}` (`between`): spans go to shoulders, never to tongues",
    )


def no_edge_enters(joint: Joint, a: Board, b: Board, contact: Contact, method: Method) -> Diagnostic:
    other_way = f"joint {written(joint, b)} to {written(joint, a)} …"
    ways = {"face": "face to face", "lap": f"`{a.name}`'s face against `{b.name}`'s edge"}
    how = ways.get(contact.kind, "inside a notch")
    return error(
        "rod361",
        f"No edge of `{a.path}` can be let into `{b.path}`: they meet {how}",
        method.span,
        f"a {method.kind} takes an edge",
        Label(a.head, "the part that is named first enters"),
        Label(b.head, "this one would be cut"),
        help=f"name the part whose edge enters first (`{other_way}`), or leave the {method.kind} out",
    )


def rabbet_off_the_edge(ground: Ground, a: Board, b: Board, method: Method, cut: Cavity, receiver: Box) -> Diagnostic:
    width = a.thick
    off = min(cut.box.lo[width] - receiver.lo[width], receiver.hi[width] - cut.box.hi[width])
    return error(
        "rod362",
        f"The rabbet for `{a.path}` would lie {ground.say(off)} from the edge of `{b.path}`",
        method.span,
        "a rabbet lies on the edge of the board it is cut in",
        Label(a.head, "enters here"),
        Label(b.head, "cut here"),
        help=f"write `groove` or `dado`, or move `{a.name}` flush with the edge",
    )


def dado_on_the_edge(a: Board, b: Board, method: Method, cut: Cavity, high: bool) -> Diagnostic:
    edge = Face(a.thick, 1 if high else -1).word
    return error(
        "rod363",
        f"The {method.kind} for `{a.path}` would lie on the {edge} edge of `{b.path}`: that makes it a rabbet",
        method.span,
        f"a {method.kind} has wood on both sides",
        Label(a.head, f"flush with the {edge} of `{b.name}`"),
        Label(b.head, "cut here"),
        help=f"give `{a.name}` a joint of its own with `rabbet`, or move it away from the edge",
    )


def takes_the_whole_edge(ground: Ground, a: Board, b: Board, method: Method, cut: Cavity) -> Diagnostic:
    return error(
        "rod364",
        f"The {method.kind} for `{a.path}` is as wide as `{b.path}`: {ground.say(cut.width)}",
        method.span,
        "nothing would be left beside it",
        Label(a.head, "enters here"),
        Label(b.head, "cut here"),
        help=f"let `{a.name}` butt against `{b.name}`, or make it of thinner stock",
    )


def housing_through(ground: Ground, a: Board, b: Board, method: Method, cut: Cavity, thick: Fraction) -> Diagnostic:
    return error(
        "rod364",
        f"The {method.kind} for `{a.path}`, {ground.say(cut.depth)} deep, goes right through `{b.path}`",
        method.span,
        f"`{b.name}` is {ground.say(thick)} there",
        Label(a.head, "enters here"),
        Label(b.head, "cut here"),
        help=f"make the {method.kind} shallower than {ground.say(thick)}; a third to half of that is usual",
    )


def housing_deep(
    ground: Ground, a: Board, b: Board, method: Method, cut: Cavity, thick: Fraction, limit: Fraction
) -> Diagnostic:
    return warning(
        "rod365",
        f"The {method.kind} for `{a.path}` is {ground.say(cut.depth)} deep in {ground.say(thick)} of `{b.path}`",
        method.span,
        f"leaves {ground.say(thick - cut.depth)}",
        Label(a.head, "enters here"),
        Label(b.head, "cut here"),
        help=f"keep it to {ground.say(thick * limit)}, or `{b.name}` may break along it",
    )


def housings_meet(ground: Ground, board: Board, first: Cavity, second: Cavity, left: Fraction) -> Diagnostic:
    return error(
        "rod366",
        f"Inside `{board.path}` {_cut_for(first)} and {_cut_for(second)} meet",
        board.head,
        f"{ground.say(first.depth)} and {ground.say(second.depth)} deep from both sides of "
        f"{ground.say(first.depth + second.depth + left)}",
        help="make them shallower, or set the two parts off against each other",
    )


def thin_web(ground: Ground, board: Board, first: Cavity, second: Cavity, left: Fraction) -> Diagnostic:
    return warning(
        "rod367",
        f"Only {ground.fine(left)} is left of `{board.path}` between {_cut_for(first)} and {_cut_for(second)}",
        board.head,
        f"cut {ground.say(first.depth)} and {ground.say(second.depth)} deep from both sides",
        help="make them shallower, or set the two parts off against each other",
    )


def tongue_runs_into(ground: Ground, grown: str, other: str, shared: Box | None) -> Diagnostic:
    a, b = ground.board(grown), ground.board(other)
    assert shared is not None
    by = ground.say(min(shared.sizes))
    return error(
        "rod368",
        f"Let into its housing, `{a.path}` runs {by} into `{b.path}`",
        b.head,
        f"stands where `{a.name}`'s tongue goes",
        Label(a.head, "grows by the depth of its housing"),
        help=f"house `{a.name}` in `{b.name}` as well, stop the housing short of it (`stopped`), or notch one of them",
    )


def depth_and_gap(ground: Ground, method: Method, depth: Fraction) -> Diagnostic:
    gap = method.gap or Fraction(0)
    return error(
        "rod369",
        f"A {method.kind} {ground.say(depth)} deep with a gap of {ground.say(gap)} leaves no tongue",
        method.span,
        f"the tongue would be {ground.say(depth - gap)} long",
        help="the depth is measured from the face, more than 0; the gap is the little air left under the tongue",
    )


def two_depths(
    ground: Ground, method: Method, a: Board, face: Face, growth: Fraction, other: Method, before: Fraction
) -> Diagnostic:
    return error(
        "rod370",
        f"The {face.word} edge of `{a.path}` would have to grow by {ground.say(before)} and by {ground.say(growth)}",
        method.span,
        f"{ground.say(growth)} here",
        Label(other.span, f"{ground.say(before)} here"),
        Label(a.head, "one edge, sawn in one cut"),
        help="give both housings the same depth, or take up the difference with a `gap`",
    )


def stopped_across(method: Method, b: Board, face: Face, run: Axis) -> Diagnostic:
    low, high = Face(run, -1), Face(run, 1)
    return error(
        "rod371",
        f"The {method.kind} in `{b.path}` doesn't run towards its {face.word}",
        method.span,
        f"it runs from {low.word} to {high.word}",
        Label(b.head, "cut here"),
        help=f"stop it at {low.word} or {high.word}",
    )


def stopped_away(ground: Ground, method: Method, b: Board, run: Axis) -> Diagnostic:
    return error(
        "rod371",
        f"Stopped like this, nothing is left of the {method.kind} in `{b.path}`",
        method.span,
        f"`{b.name}` is {ground.say(b.box.size(run))} {run.word}",
        help="the distance after `stopped FACE` is how far short of that face it ends",
    )


def _cut_for(cut: Cavity) -> str:
    return f"the {cut.kind} for `{cut.for_board}`"
