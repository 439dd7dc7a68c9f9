"""What the binding of one scope has at hand, and what it finds. A private detail of this stage."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field

from setout.diagnostics import Diagnostic, Severity
from setout.resolve.model import Room, Stock
from setout.resolve.scopes import Scope, World

Use = tuple[str, str]
"""A thing of a scope that something hangs on: (owner, name)."""


MOST_OFFERS = 50
"""So many times the nearest names are looked for: a file with more unknown names than that is no slip of the pen."""


@dataclass
class Found:
    """The diagnostics so far, and how often names were offered in them."""

    diagnostics: list[Diagnostic] = field(default_factory=list)
    offers: int = 0

    def say(self, diagnostic: Diagnostic) -> None:
        self.diagnostics.append(diagnostic)

    def offered(self, names: Callable[[], Iterable[str]]) -> list[str]:
        """The names to look for the nearest in; none any more once that was done often."""
        self.offers += 1
        return list(names()) if self.offers <= MOST_OFFERS else []


@dataclass
class Context:
    """`spoiled` is set when the definition at hand has a mistake or hangs on one; `uses` gathers what it hangs on.

    `known`: the constants have been worked out; what `stocks` and `room` then lack was wrong, and reported.
    `constant`: things have no place yet (lets, stocks, the room). `own`: face words mean the part's own faces.
    """

    world: World
    scope: Scope
    found: Found
    stocks: Mapping[str, Stock] = field(default_factory=dict)
    room: Room | None = None
    known: bool = False
    constant: bool = False
    own: bool = False
    spoiled: bool = False
    uses: list[Use] = field(default_factory=list)
    depth: int = 0
    cut_off: bool = False  # the expression at hand was found too deep

    def say(self, diagnostic: Diagnostic) -> None:
        self.found.say(diagnostic)
        self.spoiled = self.spoiled or diagnostic.severity is Severity.ERROR

    def named(self, kind: str) -> list[str]:
        """The names of that kind at the top level, to be offered."""
        return self.found.offered(lambda: [n.name for n in self.world.top.definitions.values() if n.kind == kind])

    def say_unknown(self, diagnostic: Diagnostic) -> None:
        """A name isn't known; which is no wonder when a file is missing."""
        if self.world.incomplete:
            self.spoil()
        else:
            self.say(diagnostic)

    def spoil(self) -> None:
        """What is at hand hangs on a mistake already reported."""
        self.spoiled = True

    def begin(self) -> None:
        """A new definition."""
        self.spoiled, self.uses = False, []
