"""Statements and blocks as lines of text."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setout.fmt.align import Line, aligned
from setout.fmt.model import Block, Item, Piece, Remark, Word

WIDTH = 100  # columns, comments not counted
STEP = 2  # blanks for each block
ON = 4  # blanks more for a line that goes on with a statement


def laid_out(items: tuple[Item, ...]) -> str:
    """The whole file."""
    return "".join(f"{line}\n" for line in aligned(tuple(_lines(items, 0))))


def _lines(items: tuple[Item, ...], indent: int) -> Iterator[Line]:
    for item in items:
        if item.apart:
            yield Line("", "")
        writing = _Writing(indent)
        for piece in item.pieces:
            writing.put(piece)
        yield from writing.lines()


@dataclass
class _Row:
    """A line in the making. `full`: a comment stands at its end, nothing more goes on it."""

    indent: int
    text: str = ""
    remark: str = ""

    @property
    def full(self) -> bool:
        return bool(self.remark)

    def fits(self, more: str) -> bool:
        return self.indent + len(self.text) + len(more) <= WIDTH


class _Writing:
    """One statement. `chunk` is what can't be parted, not yet on a line."""

    def __init__(self, indent: int) -> None:
        self.indent = indent
        self.rows = [_Row(indent)]
        self.done: list[Line] = []  # lines of a block, which are finished
        self.chunk = ""

    def put(self, piece: Piece) -> None:
        if isinstance(piece, Word):
            self.word(piece)
        elif isinstance(piece, Remark):
            self.remark(piece)
        else:
            self.block(piece)

    def word(self, word: Word) -> None:
        if word.broken:
            self.settle()
            self.begin_row()
        self.chunk += word.text if word.glued else f" {word.text}"
        if word.parts:
            self.settle()

    def settle(self, behind: str = "") -> None:
        """The chunk goes on the line if it fits, else on the next; `behind` is to stand behind it."""
        if not self.chunk:
            return
        row = self.rows[-1]
        if row.full or (row.text and not row.fits(self.chunk + behind)):
            self.go_on()
        row = self.rows[-1]
        row.text += self.chunk if row.text else self.chunk.lstrip(" ")
        self.chunk = ""

    def go_on(self, more: int = ON) -> None:
        self.rows.append(_Row(self.indent + more))

    def begin_row(self) -> None:
        if self.rows[-1].text or self.rows[-1].full:
            self.go_on()

    def remark(self, remark: Remark) -> None:
        self.settle()
        if remark.own_line:
            self.begin_row()
        self.rows[-1].remark = remark.text

    def block(self, block: Block) -> None:
        self.settle(" {")
        if self.rows[-1].full:
            self.go_on(0)
        row = self.rows[-1]
        blank = " " if row.text else ""
        short = _flat(block)
        if short and row.fits(blank + short):
            row.text += blank + short
            return
        row.text += f"{blank}{{"
        row.remark = block.opening.text if block.opening else ""
        self.done += [*self.written(), *_lines(block.items, self.indent + STEP)]
        self.rows = [_Row(self.indent, "}")]

    def written(self) -> list[Line]:
        return [Line(" " * row.indent + row.text, row.remark) for row in self.rows]

    def lines(self) -> list[Line]:
        self.settle()
        return [*self.done, *self.written()]


def _flat(block: Block) -> str:
    """The block on one line; "" when it was not written so."""
    if block.opening or (block.items and not block.flat):
        return ""
    inside = "; ".join(_sentence(item) for item in block.items)
    return f"{{ {inside} }}" if inside else "{ }"


def _sentence(item: Item) -> str:
    text = ""
    for piece in item.pieces:
        assert not isinstance(piece, Remark)
        if isinstance(piece, Word):
            text += piece.text if piece.glued or not text else f" {piece.text}"
        else:
            text += f" {_flat(piece)}"
    return text
