"""Words and comments gathered into statements and blocks."""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Iterator

from setout.fmt.model import Block, Item, Piece, Remark, Word
from setout.fmt.spacing import glued, parts
from setout.read import Words, settled
from setout.read.model import Comment
from setout.read.tokens import Token
from setout.source import Source

_BLANK_LINE = re.compile(r"\n[^\S\n]*\n")


def grouped(source: Source) -> tuple[Item, ...]:
    """The statements and comments of a file that has no mistakes."""
    return _Grouping(source.text, settled(source)).items()


class _Grouping:
    """Takes what the file is made of from the left."""

    def __init__(self, text: str, words: Words) -> None:
        self.text = text
        self.left: deque[Token | Comment] = deque(sorted([*words.tokens, *words.comments], key=_start))
        self.before: Token | None = None  # the word before, in the whole file
        self.end = 0  # where the last word or comment ended

    def items(self) -> tuple[Item, ...]:
        """Up to the brace that closes the block, or the end of the file; that is taken too."""
        found: list[Item] = []
        while not self.at("RBRACE", "$END"):
            if self.at("_SEP"):
                self.left.popleft()
            elif found and self.behind():
                found[-1] = Item((*found[-1].pieces, self.remark()), found[-1].apart)
            else:
                apart = bool(found) and self.blank_line()
                found += self.statement(apart)
        self.word()
        return tuple(found)

    def statement(self, apart: bool) -> Iterator[Item]:
        """A statement or clause, or a comment alone. Comments on lines of their own behind it are not of it."""
        pieces: list[Piece] = []
        after: list[Item] = []
        if self.comment():
            yield Item((self.remark(),), apart)
            return
        while not self.at("_SEP", "RBRACE", "$END"):
            pieces += self.within()
        while len(pieces) > 1 and isinstance(last := pieces[-1], Remark) and last.own_line:
            after.append(Item((pieces.pop(),), last.apart))
        yield Item(tuple(pieces), apart)
        yield from reversed(after)

    def within(self) -> Iterator[Piece]:
        if self.comment():
            yield self.remark()
        elif self.at("LBRACE"):
            yield self.block()
        else:
            broken = "\n" in self.text[self.end : _start(self.left[0])]
            before = self.before
            token = self.word()
            yield Word(token.text, glued(before, token), broken, parts(token))

    def block(self) -> Block:
        start = self.word().start
        opening = self.remark() if self.behind() else None
        items = self.items()
        return Block(items, "\n" not in self.text[start : self.end], opening)

    # --- what comes next -----------------------------------------------------------------------------

    def at(self, *types: str) -> bool:
        return isinstance(self.left[0], Token) and self.left[0].type in types

    def comment(self) -> bool:
        return isinstance(self.left[0], Comment)

    def behind(self) -> bool:
        """A comment, on the line of what was just taken."""
        return isinstance(self.left[0], Comment) and not self.left[0].own_line

    def blank_line(self) -> bool:
        return bool(_BLANK_LINE.search(self.text, self.end, _start(self.left[0])))

    def remark(self) -> Remark:
        apart = self.blank_line()
        comment = self.left.popleft()
        assert isinstance(comment, Comment)
        self.end = comment.span.end
        return Remark(comment.text, comment.own_line, apart)

    def word(self) -> Token:
        token = self.left.popleft()
        assert isinstance(token, Token)
        self.before, self.end = token, token.end
        return token


def _start(part: Token | Comment) -> int:
    return part.start if isinstance(part, Token) else part.span.start
