"""How parts lie and stand, and their features."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, Label, error
from setout.geometry import Axis, Face
from setout.read import model as r
from setout.resolve.model import Stock
from setout.resolve.problems.wording import a, listed
from setout.source import Span

__all__ = [
    "at_without_face",
    "count_of_placed",
    "feature_along_cut",
    "feature_axis_twice",
    "feature_unplaced",
    "grain_of_stick",
    "grain_through",
    "loose_placed",
    "mirror_of_mirror",
    "mirror_of_other",
    "mirrored_upwards",
    "mitre_faces",
    "orientation_wanted",
    "position_twice",
    "rip_of_sheet",
    "run_is_broad",
    "show_on_edge",
    "show_on_end",
    "stick_width_spanned",
    "thickness_spanned",
    "which_axis",
    "wrong_orientation",
]

_PANEL = "`upright` (faces look left and right), `level` (up and down) or `facing` (front and back)"
_STICK = "its run and its broad face: `across level`, `up facing`, `through upright` …"
_LOW = {Axis.WIDE: "left", Axis.HIGH: "bottom", Axis.DEEP: "front"}


def orientation_wanted(part: r.PartStatement, kind: str) -> Diagnostic:
    """`kind`: "sheet", "stick", or "" when it can't be told."""
    how = {"sheet": f"for a panel say {_PANEL}", "stick": f"for a stick say {_STICK}"}.get(
        kind, f"a panel: {_PANEL}; a stick: {_STICK}"
    )
    if part.orient:
        return error("rod206", f"How `{part.name.text}` lies is said more than once", part.orient[-1].span, help=how)
    return error(
        "rod206",
        f"How does `{part.name.text}` lie?",
        part.head,
        "neither panel nor stick, and no `size`",
        help=f"{how}; a loose part says `size 30 x 11-1/4`",
    )


def wrong_orientation(part: r.PartStatement, stock: Stock) -> Diagnostic:
    words = " ".join(name.text for name in part.orient)
    sheet = stock.kind == "sheet"
    kind = "a sheet" if sheet else "a stick"
    return error(
        "rod207",
        f"`{words}` is how a {'stick' if sheet else 'panel'} lies, and `{stock.name}` is {kind}",
        part.orient[0].span.to(part.orient[-1].span),
        "",
        Label(stock.span, kind),
        help=f"for a panel say {_PANEL}" if sheet else f"for a stick say {_STICK}",
    )


def run_is_broad(part: r.PartStatement, axis: Axis) -> Diagnostic:
    run, broad = part.orient[0], part.orient[1]
    others = {Axis.WIDE: ("level", "facing"), Axis.HIGH: ("upright", "facing"), Axis.DEEP: ("upright", "level")}[axis]
    return error(
        "rod208",
        f"`{run.text} {broad.text}` can't be: a stick's broad face never looks along its run",
        run.span.to(broad.span),
        help=f"write `{run.text} {others[0]}` or `{run.text} {others[1]}`",
    )


def thickness_spanned(part: r.PartStatement, axis: Axis, span: Span) -> Diagnostic:
    return error(
        "rod209",
        f"`{part.name.text}` has its thickness along {axis.word}",
        span,
        "its stock says how thick it is",
        help=f"say only where one of its faces stands: `at {_LOW[axis]}`, `{_LOW[axis]} at …`",
    )


def stick_width_spanned(part: r.PartStatement, axis: Axis, span: Span) -> Diagnostic:
    return error(
        "rod209",
        f"`{part.name.text}` has its width along {axis.word}",
        span,
        "its stock says how wide it is",
        help=f"say only where one of its faces stands: `at {_LOW[axis]}`; a narrower stick is ripped: `rip 1-1/4`",
    )


def position_twice(axis: Axis, first: Span, second: Span) -> Diagnostic:
    a, b = sorted((first, second), key=lambda s: s.start)
    return error(
        "rod210",
        f"Where it stands along {axis.word} is said twice",
        b,
        "and here again",
        Label(a, "said here"),
        help=f"keep one; if both ends are fixed, write `{axis.word} from … to …`",
    )


def at_without_face(span: Span) -> Diagnostic:
    return error(
        "rod211",
        "At which face?",
        span,
        "no face is named here",
        help="`at left`, `at bottom + 3`; its own face by name: `top at 30`, `left at …`",
    )


def which_axis(span: Span, word: str, open_axes: Sequence[str]) -> Diagnostic:
    choices = list(open_axes) or ["wide", "high", "deep"]
    example = f"centred {choices[0]}" if word == "centred" else "repeat 4 wide between … and …"
    says = (
        "its place is settled along every axis"
        if word == "centred" and not open_axes
        else f"it could be {listed(choices, 'or')}"
    )
    return error("rod213", f"`{word}` along which axis?", span, says, help=f"name it: `{example}`")


def grain_through(name: r.Name, part: str, others: Sequence[Axis]) -> Diagnostic:
    return error(
        "rod214",
        f"The grain of `{part}` can't run through its thickness",
        name.span,
        help=f"write `grain {others[0].word}` or `grain {others[1].word}`",
    )


def grain_of_stick(name: r.Name, part: str, run: Axis) -> Diagnostic:
    return error(
        "rod214",
        f"`{part}` is a stick: its grain runs along it",
        name.span,
        f"it runs {run.word}",
        help="leave `grain` out",
    )


def show_on_edge(name: r.Name, part: str, broad: Sequence[Face]) -> Diagnostic:
    return error(
        "rod215",
        f"The {name.text} of `{part}` is an edge",
        name.span,
        "the good face of a panel is one of its two broad faces",
        help=f"write `show {broad[0].word}` or `show {broad[1].word}`",
    )


def show_on_end(name: r.Name, part: str) -> Diagnostic:
    return error(
        "rod215",
        f"The {name.text} of `{part}` is an end",
        name.span,
        "the good face of a stick is one of its long ones",
        help="name one of its four long faces",
    )


def mirror_of_other(path: r.Path, kind: str) -> Diagnostic:
    says = "itself" if kind == "part" else a(kind)
    loose = "; a loose part has no place to mirror"
    return error(
        "rod216",
        "Only another part with a place can be mirrored",
        path.span,
        f"`{path.text}` is {says}" if kind != "part" else "this can't be mirrored",
        help=f"name another part beside it{loose if kind == 'part' else ''}; `place … mirrored` mirrors an assembly",
    )


def mirror_of_mirror(path: r.Path, original: str) -> Diagnostic:
    return error(
        "rod216",
        f"`{path.text}` is a mirror image itself",
        path.span,
        f"of `{original}`",
        help=f"mirror `{original}`, or say this part out",
    )


def mirrored_upwards(name: r.Name) -> Diagnostic:
    return error(
        "rod217",
        "Parts are mirrored left to right or front to back",
        name.span,
        "not upside down",
        help="leave `across` out (left to right) or write `across deep`",
    )


def loose_placed(part: r.PartStatement, span: Span) -> Diagnostic:
    return error(
        "rod218",
        f"`{part.name.text}` has a `size`, and so has no place",
        span,
        "this says how it lies or where it stands",
        Label(part.loose_size[0].span, "a loose part"),
        help="take out the `size` and say its spans, or take this out",
    )


def count_of_placed(span: Span, name: str) -> Diagnostic:
    return error(
        "rod219",
        f"`{name}` has a place, and a `count`",
        span,
        "several can't stand in one place",
        help="several alike in a row: `repeat 3 between … and …`; `count` goes with a loose part's `size`",
    )


def rip_of_sheet(part: r.PartStatement) -> Diagnostic:
    assert part.rip is not None
    return error(
        "rod220",
        f"`{part.name.text}` is a panel; `rip` makes a stick narrower",
        part.rip.span,
        help="say how far the panel reaches with a span: `deep 11 from front`",
    )


def feature_axis_twice(feature: r.Feature, axis: Axis) -> Diagnostic:
    return error(
        "rod221",
        f"Both sizes of this {_word(feature)} are along {axis.word}",
        feature.span,
        help=f"say it along two axes: `{_example(feature)}`",
    )


def feature_along_cut(feature: r.Feature, axis: Axis | None, others: Sequence[Axis]) -> Diagnostic:
    word = axis.word if axis is not None else ""
    return error(
        "rod221",
        f"This {_word(feature)} goes through along {word}",
        feature.span,
        f"nothing is to be said along {word}",
        help=f"say it along {others[0].word} and {others[1].word}",
    )


def feature_unplaced(kind: str, span: Span, axis: Axis) -> Diagnostic:
    return error(
        "rod222",
        f"Where along {axis.word} is this {'cut-out' if kind == 'cutout' else kind}?",
        span,
        help=f"measure it from one of the part's own faces: `{axis.word} 3 from {_LOW[axis]}`",
    )


def mitre_faces(feature: r.Feature, end: Face, long: Face, run: Axis | None) -> Diagnostic:
    ends = f"the {Face(run, -1).word} or the {Face(run, 1).word}" if run is not None else "an edge"
    return error(
        "rod223",
        f"The {end.word} can't be mitred so that the {long.word} keeps its length",
        feature.span,
        help=f"mitre {ends} of the part, and name a face that meets it as the long one: `mitre left 45 long front`",
    )


def _word(feature: r.Feature) -> str:
    return {"cutout": "cut-out"}.get(feature.kind, feature.kind)


def _example(feature: r.Feature) -> str:
    return {
        "notch": "notch deep 3 from front, high 3-1/2 from bottom",
        "cutout": "cutout wide 4 from left + 6, high 2 from bottom + 10",
    }.get(feature.kind, "hole 1/2 at wide left + 3, high bottom + 2")
