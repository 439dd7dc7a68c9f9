"""Text cut into tokens: comments set aside, lines joined where a statement goes on, wrong numbers and marks told of."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, field

from setout.diagnostics import Diagnostic
from setout.read import problems
from setout.read.limits import MAX_MISTAKES, MAX_NAME, MAX_NESTING, MAX_OPERATORS, MAX_TOKENS
from setout.read.literal import number, several
from setout.read.model import Comment
from setout.read.table import Table
from setout.read.tokens import Token
from setout.source import Source, Span

_OPERATORS = {"+", "-", "*", "/", "=", "!=", "<", "<=", ">", ">=", "and", "or", "not"}
_GOES_ON = _OPERATORS | {",", "{"}
_OPENS, _CLOSES = {"{": "}", "(": ")"}, {"}", ")"}
_DASHED = re.compile(r"(?:-[^\W\d][\w.]*)+")
_QUOTED = re.compile(r'[“”„«][^“”„»"\n]*[“”»"]')
_SWAPS = {"×": "x", **dict.fromkeys("–—−‐‑", "-"), "≤": "<=", "≥": ">=", "≠": "!=", "÷": "/", "·": "*"}
_INVISIBLE = re.compile(
    "[\x00-\x08\x0b\x0e-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\ud800-\udfff]"
)


@dataclass
class Scanned:
    """`fatal`: a limit was passed, the tokens stop there and are not worth parsing."""

    tokens: list[Token] = field(default_factory=list)
    comments: list[Comment] = field(default_factory=list)
    diagnostics: list[Diagnostic] = field(default_factory=list)
    fatal: bool = False


def scan(source: Source, table: Table) -> Scanned:
    """All tokens up to the end of the file, `$END` last. No `_SEP` comes first, doubled, or inside parentheses."""
    scanner = _Scanner(source, table)
    scanner.run()
    return scanner.out


class _Scanner:
    def __init__(self, source: Source, table: Table) -> None:
        self.file, self.text, self.table = source.name, source.text, table
        self.out = Scanned()
        self.subject = re.compile(table.patterns["SUBJECT"])
        self.function = re.compile(table.patterns["FUNCTION"])
        self.open: list[Token] = []
        self.operators = 0
        self.pending: Token | None = None  # a separator not handed on yet
        self.first = True

    def run(self) -> None:
        for odd in re.finditer(_INVISIBLE, self.text):
            self.tell(problems.invisible(self.span(odd.start(), odd.end()), odd.group()))
            if self.out.fatal:
                break
        at, end, match_at = 0, len(self.text), self.table.master.match
        while at < end and not self.out.fatal:
            match = match_at(self.text, at)
            at = self.take(match.lastgroup or "", match.group(), at, match.end()) if match else self.odd(at)
        if not self.out.fatal:
            self.put(Token(("$END",), "", end, end))

    def span(self, start: int, end: int) -> Span:
        return Span(self.file, start, end)

    def take(self, kind: str, text: str, start: int, end: int) -> int:
        if kind == "BLANK":
            return end
        if kind == "COMMENT":
            text = text.rstrip()
            self.out.comments.append(Comment(text, self.first, self.span(start, start + len(text))))
            self.count(start, end)
        elif kind == "_SEP":
            self.separator(text, start, end)
        elif kind == "PATH":
            return self.word(text, start, end)
        elif kind == "LENGTH":
            self.numbers(text, start, end)
        elif kind == "MARK":
            self.put(Token((self.table.literals[text],), text, start, end, self.first))
        else:
            self.put(Token((kind,), text, start, end, self.first))
        return end

    def numbers(self, text: str, start: int, end: int) -> None:
        each = several(text)
        if len(each) > 1:
            self.tell(problems.by_without_blanks(self.span(start, end), text, " x ".join(each)))
        for i, one in enumerate(each):
            if i:
                self.put(Token((self.table.literals["x"],), "x", start - 1, start))
            value, fault = number(one, self.span(start, start + len(one)))
            self.tell(fault)
            told = fault is not None or len(each) > 1
            self.put(Token(("LENGTH",), one, start, start + len(one), self.first, number=value, told=told))
            start += len(one) + 1

    def tell(self, fault: Diagnostic | None) -> None:
        if fault:
            self.out.diagnostics.append(fault)
            self.out.fatal = self.out.fatal or len(self.out.diagnostics) > MAX_MISTAKES

    def separator(self, text: str, start: int, end: int) -> None:
        """Newlines count for nothing in parentheses and after what must go on; a `;` always ends the statement."""
        if text == "\n":
            self.first = True
        while text == ";" and self.open and self.open[-1].text == "(":
            self.open.pop()
        last = self.out.tokens[-1].text if self.out.tokens else "{"
        if text == "\n" and (last in _GOES_ON or (self.open and self.open[-1].text == "(")):
            return
        if last != "{" and (self.pending is None or text == ";"):
            self.pending = Token(("_SEP",), text, start, end)

    def word(self, text: str, start: int, end: int) -> int:
        """A name, path or keyword. `left-side` is one word, wrongly spelt."""
        dashed = _DASHED.match(self.text, end)
        if dashed:
            end = dashed.end()
            self.tell(problems.dash_in_name(self.span(start, end), self.text[start:end]))
            text = self.text[start:end].replace("-", "_")
        odd = _not_in_names(text)
        if not dashed and odd:
            self.tell(problems.odd_character(self.span(start, end), odd, _name(odd)))
        elif len(text) > MAX_NAME:
            self.tell(problems.name_too_long(self.span(start, end), len(text)))
        types = []
        if self.subject.match(self.text, start):
            types.append("SUBJECT")
        if text in self.table.keywords:
            types.append(self.table.keywords[text])
        if self.function.match(self.text, start):
            types.append("FUNCTION")
        told = bool(dashed or odd) or len(text) > MAX_NAME
        self.put(Token((*types, "PATH"), text, start, end, self.first, told=told))
        return end

    def odd(self, at: int) -> int:
        """What no pattern of the grammar matches."""
        char = self.text[at]
        curly = _QUOTED.match(self.text, at)
        if char == "-":
            self.put(Token(("GLUED",), "-", at, at + 1, self.first))
            return at + 1
        if curly:
            self.tell(problems.curly_quotes(self.span(at, curly.end()), curly.group()[1:-1]))
            self.put(Token(("STRING",), f'"{curly.group()[1:-1]}"', at, curly.end(), self.first, told=True))
            return curly.end()
        if char == '"':
            return self.unclosed_text(at)
        if _INVISIBLE.match(char):
            return at + 1
        if char in _SWAPS:
            self.tell(problems.swapped_character(self.span(at, at + 1), char, _SWAPS[char]))
            self.put(self.stand_in(_SWAPS[char], at))
            return at + 1
        end = at + 1
        while end < len(self.text) and self.text[end] == char:
            end += 1
        fault = problems.odd_character(self.span(at, end), char, _name(char))
        self.put(Token(("BAD",), self.text[at:end], at, end, self.first, fault=fault))
        return end

    def stand_in(self, text: str, at: int) -> Token:
        types = ("MINUS", "NEGATIVE") if text == "-" else (self.table.literals[text],)
        return Token(types, text, at, at + 1, self.first, told=True)

    def unclosed_text(self, at: int) -> int:
        """It goes on to the end of its line, or to a brace: that of a block is likelier than one in a text."""
        line = self.text[at:].partition("\n")[0].partition(" {")[0].rstrip()
        self.tell(problems.unclosed_text(self.span(at, at + len(line))))
        self.put(Token(("STRING",), line + '"', at, at + len(line), self.first, told=True))
        return at + len(line)

    def put(self, token: Token) -> None:
        """Hand a token on, the separator before it first, and watch the limits."""
        if self.pending:
            dropped = token.text == "{" and self.pending.text == "\n"
            if not dropped:
                self.out.tokens.append(self.pending)
                self.operators = 0
            self.pending = None
        self.first = False
        self.out.tokens.append(token)
        self.nest(token)
        self.operators += token.text in _OPERATORS and "STRING" not in token.types
        if self.operators > MAX_OPERATORS:
            self.stop(problems.too_many_operators(self.span(token.start, token.end), MAX_OPERATORS))
        self.count(token.start, token.end)

    def count(self, start: int, end: int) -> None:
        if len(self.out.tokens) + len(self.out.comments) > MAX_TOKENS and not self.out.fatal:
            self.stop(problems.too_many_tokens(self.span(start, end), MAX_TOKENS))

    def nest(self, token: Token) -> None:
        """Keep the open braces and parentheses; a brace ends parentheses that were forgotten."""
        if token.types[0] in ("STRING", "BAD"):
            return
        while token.text in "{}" and self.open and self.open[-1].text == "(":
            self.open.pop()
        if token.text in _OPENS:
            if token.text == "{":
                self.operators = 0
            self.open.append(token)
            if len(self.open) > MAX_NESTING:
                self.stop(problems.too_deep(self.span(token.start, token.end), MAX_NESTING))
        elif token.text in _CLOSES:
            if self.open and _OPENS[self.open[-1].text] == token.text:
                self.open.pop()

    def stop(self, fault: Diagnostic) -> None:
        self.tell(fault)
        self.out.fatal = True


def _not_in_names(text: str) -> str:
    """The first character that a pattern took for a letter though it is none, as `½`; "" when all are right."""
    if text.isascii():
        return ""
    plain = (char for char in text if not (char in "._" or char.isalpha() or char in "0123456789"))
    return next(plain, "")


def _name(char: str) -> str:
    return unicodedata.name(char, f"U+{ord(char):04X}").lower()


def taken(token: Token, terminal: str) -> Token:
    """The token, settled to be this terminal."""
    t = token
    return Token(t.types, t.text, t.start, t.end, t.first, t.number, t.fault, t.told, terminal)
