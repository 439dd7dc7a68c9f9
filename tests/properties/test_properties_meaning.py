"""What must hold of every sound spec, whatever it builds."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction

from compiling import compiled
from hypothesis import assume, event
from hypothesis import strategies as st
from judging import facts, gone, over, volumes
from speccing import SWAPPED, jobs

from setout.geometry import Motion
from setout.piece import Register, piece, register_text
from setout.plan.model import Plan
from setout.write import write
from setout.write.facts.turning import turned_board

WIDE = Fraction(260)
MIRROR = Motion((0, 1, 2), (-1, 1, 1), (WIDE, Fraction(0), Fraction(0)))


def sound(text: str, **more) -> Plan:
    """Warnings and notes are let pass; few of the specs drawn have errors."""
    checked = compiled(text, **more)
    event("an error" if checked.failed else "sound")
    assume(not checked.failed)
    assert checked.value is not None
    return checked.value


def counted(pieces) -> dict[str, int]:
    return {p.shape: p.count for p in pieces.pieces}


@over(jobs(), few=16, many=400)
def test_wood_is_neither_lost_nor_doubled(job):
    """What is cut for all pieces, less what is milled off, fills the union of the solids exactly."""
    plan = sound(job.text(), settings={"gap": "2in"})
    boards = plan.pieces.joined.drawn.boards
    union, left = volumes((board.box, gone(board)) for board in boards.values())
    milled = sum(board.box.volume for board in boards.values()) - sum(left)
    placed = [(p, sum(path in boards for path in p.boards)) for p in plan.pieces.pieces]
    cut = sum(p.length.amount * p.width.amount * p.thick * count for p, count in placed)
    assert cut - milled == union


@over(jobs(), few=12, many=400)
def test_a_job_with_left_and_right_swapped_is_its_mirror_image(job):
    """Spelled with left for right, or placed mirrored: every board and every piece is the mirror image of one."""
    plan = sound(job.text(), settings={"gap": "2in"})
    joined = plan.pieces.joined
    image = {path: turned_board(board, MIRROR) for path, board in joined.drawn.boards.items()}
    pieces = piece(replace(joined, scenes=(replace(joined.drawn, boards=image),)), Register(())).value
    for text in (job.text(SWAPPED), job.wrapped("mirrored")):
        other = sound(text, settings={"gap": "2in"})
        assert facts(other) == facts(plan, mirror=WIDE)
        assert counted(other.pieces) == counted(pieces)


@over(jobs(), few=10, many=400)
def test_mirrored_twice_is_itself(job):
    once, twice = sound(job.wrapped()), sound(job.wrapped("mirrored", again="mirrored"))
    assert facts(once) == facts(twice) == facts(sound(job.text()))
    assert counted(once.pieces) == counted(twice.pieces)


@over(st.tuples(jobs(order=True), st.integers(0, 9), st.permutations((0, 1, 2))), few=8, many=300)
def test_lets_may_stand_anywhere_and_one_that_nothing_uses_changes_nothing(drawn):
    job, place, order = drawn
    made = written(sound(job.text()))
    for spare in ("7in", "1mm", "w0 + 3"):
        lets = [*job.lets, f"let spare = {spare}"]
        statements = job.statements
        statements[place:place] = [lets[n] for n in order]
        assert written(sound(job.spelled(statements))) == made


def written(plan: Plan) -> dict[str, bytes]:
    return {**write(plan, frozenset({"csv", "json"})), "marks": repr(plan.pieces.new_entries).encode()}


@over(jobs(order=True), few=30, many=600)
def test_every_line_of_order_holds_in_the_printed_order(job):
    assume(job.order)
    steps = json.loads(write(sound(job.text()), frozenset({"json"}))["job.json"])["order"]
    for before, after in job.order:
        first, second = numbers(steps, before), numbers(steps, after)
        assert first and second and max(first) < min(second)
    place = {step["number"]: n for n, step in enumerate(steps)}
    assert all(place[reason["after"]] < place[step["number"]] for step in steps for reason in step["reasons"])


def numbers(steps: list[dict], reference: str) -> list[int]:
    """Of the steps that a line means: an own step's text, or a verb and an instance or a definition of the draw."""
    verb, _, name = reference.partition(" ")
    verbs = {"set": ("set", "hang")}.get(verb, (verb,))
    names = {name.strip('"'), *(f"{name}{n}" for n in range(2) if len(name) == 1)}
    return [step["number"] for step in steps if step["verb"] in verbs and step["target"] in names]


@over(jobs(order=True), few=6, many=300)
def test_the_same_spec_gives_the_same_and_its_marks_stay(job):
    first, again = sound(job.text()), sound(job.text())
    assert written(first) == written(again)
    known = sound(job.text(), marks=register_text(first.pieces.new_entries))
    assert not known.pieces.new_entries and known.pieces.mark_of == first.pieces.mark_of
