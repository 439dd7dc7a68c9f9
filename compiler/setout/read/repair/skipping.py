"""Where no word can be put right: say what was expected, give the statement up, read on behind it."""

from __future__ import annotations

from fractions import Fraction

from setout.read import problems
from setout.read.expect import beginning_words, expected_words, found_words
from setout.read.model import Number
from setout.read.parse import Parse
from setout.read.tokens import Token

# What a block's head may lack.
_STAND_INS = ("PATH", "OF", "TO", "EQUAL", "LENGTH", "RPAR")


def unexpected(parse: Parse, at: int) -> int:
    token, machine = parse.tokens[at], parse.machine
    if token.told or (parse.before and parse.before.told):
        return skip(parse, at)
    opened = machine.openers()
    if opened and opened[-1].type == "LPAR" and (token.first or token.types[0] in ("_SEP", "LBRACE", "RBRACE")):
        parse.tell(problems.not_closed(parse.span(opened[-1]), "(", parse.span(token), found_words(token)))
        return skip(parse, at)
    if machine.at_boundary:
        words = beginning_words(machine.expected(), machine.table)
        parse.tell(problems.cannot_begin(parse.span(token), found_words(token), words))
    else:
        expected, before = expected_words(machine.expected(), machine.table), parse.before
        after = found_words(before) if before else ""
        parse.tell(problems.unexpected(parse.span(token), found_words(token), expected, after, _listed(parse, token)))
    return skip(parse, at)


def _listed(parse: Parse, token: Token) -> str:
    """`front, left`, where a comma between the two words is all that is missing."""
    if not parse.before or token.types[0] in ("_SEP", "RBRACE", "$END"):
        return ""
    comma = any(parse.machine.bridge(terminal, ("COMMA",), 1) for terminal in token.types)
    return f"{parse.before.text}, {token.text}" if comma else ""


def skip(parse: Parse, at: int) -> int:
    """Give up the statement and read on at its end: a separator, or the brace that closes the block it stands in."""
    parse.lost = True
    tokens = parse.tokens
    block = _into_block(parse, at)
    if block is not None:
        return block
    if not parse.machine.accepts("_SEP"):
        parse.machine.retreat()
    depth = 0
    for i in range(at, len(tokens)):
        kind = tokens[i].types[0]
        if kind == "$END" or (depth == 0 and kind in ("_SEP", "RBRACE")):
            return i + (kind == "_SEP" and parse.machine.at_boundary)
        if depth == 0 and i > at and tokens[i].first:
            return i
        depth += (kind == "LBRACE") - (kind == "RBRACE")
    return len(tokens)


def _into_block(parse: Parse, at: int) -> int | None:
    """Where the statement has a block ahead, make its head good with stand-ins, so that the block is read."""
    machine = parse.machine
    for i in range(at, len(parse.tokens)):
        token = parse.tokens[i]
        if token.types[0] in ("_SEP", "RBRACE", "$END") or (i > at and token.first):
            return None
        if token.types[0] == "LBRACE":
            way = None if machine.at_boundary else machine.bridge("LBRACE", _STAND_INS, 3)
            nought = Number(Fraction(0), "", "0", parse.span(token))
            for terminal in way or ():
                stand_in = Token((terminal,), "_", token.start, token.start, number=nought, told=True)
                machine.feed(stand_in, terminal)
            return None if way is None else i
    return None
