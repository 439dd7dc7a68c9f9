"""Pieces to the cutting plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from setout.diagnostics import Checked, Diagnostic
from setout.piece.model import Pieces
from setout.plan.cutting import problems
from setout.plan.cutting.checks import larger_than_usable, too_large
from setout.plan.cutting.model import Cutting, SourcePlan, StockPlan
from setout.plan.cutting.polish import USUAL, Taste
from setout.plan.cutting.result import Planned
from setout.plan.cutting.saws import able
from setout.plan.cutting.search import Budget, Progress
from setout.plan.cutting.sequence import Limits, Worked, worked
from setout.plan.cutting.sheets import Sheets, Shop
from setout.plan.cutting.sources import planned_kerf, supplies
from setout.plan.cutting.spending import spend
from setout.plan.cutting.sticks import Sticks
from setout.plan.cutting.unsawn import no_saw_for
from setout.plan.cutting.wanted import Demand, demands, wants
from setout.resolve.model import Project, RackBoard, Stock
from setout.units import Style

DEFAULT: Budget | None = None  # the usual amount of work, by the size of the job
FIRST, EACH, MOST = 16_000, 2_000, 2_400_000  # work for the job, for each of its boards, and at the most


@dataclass(frozen=True)
class Told:
    """How far the planning has come: the stock at hand, what its plan costs against the bound as the search counts
    it."""

    stock: str
    title: str
    progress: Progress


def cutting(
    pieces: Pieces,
    budget: Budget | None = DEFAULT,
    progress: Callable[[Told], None] | None = None,
    stop: Callable[[], bool] | None = None,
    taste: Taste | None = USUAL,
) -> Checked[Cutting]:
    """Lay every board on what is on hand and what can be bought, and order the cuts. The budget is shared out among the
    stocks by their boards; `stop` is asked now and then, and when it says True the best so far is taken. Without a
    `taste` only money counts."""
    project = pieces.joined.placed.project
    budget = budget or usual(pieces)
    work = [_planning(project, demand, progress) for demand in demands(pieces)]
    called_off = _Listening(stop or budget.stop)
    spend(work, replace(budget, stop=called_off), taste)
    planned = [one.planned() for one in work]
    done = worked([laying for one in planned for laying in one.layings], plainly=taste is None)
    stocks = tuple(_stock_plans(planned, done))
    found = Cutting(stocks, done.settings, _left(stocks), not called_off.heard, _untouched(project, stocks))
    return Checked(found, (*larger_than_usable(pieces), *_short(pieces, planned), *no_saw_for(project, done.failed)))


def usual(pieces: Pieces) -> Budget:
    """Work counted, not time, so that two machines agree."""
    boards = sum(piece.count for piece in pieces.pieces)
    return Budget(work=min(FIRST + EACH * boards, MOST))


class _Listening:
    """Asks `stop`, and remembers that it said True."""

    def __init__(self, stop: Callable[[], bool] | None):
        self.stop = stop
        self.heard = False

    def __call__(self) -> bool:
        self.heard = self.heard or (self.stop is not None and self.stop())
        return self.heard


def _planning(project: Project, demand: Demand, progress: Callable[[Told], None] | None) -> Sheets | Sticks:
    stock = demand.stock
    value = project.practice.value
    keep = value("keep_length"), value("keep_width")
    shop = Shop(_limits(project, stock), keep, progress and (lambda one: progress(Told(stock.name, stock.title, one))))
    kind = Sheets if stock.kind == "sheet" else Sticks
    return kind(stock, wants(demand, shop.limits.kerf), supplies(project, stock), shop)


def _limits(project: Project, stock: Stock) -> Limits:
    value = project.practice.value
    saws, kerf = able(project.saws, stock), planned_kerf(project.saws, stock)
    if stock.kind == "stick":
        least = value("keep_stick")
        return Limits(saws, kerf, lambda dx, dy: False, lambda dx, dy: dx >= least and dy == stock.short)
    lift = value("lift_alone") / (value("board_weight") * stock.thick) * 144  # square inches
    long, short = value("keep_length"), value("keep_width")
    return Limits(
        saws, kerf, lambda dx, dy: dx * dy > lift, lambda dx, dy: max(dx, dy) >= long and min(dx, dy) >= short
    )


def _stock_plans(planned: Sequence[Planned], done: Worked) -> list[StockPlan]:
    plans = iter(done.plans)
    return [_stock_plan(one, [next(plans) for _ in one.layings]) for one in planned]


def _stock_plan(one: Planned, plans: Sequence[SourcePlan]) -> StockPlan:
    prices = [plan.source.price for plan in plans]
    cost = None if any(price is None for price in prices) else sum((p or Fraction(0) for p in prices), Fraction(0))
    whole = sum((plan.source.length * plan.source.width for plan in plans), Fraction(0))
    boards = sum((laid.length * laid.width for plan in plans for laid in plan.laid), Fraction(0))
    share = boards / whole if whole else Fraction(0)
    yielded = (Decimal(share.numerator) / Decimal(share.denominator)).quantize(Decimal("0.0001"))
    return StockPlan(
        one.stock, tuple(plans), one.bound, one.bound_cost, one.missing, cost, yielded, one.kerf, one.trim, one.proven
    )


def _left(stocks: Sequence[StockPlan]) -> tuple[tuple[str, Fraction, Fraction, str | None], ...]:
    """What is worth keeping, the longer side first, the largest of each stock first."""
    found = []
    for plan in stocks:
        own = [_as_board(source, left) for source in plan.sources for left in source.leftovers if left.keep]
        found += sorted(own, key=lambda board: (-board[1] * board[2], -board[1]))
    return tuple(found)


def _as_board(plan: SourcePlan, left) -> tuple[str, Fraction, Fraction, str | None]:
    stock, grain = plan.source.stock, plan.source.grain
    if stock.kind == "stick" or left.length >= left.width:
        return stock.name, left.length, left.width, grain
    return stock.name, left.width, left.length, grain and {"length": "width", "width": "length"}[grain]


def _untouched(project: Project, stocks: Sequence[StockPlan]) -> tuple[tuple[str, Fraction, Fraction, str | None], ...]:
    used = Counter(
        (p.stock.name, s.source.length, s.source.width, s.source.grain)
        for p in stocks for s in p.sources if s.source.kind == "offcut"
    )  # fmt: skip
    left = []
    for board in project.rack:
        key = (board.stock, board.length, _width(project, board), board.grain)
        gone = min(used[key], board.count)
        used[key] -= gone
        left += [key] * (board.count - gone)
    return tuple(left)


def _width(project: Project, board: RackBoard) -> Fraction:
    return project.stocks[board.stock].short if board.width is None else board.width


def _short(pieces: Pieces, planned: Sequence[Planned]) -> list[Diagnostic]:
    project = pieces.joined.placed.project
    style, unfit, found = Style(project.metric, project.mark), too_large(pieces), []
    for one in planned:
        absent = tuple((mark, count) for mark, count in one.missing if mark not in unfit)
        if absent:
            found.append(problems.stock_is_short(style, one.stock, absent, len(one.layings), one.more))
    return found
