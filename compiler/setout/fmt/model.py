"""A spec's text as things to be laid out: statements, the words in them, the blocks behind them."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Word:
    """A word, number or mark. `glued`: no blank before it. `broken`: it began a line of its own within its statement.

    `parts`: a line may end behind it.
    """

    text: str
    glued: bool
    broken: bool
    parts: bool


@dataclass(frozen=True)
class Remark:
    """A comment. `own_line`: nothing stands before it on its line. `apart`: a blank line stands before it."""

    text: str
    own_line: bool
    apart: bool


@dataclass(frozen=True)
class Block:
    """`{ … }`. `flat`: it was written on one line, so no comment is in it. `opening` stands behind its `{`."""

    items: tuple[Item, ...]
    flat: bool
    opening: Remark | None


@dataclass(frozen=True)
class Item:
    """A statement or clause, or a comment by itself. `apart`: a blank line stands before it."""

    pieces: tuple[Piece, ...]
    apart: bool


Piece = Word | Remark | Block
