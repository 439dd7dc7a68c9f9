"""What was found in each scene, made one list: nothing said twice, measures named where they make the difference."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.join import problems
from setout.place.model import Placed, Scene
from setout.source import Span

Key = tuple[str, tuple[Span | None, ...]]


def findings(
    placed: Placed, by_scene: Sequence[Sequence[Diagnostic]], say: Callable[[Fraction], str]
) -> tuple[Diagnostic, ...]:
    """One diagnostic for each mistake in the spec, however many boards and scenes show it."""
    told: dict[Key, list[tuple[Scene, Diagnostic]]] = defaultdict(list)
    for scene, diagnostics in zip(placed.scenes, by_scene):
        for key, diagnostic in _collapsed(diagnostics).items():
            told[key].append((scene, diagnostic))
    return tuple(_across(placed, seen, say) for seen in told.values())


def _key(diagnostic: Diagnostic) -> Key:
    """The two sides of a carcase share a mistake: the place and the first of the others tell one from the next."""
    labels = (diagnostic.label, *diagnostic.others[:1])
    return diagnostic.code, tuple(label.span if label is not None else None for label in labels)


def _collapsed(diagnostics: Sequence[Diagnostic]) -> dict[Key, Diagnostic]:
    """The first of those that point at the same places of the spec, with how many there are."""
    alike: dict[Key, list[Diagnostic]] = defaultdict(list)
    for diagnostic in diagnostics:
        alike[_key(diagnostic)].append(diagnostic)
    return {
        key: replace(some[0], message=problems.more_like_it(some[0].message, len(some))) if some[1:] else some[0]
        for key, some in alike.items()
    }


def _across(placed: Placed, seen: list[tuple[Scene, Diagnostic]], say: Callable[[Fraction], str]) -> Diagnostic:
    """As it is when every scene shows the same; else with the measures at which it shows first."""
    scene, diagnostic = seen[0]
    same = len(seen) == len(placed.scenes) and all(other == diagnostic for _, other in seen)
    if same or not placed.open_measures:
        return diagnostic
    taken = [(name, say(scene.taken[name])) for name in placed.open_measures if name in scene.taken]
    return replace(diagnostic, message=problems.when_measured(diagnostic.message, taken))
