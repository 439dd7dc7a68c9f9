"""What is bought: sheets and sticks, and hardware."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import TYPE_CHECKING

from setout.read import model as r
from setout.resolve import problems
from setout.resolve.bought import edging_of, load_of, on_hand_of, serves_of
from setout.resolve.holding import numbers_of
from setout.resolve.model import Hardware, Stock
from setout.resolve.sized import sized
from setout.resolve.sliding import hinge_of, slide_of
from setout.resolve.wood import with_wood
from setout.source import Span

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts

# The largest that any yard sells, with room to spare, in inches: common practice, no source.
_SHEET = {"length": Fraction(600), "width": Fraction(240), "thickness": Fraction(6)}
_STICK = {"width": Fraction(36), "thickness": Fraction(24), "length": Fraction(800)}
_MOST_MONEY = Fraction(10**7)
_MOST_IN_PACK = 100_000


def stock_made(stock: r.StockStatement, amounts: Amounts) -> Stock | None:
    """A stock with its sizes worked out. None once the reason has been reported."""
    clauses = _by_key(stock.clauses)
    bodies = [c for c in (clauses.get("sheet"), clauses.get("stick")) if c is not None]
    if len(bodies) != 1:
        amounts.ctx.say(problems.sheet_or_stick(stock, [b.span for b in bodies]))
        return None
    made = (_sheet if bodies[0].key == "sheet" else _stick)(stock, bodies[0], clauses, amounts)
    made = with_wood(made, stock, amounts) if made is not None else None
    return None if amounts.ctx.spoiled else made


def hardware_made(hardware: r.HardwareStatement, amounts: Amounts) -> Hardware | None:
    clauses = _by_key(hardware.clauses)
    priced = clauses.get("price")
    price = _money(priced.values[0], amounts) if priced is not None else None
    if priced is not None and len(priced.values) > 1:
        amounts.ctx.say(problems.price_each_sheet(priced.values[1].span, "hardware"))
    raises = sized(clauses.get("raises"), 0, hardware.name.text, "raises", Fraction(48), amounts, least=None)
    made = Hardware(
        hardware.name.text,
        hardware.title.value if hardware.title else hardware.name.text,
        price,
        _pack(clauses.get("pack") or clauses.get("pack_box"), amounts),
        _hole(clauses.get("hole"), hardware.name.text, amounts),
        raises or Fraction(0),
        hardware.span,
        slide=slide_of(hardware, clauses, amounts),
        hinge=hinge_of(hardware, clauses, amounts),
        boxed="pack_box" in clauses,
        on_hand=on_hand_of(clauses, amounts),
        edging=edging_of(clauses, hardware.name.text, amounts),
        load=load_of(clauses, amounts),
        serves=serves_of(clauses, hardware.name.text, amounts),
    )
    return None if amounts.ctx.spoiled else made


def _by_key(clauses: Iterable[r.StockClause]) -> dict[str, r.StockClause]:
    """The first clause of each kind (`read` has reported others); `grain along` and `grain none` are one."""
    seen: dict[str, r.StockClause] = {}
    for clause in clauses:
        seen.setdefault("grain" if clause.key.startswith("grain") else clause.key, clause)
    return seen


def _sheet(
    stock: r.StockStatement, sheet: r.StockClause, clauses: dict[str, r.StockClause], amounts: Amounts
) -> Stock | None:
    sizes = _sizes(stock, sheet, list(_SHEET), _SHEET, amounts)
    if sizes is None:
        return None
    a, b, thick = sizes
    long, short = max(a, b), min(a, b)
    if thick >= short:
        amounts.ctx.say(problems.thicker_than_wide(stock, sheet.span))
    grain = _grain(stock, clauses.get("grain"), long, short, amounts)
    prices = _sheet_prices(stock, amounts)
    held = [numbers_of(stock, key, (), amounts) for key in ("on_hand", "at_most")]
    return Stock(stock.name.text, _title(stock), "sheet", long, short, thick, grain, (), prices, stock.span, *held)


def _stick(
    stock: r.StockStatement, stick: r.StockClause, clauses: dict[str, r.StockClause], amounts: Amounts
) -> Stock | None:
    what = ["width", "thickness", *["length"] * (len(stick.values) - 2)]
    sizes = _sizes(stock, stick, what, _STICK, amounts)
    if sizes is None:
        return None
    a, b, *lengths = sizes
    if "grain" in clauses:
        amounts.ctx.say(problems.grain_of_stick_stock(clauses["grain"].span))
    on_sale = tuple(sorted(set(lengths)))
    prices = _stick_prices(stock, on_sale, amounts)
    width, thick = max(a, b), min(a, b)
    held = [numbers_of(stock, key, on_sale, amounts) for key in ("on_hand", "at_most")]
    return Stock(
        stock.name.text, _title(stock), "stick", None, width, thick, "long", on_sale, prices, stock.span, *held
    )  # type: ignore[arg-type]


def _sizes(
    stock: r.StockStatement, clause: r.StockClause, what: list[str], most: dict[str, Fraction], amounts: Amounts
) -> list[Fraction] | None:
    """All the sizes, or None at the first that can't be: a wrong unit is one mistake and not three."""
    sizes = []
    for i, word in enumerate(what):
        size = sized(clause, i, stock.name.text, word, most[word], amounts)
        if size is None:
            return None
        sizes.append(size)
    return sizes


def _title(stock: r.StockStatement) -> str:
    return stock.title.value if stock.title else stock.name.text


def _grain(
    stock: r.StockStatement, clause: r.StockClause | None, long: Fraction, short: Fraction, amounts: Amounts
) -> str | None:
    if clause is None or clause.key == "grain_none":
        return None
    along = amounts.length(clause.values[0], f"`{stock.name.text}`")
    if along is not None and along not in (long, short):
        amounts.ctx.say(problems.grain_along_neither(stock, clause, along, long, short, amounts.ctx.world.style))
    return "long" if along == long else "short"


def _money(expr: r.Expr, amounts: Amounts) -> Fraction | None:
    price = amounts.plain(expr, "a price")
    if price is not None and not 0 <= price <= _MOST_MONEY:
        amounts.ctx.say(problems.odd_price(expr.span))
        return None
    return price


def _sheet_prices(stock: r.StockStatement, amounts: Amounts) -> tuple[tuple[Fraction | None, Fraction], ...]:
    clauses = [c for c in stock.clauses if c.key == "price"]
    for clause in clauses:
        if len(clause.values) > 1:
            amounts.ctx.say(problems.price_each_sheet(clause.values[1].span, "a sheet"))
    if len(clauses) > 1:
        amounts.ctx.say(problems.said_twice("price", clauses[1].span, clauses[0].span))
    price = _money(clauses[0].values[0], amounts) if clauses else None
    return ((None, price),) if price is not None else ()


def _stick_prices(
    stock: r.StockStatement, on_sale: tuple[Fraction, ...], amounts: Amounts
) -> tuple[tuple[Fraction | None, Fraction], ...]:
    prices: dict[Fraction | None, Fraction] = {}
    spans: dict[Fraction | None, Span] = {}
    for clause in (c for c in stock.clauses if c.key == "price"):
        price = _money(clause.values[0], amounts)
        each = amounts.length(clause.values[1], "a price") if len(clause.values) > 1 else None
        if len(clause.values) == 1 and len(on_sale) == 1:
            each = on_sale[0]
        if len(clause.values) > 1 and each is not None and each not in on_sale:
            amounts.ctx.say(problems.price_of_no_length(stock, clause.values[1].span, on_sale, amounts.ctx.world.style))
        elif each in spans:
            amounts.ctx.say(problems.said_twice("price", clause.span, spans[each]))
        elif price is not None:
            prices[each] = price
            spans[each] = clause.span
    return tuple(prices.items())


def _pack(clause: r.StockClause | None, amounts: Amounts) -> int:
    if clause is None:
        return 1
    pack = amounts.plain(clause.values[0], "a pack")
    if pack is None:
        return 1
    if pack.denominator != 1 or not 1 <= pack <= _MOST_IN_PACK:
        amounts.ctx.say(problems.odd_pack(clause.values[0].span))
        return 1
    return int(pack)


def _hole(clause: r.StockClause | None, name: str, amounts: Amounts) -> tuple[Fraction, Fraction | None] | None:
    if clause is None:
        return None
    diameter = sized(clause, 0, name, "hole", Fraction(12), amounts)
    depth = sized(clause, 1, name, "hole depth", Fraction(24), amounts)
    return (diameter, depth) if diameter is not None else None
