"""Sources that are cut alike share a drawing and a list."""

from __future__ import annotations

from dataclasses import dataclass, replace

from setout.plan.cutting.model import Cut, Falls, SourcePlan, StockPlan
from setout.write.facts.paths import runs, spoken

MOST = 4  # sources under one drawing; more numbers would not fit beside a cut


@dataclass(frozen=True)
class Alike:
    """Plans that differ in names and numbers only. The first is drawn."""

    plans: tuple[SourcePlan, ...]

    @property
    def first(self) -> SourcePlan:
        return self.plans[0]

    @property
    def names(self) -> tuple[str, ...]:
        """What is written on them."""
        return tuple(spoken(plan.source.id) for plan in self.plans)

    @property
    def name(self) -> str:
        """All names in one: "ply 1, 2"."""
        return together(self.names)

    def board(self, name: str) -> str:
        """A board's name as the list has it: "-a" for the one marked "ply 1-a"; the source's own, of several without
        the number."""
        own = self.first.source.id
        return name.removeprefix(own) or (self.name if len(self.plans) == 1 else self.names[0].rpartition(" ")[0])


def alike(stock: StockPlan) -> tuple[Alike, ...]:
    found: dict[tuple, list[list[SourcePlan]]] = {}
    out: list[list[SourcePlan]] = []
    for plan in stock.sources:
        packs = found.setdefault(_likeness(plan), [])
        if not packs or len(packs[-1]) == MOST:
            packs.append([])
            out.append(packs[-1])
        packs[-1].append(plan)
    return tuple(Alike(tuple(plans)) for plans in out)


def together(names: tuple[str, ...]) -> str:
    """("ply 1", "ply 2", "ply 3") → "ply 1–3"; the names end in their number."""
    numbers: dict[str, list[int]] = {}
    for name in names:
        stem, _, number = name.rpartition(" ")
        numbers.setdefault(stem, []).append(int(number))
    return ", ".join(f"{stem} {runs(of)}" for stem, of in numbers.items())


def _likeness(plan: SourcePlan) -> tuple:
    source = replace(plan.source, id="")
    laid = tuple(replace(one, copy=0) for one in plan.laid)
    return source, laid, plan.leftovers, tuple(_bare(cut, plan.source.id) for cut in plan.cuts)


def _bare(cut: Cut, source: str) -> Cut:
    rest = None if cut.rest is None else _fallen(cut.rest, source)
    return replace(
        cut, number=0, source="", board=cut.board.removeprefix(source), off=_fallen(cut.off, source), rest=rest
    )


def _fallen(falls: Falls, source: str) -> Falls:
    return replace(falls, copy=0, board=falls.board.removeprefix(source))
