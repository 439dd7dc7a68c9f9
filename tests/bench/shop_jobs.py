"""The whole cutting plan on a dozen jobs such as a shop has: kerf, trimmed edges, grain, a rack.

python tests/bench/shop_jobs.py [--work N] [--jobs a,b] [--no-packer]

Each job three ways: our plan, our plan with money as its only aim (its cuts in the plainest order), and the plain best
of a general rectangle packer (`pip install rectpack`, the extra `bench`). That one knows nothing of straight cuts and
so may need fewer sheets than any saw can make. What was tried and what it gave: CUTTING.md beside this file.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import lcm
from pathlib import Path

from setout.join import join
from setout.piece import parse_register, piece
from setout.piece.model import Pieces
from setout.place import place
from setout.plan.cutting import DEFAULT, Budget, Cutting, cutting
from setout.plan.cutting.sequence import groups, unlike
from setout.plan.cutting.sources import planned_kerf, supplies
from setout.read import read
from setout.resolve import resolve
from setout.source import Source

sys.path.insert(0, str(Path(__file__).parents[1] / "cutting"))
from checker import faults

Part = tuple[str, str, str, int, str]  # stock, length, width, count, grain
PLY, THIN = "ply", "thin"


# --- the jobs ----------------------------------------------------------------------------------------------------


def carcase(w: float, h: float, d: float, shelves: int, n: int = 1, back: bool = True) -> Iterator[Part]:
    """Sides, top, bottom, shelves, two rails and a back, `n` times. 23/32 plywood."""
    inner = f"{w} - 23/16"
    yield PLY, f"{h}", f"{d}", 2 * n, ""
    yield PLY, inner, f"{d}", 2 * n, ""
    if shelves:
        yield PLY, inner, f"{d} - 3/4", shelves * n, ""
    yield PLY, inner, "4", 2 * n, "grain any"
    if back:
        yield THIN, f"{h}", f"{w}", n, ""


def drawers(w: float, d: float, heights: list[float], n: int = 1) -> Iterator[Part]:
    """Box sides, front and back of half-inch stock, a bottom, a front of plywood."""
    for h in heights:
        yield "half", f"{d}", f"{h} - 1-1/2", 2 * n, ""
        yield "half", f"{w} - 2-1/2", f"{h} - 1-1/2", 2 * n, ""
        yield THIN, f"{d} - 1/2", f"{w} - 2", n, "grain any"
        yield PLY, f"{w} - 1/8", f"{h} - 1/8", n, ""


def sewing_room(rng: random.Random) -> Iterator[Part]:
    for w in (24, 36):
        yield from carcase(w, 28.25, 22, 2)
        yield from carcase(w, 30, 12, 2)
    yield from carcase(34, 12, 12, 4, 2)
    yield from drawers(24, 20, [4, 7, 10])
    yield PLY, "94", "23", 1, ""


def library_wall(rng: random.Random) -> Iterator[Part]:
    for w in (30, 30, 34, 28):
        yield from carcase(w, 84, 11.25, 5)
    yield PLY, "92", "3", 4, ""


def hall_of_lockers(rng: random.Random) -> Iterator[Part]:
    yield from carcase(18, 72, 16, 3, 6)
    yield PLY, "70", "16-3/4", 6, ""


def pantry(rng: random.Random) -> Iterator[Part]:
    yield from carcase(24, 90, 20, 6, 2)
    yield from drawers(24, 18, [5, 5, 8, 8], 2)
    yield PLY, "44", "11-3/4", 8, ""


def workbenches(rng: random.Random) -> Iterator[Part]:
    yield from carcase(48, 34, 24, 1, 2)
    yield from drawers(22, 22, [3, 4, 6], 4)
    yield PLY, "72", "28", 2, "grain any"


def media_wall(rng: random.Random) -> Iterator[Part]:
    yield from carcase(40, 20, 18, 1, 3)
    yield from carcase(20, 60, 14, 4, 2)
    yield PLY, "60", "14", 5, ""


def school_cubbies(rng: random.Random) -> Iterator[Part]:
    yield from carcase(60, 40, 13, 2, 3)
    yield PLY, "11-3/8", "12-7/8", 36, "grain any"
    yield PLY, "58-1/2", "2-1/2", 6, ""


def bunk_room(rng: random.Random) -> Iterator[Part]:
    yield PLY, "80", "14", 4, ""
    yield PLY, "41", "14", 4, ""
    yield PLY, "65", "9", 4, ""
    yield from drawers(38, 22, [9], 4)
    yield from carcase(20, 65, 22, 4, 1)
    yield PLY, "39", "3-1/2", 26, ""


def studio(rng: random.Random) -> Iterator[Part]:
    yield from drawers(40, 28, [2.5, 2.5, 3, 3, 3.5, 4, 4, 5])
    yield from carcase(42, 32, 30, 0)
    yield from carcase(22, 32, 30, 3)


def kitchen_run(rng: random.Random) -> Iterator[Part]:
    for w in (18, 24, 30, 33, 36):
        yield from carcase(w, 30.5, 23.25, 1)
        yield from drawers(w, 21, [6, 10, 12])
    for w in (24, 30, 36):
        yield from carcase(w, 36, 12, 3)


def odds_and_ends(rng: random.Random) -> Iterator[Part]:
    """No two alike: what a repair shop has on its list."""
    for _ in range(60):
        yield (
            PLY,
            f"{rng.randint(24, 240)}/4",
            f"{rng.randint(12, 90)}/4",
            rng.choice((1, 1, 2)),
            rng.choice(("", "grain any")),
        )


def large_order(rng: random.Random) -> Iterator[Part]:
    """300 boards of 40 sizes."""
    widths = [rng.randint(6, 48) / 2 for _ in range(9)]
    counts = [rng.randint(3, 12) for _ in range(40)]
    counts[0] += 300 - sum(counts)
    for count in counts:
        yield (
            PLY,
            f"{rng.randint(20, 150)}/2",
            f"{rng.choice(widths)}",
            max(1, count),
            rng.choice(("", "", "grain any")),
        )


JOBS: tuple[Callable[[random.Random], Iterator[Part]], ...] = (
    sewing_room,
    library_wall,
    hall_of_lockers,
    pantry,
    workbenches,
    media_wall,
    school_cubbies,
    bunk_room,
    studio,
    kitchen_run,
    odds_and_ends,
    large_order,
)
HEAD = """project "{name}" {{ units inch; mark to 1/32; paper letter }}
stock ply "3/4 plywood" {{ sheet 96 x 48 x 23/32; grain along 96; price 70 }}
stock half "1/2 plywood" {{ sheet 96 x 48 x 1/2; grain along 96; price 52 }}
stock thin "1/4 plywood" {{ sheet 96 x 48 x 7/32; grain along 96; price 31 }}
rack {{ ply: {ply}; thin: 40 x 30 }}
"""


def spec(job: Callable[[random.Random], Iterator[Part]], seed: int = 1) -> str:
    rng = random.Random(f"{job.__name__} {seed}")
    rack = ", ".join(f"{rng.randint(20, 70)} x {rng.randint(8, 30)}" for _ in range(rng.randint(1, 4)))
    lines = [HEAD.format(name=job.__name__, ply=rack)]
    for n, (stock, length, width, count, grain) in enumerate(job(rng), 1):
        lines.append(f"part p{n} of {stock} {{ size ({length}) x ({width}); count {count}; {grain} }}")
    return "\n".join(lines)


def pieces_of(text: str) -> Pieces:
    tree = read(Source("job.rod", text)).value
    project = resolve(tree, lambda name: None, {}).value if tree else None
    joined = join(place(project).value).value if project else None  # type: ignore[arg-type]
    register = parse_register(Source("marks", "")).value
    assert joined is not None and register is not None, text
    found = piece(joined, register).value
    assert found is not None
    return found


# --- the figures ------------------------------------------------------------------------------------------------


@dataclass
class Figures:
    sheets: int
    bound: int
    offcuts: int
    largest: Fraction
    fences: int
    stops: int
    taped: int  # settings of the saw that is brought to the sheet
    cuts: int
    sawn: int  # cuts within the saws' limits
    alike: int  # of the lengths and widths of boards needed more than once, those made at one setting in one batch
    sides: int
    seconds: float

    def told(self) -> str:
        plan = f"{self.sheets:4} {self.bound:5} {self.offcuts:5} {float(self.largest):8.0f}"
        work = (
            f"{self.fences:7} {self.stops:6} {self.taped:6} {self.cuts:6} {100 * self.sawn / max(1, self.cuts):5.0f} %"
            f" {100 * self.alike / max(1, self.sides):5.0f} %"
        )
        return f"{plan} {work} {self.seconds:6.2f} s"


def figures(plan: Cutting, seconds: float) -> Figures:
    sources = [source for stock in plan.stocks for source in stock.sources]
    cuts = [cut for source in sources for cut in source.cuts]
    kept = [left.length * left.width for source in sources for left in source.leftovers if left.keep]
    ripped = {cut.setting for cut in cuts if cut.kind == "rip"}
    stopped = {cut.setting for cut in cuts if cut.kind == "crosscut"}
    taped = {cut.setting for cut in cuts if cut.kind == "break down"}
    equal = groups(((stock.stock.name, one.cuts) for stock in plan.stocks for one in stock.sources), plan.settings)
    return Figures(
        sum(stock.bought for stock in plan.stocks),
        sum(stock.bound for stock in plan.stocks),
        sum(source.source.kind == "offcut" for source in sources),
        max(kept, default=Fraction(0)),
        len(ripped),
        len(stopped),
        len(taped),
        len(cuts),
        sum(cut.saw is not None for cut in cuts),
        sum(2 - sum(unlike(boards)) for boards in equal.values()),
        2 * len(equal),
        seconds,
    )


def planned(pieces: Pieces, budget: Budget | None, **more) -> Figures:
    start = time.process_time()
    made = cutting(pieces, budget, **more).value
    seconds = time.process_time() - start
    assert made is not None
    wrong = faults(made, pieces)
    assert not wrong, wrong[:5]
    return figures(made, seconds)


def packed(pieces: Pieces) -> int | None:
    """New sheets by the packer: the best of its methods and orders, each given the boards with their kerf and the
    usable sheets; None when it isn't there. It can't turn some boards and not others, so it is asked both with all
    lying along the grain and, where all may turn, with turning."""
    try:
        import rectpack
    except ImportError:
        return None
    project = pieces.joined.placed.project
    total = 0
    for stock in project.stocks.values():
        boards = [
            (p.length.amount, p.width.amount)
            for p in pieces.pieces
            if p.stock.name == stock.name
            for _ in range(p.count)
        ]
        if boards:
            kerf = planned_kerf(project.saws, stock)
            there = supplies(project, stock)
            total += _packed(rectpack, boards, kerf, there)
    return total


def _packed(rectpack, boards, kerf: Fraction, there) -> int:
    unit = lcm(
        *(n.denominator for board in boards for n in board),
        *(n.denominator for s in there for n in s.usable),
        kerf.denominator,
    )
    rects = [tuple(int((n + kerf) * unit) for n in board) for board in boards]
    best = len(boards)
    for algorithm in (rectpack.MaxRectsBssf, rectpack.MaxRectsBaf, rectpack.GuillotineBssfSas, rectpack.SkylineBlWm):
        for order in (rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE):
            packer = rectpack.newPacker(pack_algo=algorithm, sort_algo=order, rotation=False)
            for rect in rects:
                packer.add_rect(*rect)
            for s in there:
                size = tuple(int((n + kerf) * unit) for n in s.usable)
                packer.add_bin(*size, count=s.copies or len(boards), bid=int(not s.on_hand))
            packer.pack()
            if sum(len(one) for one in packer) == len(boards):
                best = min(best, sum(one.bid for one in packer))
    return best


def main(words: list[str]) -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--work", type=int, help="places looked at; unsaid, the usual amount")
    parser.add_argument("--jobs", default="")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--no-packer", action="store_false", dest="packer")
    asked = parser.parse_args(words)
    chosen = [job for job in JOBS if not asked.jobs or job.__name__ in asked.jobs.split(",")]
    print(f"{'':27} new bound  rack  largest  fences  stops  taped   cuts  sawn   alike    time")
    made: dict[str, list[Figures]] = {"ours": [], "money": []}
    budget = DEFAULT if asked.work is None else Budget(work=asked.work)
    for job in chosen:
        pieces = pieces_of(spec(job, asked.seed))
        boards = sum(p.count for p in pieces.pieces)
        for name, more in (("ours", {}), ("money", {"taste": None})):
            made[name].append(planned(pieces, budget, **more))
            print(f"{job.__name__ if name == 'ours' else '':16} {boards:3} {name:6}{made[name][-1].told()}", flush=True)
        if asked.packer and (count := packed(pieces)) is not None:
            print(f"{'':20} packer{count:4}")
    for name, of in made.items():
        print(f"{name:6} {together(of)}")
    return 0


def together(of: list[Figures]) -> str:
    def total(field: str) -> int:
        return sum(getattr(one, field) for one in of)

    return (
        f"sheets {total('sheets')}, largest leftovers {float(total('largest')):,.0f} sq in, fence settings "
        f"{total('fences')}, stops {total('stops')}, by the guide {total('taped')}, cuts {total('cuts')}, sides of "
        f"equal boards at one setting {total('alike')} of {total('sides')}, {total('seconds'):.1f} s"
    )


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
