"""The planner against the best-known values of public benchmark instances: kerf 0, trim 0, straight cuts from edge to
edge.

python tests/bench/cutting.py FILE.jsonl [--every N] [--from K] [--seconds S] [--no-turning] [--show]

The files are in the format of shared/bench/README.md. One core. What was tried and what it gave: CUTTING.md beside
this file.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections import Counter
from collections.abc import Iterable, Iterator
from pathlib import Path

from setout.plan.cutting.search import (
    Bin,
    Budget,
    Item,
    Layout,
    Region,
    Stick,
    StickLayout,
    leftovers,
    solve,
    solve_sticks,
)


def main(words: list[str]) -> int:
    asked = parsed(words)
    total = known = 0
    tally: Counter[str] = Counter()
    start = time.perf_counter()
    for instance in chosen(asked.file, asked.every, asked.start):
        got, best = run(instance, asked)
        total += got
        known += best
        result = "worse" if got > best else "equal" if got == best else "better"
        tally[result] += 1
        if asked.show or result != "equal":
            print(f"{instance['id']:<40} {got:>12,} best known {best:>12,}  {result}", flush=True)
    took = time.perf_counter() - start
    over = 100 * (total / known - 1) if known else 0.0
    turning = "turning" if asked.turning else "no turning"
    print(f"{asked.file.stem}, {turning}, {asked.seconds:g} s: {total:,} against {known:,}, {over:+.2f} %; "
          f"worse {tally['worse']}, equal {tally['equal']}, better {tally['better']}; {took:.0f} s in all")
    return 0


def parsed(words: list[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("file", type=Path)
    parser.add_argument("--every", type=int, default=1)
    parser.add_argument("--from", type=int, default=0, dest="start")
    parser.add_argument("--seconds", type=float, default=2.0)
    parser.add_argument("--no-turning", action="store_false", dest="turning")
    parser.add_argument("--show", action="store_true", help="every instance, not only those that differ")
    return parser.parse_args(words)


def chosen(file: Path, every: int, start: int) -> Iterator[dict]:
    with file.open() as lines:
        for n, line in enumerate(lines):
            if n % every == start:
                yield json.loads(line)


def run(instance: dict, asked: argparse.Namespace) -> tuple[int, int]:
    """What our plan needs and what the best known plan needs: sheets when all cost the same, else money."""
    budget = Budget(work=None, seconds=asked.seconds)
    if "bins" not in instance:
        return run_sticks(instance, budget)
    items = [Item(w, h, count, asked.turning) for w, h, count in instance["items"]]
    bins = [Bin(w, h, cost, copies) for w, h, cost, copies in instance["bins"]]
    layout = solve(items, bins, budget)
    check(layout, items, bins)
    best = best_known(instance["known"], asked.turning)
    if not instance["known"]:  # one board, unless it's certain that straight cuts can't do it
        best = max(best, layout.bound.bins)
    by_count = len(bins) == 1 and best < bins[0].cost
    return (len(layout.used) if by_count else layout.cost), best


def best_known(known: dict[str, int], turning: bool) -> int:
    """Straight-cut values first; where only plans without turning are known they are what turning is compared with."""
    for name in ("g3_r", "g2_r", "free_r") if turning else ():
        if name in known:
            return known[name]
    others = ("g3_o", "free_o", "g2_o", "g3hom_o", "g2_r", "free_r")
    return next((known[name] for name in others if name in known), 1)  # without any: a job that fills one board


def run_sticks(instance: dict, budget: Budget) -> tuple[int, int]:
    lengths = [(length, count) for length, count in instance["items"]]
    layout = solve_sticks(lengths, [Stick(instance["length"], 1)], budget)
    check_sticks(layout, lengths, instance["length"])
    return layout.cost, instance["known"]["ub"]


def check(layout: Layout, items: list[Item], bins: list[Bin]) -> None:
    """Every item once, every region cut apart without overlap, what is left over and what is laid make up the whole."""
    found: Counter[int] = Counter()
    for used in layout.used:
        root = used.root
        assert (root.x, root.y, root.width, root.height) == (0, 0, bins[used.bin].width, bins[used.bin].height)
        pieces = list(cut_apart(root))
        for piece in pieces:
            item = items[piece.item]
            as_laid = (item.height, item.width) if piece.turned else (item.width, item.height)
            assert (piece.width, piece.height) == as_laid
            assert item.turnable or not piece.turned
            found[piece.item] += 1
        area = sum(piece.width * piece.height for piece in [*pieces, *leftovers(root)])
        assert area == root.width * root.height
    missing = dict(layout.missing)
    assert all(found[i] + missing.get(i, 0) == item.count for i, item in enumerate(items))
    for i, spec in enumerate(bins):
        assert spec.copies is None or sum(used.bin == i for used in layout.used) <= spec.copies
    assert not missing or any(spec.copies is not None for spec in bins)


def cut_apart(region: Region) -> Iterable:
    at = region.x if region.along == "x" else region.y
    for part in region.parts:
        assert (part.x, part.y) == ((at, region.y) if region.along == "x" else (region.x, at))
        assert part.width <= region.width and part.height <= region.height
        at += part.width if region.along == "x" else part.height
        if isinstance(part, Region):
            yield from cut_apart(part)
        else:
            yield part
    assert at <= (region.x + region.width if region.along == "x" else region.y + region.height)


def check_sticks(layout: StickLayout, lengths: list[tuple[int, int]], stock: int) -> None:
    found: Counter[int] = Counter()
    for used in layout.used:
        assert sum(lengths[i][0] for i in used.lengths) <= stock
        for i in used.lengths:
            found[i] += used.times
    assert not layout.missing and all(found[i] == count for i, (_, count) in enumerate(lengths))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
