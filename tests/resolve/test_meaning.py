"""What words come to mean: files, units, settings, positions, stocks held by parameters, lets inside assemblies."""

from __future__ import annotations

from fractions import Fraction

import pytest
from specs import BOX, LATH, PLY, SIDES, codes, project, resolved

from setout.geometry import Axis, Face
from setout.resolve.model import FaceRef, LetRef, Lit, PositionDef, StockRef

MM = Fraction(5, 127)


def position(clause: str, before: str = "") -> PositionDef:
    """The position a small panel has by that clause, beside two sides."""
    made = project(
        PLY + BOX + SIDES + before + f"part block of ply {{ level; wide 5 from left; deep 5 from front; {clause} }}"
    )
    return made.job.parts[-1].positions[0]


@pytest.mark.parametrize(
    "clause, own, thing, face",
    [
        ("at bottom", "bottom", (), "bottom"),
        ("at left_side.top - 3", "top", ("left_side",), "top"),
        ("top at left_side.bottom", "top", ("left_side",), "bottom"),
        ("on left_side", "bottom", ("left_side",), "top"),
        ("under left_side", "top", ("left_side",), "bottom"),
        ("against left_side.top", "bottom", ("left_side",), "top"),
        ("against top", "top", (), "top"),
    ],
)
def test_short_forms_of_positions(clause, own, thing, face):
    made = position(clause)
    target = made.target if isinstance(made.target, FaceRef) else made.target.args[0]
    assert (made.face.word, target.thing, target.face.word) == (own, thing, face)


def test_centred_means_the_axis_that_is_open():
    assert position("centred") == PositionDef(None, Axis.HIGH, None, position("centred").span)
    assert position("centred on left_side").target == ("left_side",)


def test_the_room_is_stood_against_from_inside():
    text = PLY + 'room "Study" { size wide 120, high 96, deep 130 }\n'
    made = project(
        text + "part cleat of ply { facing against room.back; wide room.wide / 2 from left; high 4 from bottom }"
    )
    cleat = made.job.parts[0]
    assert cleat.positions[0].face == Face(Axis.DEEP, 1)
    assert cleat.positions[0].target.thing == ("room",)
    assert cleat.spans[0].a.args[0].amount == 120


def test_each_file_has_its_own_unit():
    text = 'project "Mixed" { units inch }\ninclude "metric/limits.rod"\nlet b = 2\n' + PLY
    files = {
        "metric/limits.rod": 'project "Limits" { units mm; mark to 1; paper a4 }\nlet a = 600\ninclude "more.rod"\n'
    }
    files["metric/more.rod"] = "let c = 3\n"
    made = project(text, files=files)
    assert {name: let.flex for name, let in made.lets.items()} == {"a": MM, "b": 1, "c": 1}
    assert (made.title, made.paper) == ("Mixed", "letter")
    assert list(made.sources) == ["spec.rod", "metric/limits.rod", "metric/more.rod"]


def test_a_file_included_twice_is_read_once():
    files = {"a.rod": 'include "c.rod"\n', "b.rod": 'include "./c.rod"\n', "c.rod": "let c = 3\n"}
    assert list(project('include "a.rod"\ninclude "b.rod"\n', files=files).lets) == ["c"]


def test_paths_start_at_the_including_files_folder():
    files = {"specs/parts/a.rod": 'include "b.rod"\n', "specs/parts/b.rod": "let b = 1\n"}
    assert list(project('include "parts/a.rod"\n', files=files, name="specs/job.rod").lets) == ["b"]


def test_names_of_a_missing_file_are_not_unknown():
    checked = resolved('include "stocks.rod"\npart shelf of oak { size 30 x long_one; count 1 }\n')
    assert codes(checked) == ["rod165"]


@pytest.mark.parametrize("written", ["/etc/passwd", "C:/x.rod", "..\\x.rod", "a/../../x.rod", "~/x.rod", ""])
def test_files_elsewhere_are_never_asked_for(written):
    asked = []
    from setout.read import read
    from setout.resolve import resolve
    from setout.source import Source

    text = 'include "{}"\n'.format(written.replace("\\", "\\\\")) + PLY
    checked = resolve(read(Source("spec.rod", text)).value, asked.append, {})
    assert codes(checked) == ["rod166"] and not asked


def test_defaults_of_the_heading():
    metric = project(
        'project "A" { units mm }\n' + PLY.replace("96 x 48 x 23/32", "2440 x 1220 x 18").replace("96", "2440")
    )
    assert (metric.metric, metric.mark, metric.paper) == (True, MM, "a4")
    assert metric.stocks["ply"].thick == 18 * MM
    plain = project(PLY)
    assert (plain.metric, plain.mark, plain.paper) == (False, Fraction(1, 32), "letter")


def test_settings_stand_instead_of_lets_and_take_measures():
    text = PLY + 'let reach = 30\nlet twice = reach * 2\nmeasure bed "height" expect 2 to 5\n'
    made = project(text, settings={"reach": "23-1/4", "bed": "76mm"})
    assert made.settings["reach"].amount == Fraction(93, 4)
    assert isinstance(made.lets["reach"], Lit) and made.lets["reach"].amount == Fraction(93, 4)
    assert made.measures["bed"].taken == 76 * MM
    assert "--set reach" in made.sources
    unset = project(text)
    assert unset.measures["bed"].taken is None and not unset.settings


@pytest.mark.parametrize("text", ["reach", "1 +", "3; let x = 4", "1\nlet y = 2", "", '"', "9" * 300, "left"])
def test_a_setting_is_a_value_of_literals(text):
    checked = resolved(PLY + "let reach = 30\n", settings={"reach": text})
    assert codes(checked) == ["rod185"]


def test_lets_come_behind_what_they_hang_on():
    made = project(
        "let a = b + ply.thick\nlet b = c\nlet c = 2\nlet wide_room = room.wide\n"
        + PLY
        + "room { size wide 9, high 9, deep 9 }"
    )
    names = list(made.lets)
    assert names.index("c") < names.index("b") < names.index("a")
    assert isinstance(made.lets["b"], LetRef) and isinstance(made.lets["a"].args[1], StockRef)
    assert made.lets["wide_room"].amount == 9


def test_parameters_may_hold_stocks():
    made = project(f"""{PLY}{LATH}{BOX}
        assembly inner (body) {{
          size wide 9, high 9, deep 9
          part floor of body {{ level at bottom + body.thick }}
        }}
        assembly outer (skin, shell = ply, again = shell) {{
          size wide 9, high 9, deep 9
          place inner (body = skin) as one {{ at left, bottom, back }}
          place inner (body = again) as two {{ at left, top, back }}
        }}
        place outer (skin = ply) {{ at left, bottom, back }}
        """)
    assert made.assemblies["outer"].parameters == {"skin": None, "shell": "ply", "again": "shell"}
    assert made.assemblies["inner"].body.parts[0].stock == "body"
    assert [p.args["body"] for p in made.assemblies["outer"].body.places] == ["skin", "again"]
    assert made.job.places[0].args == {"skin": "ply"}


def test_paths_lead_through_placed_assemblies_and_repeats():
    text = f"""{PLY}{BOX}
        assembly box {{ size wide 9, high 9, deep 9; part shelf of ply {{ level; repeat 2 every 4 from bottom }} }}
        assembly tower {{
          size wide 9, high 30, deep 9
          place box {{ at left, back; repeat 3 high every 10 from bottom }}
        }}
        place tower as t {{ at left, bottom, back }}
        part rail of ply {{ level on t.box.2.shelf.1; wide 5 from left }}
        """
    made = project(text + "joint rail to t.box.2.shelf.1 { glue }\njoint rail to t { glue; only face }\n")
    assert made.job.parts[0].positions[0].target.thing == ("t", "box", "2", "shelf", "1")
    assert made.job.joints[1].receiving[0][0] == ("t",)
    assert codes(resolved(text + "joint rail to t.box.shelf { glue }")) == ["rod176"]


def test_conditions_are_handed_down():
    made = project(f"""{PLY}{BOX}
        let n = 3
        when n > 2 {{
          part a of ply {{ level at top }}
          when n < 9 {{ part b of ply {{ level at bottom }} }}
        }}
        """)
    assert [[c.op for c in p.when] for p in made.job.parts] == [[">"], [">", "<"]]


def test_features_are_measured_from_the_parts_own_faces():
    made = project(f"""{PLY}{BOX}
        part shelf of ply {{
          level at bottom
          cutout wide 4 centred, deep 2 from front + 1
          hole 1 at wide left + 3, deep back - 2
        }}
        """)
    cut, hole = made.job.parts[0].features
    middle = cut.spans[0].b
    assert [ref.thing for ref in middle.args[0].args] == [("self",), ("self",)]
    assert cut.spans[1].b.args[0].thing == ("self",)
    assert [axis for axis, _ in hole.at] == [Axis.WIDE, Axis.DEEP]


def test_sticks_are_bound_by_run_and_broad_face():
    made = project(f"""{PLY}{LATH}{BOX}
        part rail of lath {{ up facing at left, front; rip 1-1/4 }}
        part loose of lath {{ size 30 x 1; count 2 }}
        """)
    rail, loose = made.job.parts
    assert (rail.run, rail.thick, rail.rip.amount) == (Axis.HIGH, Axis.DEEP, Fraction(5, 4))
    assert ([size.amount for size in loose.loose], loose.count.amount, loose.thick) == ([30, 1], 2, None)
    lath = made.stocks["lath"]
    assert (lath.short, lath.thick, lath.lengths) == (Fraction(3, 2), Fraction(3, 4), (72, 96))


def test_practice_and_hardware():
    text = (
        "practice { pocket_spacing 100mm }\n"
        + 'hardware foot "Foot" { price 3.20; pack 4; hole 5/16 depth 5/8; raises 1 }\n'
    )
    made = project(text + PLY)
    assert made.practice.value("pocket_spacing") == 100 * MM
    foot = made.hardware["foot"]
    assert (foot.price, foot.pack, foot.hole, foot.raises) == (Fraction(16, 5), 4, (Fraction(5, 16), Fraction(5, 8)), 1)
