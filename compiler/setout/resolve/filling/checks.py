"""What can be seen of a filling before anything has a size."""

from __future__ import annotations

from collections.abc import Callable

from setout.diagnostics import Diagnostic
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.filling.drawers import MOST
from setout.resolve.filling.shop import Shop

Say = Callable[[Diagnostic], None]
_ALIKE = ("clearance", "height", "setback")


def drawers(s: r.DrawersStatement, shop: Shop, say: Say) -> int | None:
    """How many drawers there are; None once a mistake has been reported."""
    said: list[Diagnostic] = [*_clauses(s), *_slides(s, shop)]
    n = _count(s, said)
    if n is not None and not said:
        for d in s.dummies:
            if not isinstance(d, r.Number) or d.value.denominator != 1 or not 1 <= d.value <= n:
                said.append(problems.no_such_drawer(d.span, n))
    for diagnostic in said:
        say(diagnostic)
    return None if said else n


def door(s: r.DoorStatement, shop: Shop, say: Say) -> bool:
    if s.hinges is None:
        return True
    return _hardware(s.hinges, "hinges", ("cup",), shop, say)


def shelves(s: r.ShelvesStatement, shop: Shop, say: Say) -> bool:
    if s.count is None and s.pitch is None:
        say(problems.filling_lacks("shelves", s.head, ("count 3",)))
        return False
    return s.pin is None or _hardware(s.pin, "shelf pins", ("hole",), shop, say)


def _hardware(path: r.Path, what: str, keys: tuple[str, ...], shop: Shop, say: Say) -> bool:
    known = shop.hardware.get(path.text)
    if known is None:
        say(problems.unknown_hardware(path, "", list(shop.hardware)))
        return False
    if not any(c.key in keys for c in known.clauses):
        say(problems.not_such_hardware(path, what, known))
        return False
    return True


def _clauses(s: r.DrawersStatement) -> list[Diagnostic]:
    missing = []
    if not s.slides:
        missing.append("slides …")
    if s.box is None:
        missing.append("box of …")
    if s.bottom is None:
        missing.append("bottom of …")
    if s.fronts is None and not s.trays:
        missing.append("fronts of …")
    found = [problems.filling_lacks("drawers", s.head, tuple(missing))] if missing else []
    if s.trays and s.fronts is not None:
        found.append(problems.drawers_at_odds("trays have no fronts", s.fronts.span, "and this gives them fronts"))
    if s.brace and s.style == "integral":
        found.append(problems.drawers_at_odds("a front that is the box's own has no brace behind it", s.head, ""))
    if s.trays and s.dummies:
        found.append(problems.drawers_at_odds("a dummy is a front without a box; trays have none", s.head, ""))
    return found


def _slides(s: r.DrawersStatement, shop: Shop) -> list[Diagnostic]:
    found: list[Diagnostic] = []
    for path in s.slides:
        _hardware(path, "slides", ("slide_side", "slide_under", "slide_runner"), shop, found.append)
    if not found and len(s.slides) > 1:
        first = shop.hardware[s.slides[0].text]
        for path in s.slides[1:]:
            if _described(shop.hardware[path.text]) != _described(first):
                found.append(problems.slides_unlike(path, first))
    return found


def _described(hardware: r.HardwareStatement) -> dict[str, object]:
    """What must be the same of slides to choose from: all but their length, load and price."""
    alike: dict[str, object] = {c.key: tuple(getattr(v, "value", None) for v in c.values) for c in hardware.clauses}
    return {key: v for key, v in alike.items() if key in _ALIKE or key.startswith("slide_")}


def _count(s: r.DrawersStatement, said: list[Diagnostic]) -> int | None:
    n: int | None = None
    if s.count is not None:
        literal = s.count.value if isinstance(s.count, r.Number) and not s.count.unit else None
        if literal is None or literal.denominator != 1 or not 1 <= literal <= MOST:
            said.append(problems.odd_drawer_count(s.count.span, MOST))
            return None
        n = int(literal)
    if s.mode in ("given", "shares"):
        if n is not None and n != len(s.heights) and s.count is not None:
            said.append(problems.heights_unlike_count(s.count.span, n, len(s.heights)))
        rests = sum(h is None for h in s.heights)
        if rests > 1:
            said.append(problems.two_rests(s.head))
        if len(s.heights) > MOST:
            said.append(problems.odd_drawer_count(s.head, MOST))
        return len(s.heights)
    if n is None:
        said.append(problems.filling_lacks("drawers", s.head, ("heights 4, 7, rest",)))
    return n
