"""What the clauses of a filling refer to before names are bound: hardware by name, rows of the practice table."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setout.practice import standard
from setout.read import model as r
from setout.resolve.filling.wording import Ex, Pen


class Shop:
    """Looks up raw statements. A practice row that the spec sets keeps the spec's own expression."""

    def __init__(self, statements: Iterable[r.Statement]) -> None:
        self.hardware: dict[str, r.HardwareStatement] = {}
        self.names: set[str] = set()
        self.rows: dict[str, r.Expr] = {}
        for s in statements:
            if isinstance(s, r.HardwareStatement):
                self.hardware.setdefault(s.name.text, s)
            elif isinstance(s, r.PracticeStatement):
                for name, expr in s.rows:
                    self.rows.setdefault(name.text, expr)

    def row(self, pen: Pen, name: str) -> Ex:
        """The length of that row."""
        if name in self.rows:
            return pen.ex(self.rows[name])
        value = standard().value(name)
        assert isinstance(value, Fraction)
        return pen.inches(value)

    def number(self, pen: Pen, hardware: str, key: str, i: int = 0) -> Ex | None:
        """What hardware says under `key`, as an expression."""
        clause = next((c for c in self.hardware[hardware].clauses if c.key == key), None)
        return pen.ex(clause.values[i]) if clause is not None and len(clause.values) > i else None
