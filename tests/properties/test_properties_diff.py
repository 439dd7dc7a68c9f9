"""Comparing generated specs: nothing changes to itself, there and back is a mirror, what is said is all there is."""

from __future__ import annotations

from dataclasses import replace

from applying import account, applied, pieces_of
from compiling import compiled
from hypothesis import assume, event
from hypothesis import strategies as st
from judging import over
from respacing import respaced
from revising import renamed, revisions
from speccing import Job, jobs

from setout.compare import Changes, compare
from setout.compare.model import AssemblyChange, BoardChange, Pair
from setout.diagnostics import Checked
from setout.piece import register_text
from setout.plan.model import Plan

SOUND = jobs(order=True)
TURNED = {"added": "gone", "gone": "added", "line added": "line gone", "line gone": "line added"}
ANSWERED = {"cleared": "new", "new": "cleared"}


def built(text: str, before: Checked[Plan] | None = None) -> Checked[Plan]:
    """`before`: an earlier revision of the same file, whose marks stay."""
    marks = "" if before is None or before.value is None else register_text(before.value.pieces.new_entries)
    checked = compiled(text, marks=marks)
    assume(not checked.failed and checked.value is not None)
    return checked


def between(old: Checked[Plan], new: Checked[Plan]) -> Changes:
    assert old.value is not None and new.value is not None
    return compare(old.value, new.value, old.diagnostics, new.diagnostics)


def unchanged(old: Checked[Plan], new: Checked[Plan]) -> None:
    changes = between(old, new)
    assert not changes.changed, (changes.boards, changes.numbers, changes.steps, changes.told)
    assert {fate.kind for fate in changes.reuse.fates} <= {"right", "uncut"}
    assert all(cut.waits for cut in changes.reuse.to_cut)


@over(SOUND.flatmap(lambda job: st.tuples(st.just(job.text()), respaced(st.just(job.text())))), few=6, many=300)
def test_layout_and_comments_are_no_change(drawn):
    text, otherwise = drawn
    first = built(text)
    unchanged(first, first)
    unchanged(first, built(otherwise, first))


def shuffled(job: Job) -> st.SearchStrategy[tuple[Job, list[str]]]:
    return st.tuples(st.just(job), st.permutations([*job.lets, *job.statements]))


@over(SOUND.flatmap(shuffled), few=6, many=300)
def test_the_order_of_statements_is_no_change(drawn):
    job, statements = drawn
    first = built(job.text())
    unchanged(first, built(job.spelled(statements), first))


@over(SOUND, few=6, many=300)
def test_a_parameter_or_value_under_another_name_is_no_change(job):
    first = built(job.text())
    unchanged(first, built(renamed(job.text()), first))


@over(revisions(), few=25, many=1000)
def test_what_is_said_makes_the_new_boards_of_the_old(texts):
    old = built(texts[0])
    new = built(texts[1], old)
    changes = between(old, new)
    event("changed" if changes.changed else "unchanged")
    assert old.value is not None and new.value is not None
    assert applied(old.value, changes) == pieces_of(new.value)
    account(old.value, new.value, changes)


@over(revisions(), few=15, many=1000)
def test_there_and_back_is_a_mirror(texts):
    old = built(texts[0])
    new = built(texts[1], old)
    there, back = between(old, new), between(new, old)
    assert sides(turned(there)) == sides(back)
    rights = [sum(f.count for f in c.reuse.fates if f.kind == "right") for c in (there, back)]
    assert rights[0] == rights[1]


def turned(changes: Changes) -> Changes:
    return replace(
        changes,
        old_title=changes.new_title,
        new_title=changes.old_title,
        pairs=tuple(Pair(p.new, p.old) for p in changes.pairs),
        boards=tuple(map(turned_board, changes.boards)),
        assemblies=tuple(map(turned_assembly, changes.assemblies)),
        numbers=tuple(replace(d, old=d.new, new=d.old) for d in changes.numbers),
        steps=tuple(replace(s, how=TURNED[s.how]) for s in changes.steps),
        told=tuple(replace(t, how=ANSWERED[t.how]) for t in changes.told),
    )


def turned_board(change: BoardChange) -> BoardChange:
    return replace(
        change,
        how=tuple(TURNED.get(word, word) for word in change.how),
        old=change.new,
        new=change.old,
        sized=tuple(replace(s, old=s.new, new=s.old) for s in change.sized),
        grain=change.grain and change.grain[::-1],
        face=change.face and change.face[::-1],
        machined=tuple(replace(m, gone=m.added, added=m.gone) for m in change.machined),
        unjoined=change.joined,
        joined=change.unjoined,
        moved=change.moved and tuple(-x for x in change.moved),
    )


def turned_assembly(change: AssemblyChange) -> AssemblyChange:
    return replace(
        change,
        how=tuple(TURNED.get(word, word) for word in change.how),
        old=change.new,
        new=change.old,
        sized=tuple(replace(s, old=s.new, new=s.old) for s in change.sized),
        moved=change.moved and tuple(-x for x in change.moved),
    )


def sides(changes: Changes) -> list[frozenset]:
    """All but what is cut already, and whatever order it stands in. Assemblies bear the title they have now."""
    assemblies = (replace(a, title="", boards=0) for a in changes.assemblies)
    boards = (replace(b, unjoined=frozenset(b.unjoined), joined=frozenset(b.joined)) for b in changes.boards)
    rest = (changes.pairs, changes.numbers, changes.steps, changes.told)
    return [frozenset(assemblies), frozenset(boards), *map(frozenset, rest)]
