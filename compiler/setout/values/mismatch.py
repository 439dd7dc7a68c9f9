"""What keeps values from being worked with, as facts for a stage's problems."""

from __future__ import annotations

from dataclasses import dataclass

from setout.source import Span
from setout.values.model import Value


@dataclass(frozen=True)
class Mismatch:
    """An operation that can't be done, or a value that isn't what is wanted.

    kind            what is the matter
    clash           unlike dimensions are added, compared, or rounded to a step
    product         the product would have more dimensions than a volume
    quotient        something is divided by what has more dimensions than it
    zero            division by nothing
    large           beyond what any workshop needs (`LIMIT`)
    mixed           bare numbers of two files with different units, and it matters which is meant
    step            a length is rounded without saying to what
    bad_step        a step that isn't above nothing
    not_number      a condition stands where a number is wanted
    not_condition   a number stands where a condition is wanted
    not_length, not_count, not_plain   the single value in `args` can't be taken as one
    held            the value hangs on a measure, which it may not

    `op` is the operation, or "" when a lone value is the trouble.
    """

    kind: str
    op: str
    args: tuple[Value, ...]
    span: Span
