"""Boards that a hurried eye would call good, and that are not; beside each the nearest that is."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from applying import account
from comparing import STOCKS, compared, compared_plans, shop

from setout.units import Style
from setout.write.changes.wording import trims

PLACE = "level at LOW; wide 8 from left; deep 5 from front; grain wide"


def one(old: str, new: str, stock: str = "ply"):
    """The only board's fate."""
    was, now = (shop(f"part a of {stock} {{ {PLACE}; {work} }}") for work in (old, new))
    (fate,) = compared(was, now).reuse.fates
    return fate


def done(fate) -> list[tuple[str, int]]:
    return [(task.kind, task.count) for task in fate.way.tasks]


HOLE = "hole 1 at wide left + 3, deep front + 2"
SHALLOW = f"{HOLE} depth 1/4 into top"
NOTCH = "notch wide 2 from left, deep 2 from front"

LEFT_OVER = {
    "a hole through": (HOLE, ""),
    "a hole from the other face": (f"show top; {SHALLOW}", f"show top; {HOLE} depth 1/4 into bottom"),
    "a hole that is too large": ("hole 2 at wide left + 3, deep front + 2", HOLE),
    "a hole that is too deep": (f"{HOLE} depth 1/2 into top", SHALLOW),
    "a hole right through": (HOLE, SHALLOW),
    "a hole a little off": (HOLE, "hole 1 at wide left + 3-1/16, deep front + 2"),
    "a notch": (NOTCH, ""),
    "a notch too wide": (NOTCH, "notch wide 1 from left, deep 2 from front"),
    "a cut-out": ("cutout wide 2 from left + 2, deep 1 from front + 2", ""),
    "a hole that a notch only half takes away": ("hole 1 at wide left + 2, deep front + 1", NOTCH),
    "a mitre": ("mitre left 45 long front", ""),
    "a mitre the other way": (f"{SHALLOW}; mitre left 45 long front", f"{SHALLOW}; mitre left 45 long back"),
    "a steeper mitre": ("mitre left 45 long front", "mitre left 30 long front"),
}


@pytest.mark.parametrize("name", LEFT_OVER)
def test_work_that_would_show_or_clash(name):
    fate = one(*LEFT_OVER[name])
    assert (fate.kind, fate.why) == ("lost", "holes")
    assert sum(task.count for task in fate.blocked) == 1


WORKED = {
    "a hole more": ("", HOLE, [("hole", 1)]),
    "a hole drilled larger": (HOLE, "hole 2 at wide left + 3, deep front + 2", [("widened", 1)]),
    "a hole drilled deeper": (SHALLOW, f"{HOLE} depth 1/2 into top", [("widened", 1)]),
    "a hole drilled through": (SHALLOW, HOLE, [("widened", 1)]),
    "a hole that a notch takes away": ("hole 1 at wide left + 1, deep front + 1", NOTCH, [("cut", 1)]),
    "a notch made larger": (NOTCH, "notch wide 3 from left, deep 2 from front", [("enlarged", 1)]),
    "a mitre": ("", "mitre left 45 long front", [("mitre", 1)]),
    "banding": ("", "band front with tape added", [("band", 1)]),
    "banding that comes off": ("band front with tape added", "", [("unband", 1)]),
}


@pytest.mark.parametrize("name", WORKED)
def test_work_that_can_still_be_done(name):
    old, new, tasks = WORKED[name]
    fate = one(old, new)
    assert (fate.kind, done(fate), fate.way.trims) == ("reworked", tasks, ())


BLIND = "hole 1/4 at wide left + 3, deep front + 2 depth 1/4 into bottom"
KEYED = "show top; hole 1/2 at wide left + 7, deep front + 1 depth 1/4 into top"  # this way round, and no other
PLUGGED = {
    "a hole behind the good face": (f"show top; {BLIND}", "show top", []),
    "one in a board that is sawn": (f"show top; {BLIND}", "show top; wide 7 from left", []),
    "one that goes elsewhere": (f"show top; {BLIND}", f"show top; {BLIND.replace('+ 3', '+ 5')}", [("hole", 1)]),
    "one with wood enough to a notch": (
        f"show top; {BLIND}",
        f"show top; {NOTCH.replace('wide 2', 'wide 2-3/4')}",
        [("cut", 1)],
    ),
    "one that another from before, though near, doesn't mind": (
        f"show top; {BLIND}; {BLIND.replace('+ 3', '+ 3-1/4')}",
        f"show top; {BLIND.replace('+ 3', '+ 3-1/4')}",
        [],
    ),
    "one from an unseen face, when the good one was looked at": (BLIND, "show top", []),
}
NOT_PLUGGED = {
    "no good face is said": (BLIND, ""),
    "it is in the good face": (f"show bottom; {BLIND}", "show bottom"),
    "it goes through": (f"show top; {HOLE}", "show top"),
    "it is a notch": (f"show top; {NOTCH}", "show top"),
    "it breaks into a new hole": (f"{KEYED}; {BLIND}", f"{KEYED}; {BLIND.replace('+ 3', '+ 3-1/4')}"),
    "it is too near a new hole": (f"{KEYED}; {BLIND}", f"{KEYED}; {BLIND.replace('+ 3', '+ 3-5/16')}"),
    "it breaks into a notch": (f"{KEYED}; {BLIND}", f"{KEYED}; {NOTCH.replace('wide 2', 'wide 3')}"),
    "it is too near a notch": (
        f"{KEYED}; {BLIND}",
        f"{KEYED}; {NOTCH.replace('wide 2', 'wide 2-13/16').replace('deep 2', 'deep 4')}",
    ),
    "the saw goes through it": (
        f"{KEYED.replace('+ 7', '+ 4')}; {BLIND}",
        f"{KEYED.replace('+ 7', '+ 1')}; wide 5 from left",
    ),
    "the saw goes too near it": (
        f"{KEYED.replace('+ 7', '+ 4')}; {BLIND}",
        f"{KEYED.replace('+ 7', '+ 1-3/16')}; wide 5-3/16 from left",
    ),
}


def revised(old: str, new: str):
    """The fate of the only board; `wide 7 from left` makes it shorter."""
    place = PLACE.replace("wide 8 from left; ", "") if re.search("; wide [^;]* from", new) else PLACE
    was, now = shop(f"part a of ply {{ {PLACE}; {old} }}"), shop(f"part a of ply {{ {place}; {new} }}")
    (fate,) = compared(was, now).reuse.fates
    return fate


@pytest.mark.parametrize("name", PLUGGED)
def test_old_holes_behind_the_good_face_are_plugged(name):
    old, new, tasks = PLUGGED[name]
    fate = revised(old, new)
    assert (fate.kind, done(fate)) == ("reworked", [("plug", 1), *tasks])


@pytest.mark.parametrize("name", NOT_PLUGGED)
def test_old_holes_that_plugs_would_not_mend(name):
    fate = revised(*NOT_PLUGGED[name])
    assert (fate.kind, fate.why) == ("lost", "holes")


def test_a_board_with_plugs_is_good_for_its_own_place_alone():
    """And where it can be used without any it rather is."""
    was = shop(f"part a of ply {{ {PLACE}; show top; {BLIND} }}")
    half = f"part a of half {{ {PLACE.replace('; grain wide', '')} }}"
    elsewhere = shop(half, f"part c of ply {{ {PLACE}; show top }}")
    assert [f.kind for f in compared(was, elsewhere).reuse.fates] == ["lost"]
    both = shop(f"part a of ply {{ {PLACE}; show top }}", f"part b of ply {{ {PLACE}; show top; {BLIND} }}")
    assert [(f.kind, f.becomes) for f in compared(was, both).reuse.fates] == [("right", ("b",))]


def test_the_other_hand_is_another_board():
    """A notch and a good face: turned over it would show the wrong one."""
    left, right = "show top; " + NOTCH, "show top; notch wide 2 to right, deep 2 from front"
    assert one(left, right).kind == "lost"
    assert one(NOTCH, "notch wide 2 to right, deep 2 from front").kind == "right"  # turned over


def test_a_good_face_on_the_wrong_side_and_one_that_nobody_looked_at():
    keyed = f"{SHALLOW}; hole 1 at wide left + 6, deep front + 2 depth 1/4 into top"
    fate = one(f"show top; {keyed}", f"show bottom; {keyed}")
    assert (fate.kind, fate.why) == ("lost", "face")
    assert one(keyed, f"show top; {keyed}").way.look == ("face",)
    assert one(f"show top; {keyed}", keyed).way.look == ()


def test_grain_that_would_run_the_wrong_way_and_grain_that_nobody_looked_at():
    def boards(old: str, new: str):
        size = "level at LOW; wide 6 from left; deep 6 from front"
        was, now = (shop(f"part a of ply {{ {size}; grain {g}; {HOLE} }}") for g in (old, new))
        return compared(was, now).reuse.fates[0]

    assert (boards("wide", "deep").kind, boards("wide", "deep").why) == ("lost", "grain")
    assert boards("any", "wide").way.look == ("grain",)
    assert boards("wide", "any").way.look == ()


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (('48 x 3/4; grain along 96 }', '48 x 23/32; grain along 96 }'), "thickness"),
        (('"3/4 plywood"', '"3/4 walnut plywood"'), "stock"),
    ],
)  # fmt: skip
def test_a_stock_of_the_same_name_that_is_another(change, why):
    """Thinner by caliper, or another material under the old name: the mark may be the same, the board isn't."""
    old = shop(f"part a of ply {{ {PLACE} }}")
    changes = compared(old, old.replace(*change))
    (fate,) = changes.reuse.fates
    assert (fate.kind, fate.why) == ("lost", why)
    assert changes.changed


def test_a_stock_that_is_only_called_otherwise_is_the_same():
    old = shop(f"part a of ply {{ {PLACE}; {HOLE} }}")
    changes = compared(old, old.replace("stock ply", "stock birch").replace("of ply", "of birch"))
    assert [fate.kind for fate in changes.reuse.fates] == ["right"]


def test_a_smaller_board_keeps_its_work_clear_of_the_saw():
    """The hole stays 3 from the left: the trim must come off the right, or the hole with it."""
    fate = one(HOLE, "").why, one(HOLE, HOLE).kind
    assert fate == ("holes", "right")
    was = shop(f"part a of ply {{ {PLACE}; {HOLE} }}")
    less = was.replace("wide 8 from", "wide 7 from")
    (fate,) = compared(was, less).reuse.fates
    assert [(trim.end, trim.by) for trim in fate.way.trims] == [("right", 1)] and not fate.way.tasks
    bare = less.replace(f"; {HOLE}", "").replace("wide 7", "wide 4")
    (fate,) = compared(was, bare).reuse.fates
    assert [(trim.end, trim.by) for trim in fate.way.trims] == [("left", 4)]


def test_a_mitred_end_is_made_anew_when_it_was_sawn_off():
    was = shop(f"part a of ply {{ {PLACE}; mitre left 45 long front; {NOTCH.replace('from left', 'to right')} }}")
    now = was.replace("wide 8 from", "wide 7 from")
    (fate,) = compared(was, now).reuse.fates
    # one end or the other comes off; what was there is to be made again
    assert len(fate.way.trims) == 1 and done(fate) in ([("enlarged", 1)], [("mitre", 1)])


def test_what_a_blade_takes():
    was = shop(f"part a of ply {{ {PLACE} }}")
    for wide, shaving in (("7-15/16", True), ("7-7/8", False), ("7", False)):
        (fate,) = compared(was, was.replace("wide 8 from", f"wide {wide} from")).reuse.fates
        assert [trim.shaving for trim in fate.way.trims] == [shaving]


def test_a_square_stick_may_be_rolled_and_another_may_not():
    def stick(stock: str, old: str, new: str):
        place = "across level; bottom at LOW; front at front; wide 8 from left"
        return compared(*(shop(f"part a of {stock} {{ {place}; {work} }}") for work in (old, new))).reuse.fates[0]

    top = "hole 1/4 at wide left + 2, deep front + 1 depth 1/2 into top"
    front = "hole 1/4 at wide left + 2, high bottom + 1 depth 1/2 into front"
    assert stick("post", top, front).kind == "right"
    assert stick("rail", top, front.replace("bottom + 1", "bottom + 3/8")).kind == "lost"


def test_a_square_stick_rolled_and_ripped_is_sawn_across_its_old_thickness():
    was = shop("part a of post { across level; at bottom, front; wide 8 from left; WORK }")
    top = "hole 1/4 at wide left + 2, deep front + 1 depth 1/2 into top"
    old, new, changes = compared_plans(was.replace("WORK", top), was.replace("WORK", f"rip 3/2; {top}"))
    account(old, new, changes)
    (fate,), (loss,) = changes.reuse.fates, changes.reuse.losses
    assert [(trim.along, trim.end, trim.by) for trim in fate.way.trims] == [("thick", "back", Fraction(1, 2))]
    assert (loss.cut, loss.lost) == (16, 4)


def test_loose_boards_are_counted():
    size = "part a of ply {{ size 8 x 5; count {} }}"
    fates = compared(shop(size.format(5)), shop(size.format(3))).reuse.fates
    assert [(f.kind, f.count, f.why) for f in fates] == [("right", 3, ""), ("lost", 2, "unwanted")]
    fates = compared(shop(size.format(5)), shop(size.format(0))).reuse.fates
    assert [(f.kind, f.count, f.why) for f in fates] == [("lost", 5, "unwanted")]
    changes = compared(shop(size.format(3)), shop(size.format(5)))
    assert [(f.kind, f.count) for f in changes.reuse.fates] == [("right", 3)]
    assert [(c.count, c.waits) for c in changes.reuse.to_cut] == [(2, False)]
    assert [c.how for c in changes.boards] == [("counted",)]


def test_nobody_has_cut_what_waits_for_a_measure():
    held = STOCKS + "measure bed \"how high\" expect 3 to 5\nsize wide 60, high 60, deep 30\n"
    held += "part a of ply { upright at left; high 20 + bed from bottom; grain high }\n"
    assert [f.kind for f in compared(held, held).reuse.fates] == ["uncut"]
    known = held.replace("20 + bed", "24")
    assert [f.kind for f in compared(held, known).reuse.fates] == ["uncut"]
    (fate,) = compared(known, held).reuse.fates
    assert (fate.kind, fate.why) == ("lost", "held")


def test_a_cut_is_made_where_a_tape_reads_even_and_well_away_from_old_work():
    """Between an old hole and the far end there is 5-3/4 in for a board of 3: the saw keeps clear of both."""
    holes = "; ".join(f"hole 1/2 at wide left + {x}, deep front + 2" for x in ("3/4", "7-1/4"))
    was = shop(f"part a of ply {{ {PLACE}; {holes} }}")
    (fate,) = compared(was, shop(f"part a of ply {{ {PLACE.replace('wide 8', 'wide 3')} }}")).reuse.fates
    assert [trim.by for trim in fate.way.trims] == [2.5, 2.5]
    (fate,) = compared(was, shop(f"part a of ply {{ {PLACE.replace('wide 8', 'wide 3-1/64')} }}")).reuse.fates
    assert fate.way.trims[0].by == 2.5


def test_a_wider_window_at_an_edge_saves_a_cut():
    was = shop(f"part a of ply {{ {PLACE}; hole 1/2 at wide left + 1, deep front + 2 }}")
    (fate,) = compared(was, shop(f"part a of ply {{ {PLACE.replace('wide 8', 'wide 3')} }}")).reuse.fates
    assert [(trim.end, trim.by) for trim in fate.way.trims] == [("left", 5)]


def test_what_a_blade_takes_not_is_planed():
    was = shop(f"part a of ply {{ {PLACE} }}")
    said = []
    for wide, deep in (("7-15/16", "5"), ("7-15/16", "4"), ("7", "5")):
        now = was.replace("wide 8 from", f"wide {wide} from").replace("deep 5 from", f"deep {deep} from")
        (fate,) = compared(was, now).reuse.fates
        said.append(trims(fate.way.trims, (), Style(False, Fraction(1, 32))))
    assert re.fullmatch("plane or sand 1/16 off the (left|right)", said[0])
    assert re.fullmatch("saw 1 off the (front|back), plane or sand 1/16 off the (left|right)", said[1])
    assert re.fullmatch("saw 1 off the (left|right)", said[2])
