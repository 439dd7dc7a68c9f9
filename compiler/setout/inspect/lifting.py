"""What has to be lifted as one, and whether one person may."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setout.geometry import Axis, Box
from setout.inspect.model import Lifted
from setout.inspect.view import View
from setout.resolve.model import Stock
from setout.strength import one_person_limit, weight


def lifts(view: View, stocks: Iterable[Stock]) -> tuple[Lifted, ...]:
    """Assemblies in the order placed, then the job's own boards, then whole sheets."""
    assemblies = [_assembly(view, path) for path in view.scene.instances if path and view.boards_in[path]]
    own = [_lifted(view, path, "board", path, (path,)) for path, boards in view.units.items() if boards == (path,)]
    own = [one for one in own if one.path not in view.scene.instances]
    return (*assemblies, *own, *(_sheet(view, stock) for stock in stocks if stock.kind == "sheet"))


def _assembly(view: View, path: str) -> Lifted:
    title = view.scene.instances[path].title
    return _lifted(view, path, "assembly", title, view.boards_in[path])


def _lifted(view: View, path: str, kind: str, title: str, boards: Iterable[str]) -> Lifted:
    boards = tuple(boards)
    outline = view.outline(boards)
    stocks = {view.joined.boards[b].board.stock for b in boards}
    unknown = tuple(sorted(stock.name for stock in stocks if stock.density is None))
    return _judged(view, path, kind, title, outline, view.total(boards), unknown)


def _sheet(view: View, stock: Stock) -> Lifted:
    assert stock.long is not None
    box = Box((Fraction(0),) * 3, (stock.long, stock.short, stock.thick))
    heavy = Fraction(weight(box.volume, stock.density)) if stock.density is not None else None
    return _judged(view, stock.name, "sheet", stock.title, box, heavy, () if stock.density else (stock.name,))


def _judged(
    view: View, path: str, kind: str, title: str, box: Box, heavy: Fraction | None, unknown: tuple[str, ...]
) -> Lifted:
    best = None if kind == "sheet" else _recommended(view, box)
    alone = _sheet_alone(view, box, heavy) if best is None else _alone(view, best, heavy)
    return Lifted(path, kind, title, box.sizes, heavy, unknown, view.practice.value("lift_alone"), best, alone)


def _recommended(view: View, box: Box) -> Fraction:
    near = min(box.size(Axis.WIDE), box.size(Axis.DEEP))
    return one_person_limit(near, Fraction(0), max(box.lo[Axis.HIGH] - view.floor, Fraction(0)))


def _alone(view: View, best: Fraction, heavy: Fraction | None) -> bool | None:
    """Beyond the equation's reach (best 0) and for clumsy lifts, what is light is lifted alone all the same."""
    value = view.practice.value
    return None if heavy is None else heavy <= min(value("lift_alone"), max(best, value("lift_light")))


def _sheet_alone(view: View, box: Box, heavy: Fraction | None) -> bool | None:
    """A long sheet takes two whatever it weighs: nobody reaches round it."""
    if max(box.sizes) > view.practice.value("sheet_alone"):
        return False
    return None if heavy is None else heavy <= view.practice.value("lift_alone")
