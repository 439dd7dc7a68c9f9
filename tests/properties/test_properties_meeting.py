"""What is pencilled on a board is where the other board stands: worked out again from the boxes in job.json alone."""

from __future__ import annotations

import json
from collections import Counter
from fractions import Fraction

import pytest
from compiling import SPECS, compiled
from judging import over
from speccing import jobs
from test_properties_meaning import sound

from setout.plan.model import Plan
from setout.write import write
from setout.write.build_order.making import at_hand, joints_made
from setout.write.facts import facts
from setout.write.facts.layout import landings
from setout.write.facts.totals import totals

AXES = ("wide", "high", "deep")
FACES = {"left": (0, 0), "right": (0, 1), "bottom": (1, 0), "top": (1, 1), "front": (2, 0), "back": (2, 1)}
DEMOS = ("sewing_wall", "bookcase", "potting_bench", "pantry_pullouts")


@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_is_laid_out_where_its_boards_overlap(name):
    assert laid_out(demo(name)) > 5


@over(jobs(), few=15, many=400)
def test_a_job_is_laid_out_where_its_boards_overlap(job):
    laid_out(sound(job.text(), settings={"gap": "2in"}))


@over(jobs(), few=15, many=400)
def test_a_pieces_lines_are_those_of_each_of_its_boards(job):
    """Counted by how large they are and how far from the nearest ends: turning a board over changes neither."""
    same_on_all(sound(job.text()))


@pytest.mark.parametrize("name", DEMOS)
def test_a_demos_lines_are_those_of_each_of_its_boards(name):
    same_on_all(demo(name))


@over(jobs(), few=10, many=300)
def test_what_is_at_hand_for_all_steps_is_all_there_is(job):
    all_at_hand(sound(job.text()))


@pytest.mark.parametrize("name", DEMOS)
def test_what_is_at_hand_for_all_steps_of_a_demo_is_all_there_is(name):
    all_at_hand(demo(name))


def demo(name: str) -> Plan:
    plan = compiled((SPECS / f"{name}.rod").read_text("utf-8")).value
    assert plan is not None
    return plan


def laid_out(plan: Plan) -> int:
    """Every joint's contacts against the layout of the boards it joins; how many lines there are."""
    job = json.loads(write(plan, frozenset({"json"}))["job.json"])
    boards = {board["path"]: board for board in job["boards"]}
    wanted: dict[str, set] = {path: set() for path in boards}
    for contact in job["contacts"]:
        a, b = contact["a"], contact["b"]
        if b is None or housed(boards[a], boards[b], contact["joint"]):
            continue
        for path, other, face, broad_only in ((b, a, contact["face_b"], False), (a, b, contact["face_a"], True)):
            if is_lined(boards[path], boards[other], face, broad_only):
                wanted[path].add((other, face, *spans(boards[path], boards[other], face)))
    for path, board in boards.items():
        found = {(one["for"], one["face"], *map(read, one["spans"])) for one in board["layout"]}
        if any(f["kind"] != "mitre" for f in board["features"]):  # a notch may take some of it, or all
            assert all(any(within(one, whole) for whole in wanted[path]) for one in found)
        else:
            assert {one for one in found if whole_partner(boards[one[0]])} == {
                one for one in wanted[path] if whole_partner(boards[one[0]])
            }
    return sum(len(board["layout"]) for board in boards.values())


def whole_partner(board: dict) -> bool:
    return all(feature["kind"] == "mitre" for feature in board["features"])


def housed(a: dict, b: dict, joint: str) -> bool:
    return any(
        cut["joint"] == joint and cut["for"] == other["path"]
        for board, other in ((a, b), (b, a))
        for cut in board["housings"]
    )


def is_lined(board: dict, other: dict, face: str, broad_only: bool) -> bool:
    """A broad face that isn't covered all over; of a receiver an edge not covered all along."""
    axis = FACES[face][0]
    thick = AXES.index(board["thickness_axis"])
    if broad_only and axis != thick:
        return False
    own, covered = box(board, "box"), overlap(board, other)
    wanted = [k for k in range(3) if k != axis and (axis == thick or k != thick)]
    at_face = own[axis][FACES[face][1]] == box(board, "cut_box")[axis][FACES[face][1]]
    return at_face and any(covered[k] != own[k] for k in wanted)


def spans(board: dict, other: dict, face: str) -> list:
    cut, covered = box(board, "cut_box"), overlap(board, other)
    return [(AXES[k], covered[k][0] - cut[k][0], covered[k][1] - cut[k][0]) for k in range(3) if k != FACES[face][0]]


def overlap(one: dict, other: dict) -> list:
    return [(max(a[0], b[0]), min(a[1], b[1])) for a, b in zip(box(one, "box"), box(other, "box"))]


def box(board: dict, which: str) -> list:
    found = board[which]
    return [(Fraction(a), Fraction(b)) for a, b in zip(found["lo"], found["hi"])]


def read(span: dict) -> tuple:
    return span["axis"], Fraction(span["from"]["in"]), Fraction(span["to"]["in"])


def within(one: tuple, whole: tuple) -> bool:
    return one[:2] == whole[:2] and all(w[1] <= o[1] and o[2] <= w[2] for o, w in zip(one[2:], whole[2:]))


def same_on_all(plan: Plan) -> None:
    known = facts(plan, "")
    for piece in plan.pieces.pieces:
        lines = landings(known, piece)
        for path in piece.boards if piece.exemplar else ():
            board = known.joined.boards[path]
            of_board = Counter(measured(one.area, board.box, one.face) for one in known.footprints.get(path, ()))
            of_piece = Counter(measured(one.area, one.box, one.face) for one in lines if path in (one.on or [path]))
            assert set(of_board) == set(of_piece)


def measured(area, of, face) -> tuple:
    axes = [k for k in range(3) if k != face.axis]
    return tuple(sorted((area.size(k), *sorted((area.lo[k] - of.lo[k], of.hi[k] - area.hi[k]))) for k in axes))


def all_at_hand(plan: Plan) -> None:
    known = facts(plan, "")
    least, most, low, high = Counter(), Counter(), Counter(), Counter()
    for step in plan.order.steps:
        for line in at_hand(known, joints_made(known, step)).fasteners:
            least[line.kind, line.gauge] += line.count.low
            most[line.kind, line.gauge] += line.count.high
    for line in totals(plan).fasteners:
        low[line.kind, line.gauge] += line.count.low
        high[line.kind, line.gauge] += line.count.high
    assert most == high and all(least[kind] <= low[kind] for kind in low)
