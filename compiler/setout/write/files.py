"""Which files each format makes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property

from setout.drawing import Drawing
from setout.plan.model import Plan
from setout.write import buy_list, cutlist, job, packet
from setout.write.assemblies import groups
from setout.write.drawings import drawings, views
from setout.write.facts import Facts, facts
from setout.write.fonts import embedded
from setout.write.render import macro


def files(plan: Plan, formats: frozenset[str]) -> Mapping[str, bytes]:
    work = _Work(plan)
    out: dict[str, bytes] = {}
    for name, make in _MAKERS:
        if name in formats:
            out.update(make(work))
    return out


@dataclass(frozen=True)
class _Work:
    """What several formats need, made when the first asks."""

    plan: Plan

    @cached_property
    def job(self) -> job.Job:
        return job.build(self.plan)

    @cached_property
    def facts(self) -> Facts:
        return facts(self.plan, self.job.revision)

    @cached_property
    def made(self) -> packet.Made:
        alike = groups(self.facts)
        return packet.Made(self.facts, alike, drawings(self.facts, alike, _say))

    @cached_property
    def packet(self) -> packet.Packet:
        return packet.build(self.made)


def _say(doing) -> str:
    return macro("build_order/words.html.j2", "doing", doing)


def _pdf(work: _Work) -> dict[str, bytes]:
    from setout.write.printing import pdf

    return {"packet.pdf": pdf(packet.html(work.packet, ()))}


def _html(work: _Work) -> dict[str, bytes]:
    plain = packet.html(work.packet, ())
    return {"packet.html": packet.html(work.packet, embedded(plain)).encode("utf-8")}


def _csv(work: _Work) -> dict[str, bytes]:
    bought = buy_list.table(buy_list.build(work.facts))
    return {"cutlist.csv": cutlist.build(work.facts).encode("utf-8"), "buy.csv": bought.encode("utf-8")}


def _json(work: _Work) -> dict[str, bytes]:
    return {"job.json": work.job.text.encode("utf-8")}


def _svg(work: _Work) -> dict[str, bytes]:
    return {f"{name}.svg": drawing.svg.encode("utf-8") for name, drawing in _drawn(work).items()}


def _drawn(work: _Work) -> dict[str, Drawing]:
    made = work.made.drawings
    out = {f"views/{side}": drawing for side, drawing in views(work.facts).items()}
    out |= {} if made.job is None else {"views/job": made.job}
    out |= {f"assemblies/{path or 'job'}": drawing for path, drawing in made.exploded.items()}
    out |= {f"cutting/{name.replace(' ', '_')}": drawing for name, drawing in made.cutting.items()}
    out |= {f"pieces/{mark}": drawing for mark, drawing in made.pieces.items()}
    out |= {f"openings/{path}": drawing for path, drawing in made.banks.items()}
    out |= {f"room/{side}": drawing for side, drawing in made.room.items()}
    return out | {f"order/{number}": drawing for number, drawing in enumerate(made.order, 1)}


_MAKERS: tuple[tuple[str, Callable[[_Work], dict[str, bytes]]], ...] = (
    ("pdf", _pdf),
    ("html", _html),
    ("csv", _csv),
    ("json", _json),
    ("svg", _svg),
)
