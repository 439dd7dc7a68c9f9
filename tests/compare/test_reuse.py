"""What becomes of boards that are cut already: as good as trying everything, and never better than true."""

from __future__ import annotations

from random import Random

import pytest
from applying import account, applied, boards_of, pieces_of, saved
from comparing import compared_plans
from compiling import compiled
from cutboards import most_saved
from few_boards import altered, drawn, spec

from setout.compare.reuse.settling import settled


def test_as_little_is_lost_as_when_everything_is_tried():
    assert tried(range(80)) > 50


def test_nor_when_the_search_goes_line_by_line(monkeypatch):
    """As it does where a board has more work on it than these have."""
    monkeypatch.setattr("setout.compare.reuse.windows.TRIES", 1)
    assert tried(range(100, 140)) > 20


def test_what_need_not_be_weighed_stays_where_weighing_leaves_it(monkeypatch):
    """Boards that are settled at home are kept out of the assignment, and all of it comes out as with them in it."""
    jobs = [texts for seed in range(60) if (texts := _one_by_one(Random(seed)))]
    found = [compared_plans(*texts)[2].reuse for texts in jobs]
    spared: list[int] = []
    monkeypatch.setattr("setout.compare.reuse.stage.settled", lambda trials: spared.extend(settled(trials)) or ())
    assert [compared_plans(*texts)[2].reuse for texts in jobs] == found
    assert len(spared) > 20


def _one_by_one(luck: Random) -> tuple[str, str] | None:
    """Two revisions with a few boards altered, each where it was."""
    before = [drawn(luck) for _ in range(luck.randint(3, 6))]
    texts = spec(before), spec([altered(luck, board) for board in before])
    return None if any(compiled(text).failed for text in texts) else texts


def test_too_many_boards_are_tried_at_their_own_place_only(monkeypatch):
    """And it is said: no spec makes a comparison last for hours."""
    small = spec([])
    before = f"{small}part a of ply {{ size 30 x 10 }}\npart b of ply {{ size 20 x 10 }}\n"
    after = f"{small}part a of ply {{ size 29 x 10 }}\npart c of ply {{ size 8 x 5 }}\n"
    kinds = [(fate.kind, fate.old) for fate in compared_plans(before, after)[2].reuse.fates]
    assert kinds == [("reworked", "A1"), ("serves", "A2")]
    monkeypatch.setattr("setout.compare.reuse.stage._MOST", 1)
    changes = compared_plans(before, after)[2]
    assert [(fate.kind, fate.old) for fate in changes.reuse.fates] == [("reworked", "A1"), ("lost", "A2")]
    assert changes.reuse.narrowed


@pytest.mark.slow
def test_as_little_is_lost_as_when_everything_is_tried_at_length():
    assert tried(range(1000, 4000)) > 1800


def tried(seeds: range) -> int:
    """How many of the jobs drawn were sound."""
    return sum(one(Random(seed)) for seed in seeds)


def one(luck: Random) -> bool:
    before = [drawn(luck) for _ in range(luck.randint(1, 4))]
    again = [altered(luck, luck.choice(before)) if luck.random() < 0.8 else drawn(luck) for _ in range(4)]
    texts = spec(before), spec(again[: luck.randint(1, 4)])
    if any(compiled(text).failed for text in texts):
        return False
    old, new, changes = compared_plans(*texts)
    before, after = boards_of(old), boards_of(new)
    to_new = {pair.old: pair.new for pair in changes.pairs}
    own = {(i, j) for i, (a, _) in enumerate(before) for j, (b, _) in enumerate(after) if to_new.get(a) == b}
    shapes = [[shape for _, shape in some] for some in (before, after)]
    assert saved(changes, old, new) == most_saved(*shapes, own), texts
    account(old, new, changes)
    assert applied(old, changes) == pieces_of(new)
    return True
