"""The build as numbered steps, each with why it stands where it stands."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from setout.source import Span


class StepId(NamedTuple):
    """`verb` measure cut machine assemble cure fit set hang fasten step; `target` a full path, an assembly definition
    that is cut or machined for all its instances, a measure, or a step's text. "" is the job and its own boards."""

    verb: str
    target: str


@dataclass(frozen=True)
class Reason:
    """Why a step cannot come before `after`. kind names the rule (a key of the wording template): "cut-first",
    "measure-first", "glue-cures", "fit-before-hang", "declared" (the spec's own line, then `span` is set) …"""

    after: StepId
    kind: str
    span: Span | None = None


@dataclass(frozen=True)
class Step:
    """`owner`: path of the assembly it belongs to ("" the job, or several). `marks` pieces at hand with how many;
    `joints` joint ids made in it, in the order of making; `fittings` ids; `wait` hours to let stand after it (cure).
    `things` are the paths of what is made, fitted or put in place one by one in it, where that is several.
    `reasons` one for each step it hangs on directly, nearest first; their kinds are listed in plan/order/steps.py."""

    number: int
    id: StepId
    owner: str
    marks: tuple[tuple[str, int], ...]
    joints: tuple[str, ...]
    fittings: tuple[str, ...]
    wait: Fraction
    reasons: tuple[Reason, ...]
    things: tuple[str, ...] = ()

    @property
    def needs(self) -> tuple[StepId, ...]:
        """Every earlier step it hangs on directly, nearest first."""
        return tuple(reason.after for reason in self.reasons)


@dataclass(frozen=True)
class Order:
    steps: tuple[Step, ...]
