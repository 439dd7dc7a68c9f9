"""The change sheet's tables."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from setout.compare.model import BoardChange, Changes, Fate
from setout.units import Style
from setout.write.changes import wording
from setout.write.changes.counts import numbers
from setout.write.changes.model import Sheet, Table
from setout.write.facts.paths import fold, ranges, spoken
from setout.write.facts.sizes import area


@dataclass(frozen=True)
class Names:
    """What the two specs are called on the sheet."""

    old: str
    new: str


def build(changes: Changes, names: Names) -> Sheet:
    style = Style(changes.metric, changes.mark)
    tables = (
        _assemblies(changes, style),
        _boards(changes, style),
        *_cut_already(changes, style),
        numbers(changes, style),
        _steps(changes),
        _told(changes),
    )
    title = changes.new_title
    if changes.old_title != title:
        title = f"{changes.old_title} → {title}"
    unit = "mm" if changes.metric else "in"
    summary = tuple(_summary(changes, style)) if changes.changed else ("Nothing changes.",)
    shown = tuple(table for table in tables if table.rows) if changes.changed else ()
    return Sheet(title, names.old, names.new, unit, summary, shown, changes.changed)


# --- in a few words --------------------------------------------------------------------------------------


def _summary(changes: Changes, style: Style) -> Iterator[str]:
    yield _of_boards(changes)
    count = {kind: 0 for kind in ("right", "reworked", "serves", "lost")}
    for fate in changes.reuse.fates:
        count[fate.kind] = count.get(fate.kind, 0) + fate.count
    words = [
        f"{count['right']} are right",
        f"{count['reworked']} can be reworked",
        f"{count['serves']} can serve elsewhere",
        f"{count['lost']} are lost",
    ]
    words = [word for word, kind in zip(words, count) if count[kind] or kind == "right"]
    yield f"Of the boards cut already {_listed(words)}."
    waste = [loss for loss in changes.reuse.losses if loss.lost]
    if waste:
        unit = "m²" if style.metric else "sq ft"
        words = [f"{area(x.lost, style)} of {area(x.cut, style)} {unit} of {x.stock}" for x in waste]
        yield f"Lost of them, trimmings included: {_listed(words)}."


def _of_boards(changes: Changes) -> str:
    added = sum(c.new.count for c in changes.boards if c.old is None and c.new)
    gone = sum(c.old.count for c in changes.boards if c.new is None and c.old)
    both = [c for c in changes.boards if c.old and c.new]
    placed = [c for c in both if set(c.how) <= {"moved", "renamed", "marked"}]
    moved = [c for c in placed if "moved" in c.how]
    words = [f"{len(both) - len(placed)} change"] if len(both) > len(placed) else []
    words += [f"{added} new"] if added else []
    words += [f"{gone} left out"] if gone else []
    words += [f"{len(moved)} move unchanged"] if moved else []
    words += [f"{len(placed) - len(moved)} only named otherwise"] if len(placed) > len(moved) else []
    return f"Boards: {', '.join(words) or 'none changes'}."


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


# --- what changed ----------------------------------------------------------------------------------------


def _assemblies(changes: Changes, style: Style) -> Table:
    rows: dict[tuple[str, str], list[str]] = {}
    for change in changes.assemblies:
        rows.setdefault((change.title, wording.assembly(change, style)), []).append(change.new or change.old or "")
    cells = tuple((", ".join(ranges(paths)), title, says) for (title, says), paths in rows.items())
    return Table("assemblies", "Assemblies", "", ("Assembly", "What it is", "Change"), cells)


def _boards(changes: Changes, style: Style) -> Table:
    rows: dict[tuple[str, ...], list[tuple[str, str]]] = {}
    for change in changes.boards:
        side = change.new or change.old
        assert side is not None
        says = "; ".join(wording.board(change, style)) or "elsewhere"
        key = (side.owner if change.how == ("moved",) else "", _marks(change), _sizes(change, style), says)
        rows.setdefault(key if change.how != ("moved",) else (side.owner, "", "", says), []).append(
            (side.owner, side.name)
        )
    cells = tuple((_where(places), *key[1:]) for key, places in rows.items())
    return Table("boards", "Boards", "", ("Board", "Mark", "Cut size", "Change"), cells)


def _where(places: Iterable[tuple[str, str]]) -> str:
    parts = []
    for group in fold(places):
        owners, names = ", ".join(group.owners), ", ".join(group.names)
        parts.append(f"{owners}: {names}" if owners else names)
    return "; ".join(parts)


def _marks(change: BoardChange) -> str:
    marks = [side.mark for side in (change.old, change.new) if side]
    return " → ".join(dict.fromkeys(marks))


def _sizes(change: BoardChange, style: Style) -> str:
    shown = [wording.sizes(side.sizes, style) for side in (change.old, change.new) if side]
    return " → ".join(dict.fromkeys(shown))


# --- boards that are cut already -------------------------------------------------------------------------


def _cut_already(changes: Changes, style: Style) -> Iterator[Table]:
    of: dict[str, list[Fate]] = {}
    for fate in changes.reuse.fates:
        of.setdefault(fate.kind, []).append(fate)
    pencil = tuple((_count(f.old, f.count), f.new or "", _named(f)) for f in of.get("right", ()) if f.old != f.new)
    yield Table(
        "remark", "Right, under another mark", "", ("Mark", "New mark", "Board"), pencil, True
    )  # fmt: skip
    yield Table(
        "rework", "Cut already: to be reworked", "", ("Mark", "New mark", "Board", "Do"),
        tuple((_count(f.old, f.count), f.new or "", _named(f), _work(f, style)) for f in of.get("reworked", ())), True,
    )  # fmt: skip
    yield Table(
        "serve", "Cut already: to serve elsewhere", "", ("Mark", "New mark", "Board", "Do"),
        tuple((_count(f.old, f.count), f.new or "", _becomes(f), _work(f, style)) for f in of.get("serves", ())), True,
    )  # fmt: skip
    yield Table(
        "lost", "Cut already: lost", "", ("Mark", "Board", "Why"),
        tuple((_count(f.old, f.count), _named(f), wording.lost(f)) for f in of.get("lost", ())),
    )  # fmt: skip
    rows = tuple((_count(c.mark, c.count), _paths(c.boards)) for c in changes.reuse.to_cut)
    note = "What stands here waits for a measure, or no board that was cut already serves as it."
    yield Table("cut", "Still to be cut", note, ("Mark", "Board"), rows, True)


def _work(fate: Fate, style: Style) -> str:
    assert fate.way is not None
    turned = wording.turned(fate.way) if fate.kind == "serves" else ""
    return wording.work(fate.way, style) + (f" ({turned})" if turned else "")


def _count(mark: str, count: int) -> str:
    return mark if count == 1 else f"{mark} × {count}"


def _named(fate: Fate) -> str:
    return _paths(fate.boards)


def _becomes(fate: Fate) -> str:
    return f"{_paths(fate.boards)} → {_paths(fate.becomes)}"


def _paths(paths: Iterable[str]) -> str:
    return ", ".join(ranges(dict.fromkeys(paths)))


# --- order and warnings ----------------------------------------------------------------------------------


def _steps(changes: Changes) -> Table:
    rows: dict[tuple[str, str], list[str]] = {}
    lines = []
    for change in changes.steps:
        if change.then is None:
            rows.setdefault((change.how, change.verb), []).append(change.target or "the job")
        else:
            verb, target = change.then
            how = "no longer said" if change.how == "line gone" else "now said"
            lines.append((how, f"{change.verb} {spoken(change.target)} before {verb} {spoken(target)}"))
    words = {"gone": "no longer", "added": "new"}
    cells = [(words[how], f"{verb}: {', '.join(ranges(some))}") for (how, verb), some in rows.items()]
    return Table("steps", "Build order", "", ("Change", "Step"), (*cells, *lines))


def _told(changes: Changes) -> Table:
    rows = tuple((f"{told.how} {told.severity.value}", told.code, told.message) for told in changes.told)
    return Table("told", "Warnings and notes", "", ("Change", "Code", "What it says"), rows)


