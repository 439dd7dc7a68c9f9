"""All sources of the job through the saws."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from setout.plan.cutting.model import Setting, SourcePlan
from setout.plan.cutting.sequence.bench import Bench
from setout.plan.cutting.sequence.choosing import Done, chosen
from setout.plan.cutting.sequence.manner import PLAIN, Manner
from setout.plan.cutting.sequence.model import Laying
from setout.plan.cutting.sequence.order import Failed, Floor
from setout.plan.cutting.sequence.trimming import Start
from setout.plan.cutting.sequence.whole import unit_of, whole

FAR = ("", "x", "y", "xy")


@dataclass(frozen=True)
class Worked:
    """`plans` in the order of the layings."""

    plans: tuple[SourcePlan, ...]
    settings: tuple[Setting, ...]
    failed: tuple[Failed, ...]


def worked(layings: Sequence[Laying], plainly: bool = False) -> Worked:
    """In the manner that sets the fence least often, makes the fewest cuts and cuts equal boards at one setting; or
    `plainly`, without trying."""
    unit = unit_of(layings)
    small = [whole(laying, unit) for laying in layings]
    far = [_far(laying) for laying in small]
    manner = PLAIN if plainly else chosen(lambda manner: _done(small, far, manner))
    starts, floor = _done(layings, far, manner.per(unit))
    return Worked(tuple(_plan(start.bench) for start in starts), tuple(floor.settings), tuple(floor.failed))


def _done(layings: Sequence[Laying], far: Sequence[str], manner: Manner) -> Done:
    floor = Floor(manner)
    starts = [_start(index, one, way, manner) for index, (one, way) in enumerate(zip(layings, far))]
    floor.run(starts)
    return starts, floor


def _plan(bench: Bench) -> SourcePlan:
    laid = sorted(bench.laid, key=lambda one: (one.x, one.y))
    left = sorted(bench.leftovers, key=lambda one: (one.x, one.y))
    return SourcePlan(bench.source, tuple(laid), tuple(left), tuple(sorted(bench.cuts, key=lambda cut: cut.number)))


def _start(index: int, laying: Laying, far: str, manner: Manner = PLAIN) -> Start:
    return Start(Bench(index, laying.source, laying.limits, manner=manner), laying.job, laying.trim, far)


def _far(laying: Laying) -> str:
    """The far edges to trim first: those that make the fewest settings and cuts, of those ways that keep no factory
    edge."""
    return "" if not laying.trim else min(FAR, key=lambda far: _cuts(laying, far))


def _cuts(laying: Laying, far: str) -> tuple[bool, int, int, int, int]:
    start, floor = _start(0, laying, far), Floor()
    floor.run([start])
    bench = start.bench
    rough = any(
        left.keep and (left.x + left.length == bench.source.length or left.y + left.width == bench.source.width)
        for left in bench.leftovers
    )
    fences = len({one.setting for one in floor.settings if one.kind == "rip"})
    return rough, len(floor.failed), fences, len(bench.cuts), len(far)
