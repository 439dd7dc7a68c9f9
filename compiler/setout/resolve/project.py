"""The whole stage, step by step: files, heading, names, constants, bodies; then what hangs on mistakes is left out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import TypeVar

from setout.diagnostics import Checked, Severity
from setout.practice import Practice, standard
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.bodies import Draft, draft_of
from setout.resolve.constants import Amounts, Constants, constants_of
from setout.resolve.context import Context, Found
from setout.resolve.files import Loaded, Reader, loaded
from setout.resolve.filling import filled
from setout.resolve.heading import heading, unit_of
from setout.resolve.model import AssemblyDef, BoundExpr, Hardware, OrderLine, Project, RackBoard, Saw
from setout.resolve.nesting import check_nesting
from setout.resolve.parameters import find_stock_parameters, parameters_bound
from setout.resolve.rack import rack_made
from setout.resolve.scopes import World, collected
from setout.resolve.settings import settings_given
from setout.resolve.shop import check_left, check_rows, saws_made, usual_saws
from setout.resolve.stocks import hardware_made
from setout.resolve.unbroken import broken_by
from setout.units import inches_per

Parameters = dict[str, "BoundExpr | str | None"]
S = TypeVar("S")


def resolve(tree: r.Tree, reader: Reader, settings: Mapping[str, str]) -> Checked[Project]:
    """Bind every name of a spec and work out its constants.

    `reader` fetches included files by path; `settings` are texts of literals by the name of a let or a measure. After a
    mistake the project lacks what was wrong and all that hangs on it, and is not `whole`.
    """
    found = Found()
    files = loaded(tree, reader, found.say)
    head = heading(files.projects[tree.source.name], found.say)
    units = {
        name: head.unit if name == tree.source.name else unit_of(p, found.say) for name, p in files.projects.items()
    }
    flex = {name: inches_per(unit) for name, unit in units.items()}
    files = replace(files, statements=filled(files.statements, found.say))
    world = collected(files.statements, flex, head.style, found.say)
    world.incomplete = files.incomplete
    find_stock_parameters(world)
    job = Context(world, world.top, found)
    given = settings_given(settings, inches_per(head.unit), job)
    room = _the_room(files, found)
    constants = constants_of(job, room, given)
    hardware = _hardware(files, job, constants)
    practice = _practice(files, job, constants)
    saws, rack = _shop(files, tree.source.name, Context(world, world.top, found, constants.stocks), constants, practice)
    drafts, parameters = _drafts(files, world, constants, found)
    _spoil_loops(world, drafts, found)
    broken = broken_by(drafts)
    whole = not any(d.severity is Severity.ERROR for d in found.diagnostics)
    if ("", "") in broken or (room is not None and constants.room is None):
        return Checked(None, tuple(found.diagnostics))
    project = Project(
        head.title,
        head.style.metric,
        head.style.mark,
        head.paper,
        constants.stocks,
        hardware,
        constants.lets,
        {n: world.top.definitions[n].span for n in constants.lets},
        constants.measures,
        practice,
        constants.room,
        _assemblies(world, drafts, parameters, broken),
        drafts[""].body(broken, world),
        _order(files) if whole else (),
        {**files.sources, **{g.source.name: g.source for g in given.values()}},
        {name: g.value for name, g in given.items()},
        whole,
        saws,
        rack,
    )
    return Checked(project, tuple(found.diagnostics))


def _the_room(files: Loaded, found: Found) -> r.RoomStatement | None:
    rooms = [s for s in files.statements if isinstance(s, r.RoomStatement)]
    if len(rooms) > 1:
        found.say(problems.said_twice("room", rooms[1].span, rooms[0].span))
    return rooms[0] if rooms else None


def _hardware(files: Loaded, ctx: Context, constants: Constants) -> dict[str, Hardware]:
    amounts = Amounts(ctx, constants)
    ctx.constant = True
    made = {}
    for named in ctx.world.top.definitions.values():
        if named.kind == "hardware":
            ctx.begin()
            hardware = hardware_made(named.statement, amounts)
            if hardware is not None:
                made[named.name] = hardware
            else:
                ctx.world.broken_hardware.add(named.name)
    ctx.constant = False
    return made


def _practice(files: Loaded, ctx: Context, constants: Constants) -> Practice:
    """The standard table with this spec's own rows."""
    table = standard()
    amounts = Amounts(ctx, constants)
    values: dict[str, Fraction] = {}
    said: dict[str, r.Name] = {}
    ctx.constant = True
    for statement in (s for s in files.statements if isinstance(s, r.PracticeStatement)):
        for name, expr in statement.rows:
            row = table.rows.get(name.text)
            if row is None:
                ctx.say(problems.unknown_row(name, ctx.found.offered(lambda: table.rows)))
                continue
            if name.text in said:
                ctx.say(problems.said_twice(name.text, name.span, said[name.text].span))
                continue
            said[name.text] = name
            value = (amounts.length if row.unit == "in" else amounts.plain)(expr, f"`{name.text}`")
            if row.value is None or (value is not None and (value < 0 or (row.above_zero and not value))):
                ctx.say(problems.row_not_to_be_set(name, row, expr.span))
            elif value is not None:
                values[name.text] = value
    ctx.constant = False
    return table.overridden(values)


def _shop(
    files: Loaded, own: str, ctx: Context, constants: Constants, practice: Practice
) -> tuple[tuple[Saw, ...], tuple[RackBoard, ...]]:
    """The saws and the offcuts on hand. A spec that names no saw gets those of the usual shop."""

    def all_of(kind: type[S]) -> list[S]:
        return [s for s in files.statements if isinstance(s, kind)]

    ctx.constant = True
    amounts = Amounts(ctx, constants)
    named = all_of(r.SawStatement)
    check_rows(all_of(r.PracticeStatement), practice, ctx)
    saws = saws_made(named, amounts) if named else usual_saws(practice, own)
    rack = rack_made(all_of(r.RackStatement), own, amounts)
    check_left(saws, constants.stocks, rack, practice, ctx)
    return saws, rack


def _drafts(
    files: Loaded, world: World, constants: Constants, found: Found
) -> tuple[dict[str, Draft], dict[str, Parameters]]:
    """Every body bound: the job's under "", and each assembly's."""
    drafts: dict[str, Draft] = {}
    parameters: dict[str, Parameters] = {}
    for owner, scope in world.scopes.items():
        ctx = Context(world, scope, found, constants.stocks, constants.room, known=True)
        statements = files.statements
        if owner:
            assembly: r.AssemblyStatement = world.top.definitions[owner].statement
            statements = assembly.body
            ctx.begin()
            parameters[owner] = parameters_bound(assembly, ctx)
        spoiled = ctx.spoiled
        drafts[owner] = draft_of(statements, ctx)
        drafts[owner].spoiled = drafts[owner].spoiled or spoiled
    return drafts, parameters


def _spoil_loops(world: World, drafts: dict[str, Draft], found: Found) -> None:
    for owner in check_nesting(world, found.say):
        drafts[owner].spoiled = True


def _assemblies(
    world: World, drafts: dict[str, Draft], parameters: dict[str, Parameters], broken: set[tuple[str, str]]
) -> dict[str, AssemblyDef]:
    made = {}
    for owner, draft in drafts.items():
        if owner and (owner, "") not in broken:
            a: r.AssemblyStatement = world.top.definitions[owner].statement
            title = a.title.value if a.title else a.name.text
            made[owner] = AssemblyDef(owner, title, parameters[owner], draft.body(broken, world), a.span, a.head)
    return made


def _order(files: Loaded) -> tuple[OrderLine, ...]:
    lines = []
    for statement in files.statements:
        if isinstance(statement, r.OrderStatement):
            lines += [OrderLine(rule, "") for rule in statement.rules]
        elif isinstance(statement, r.AssemblyStatement):
            inner = [s for s in statement.body if isinstance(s, r.OrderStatement)]
            lines += [OrderLine(rule, statement.name.text) for s in inner for rule in s.rules]
    return tuple(lines)
