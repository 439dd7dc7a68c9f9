"""Each construct of the language, and the tree it makes."""

import re
from pathlib import Path

import pytest

from setout.read import model as m
from setout.read import read
from setout.source import Source

REPO = Path(__file__).parents[2]


def tree(text: str) -> m.Tree:
    checked = read(Source("spec.rod", text))
    assert not checked.diagnostics, [(d.code, d.message) for d in checked.diagnostics]
    return checked.value


def one(text: str):
    (statement,) = tree(text).statements
    return statement


def clause(text: str):
    """The part with that clause in its braces."""
    return one(f"part shelf of ply {{ {text} }}")


def spell(expr) -> str:
    """An expression with all its parentheses."""
    match expr:
        case m.Number():
            return expr.text
        case m.Path():
            return expr.text
        case m.Unary():
            return f"({expr.op} {spell(expr.arg)})"
        case m.Binary():
            return f"({spell(expr.left)} {expr.op} {spell(expr.right)})"
        case m.Call():
            return f"{expr.name}({', '.join(map(spell, expr.args))})"
        case None:
            return ""


@pytest.mark.parametrize(
    ("text", "means"),
    [
        ("2 * 3-1/2", "(2 * 3-1/2)"),
        ("a - b - c", "((a - b) - c)"),
        ("a + b * c / d", "(a + ((b * c) / d))"),
        ("-a * b", "((- a) * b)"),
        ("(a + b) * 2", "((a + b) * 2)"),
        ("not a and b or c", "(((not a) and b) or c)"),
        ("a + 1 >= b", "((a + 1) >= b)"),
        ("round(max(a, b), 1/16)", "round(max(a, b), 1/16)"),
        ("min + 1", "(min + 1)"),
        ("shelf.2.top", "shelf.2.top"),
    ],
)
def test_an_expression_binds_as_on_paper(text, means):
    assert spell(one(f"let a = {text}").value) == means


@pytest.mark.parametrize(
    ("text", "kind", "a", "b", "extra"),
    [
        ("wide between p and q", "between", "p", "q", ""),
        ("wide between p and q clear 1/16", "between", "p", "q", "1/16"),
        ("wide over p and q plus 1", "over", "p", "q", "1"),
        ("wide from left + 1 to p.left", "from_to", "(left + 1)", "p.left", ""),
        ("wide 12", "size", "12", "", ""),
        ("wide 12 from left", "size_from", "12", "left", ""),
        ("wide 12 to right", "size_to", "12", "right", ""),
        ("wide 12 centred", "size_on", "12", "", ""),
        ("wide 12 centred on p", "size_on", "12", "p", ""),
    ],
)
def test_a_span(text, kind, a, b, extra):
    (span,) = clause(text).spans
    assert (span.axis.text, span.kind, spell(span.a), spell(span.b), spell(span.extra)) == ("wide", kind, a, b, extra)


@pytest.mark.parametrize("kind", ["from", "to"])
def test_a_span_with_one_end_is_for_what_is_placed(kind):
    (span,) = one(f"place base {{ wide {kind} left }}").spans
    assert (span.kind, span.a, spell(span.b)) == (kind, None, "left")
    assert [d.code for d in read(Source("spec.rod", f"opening bay {{ wide {kind} left }}")).diagnostics] == ["rod133"]


@pytest.mark.parametrize(
    ("text", "positions"),
    [
        ("upright at left", [("at", None, "left")]),
        ("level; at left, bottom + 1", [("at", None, "left"), ("at", None, "(bottom + 1)")]),
        ("level top at rail.top - 1", [("face_at", "top", "(rail.top - 1)")]),
        ("level on deck; back at x", [("on", None, "deck"), ("face_at", "back", "x")]),
        ("level; under rail", [("under", None, "rail")]),
        ("facing against side.right", [("against", None, "side.right")]),
        ("upright centred", [("centred", None, "")]),
        ("level; centred on bay wide", [("centred", "wide", "bay")]),
    ],
)
def test_a_position(text, positions):
    got = clause(text).positions
    assert [(p.kind, p.face.text if p.face else None, spell(p.target)) for p in got] == positions


def test_a_panel_with_everything_a_part_may_say():
    part = clause("upright; grain any; show left; proud left, top; repeat 2 deep between p and q; size 3 x 2; count 4")
    assert [n.text for n in part.orient] == ["upright"]
    assert (part.of.text, part.mirrors, part.grain.text, part.show.text) == ("ply", None, "any", "left")
    assert [n.text for n in part.proud] == ["left", "top"]
    assert [p.text for p in part.repeat.between] == ["p", "q"] and part.repeat.axis.text == "deep"
    assert [spell(e) for e in part.loose_size] == ["3", "2"] and spell(part.count) == "4"


def test_a_stick_says_run_and_broad_face():
    part = clause("across upright rip 1-1/4")
    assert [n.text for n in part.orient] == ["across", "upright"] and spell(part.rip) == "1-1/4"


def test_a_repeat_at_a_pitch():
    repeat = clause("level; repeat n every 9 from bottom + 1").repeat
    assert (spell(repeat.count), spell(repeat.pitch), spell(repeat.start)) == ("n", "9", "(bottom + 1)")
    assert repeat.axis is None and repeat.between is None


def test_a_mirror_needs_no_braces():
    plain = one("part right_side mirrors left_side")
    other = one("part back_rail mirrors front_rail across deep { show back }")
    assert (plain.of, plain.mirrors.text, plain.across) == (None, "left_side", None)
    assert (other.across.text, other.show.text) == ("deep", "back")


def test_features():
    part = clause(
        "level; notch deep 3 from front, wide 2 to right; cutout wide 4 from left + 6, deep 2 from front;"
        "hole 1/2 at wide left + 3, deep back - 2; hole 3/8 at wide left, deep front depth 1/4 into top;"
        "mitre left 45 long front"
    )
    notch, cutout, hole, blind, mitre = part.features
    assert [f.kind for f in part.features] == ["notch", "cutout", "hole", "hole", "mitre"]
    assert [(s.axis.text, s.kind) for s in notch.spans] == [("deep", "size_from"), ("wide", "size_to")]
    assert len(cutout.spans) == 2
    assert [(axis.text, spell(e)) for axis, e in hole.at] == [("wide", "(left + 3)"), ("deep", "(back - 2)")]
    assert (spell(hole.size), hole.depth, hole.face) == ("1/2", None, None)
    assert (spell(blind.depth), blind.face.text) == ("1/4", "top")
    assert (mitre.face.text, spell(mitre.size), mitre.long.text) == ("left", "45", "front")


def test_a_place():
    place = one("place base (w = 36, body = ply) turned 90 mirrored as other { at left, bottom; wide from a.right }")
    assert [(n.text, spell(e)) for n, e in place.args] == [("w", "36"), ("body", "ply")]
    assert (place.assembly.text, spell(place.turned), place.mirrored, place.name.text) == ("base", "90", True, "other")
    assert len(place.positions) == 2 and len(place.spans) == 1
    bare = one("place base")
    assert (bare.name, bare.turned, bare.mirrored, bare.args) == (None, None, False, ())


def test_an_assembly():
    a = one(
        'assembly base "Drawer base" (w = 24, body = ply, n) { size wide w, high 3; default deep from front to back }'
    )
    assert (a.name.text, a.title.value) == ("base", "Drawer base")
    assert [(p.name.text, spell(p.default)) for p in a.parameters] == [("w", "24"), ("body", "ply"), ("n", "")]
    size, default = a.body
    assert [(n.text, spell(e)) for n, e in size.sizes] == [("wide", "w"), ("high", "3")]
    assert default.clause.kind == "from_to"


@pytest.mark.parametrize(
    ("text", "fields"),
    [
        ("pockets on bottom every 6", {"face": "bottom", "every": "6"}),
        ("screws every 6 through top.left into studs", {"through": "top.left", "every": "6", "into": "studs"}),
        ("brads every 6", {"every": "6"}),
        ("glue", {}),
        ("dado gap 1/32 depth 1/4", {"depth": "1/4", "gap": "1/32"}),
        ("only lap", {"word": "lap"}),
    ],
)
def test_a_joint_method(text, fields):
    joint = one(f"joint a, b.c to d {{ {text} }}")
    assert [p.text for p in joint.entering] == ["a", "b.c"] and [p.text for p in joint.receiving] == ["d"]
    (method,) = joint.methods
    said = {k: getattr(method, k) for k in ("face", "through", "into", "every", "depth", "gap", "word")}
    assert {k: v.text for k, v in said.items() if v is not None} == fields
    assert method.kind == text.split()[0]


def test_a_housing_stops_short_of_faces():
    (method,) = one("joint a to b { dado depth 1/4 stopped front 1/2 stopped back 1 }").methods
    assert [(n.text, spell(e)) for n, e in method.stopped] == [("front", "1/2"), ("back", "1")]


@pytest.mark.parametrize("between", ["; ", ", ", "\n"])
def test_the_words_of_a_fit_may_be_parted_by_commas(between):
    fit = one("fit 4 foot { " + between.join(["at corners", "inset 2", "under bottom_panel"]) + " }")
    assert (spell(fit.count), fit.hardware.text, fit.layout, spell(fit.inset)) == ("4", "foot", "corners", "2")
    assert (fit.where.kind, fit.where.target.text) == ("under", "bottom_panel")


def test_a_row_of_hardware():
    fit = one("fit 2 pull { on door.front; row along wide }")
    assert (fit.layout, fit.along.text, fit.where.kind, fit.where.target.text) == ("row", "wide", "on", "door.front")


def test_the_order_of_work():
    before, after, named, own = one(
        'order { fit slides before hang base; cut deck after measure bed; "Sand" before set base\n'
        'step "Oil" after cure a, cure b before hang c }'
    ).rules
    assert (before.first.verb.text, before.first.target.text, before.then.verb.text) == ("fit", "slides", "hang")
    assert (after.first.verb.text, after.then.verb.text) == ("measure", "cut")
    assert (named.first.text.value, named.first.verb) == ("Sand", None)
    assert (own.text.value, len(own.after), len(own.before)) == ("Oil", 2, 1)


def test_what_stands_at_the_top():
    project, include, stick, foot, measure, practice, room, when = tree(
        'project "Wall \\"A\\"" { units mm; mark to 1/2; paper a4 }\n'
        'include "rack.rod"\n'
        'stock lath "1x2" { stick 1-1/2 x 3/4 long 72, 96; price 5 each 72; price 6.80 each 96; grain none }\n'
        "hardware foot { price 3.20; pack 4; hole 5/16 depth 1; raises 1 }\n"
        'measure bed "the height" expect 2 to 5\n'
        "practice { pocket_spacing 6; tip -1 }\n"
        'room "Study" { size wide 120, high 96, deep 130; studs every 16 from left + 3 }\n'
        "when n > 2 { block rests on board }\n"
    ).statements
    assert project.title.value == 'Wall "A"'
    assert [(s.key.text, getattr(s.value, "text", "")) for s in project.settings] == [
        ("units", "mm"),
        ("mark", "1/2"),
        ("paper", "a4"),
    ]
    assert include.path.value == "rack.rod"
    assert [(c.key, [spell(v) for v in c.values]) for c in stick.clauses] == [
        ("stick", ["1-1/2", "3/4", "72", "96"]),
        ("price", ["5", "72"]),
        ("price", ["6.80", "96"]),
        ("grain_none", []),
    ]
    assert (foot.title, [c.key for c in foot.clauses]) == (None, ["price", "pack", "hole", "raises"])
    assert (measure.title.value, spell(measure.low), spell(measure.high)) == ("the height", "2", "5")
    assert [(n.text, spell(e)) for n, e in practice.rows] == [("pocket_spacing", "6"), ("tip", "(- 1)")]
    assert [spell(e) for e in room.studs] == ["16", "(left + 3)"] and len(room.size) == 3
    assert isinstance(when.body[0], m.RestsStatement)


@pytest.mark.parametrize("name", ["grain", "order", "step", "part", "of", "size", "under", "x", "min", "rests", "to"])
def test_a_keyword_is_a_name_where_no_keyword_can_stand(name):
    text = """
        part NAME of NAME { level on NAME; wide between NAME and NAME; size NAME x NAME; count NAME }
        joint NAME to NAME, NAME { screws through NAME }
        fit 4 NAME { under NAME }
        opening NAME { wide over NAME and NAME plus NAME }
        place NAME (NAME = NAME) as NAME
        order { cut NAME before set NAME }
        let NAME = NAME + 1 - NAME.top
        NAME rests on NAME
    """
    assert len(tree(text.replace("NAME", name)).statements) == 8


def test_lines_go_on_in_parentheses_and_after_commas_and_operators():
    text = (
        "let a = (1\n + 2) * # times\n 3 and\n b\njoint a,\n\n b to c { glue\n brads }\npart p of q\n{\n level\n\n}\n"
    )
    assert len(tree(text).statements) == 3


def test_a_rack_lists_offcuts_by_stock():
    rack = one("rack { ply: 41 x 22-1/2, 2 of 60 x 11\n grain: 9 grain along 9\n }")
    said = [
        (o.count and o.count.text, [e.text for e in o.size], o.along and o.along.text) for o in rack.lines[0].offcuts
    ]
    assert said == [(None, ["41", "22-1/2"], None), ("2", ["60", "11"], None)]
    assert [line.stock.text for line in rack.lines] == ["ply", "grain"]
    assert rack.lines[1].offcuts[0].along.text == "9"
    assert one("rack { }").lines == ()


def test_a_saw_and_what_is_on_hand():
    saw = one('saw a "b" { kerf 1/8; rips up to 24; takes up to 60 x 30; breaks down sheets; cuts sticks up to 12 }')
    assert [(c.key, len(c.values)) for c in saw.clauses] == [
        ("kerf", 1), ("rips", 1), ("takes", 2), ("breaks", 0), ("sticks", 1),
    ]  # fmt: skip
    stock = one("stock a { stick 2 x 1 long 72, 96; on hand 3 of 72; on hand 2 of 96; at most 4 of 96 }")
    assert [(c.key, len(c.values)) for c in stock.clauses][1:] == [("on_hand", 2), ("on_hand", 2), ("at_most", 2)]


def test_members_cut_in_sequence():
    assert clause("level; in sequence").sequence is not None and clause("level").sequence is None


@pytest.mark.parametrize("end", ["\n", "\r\n", ";", " ; \n ;; ", " # note\n\t"])
def test_statements_end_at_lines_and_semicolons(end):
    assert len(tree(end.join(["let a = 1", "let b = 2", ""])).statements) == 2


def test_comments_are_kept():
    own, beside = tree("# first\nlet a = 1 # second  \n").comments
    assert (own.text, own.own_line, beside.text, beside.own_line) == ("# first", True, "# second", False)


def test_spans_point_at_the_text():
    text = 'assembly base "B" (w = 3) { part shelf of ply { level } }'
    assembly = one(text)
    part = assembly.body[0]
    cut = {key: text[s.start : s.end] for key, s in {"head": assembly.head, "part": part.span, "in": part.head}.items()}
    assert cut == {
        "head": 'assembly base "B" (w = 3)',
        "part": "part shelf of ply { level }",
        "in": "part shelf of ply",
    }
    assert (assembly.span.start, assembly.span.end) == (0, len(text))


@pytest.mark.parametrize("spec", sorted((REPO / "specs").glob("*.rod")), ids=lambda p: p.name)
def test_the_example_specs_read(spec):
    tree(spec.read_text("utf-8"))


def test_the_examples_of_the_reference_read():
    page = (REPO / "grammar" / "REFERENCE.md").read_text("utf-8")
    examples = re.findall(r"```rod[^\n]*\n(.*?)```", page, re.S)
    assert examples
    for example in examples:
        tree(example)
