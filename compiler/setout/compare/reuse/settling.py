"""Boards that stay at home, whatever becomes of the others: most boards of most revisions. They need not be weighed.

A new lot is settled when each of its copies has a board of its own, none elsewhere would take less work, and no board
with its home there is of any use to a lot that is not settled. Nothing is lost by leaving all those at home. Of any
assignment take the settled lots' part away and give each of them its own boards instead: these served settled lots
alone, so the others keep what they had, and a settled lot now has all that it wants for the least work there is.
"""

from __future__ import annotations

from setout.compare.reuse.trials import Trials


def settled(trials: Trials) -> frozenset[int]:
    """The new lots, by index."""
    stay = {j for j in range(len(trials.new)) if _is_best_at_home(trials, j)}
    homes_of: dict[int, list[int]] = {}
    for i, j in trials.own:
        homes_of.setdefault(i, []).append(j)
    asking = [j for j in range(len(trials.new)) if j not in stay]
    while asking:
        j = asking.pop()
        for i in trials.candidates(j):
            wanted = stay.intersection(homes_of.get(i, ()))
            if wanted and trials.fit(i, j) is not None:
                stay -= wanted
                asking += sorted(wanted)
    return frozenset(stay)


def _is_best_at_home(trials: Trials, j: int) -> bool:
    homes = trials.homes[j]
    own = sum(trials.own[i, j] for i in homes if trials.fit(i, j) is not None)
    if own < len(trials.new[j].left):
        return False
    dearest = max(trials.at_home(i, j) for i in homes)
    return not any(_is_better(trials, i, j, dearest) for i in trials.candidates(j))


def _is_better(trials: Trials, i: int, j: int, dearest: float) -> bool:
    """Whether a copy that has its home elsewhere takes less work than the one at home that takes most."""
    if len(trials.old[i].left) == trials.own[i, j] or trials.least_elsewhere(i, j) >= dearest:
        return False
    return trials.elsewhere(i, j) < dearest
