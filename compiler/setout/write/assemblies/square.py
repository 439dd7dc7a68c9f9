"""How to see that an assembly is square: by its diagonals, where it has four corners to measure between."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis
from setout.place.model import Instance
from setout.write.assemblies.model import Square
from setout.write.facts import Facts
from setout.write.facts.sizes import diagonal, length

_SEEN_FROM = {Axis.DEEP: "front", Axis.HIGH: "above", Axis.WIDE: "side"}


def square(facts: Facts, instance: Instance) -> Square | None:
    """An assembly's alone, since the job's box is mostly air; a board by itself is square as it is sawn."""
    boards = [b for b in facts.scene.boards.values() if f"{b.owner}.".startswith(f"{instance.path}.")]
    if instance.box is None or not instance.path or len(boards) < 2:
        return None
    drawer = any(d.path == instance.path for bank in facts.scene.banks for d in bank.drawers)
    through = Axis.HIGH if drawer else _through(instance, max(board.stock.thick for board in boards))
    sides = [axis for axis in Axis if axis != through]
    a, b = (instance.motion.own_sizes(instance.box.sizes)[axis] for axis in sides)
    shown = [facts.sizes_over_scenes(instance.path)[axis] for axis in sides]
    return Square(
        side=_SEEN_FROM[through],
        box=drawer,
        sizes=(shown[0], shown[1]),
        diagonal=diagonal(a, b, facts.style),
        tolerance=length(facts.project.practice.value("diagonal_tolerance"), facts.style),
        waits=any(one.waits for one in shown),
    )


def _through(instance: Instance, thick: Fraction) -> Axis:
    """The axis that one looks along: the front's, but for what lies flat, no thicker than its boards, or stands so."""
    sizes = instance.motion.own_sizes(instance.box.sizes) if instance.box is not None else (thick,) * 3
    return next((axis for axis in (Axis.HIGH, Axis.WIDE) if sizes[axis] <= thick), Axis.DEEP)
