"""A number's chain back to the spec, as lines of text."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from setout.source import Span
from setout.values import Trace

LINES_LIMIT = 200
SUM_LIMIT = 12  # a longer sum says nothing at a glance
_COLUMN = 64  # where "file:line" begins, when there is room
_BINDING = {"+": 1, "-": 1, "*": 2, "/": 2}

Amount = Callable[[Fraction, int], str]
Where = Callable[[Span], str]
Shares = dict[tuple[str, Fraction, int], Fraction]  # what a sum is made of: (name, amount, dimension) -> how many times


def chain(head: str, trace: Trace, amount: Amount, where: Where) -> list[str]:
    """`head 22-9/16 = 24 - 2 x 23/32`, and below it a line for each name and rule on the way to what the spec says.

    `amount` prints an exact amount of a dimension, `where` a place as file:line. Nothing is led back twice.
    """
    total = amount(trace.amount, trace.dim)
    shares = _shares(trace)
    whole = all(times.denominator == 1 for times in shares.values())
    summed = _sum(shares, amount) if whole else _made_of(trace, amount)
    first = f"{head} {total}" if summed in (total, "") else f"{head} {total} = {summed}"
    lines = [_placed(first, trace.span, where)]
    above = trace if trace.kind in ("operation", "literal") else replace(trace, parts=(trace,))
    for text, span in _links(above, 1, amount, set()):
        if len(lines) == LINES_LIMIT:
            return [*lines, "  …"]
        lines.append(_placed(text, span, where))
    return lines


def _placed(text: str, span: Span | None, where: Where) -> str:
    return f"{text:<{_COLUMN}}  {where(span)}" if span else text


# --- what it comes to: all that is added up, alike things counted ------------------------------------------


def _shares(trace: Trace) -> Shares:
    """The number as a sum of shares of what the spec gives; nothing when that would be too long to read."""
    met: Shares = {}
    waiting = [(trace, Fraction(1))]
    while waiting:
        at, times = waiting.pop()
        if len(met) > SUM_LIMIT or len(waiting) > LINES_LIMIT:
            return {}
        if at.kind != "operation" and len(at.parts) == 1 and at.parts[0].kind != "literal":
            waiting.append((at.parts[0], times))
        elif (opened := _opened(at)) is not None:
            waiting.extend((part, times * share) for part, share in reversed(opened))
        else:
            key = ("" if at.kind == "literal" else at.text, at.amount, at.dim)
            met[key] = met.get(key, Fraction(0)) + times
    return {key: times for key, times in met.items() if times and key[1]}


def _made_of(trace: Trace, amount: Amount) -> str:
    """The nearest sum below, as it is written: thirds of what it all comes from would explain nothing."""
    while trace.kind != "operation" and len(trace.parts) == 1:
        trace = trace.parts[0]
    return _infix(trace, amount, 0)


def _opened(at: Trace) -> list[tuple[Trace, Fraction]] | None:
    """The operands of a sum, a difference, or a product or quotient with a plain number, each with its share."""
    if at.kind != "operation" or len(at.parts) != 2:
        return [(at.parts[0], Fraction(-1))] if at.kind == "operation" and at.text == "neg" else None
    a, b = at.parts
    if at.text in ("+", "-"):
        return [(a, Fraction(1)), (b, Fraction(1 if at.text == "+" else -1))]
    if at.text == "*" and 0 in (a.dim, b.dim) and at.dim:
        return [(b, a.amount)] if a.dim == 0 else [(a, b.amount)]
    if at.text == "/" and b.dim == 0 and at.dim and b.amount:
        return [(a, 1 / b.amount)]
    return None


def _sum(shares: Shares, amount: Amount) -> str:
    text = ""
    for (_, value, dim), times in shares.items():
        sign = "-" if times < 0 else "+"
        text += f" {sign} " if text else "-" if times < 0 else ""
        text += amount(value, dim) if abs(times) == 1 else f"{amount(abs(times), 0)} x {amount(value, dim)}"
    return text


# --- how it came about: one line a step ----------------------------------------------------------------------


def _links(
    trace: Trace, depth: int, amount: Amount, seen: set[tuple[str, Fraction]]
) -> Iterator[tuple[str, Span | None]]:
    for step in _steps(trace):
        total = amount(step.amount, step.dim)
        inner = step.parts[0] if len(step.parts) == 1 else step
        formula = _infix(inner, amount, 0) if inner.kind == "operation" else total
        line = f"{'  ' * depth}{step.text} {total}"
        yield (line if formula == total else f"{line} = {formula}"), step.span
        key = (step.text, step.amount)
        if key not in seen:
            seen.add(key)
            yield from _links(step, depth + 1, amount, seen)


def _steps(trace: Trace) -> Iterator[Trace]:
    """The names and rules nearest below, in the order written."""
    for part in trace.parts:
        if part.kind == "operation":
            yield from _steps(part)
        elif part.kind != "literal":
            yield part


def _infix(trace: Trace, amount: Amount, binding: int) -> str:
    if trace.kind != "operation":
        return amount(trace.amount, trace.dim)
    own = _BINDING.get(trace.text, 0)
    if not own or len(trace.parts) != 2:
        return f"{trace.text}({', '.join(_infix(part, amount, 0) for part in trace.parts)})"
    sign = "x" if trace.text == "*" else trace.text
    left, right = trace.parts
    text = f"{_infix(left, amount, own)} {sign} {_infix(right, amount, own + 1)}"
    return f"({text})" if own < binding else text
