"""Jobs of a few small boards with work on them, drawn at random, on whole inches."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from comparing import shop

WORK = (
    "hole 1 at wide left + X, deep front + Y",
    "hole 2 at wide left + X, deep front + Y",
    "hole 1 at wide left + X, deep front + Y depth 1/4 into top",
    "hole 1 at wide left + X, deep front + Y depth 1/2 into top",
    "hole 1 at wide left + X, deep front + Y depth 1/4 into bottom",
    "notch wide 1 from left, deep Y from front",
    "notch wide 2 to right, deep 1 from front",
    "notch wide X from left, deep 1 to back",
    "cutout wide 1 from left + X, deep 1 from front + Y",
    "mitre left 45 long front",
    "mitre right 45 long top",
    "show top",
    "show bottom",
    "grain deep",
    "grain any",
)


@dataclass(frozen=True)
class Small:
    stock: str
    long: int
    wide: int
    work: tuple[str, ...]
    copies: int = 1  # more than one: a loose board, without work


def drawn(luck: Random) -> Small:
    stock = luck.choice(("ply", "ply", "ply", "half", "post"))
    long, wide = luck.randint(3, 9), 2 if stock == "post" else luck.randint(2, 6)
    if stock != "post" and luck.random() < 0.2:
        return Small(stock, long, wide, (), luck.randint(1, 3))
    count = luck.choice((0, 0, 1, 1, 2, 3))
    return Small(stock, long, wide, tuple(_work(luck, stock, long, wide) for _ in range(count)))


def altered(luck: Random, board: Small) -> Small:
    """The board again, or a smaller one, with more or less work on it."""
    long, wide, work = board.long, board.wide, board.work
    if luck.random() < 0.4:
        long = max(2, long - luck.randint(0, 3))
        wide = wide if board.stock == "post" else max(2, wide - luck.randint(0, 2))
    if luck.random() < 0.4:
        work = tuple(some for some in work if luck.random() < 0.5)
    if luck.random() < 0.3 and board.copies == 1:
        work = (*work, _work(luck, board.stock, long, wide))
    return Small(board.stock, long, wide, work, board.copies)


def _work(luck: Random, stock: str, long: int, wide: int) -> str:
    at = {"X": str(luck.randint(1, long - 1)), "Y": str(luck.randint(1, wide - 1))}
    choice = [some for some in WORK if stock == "ply" or not some.startswith("grain")]
    words = luck.choice(choice if stock != "post" else [some for some in choice if not some.startswith("show")])
    return "".join(at.get(letter, letter) for letter in words)


def spec(boards: Sequence[Small]) -> str:
    return shop(*(_part(f"p{n}", board) for n, board in enumerate(boards)))


def _part(name: str, board: Small) -> str:
    long, wide = board.long, board.wide
    once = {work if work.startswith(("hole", "notch", "cutout")) else work.split()[0]: work for work in board.work}
    if board.copies > 1:
        return f"part {name} of {board.stock} {{ size {long} x {wide}; count {board.copies} }}"
    place = f"across level; bottom at LOW; at front; wide {long} from left"
    if board.stock != "post":
        place = f"level at LOW; wide {long} from left; deep {wide} from front"
        place += "; grain wide" if board.stock == "ply" and "grain" not in once else ""
    return f"part {name} of {board.stock} {{ {'; '.join((place, *once.values()))} }}"
