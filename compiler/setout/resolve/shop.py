"""The shop: the spec's saws, or those of the usual shop; and whether they leave anything of a board."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from setout.practice import Practice
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.constants import Amounts
from setout.resolve.context import Context
from setout.resolve.model import RackBoard, Saw, Stock
from setout.resolve.stocks import sized
from setout.source import Span

_MOST_KERF = Fraction(1)
_MOST_STICK = Fraction(36)
_MOST = Fraction(600)  # inches; larger than any sheet


def saws_made(saws: Iterable[r.SawStatement], amounts: Amounts) -> tuple[Saw, ...]:
    """The spec's own saws in the order written, without those whose mistake has been reported."""
    made = []
    for saw in saws:
        amounts.ctx.begin()
        one = _saw(saw, amounts)
        if not amounts.ctx.spoiled:
            made.append(one)
    return tuple(made)


def usual_saws(practice: Practice, file: str) -> tuple[Saw, ...]:
    """The saws of the usual shop, by the practice table; `file` is the spec's own."""
    value, nowhere = practice.value, Span(file, 0, 0)
    kerf, reach, across = value("saw_kerf"), value("rail_saw_reach"), value("mitre_saw_width")
    largest = value("table_saw_length"), value("table_saw_width")
    rips, crosscuts = value("table_saw_rips"), value("table_saw_crosscuts")
    return (
        Saw("rail_saw", "guide-rail saw", kerf, reach, reach, None, True, None, nowhere),
        Saw("table_saw", "table saw", kerf, rips, crosscuts, (max(largest), min(largest)), False, None, nowhere),
        Saw("mitre_saw", "mitre saw", kerf, None, across, None, False, across, nowhere),
    )


def check_rows(statements: Iterable[r.PracticeStatement], practice: Practice, ctx: Context) -> None:
    """A spec may set the kerf of the usual shop's saws, but to no more than a kerf."""
    kerf = practice.value("saw_kerf")
    rows = [(name, expr) for s in statements for name, expr in s.rows if name.text == "saw_kerf"]
    if rows and kerf > _MOST_KERF:
        name, expr = rows[0]
        ctx.say(problems.absurd_size(name.text, "width", kerf, _MOST_KERF, expr.span, ctx.world.style))


def check_left(
    saws: Sequence[Saw], stocks: Mapping[str, Stock], rack: Sequence[RackBoard], practice: Practice, ctx: Context
) -> None:
    """Reports the stocks and offcuts of which a cut, or trimming the edges, leaves nothing."""
    finest = min(saws, key=lambda saw: saw.kerf, default=None)
    trim, style = practice.value("edge_trim"), ctx.world.style
    for stock in stocks.values():
        narrow = stock.short if stock.kind == "sheet" else min(stock.lengths)
        at = ctx.world.top.definitions[stock.name].span
        if finest is not None and finest.kerf >= narrow:
            ctx.say(problems.nothing_left(stock.name, narrow, finest, at, style))
        elif stock.kind == "sheet" and 2 * trim >= narrow:
            ctx.say(problems.trimmed_away(stock.name, narrow, trim, at, style))
    for board in rack if finest is not None else ():
        narrow = board.length if board.width is None else board.width
        if finest.kerf >= narrow:  # type: ignore[union-attr]
            ctx.say(problems.nothing_left(board.stock, narrow, finest, board.span, style))  # type: ignore[arg-type]


def _saw(saw: r.SawStatement, amounts: Amounts) -> Saw:
    clauses = {clause.key: clause for clause in saw.clauses}
    name = saw.name.text

    def size(key: str, what: str, most: Fraction = _MOST, i: int = 0) -> Fraction | None:
        return sized(clauses.get(key), i, name, what, most, amounts)

    kerf = sized(clauses.get("kerf"), 0, name, "kerf", _MOST_KERF, amounts, least=None)  # a knife has none
    if "kerf" not in clauses:
        amounts.ctx.say(problems.kerf_wanted(saw))
    if not clauses.keys() & {"rips", "crosscuts", "breaks", "sticks"}:
        amounts.ctx.say(problems.saw_for_nothing(saw))
    long, wide = size("takes", "largest board"), size("takes", "largest board", i=1)
    return Saw(
        name,
        saw.title.value if saw.title else name.replace("_", " "),
        kerf or Fraction(0),
        size("rips", "widest rip"),
        size("crosscuts", "widest crosscut"),
        (max(long, wide), min(long, wide)) if long is not None and wide is not None else None,
        "breaks" in clauses,
        size("sticks", "widest stick", _MOST_STICK),
        saw.span,
    )
