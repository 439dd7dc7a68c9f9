"""Braces, parentheses and line ends that are missing, or one too many."""

from __future__ import annotations

from setout.read import problems
from setout.read.expect import expected_words, found_words
from setout.read.parse import Parse
from setout.read.tokens import Token


def stray_separator(parse: Parse, at: int) -> int | None:
    """What a repair left behind; the scanner itself never doubles one."""
    return at + 1 if parse.tokens[at].types == ("_SEP",) and parse.machine.at_boundary else None


def forgotten_brace(parse: Parse, at: int) -> int | None:
    """A statement begins, at the head of a line, where only clauses can stand: the block before it was not closed."""
    token, machine = parse.tokens[at], parse.machine
    if not (token.first and machine.values and (opened := machine.openers())):
        return None
    saved = machine.states.copy(), machine.values.copy()
    closed = []
    while opened and opened[-1].type == "LBRACE" and machine.accepts("RBRACE"):
        closed.append(opened.pop())
        machine.feed(Token(("RBRACE",), "}", token.start, token.start), "RBRACE")
        if machine.accepts("_SEP"):
            machine.feed(Token(("_SEP",), "\n", token.start, token.start), "_SEP")
        if machine.choice(token):
            parse.tell(problems.not_closed(parse.span(closed[-1]), "{", parse.span(token), found_words(token)))
            parse.closed_for_them += len(closed)
            return at
    machine.states, machine.values = saved
    return None


def missing_brace(parse: Parse, at: int) -> int | None:
    """A block's head, but no `{`, and the next line is such as could stand in the block."""
    token, machine = parse.tokens[at], parse.machine
    if token.types != ("_SEP",) or not machine.accepts("LBRACE"):
        return None
    saved = machine.states.copy(), machine.values.copy()
    expected, after = expected_words(machine.expected(), machine.table), parse.before
    machine.feed(Token(("LBRACE",), "{", token.start, token.start), "LBRACE")
    if not machine.choice(parse.tokens[at + 1]):
        machine.states, machine.values = saved
        return None
    parse.tell(
        problems.unexpected(parse.span(token), found_words(token), expected, found_words(after) if after else "")
    )
    return at + 1


def missing_separator(parse: Parse, at: int) -> int | None:
    """`} part` on one line."""
    token, machine = parse.tokens[at], parse.machine
    if token.types[0] not in machine.table.spelling or token.told or not machine.accepts("_SEP"):
        return None
    saved = machine.states.copy(), machine.values.copy()
    before, lost = parse.before, parse.lost
    machine.feed(Token(("_SEP",), "\n", token.start, token.start), "_SEP")
    if machine.choice(token) != token.types[0] or token.types[0] not in machine.table.keywords.values():
        machine.states, machine.values, parse.lost = *saved, lost
        return None
    parse.tell(problems.run_together(parse.span(token), found_words(token), found_words(before) if before else ""))
    return at


def end_of_file(parse: Parse, at: int) -> int | None:
    token, opened = parse.tokens[at], parse.machine.openers()
    if token.types != ("$END",) or not opened:
        return None
    parse.tell(problems.not_closed(parse.span(opened[-1]), opened[-1].text, parse.span(token), found_words(token)))
    parse.lost = True
    return len(parse.tokens)


def closed_twice(parse: Parse, at: int) -> int | None:
    token = parse.tokens[at]
    if token.types[0] not in ("RBRACE", "RPAR"):
        return None
    want = "LBRACE" if token.types[0] == "RBRACE" else "LPAR"
    if any(opened.type == want for opened in parse.machine.openers()):
        return None
    if token.types[0] == "RBRACE" and parse.closed_for_them:
        parse.closed_for_them -= 1
    else:
        parse.tell(problems.nothing_open(parse.span(token), token.text))
    return at + 1
