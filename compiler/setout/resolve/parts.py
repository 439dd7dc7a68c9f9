"""Parts: how each lies, where it stands, and what its clauses may not say together."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Face
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.banding import bands_bound, load_bound, metric_file
from setout.resolve.clauses import check_agreement, length, positions_bound, repeat_def, spans_bound
from setout.resolve.context import Context
from setout.resolve.features import feature_def
from setout.resolve.model import BoundExpr, PartDef, SpanDef
from setout.resolve.paths import axis_of, face_of, is_loose
from setout.resolve.scopes import Named
from setout.resolve.wood import LB_PER_FT2
from setout.source import Span

BROAD = {"upright": Axis.WIDE, "level": Axis.HIGH, "facing": Axis.DEEP}
RUN = {"across": Axis.WIDE, "up": Axis.HIGH, "through": Axis.DEEP}


@dataclass(frozen=True)
class Lie:
    """How a part lies. kind "sheet" or "stick" as the orientation has it, "loose", or "" where it can't be told."""

    kind: str
    run: Axis | None = None
    thick: Axis | None = None


def part_def(part: r.PartStatement, when: tuple[BoundExpr, ...], ctx: Context) -> PartDef | None:
    """A part bound. None once the reason has been reported."""
    mirror = _mirror(part, ctx) if part.mirrors is not None else None
    stock = stock_name(part.of, ctx) if part.of is not None else None
    lie = _lie(part, ctx)
    _check_lie(part, lie, stock, ctx)
    if lie.kind == "loose":
        return _loose(part, stock, when, ctx)
    spans = spans_bound(part.spans, ctx)
    repeat = repeat_def(part.repeat, lie.thick if lie.run is None else None, ctx) if part.repeat is not None else None
    positions = positions_bound(part.positions, spans, _open_axes(lie, spans), repeat.axis if repeat else None, ctx)
    check_agreement(_free_spans(part, lie, spans, ctx), positions, repeat, ctx)
    _check_faces(part, lie, ctx)
    if part.count is not None:
        ctx.say(problems.count_of_placed(part.count.span, part.name.text))
    features = [feature_def(feature, lie.run, lie.thick, ctx) for feature in part.features]
    own = part.mirrors is None
    return PartDef(
        name=part.name.text,
        stock=stock,
        mirror=mirror,
        run=lie.run if own else None,
        thick=lie.thick if own else None,
        spans=spans,
        positions=positions,
        repeat=repeat,
        grain=_grain(part, lie, ctx),
        show=face_of(part.show.text) if part.show is not None else None,
        proud=frozenset(f for name in part.proud if (f := face_of(name.text)) is not None),
        rip=length(part.rip, ctx) if part.rip is not None else None,
        loose=(),
        count=None,
        features=tuple(f for f in features if f is not None),
        when=when,
        span=part.span,
        head=part.head,
        sequence=_sequence(part, lie, ctx),
        bands=bands_bound(part, lie.thick if lie.run is None else None, ctx),
        load=load_bound(part, ctx),
        load_unit=LB_PER_FT2 if part.load is not None and metric_file(part.load.span.file, ctx) else Fraction(1),
    )


def stock_name(path: r.Path, ctx: Context) -> str | None:
    """The name of a stock, or of a parameter that holds one."""
    named = ctx.scope.definition(path.text)
    if named is not None and named.kind == "stock":
        if named.name not in ctx.stocks:
            ctx.spoil()
        return named.name
    if named is not None and named.kind == "parameter" and ctx.world.holds_stock(ctx.scope.owner, named.name):
        return named.name
    known = ctx.scope.own(path.parts[0]) or named
    if ctx.scope.is_spoiled(path.parts[0]):
        ctx.spoil()
    elif known is not None:
        ctx.say(problems.not_a_stock(path, known.kind, ctx.named("stock")))
    else:
        ctx.say_unknown(problems.unknown_stock(path, ctx.named("stock")))
    return None


def lie_of(part: r.PartStatement, ctx: Context) -> Lie:
    """As its orientation says; a mirror lies as what it mirrors does."""
    if part.mirrors is not None:
        original = ctx.scope.things.get(part.mirrors.text)
        if original is None or original.kind != "part" or original.statement.mirrors is not None:
            return Lie("")
        return lie_of(original.statement, ctx)
    if part.loose_size:
        return Lie("loose")
    words = [name.text for name in part.orient]
    if len(words) == 1 and words[0] in BROAD:
        return Lie("sheet", None, BROAD[words[0]])
    if len(words) == 2:
        return Lie("stick", RUN[words[0]], BROAD[words[1]])
    return Lie("")


def _lie(part: r.PartStatement, ctx: Context) -> Lie:
    lie = lie_of(part, ctx)
    if lie.kind == "" and part.mirrors is None:
        ctx.say(problems.orientation_wanted(part, _stock_kind(part, ctx)))
    if lie.run is not None and lie.run == lie.thick and part.mirrors is None:
        ctx.say(problems.run_is_broad(part, lie.run))
    return lie


def _stock_kind(part: r.PartStatement, ctx: Context) -> str:
    """ "sheet", "stick", or "" when it hangs on a parameter or a mistake."""
    stock = ctx.stocks.get(part.of.text) if part.of is not None else None
    return stock.kind if stock is not None else ""


def _check_lie(part: r.PartStatement, lie: Lie, stock: str | None, ctx: Context) -> None:
    kind = _stock_kind(part, ctx)
    if kind and lie.kind in ("sheet", "stick") and lie.kind != kind and part.mirrors is None:
        ctx.say(problems.wrong_orientation(part, ctx.stocks[part.of.text]))  # type: ignore[union-attr]
    if part.rip is not None and "sheet" in (kind, lie.kind):
        ctx.say(problems.rip_of_sheet(part))


def _open_axes(lie: Lie, spans: tuple[SpanDef, ...]) -> tuple[Axis, ...]:
    """The axes along which only a position can say where it stands: its thickness, and where a bare length is given."""
    if lie.run is not None:
        fixed = tuple(a for a in Axis if a != lie.run)
    else:
        fixed = (lie.thick,) if lie.thick is not None else ()
    return fixed + tuple(s.axis for s in spans if s.kind == "size" and s.axis not in fixed)


def _free_spans(part: r.PartStatement, lie: Lie, spans: tuple[SpanDef, ...], ctx: Context) -> list[SpanDef]:
    """The spans along axes that the stock leaves open; the others are reported."""
    free = []
    for span in spans:
        if span.axis == lie.thick:
            ctx.say(problems.thickness_spanned(part, span.axis, span.span))
        elif lie.run is not None and span.axis != lie.run:
            ctx.say(problems.stick_width_spanned(part, span.axis, span.span))
        else:
            free.append(span)
    return free


def _check_faces(part: r.PartStatement, lie: Lie, ctx: Context) -> None:
    show = face_of(part.show.text) if part.show is not None else None
    if show is None or lie.thick is None:
        return
    if lie.kind == "sheet" and show.axis != lie.thick:
        broad = (Face(lie.thick, -1), Face(lie.thick, 1))
        ctx.say(problems.show_on_edge(part.show, part.name.text, broad))  # type: ignore[arg-type]
    elif lie.run is not None and show.axis == lie.run:
        ctx.say(problems.show_on_end(part.show, part.name.text))  # type: ignore[arg-type]


def _grain(part: r.PartStatement, lie: Lie, ctx: Context) -> Axis | str | None:
    if part.grain is None:
        return None
    axis = axis_of(part.grain.text)
    if axis is None:
        return "any"
    if lie.kind == "sheet" and axis == lie.thick:
        ctx.say(problems.grain_through(part.grain, part.name.text, [a for a in Axis if a != axis]))
    elif lie.run is not None and axis != lie.run:
        ctx.say(problems.grain_of_stick(part.grain, part.name.text, lie.run))
    return axis


def _sequence(part: r.PartStatement, lie: Lie, ctx: Context) -> bool:
    """Whether its members are cut in sequence, as only those of a repeated panel can be."""
    if part.sequence is None:
        return False
    original = ctx.scope.things.get(part.mirrors.text) if part.mirrors is not None else None
    mirrored = original.statement if original is not None and original.kind == "part" else part
    if "stick" in (lie.kind, _stock_kind(part, ctx), _stock_kind(mirrored, ctx)):
        ctx.say(problems.sequence_of_sticks(part))
    elif part.repeat is None and mirrored.repeat is None:
        ctx.say(problems.sequence_alone(part))
    return True


def _mirror(part: r.PartStatement, ctx: Context) -> tuple[str, Axis] | None:
    """What it mirrors, and across which axis."""
    assert part.mirrors is not None
    axis = axis_of(part.across.text) if part.across is not None else Axis.WIDE
    if part.across is not None and axis == Axis.HIGH:
        ctx.say(problems.mirrored_upwards(part.across))
    name = part.mirrors.text
    original = ctx.scope.things.get(name)
    if original is not None:
        ctx.uses.append((ctx.scope.owner, name))
    if not _can_be_mirrored(part, original, ctx):
        return None
    return (name, axis) if axis is not None else None


def _can_be_mirrored(part: r.PartStatement, original: Named | None, ctx: Context) -> bool:
    path = part.mirrors
    assert path is not None
    if original is None:
        if ctx.scope.is_spoiled(path.parts[0]):
            ctx.spoil()
        else:
            own = part.name.text
            parts = ctx.found.offered(lambda: [n.name for n in ctx.scope.things.values() if n.kind == "part"])
            ctx.say_unknown(problems.mirror_of_unknown(path, [name for name in parts if name != own]))
    elif original.kind != "part" or is_loose(original) or original.statement is part:
        ctx.say(problems.mirror_of_other(path, "part" if original.statement is part else original.kind))
    elif original.statement.mirrors is not None:
        ctx.say(problems.mirror_of_mirror(path, original.statement.mirrors.text))
    else:
        return True
    return False


def _loose(part: r.PartStatement, stock: str | None, when: tuple[BoundExpr, ...], ctx: Context) -> PartDef:
    """A part given by size and count alone."""
    placed = _of_place(part)
    if placed:
        ctx.say(problems.loose_placed(part, min(placed, key=lambda span: span.start)))
    _sequence(part, Lie("loose"), ctx)
    return PartDef(
        name=part.name.text,
        stock=stock,
        mirror=None,
        run=None,
        thick=None,
        spans=(),
        positions=(),
        repeat=None,
        grain="any" if part.grain is not None else None,
        show=None,
        proud=frozenset(),
        rip=length(part.rip, ctx) if part.rip is not None else None,
        loose=tuple(e for size in part.loose_size if (e := length(size, ctx)) is not None),
        count=length(part.count, ctx) if part.count is not None else None,
        features=(),
        when=when,
        span=part.span,
        head=part.head,
    )


def _of_place(part: r.PartStatement) -> list[Span]:
    """Where a part speaks of its lie or its place."""
    said = [c.span for c in part.spans] + [c.span for c in part.positions] + [c.span for c in part.features]
    said += [name.span for name in (*part.orient, *part.proud)]
    said += [clause.span for clause in (part.repeat, part.show, part.load, *part.bands) if clause is not None]
    return said + [part.grain.span] if part.grain is not None and part.grain.text != "any" else said
