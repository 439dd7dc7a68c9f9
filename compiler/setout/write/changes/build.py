"""The change sheet's tables."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setout.compare.model import Changes
from setout.units import Style
from setout.write.changes.boards import boards, joints, stocks
from setout.write.changes.counts import numbers
from setout.write.changes.fates import cut_already
from setout.write.changes.model import Sheet, Table
from setout.write.changes.order import steps, told
from setout.write.changes.placing import placing
from setout.write.changes.summary import summary


@dataclass(frozen=True)
class Names:
    """What the two specs are called on the sheet."""

    old: str
    new: str


def build(changes: Changes, names: Names) -> Sheet:
    style = Style(changes.metric, changes.mark)
    title = changes.new_title
    if changes.old_title != title:
        title = f"{changes.old_title} → {title}"
    unit = "mm" if changes.metric else "in"
    says = tuple(summary(changes, style))
    shown = tuple(t for t in _tables(changes, style) if t.rows) if changes.changed else ()
    return Sheet(title, names.old, names.new, unit, says, shown, changes.changed)


def _tables(changes: Changes, style: Style) -> Iterator[Table]:
    yield stocks(changes, style)
    yield placing(changes, style)
    yield boards(changes, style)
    yield joints(changes, style)
    yield from cut_already(changes, style)
    yield numbers(changes, style)
    yield steps(changes)
    yield told(changes)
