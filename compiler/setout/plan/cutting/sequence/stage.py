"""All sources of the job through the saws."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.plan.cutting.model import Setting, Source, SourcePlan
from setout.plan.cutting.sequence.bench import Bench, Limits
from setout.plan.cutting.sequence.model import Job
from setout.plan.cutting.sequence.order import Failed, Floor
from setout.plan.cutting.sequence.trimming import Start

FAR = ("", "x", "y", "xy")


@dataclass(frozen=True)
class Laying:
    """A source and the tree it is cut by; `trim` as in Supply."""

    source: Source
    job: Job
    trim: Fraction
    limits: Limits


@dataclass(frozen=True)
class Worked:
    """`plans` in the order of the layings."""

    plans: tuple[SourcePlan, ...]
    settings: tuple[Setting, ...]
    failed: tuple[Failed, ...]


def worked(layings: Sequence[Laying]) -> Worked:
    floor = Floor()
    starts = [_start(index, laying) for index, laying in enumerate(layings)]
    floor.run(starts)
    return Worked(tuple(_plan(start.bench) for start in starts), tuple(floor.settings), tuple(floor.failed))


def _plan(bench: Bench) -> SourcePlan:
    laid = sorted(bench.laid, key=lambda one: (one.x, one.y))
    left = sorted(bench.leftovers, key=lambda one: (one.x, one.y))
    return SourcePlan(bench.source, tuple(laid), tuple(left), tuple(sorted(bench.cuts, key=lambda cut: cut.number)))


def _start(index: int, laying: Laying) -> Start:
    """With the far edges trimmed first that make the fewest cuts, of those ways that keep no factory edge."""
    far = "" if not laying.trim else min(FAR, key=lambda far: _cuts(laying, far))
    return Start(Bench(index, laying.source, laying.limits), laying.job, laying.trim, far)


def _cuts(laying: Laying, far: str) -> tuple[bool, int, int, int]:
    bench, floor = Bench(0, laying.source, laying.limits), Floor()
    floor.run([Start(bench, laying.job, laying.trim, far)])
    rough = any(
        left.keep and (left.x + left.length == bench.source.length or left.y + left.width == bench.source.width)
        for left in bench.leftovers
    )
    return rough, len(floor.failed), len(bench.cuts), len(far)
