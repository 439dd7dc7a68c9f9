"""Names that aren't known, are given twice, or mean something else than their place wants."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, Label, error
from setout.read import model as r
from setout.resolve.problems.wording import a, listed, perhaps
from setout.resolve.suggest import nearest
from setout.source import Span

__all__ = [
    "assembly_not_placed",
    "face_wanted",
    "member_wanted",
    "mirror_of_unknown",
    "name_twice",
    "no_board",
    "no_such_member",
    "not_a_stock",
    "not_a_thing",
    "not_a_value",
    "not_reached_into",
    "nothing_inside",
    "reserved_name",
    "shadowed",
    "stock_field",
    "thing_wanted",
    "unknown_assembly",
    "unknown_hardware",
    "unknown_inside",
    "unknown_name",
    "unknown_stock",
]

_SPELLING = "look at the spelling, or give the name to something"


def unknown_name(path: r.Path, word: str, known: Sequence[str]) -> Diagnostic:
    return error(
        "rod170", f"Nothing here is called `{word}`", path.span, "not known", help=perhaps(word, known, _SPELLING)
    )


def unknown_inside(path: r.Path, word: str, holder: str, assembly: str, known: Sequence[str]) -> Diagnostic:
    return error(
        "rod170",
        f"Nothing in `{holder}` is called `{word}`",
        path.span,
        f"`{holder}` is an assembly `{assembly}`",
        help=perhaps(word, known, f"look at what `{assembly}` holds"),
    )


def unknown_stock(path: r.Path, known: Sequence[str]) -> Diagnostic:
    define = f'say what it is: `stock {path.parts[0]} "3/4 plywood" {{ sheet 96 x 48 x 23/32 }}`'
    return error(
        "rod170", f"No stock is called `{path.text}`", path.span, "not known", help=perhaps(path.text, known, define)
    )


def unknown_hardware(path: r.Path, kind: str, known: Sequence[str]) -> Diagnostic:
    define = f'say what it is: `hardware {path.parts[0]} "levelling foot" {{ price 3.20 }}`'
    if kind:
        return _other_kind(path, kind, "hardware", perhaps(path.text, known, define))
    return error(
        "rod170", f"No hardware is called `{path.text}`", path.span, "not known", help=perhaps(path.text, known, define)
    )


def unknown_assembly(path: r.Path, kind: str, known: Sequence[str]) -> Diagnostic:
    help = perhaps(path.text, known, f"define it: `assembly {path.parts[0]} {{ size …; part … }}`")
    if kind:
        return _other_kind(path, kind, "assembly", help)
    return error("rod170", f"No assembly is called `{path.text}`", path.span, "not known", help=help)


def mirror_of_unknown(path: r.Path, known: Sequence[str]) -> Diagnostic:
    return error(
        "rod170",
        f"No part beside it is called `{path.text}`",
        path.span,
        "what it mirrors must stand in the same assembly",
        help=perhaps(path.text, known, _SPELLING),
    )


def name_twice(kind: str, name: str, span: Span, earlier_kind: str, earlier: Span, borrowed: bool) -> Diagnostic:
    if borrowed:
        how = f"give the second one a name of its own: `place {name} as second_{name}`"
    else:
        how = "give one of them another name" + ("; several alike are a `repeat`" if kind == "part" else "")
    return error(
        "rod171",
        f"The name `{name}` is given twice",
        span,
        a(kind),
        Label(earlier, f"{a(earlier_kind)}, before"),
        help=how,
    )


def shadowed(kind: str, name: str, span: Span, hidden_kind: str, hidden: Span) -> Diagnostic:
    return error(
        "rod172",
        f"`{name}` is already the name of {a(hidden_kind)} at the top level",
        span,
        f"here it would be {a(kind)}",
        Label(hidden, "the other one"),
        help="one name means one thing everywhere: choose another here",
    )


def reserved_name(kind: str, name: r.Name) -> Diagnostic:
    word = name.text
    instead = {"part": f"{word}_panel", "opening": f"{word}_bay", "place": f"{word}_unit"}.get(kind, f"{word}_size")
    what = {"room": "the space the job goes into", "self": "a part itself", "project": "the whole job"}.get(
        word, "a face or a direction of everything"
    )
    return error(
        "rod173", f"`{word}` can't be the name of {a(kind)}", name.span, f"it means {what}", help=f"call it `{instead}`"
    )


def not_a_thing(path: r.Path, word: str, kind: str) -> Diagnostic:
    help = {
        "stock": "name the part that is made of it",
        "face": f"a face has no parts; `SOMETHING.{word}` is that face of a thing",
        "axis": f"a direction has no parts; `SOMETHING.{word}` is how {word} a thing is",
    }.get(kind, "a part, an opening or a placed assembly can stand here")
    return error("rod174", f"`{word}` is {a(kind)}, not a thing with a place", path.span, help=help)


def not_a_value(path: r.Path, kind: str) -> Diagnostic:
    name = path.parts[0]
    if kind in ("let", "measure", "parameter"):
        return error(
            "rod174",
            f"`{name}` is {a(kind)}, and has nothing inside",
            path.span,
            help=f"write `{name}` alone for its value",
        )
    help = (
        f"say what of it: `{name}.thick`" if kind == "stock" else "a number, a `let`, a face or a size can stand here"
    )
    return error("rod174", f"`{path.text}` is {a(kind)}, not a value", path.span, help=help)


def not_a_stock(path: r.Path, kind: str, known: Sequence[str]) -> Diagnostic:
    return _other_kind(path, kind, "stock", perhaps(path.text, known, "name a `stock` here"))


def _other_kind(path: r.Path, kind: str, wanted: str, help: str) -> Diagnostic:
    return error("rod174", f"`{path.text}` is {a(kind)}, not {a(wanted)}", path.span, help=help)


def stock_field(path: r.Path, stock: str) -> Diagnostic:
    near = nearest(path.parts[1], ("thick", "wide", "long"), 1) if len(path.parts) == 2 else ()
    said = (
        f"`{stock}` is a stock, not a value" if len(path.parts) == 1 else f"A stock has no `{'.'.join(path.parts[1:])}`"
    )
    help = f"say what of it: `{stock}.{near[0] if near else 'thick'}`; it has `thick`, `wide` and `long`"
    return error("rod174", said, path.span, help=help)


def no_board(path: r.Path, kind: str) -> Diagnostic:
    help = {"opening": "name the parts round it", "place": f"name the board in it: `{path.parts[0]}.SOMETHING`"}
    return error(
        "rod174", f"`{path.text}` is {a(kind)}, not a board in its place", path.span, help=help.get(kind, "name a part")
    )


def nothing_inside(path: r.Path, holder: str, kind: str, word: str) -> Diagnostic:
    return error(
        "rod174",
        f"`{holder}` is {a(kind)}, and has no `{word}` inside",
        path.span,
        help=f"of {a(kind)} there are its six faces, and `wide`, `high` and `deep`",
    )


def not_reached_into(path: r.Path, word: str, kind: str, assembly: str) -> Diagnostic:
    return error(
        "rod174",
        f"`{word}` is {a(kind)} of `{assembly}`, and can't be reached from outside",
        path.span,
        help="only things with a place can be reached; a value that several assemblies use is a top-level `let`",
    )


def assembly_not_placed(path: r.Path, word: str, placed: Sequence[str]) -> Diagnostic:
    if placed:
        help = f"it is placed as {listed(placed)}: name the one you mean"
    else:
        help = f"put it in its place first: `place {word} {{ at left, bottom, back }}`"
    return error("rod174", f"`{word}` is an assembly's definition, not a thing with a place", path.span, help=help)


def face_wanted(path: r.Path) -> Diagnostic:
    return error(
        "rod175",
        f"Which face of `{path.text}`?",
        path.span,
        "a thing, where a position is wanted",
        help=f"name the face: `{path.text}.left`, `{path.text}.top` …; between two things is `between`",
    )


def thing_wanted(path: r.Path) -> Diagnostic:
    thing = ".".join(path.parts[:-1]) or path.text
    if path.parts[0] == "room":
        help = "a wall of the room is a position: `wide from left_side.right to room.right`, `at room.back`"
    else:
        help = f"write `{thing}` alone; from one face to another is `from … to …`"
    return error("rod175", "A thing is wanted here, not one of its faces", path.span, help=help)


def member_wanted(path: r.Path, name: str) -> Diagnostic:
    return error(
        "rod176",
        f"Which one of `{name}`?",
        path.span,
        "there are several alike",
        help=f"number it: `{name}.1` is the lowest, leftmost or frontmost",
    )


def no_such_member(path: r.Path, name: str, number: str, repeated: bool) -> Diagnostic:
    if repeated:
        return error("rod177", f"There is no `{name}.{number}`", path.span, help=f"members count from 1: `{name}.1`")
    return error(
        "rod177", f"`{name}` is not repeated", path.span, "there is only one", help=f"leave the number out: `{name}`"
    )
