"""What has no place is worked out here, in whatever order it is written: lets, stocks, measures and the room."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from setout.read import model as r
from setout.resolve import problems
from setout.resolve.boxes import room_furnished
from setout.resolve.context import Context
from setout.resolve.evaluate import Unworkable, evaluate
from setout.resolve.expressions import bound
from setout.resolve.model import (
    BoundExpr,
    FaceRef,
    LetRef,
    Lit,
    MeasureDef,
    MeasureRef,
    Op,
    Room,
    SizeRef,
    Stock,
    StockRef,
)
from setout.resolve.rooms import room_made
from setout.resolve.scopes import Named
from setout.resolve.sequence import Key, Node, in_order, needs_of
from setout.resolve.settings import Given
from setout.resolve.stocks import stock_made
from setout.source import Span
from setout.values import Mismatch, Trace, Value, count, length, plain

_FIELDS = {"thick": "thickness", "long": "length", "wide": "width"}


class Spoiled(Exception):
    """It hangs on a constant whose mistake has been reported."""


@dataclass
class Constants:
    """`lets` in an order in which each stands behind those it hangs on. What is missing was wrong, and reported."""

    lets: dict[str, BoundExpr] = field(default_factory=dict)
    values: dict[str, Value] = field(default_factory=dict)
    stocks: dict[str, Stock] = field(default_factory=dict)
    measures: dict[str, MeasureDef] = field(default_factory=dict)
    room: Room | None = None


@dataclass
class Amounts:
    """Works out a constant's clauses. A let may hang on a measure, everything else may not."""

    ctx: Context
    constants: Constants
    spoiled = Spoiled

    def bound(self, expr: r.Expr) -> BoundExpr | None:
        return bound(expr, self.ctx)

    def value(self, made: BoundExpr) -> Value | None:
        """The worth of a bound constant, or None once the reason has been reported."""
        try:
            return evaluate(made, self.lookup)
        except Spoiled:
            self.ctx.spoil()
        except Unworkable as stuck:
            self.ctx.say(problems.unworkable(stuck.mismatch, self.ctx.world.style))
        return None

    def length(self, expr: r.Expr | None, what: str) -> Fraction | None:
        """The length in inches that the spec gives for `what`."""
        return self._amount(expr, what, length)

    def plain(self, expr: r.Expr | None, what: str) -> Fraction | None:
        return self._amount(expr, what, plain)

    def count(self, expr: r.Expr | None, what: str) -> int | None:
        amount = self._amount(expr, what, count)
        return int(amount) if amount is not None else None

    def from_left(self, expr: r.Expr, what: str) -> Fraction | None:
        """A position that counts from the room's left wall: `left` is 0 there."""
        self.ctx.constant = False
        try:
            made = self.bound(expr)
        finally:
            self.ctx.constant = True
        if made is None:
            return None
        if any(key == "placed" for key, _ in needs_of([made])):
            self.ctx.say(problems.studs_from_elsewhere(expr.span))
            return None
        return self._worth(made, what, length, expr.span)

    def _amount(
        self, expr: r.Expr | None, what: str, taken: Callable[[Value, Span], Value | Mismatch]
    ) -> Fraction | None:
        made = self.bound(expr) if expr is not None else None
        return self._worth(made, what, taken, expr.span) if made is not None else None  # type: ignore[union-attr]

    def _worth(
        self, made: BoundExpr, what: str, taken: Callable[[Value, Span], Value | Mismatch], span: Span
    ) -> Fraction | None:
        value = self.value(made)
        if value is None:
            return None
        if value.held:
            self.ctx.say(problems.constant_held(what, sorted(value.held), span))
            return None
        wanted = taken(value, span)
        if isinstance(wanted, Mismatch):
            self.ctx.say(problems.unworkable(wanted, self.ctx.world.style))
            return None
        return wanted.amount

    def lookup(self, leaf: BoundExpr) -> Value:
        if isinstance(leaf, LetRef) and leaf.name in self.constants.values:
            return self.constants.values[leaf.name]
        if isinstance(leaf, MeasureRef) and leaf.name in self.constants.measures:
            return measure_value(self.constants.measures[leaf.name])
        if isinstance(leaf, StockRef) and leaf.stock in self.constants.stocks:
            return self._of_stock(leaf, self.constants.stocks[leaf.stock])
        if isinstance(leaf, SizeRef) and self.constants.room is not None:
            return _given(self.constants.room.sizes[leaf.axis], "size of the room")
        if isinstance(leaf, FaceRef):
            return Value(Fraction(0), 1, None, Trace("rule", "the left wall", Fraction(0), 1))
        raise Spoiled

    def _of_stock(self, leaf: StockRef, stock: Stock) -> Value:
        amount = stock_size(stock, leaf.field)
        if amount is None:
            self.ctx.say(problems.no_one_length(leaf.span, stock.name))
            raise Spoiled
        return _given(amount, f"{_FIELDS[leaf.field]} of {stock.name}")


def stock_size(stock: Stock, field: str) -> Fraction | None:
    """Its thick, wide or long; None for the length of a stick, which comes in several."""
    return {"thick": stock.thick, "wide": stock.short, "long": stock.long}[field]


def measure_value(measure: MeasureDef) -> Value:
    """As taken; else its low end, held."""
    if measure.taken is not None:
        return _given(measure.taken, f"{measure.name} as measured")
    return Value(measure.low, 1, None, Trace("rule", "least expected", measure.low, 1), frozenset((measure.name,)))


def _given(amount: Fraction, rule: str) -> Value:
    return Value(amount, 1, None, Trace("rule", rule, amount, 1))


def constants_of(ctx: Context, room: r.RoomStatement | None, given: Mapping[str, Given]) -> Constants:
    """All constants of the top level. `given`: values from outside, by name, that stand instead of the spec's."""
    ctx.constant = True
    made = Constants()
    amounts = Amounts(ctx, made)
    nodes = _nodes(ctx, room, given)
    for key in in_order(nodes, ctx):
        _work_out(key, nodes, amounts, given)
    if room is not None and made.room is not None:
        ctx.begin()
        made.room = room_furnished(made.room, room, amounts)
    ctx.constant = False
    made.lets = {name: _with_room(expr, made.room) for name, expr in made.lets.items()}
    ctx.world.broken_lets.update(n.name for n in ctx.world.top.definitions.values() if _is_broken(n, made))
    return made


def _is_broken(named: Named, made: Constants) -> bool:
    return (named.kind == "let" and named.name not in made.values) or (
        named.kind == "measure" and named.name not in made.measures
    )


def _nodes(ctx: Context, room: r.RoomStatement | None, given: Mapping[str, Given]) -> dict[Key, Node]:
    nodes: dict[Key, Node] = {}
    for named in ctx.world.top.definitions.values():
        if named.kind == "let":
            ctx.begin()
            expr = given[named.name].expr if named.name in given else bound(named.statement.value, ctx)
            nodes["let", named.name] = Node(named.statement, expr, needs_of([expr]), expr is None)
        elif named.kind in ("stock", "measure"):
            nodes[named.kind, named.name] = _node(named.statement, _written(named.statement), ctx)
    if room is not None:
        nodes["room", ""] = _node(room, _written(room), ctx)
    return nodes


def _node(statement: object, exprs: list[r.Expr], ctx: Context) -> Node:
    """What the statement hangs on. It is bound again when it is worked out: this binding's reports don't count."""
    said = len(ctx.found.diagnostics)
    needs = needs_of([bound(e, ctx) for e in exprs])
    del ctx.found.diagnostics[said:]
    return Node(statement, None, needs, False)


def _written(statement: object) -> list[r.Expr]:
    if isinstance(statement, r.StockStatement):
        return [e for clause in statement.clauses for e in clause.values]
    if isinstance(statement, r.MeasureStatement):
        return [statement.low, statement.high]
    assert isinstance(statement, r.RoomStatement)
    return [e for _, e in statement.size]


def _work_out(key: Key, nodes: dict[Key, Node], amounts: Amounts, given: Mapping[str, Given]) -> None:
    node, made, ctx = nodes[key], amounts.constants, amounts.ctx
    ctx.begin()
    if node.spoiled:
        return
    kind, name = key
    if kind == "let":
        assert node.expr is not None
        value = amounts.value(node.expr)
        if value is not None:
            made.lets[name], made.values[name] = node.expr, value
    elif kind == "stock":
        stock = stock_made(node.statement, amounts)  # type: ignore[arg-type]
        if stock is not None:
            made.stocks[name] = stock
    elif kind == "measure":
        measure = _measure_made(node.statement, amounts, given.get(name))  # type: ignore[arg-type]
        if measure is not None:
            made.measures[name] = measure
    else:
        made.room = room_made(node.statement, amounts)  # type: ignore[arg-type]


def _measure_made(measure: r.MeasureStatement, amounts: Amounts, given: Given | None) -> MeasureDef | None:
    name = measure.name.text
    low = amounts.length(measure.low, f"the range of `{name}`")
    high = amounts.length(measure.high, f"the range of `{name}`")
    if low is None or high is None:
        return None
    ctx = amounts.ctx
    if low >= high:
        ctx.say(problems.range_upside_down(measure, low, high, ctx.world.style))
        return None
    taken = amounts.value(given.expr) if given is not None else None
    wanted = length(taken, given.span) if taken is not None and given is not None else None
    if isinstance(wanted, Mismatch):
        ctx.say(problems.unworkable(wanted, ctx.world.style))
        wanted = None
    if wanted is not None and not low <= wanted.amount <= high:
        ctx.say(problems.out_of_range(measure, wanted.amount, low, high, given.span, ctx.world.style))  # type: ignore[union-attr]
    return MeasureDef(name, measure.title.value, low, high, wanted.amount if wanted is not None else None, measure.span)


def _with_room(expr: BoundExpr, room: Room | None) -> BoundExpr:
    """The room's sizes written out as the lengths they are."""
    if isinstance(expr, Op):
        return Op(expr.op, tuple(_with_room(arg, room) for arg in expr.args), expr.span)
    if isinstance(expr, SizeRef) and room is not None:
        return Lit(room.sizes[expr.axis], 1, None, f"room.{expr.axis.word}", expr.span)
    return expr
