"""A single word or mark put right. Nothing is lost, but where the statement is skipped."""

from __future__ import annotations

from dataclasses import replace

from setout.diagnostics.suggest import nearest
from setout.read import problems
from setout.read.parse import Parse
from setout.read.repair.skipping import skip
from setout.units import known_units


def bad_character(parse: Parse, at: int) -> int | None:
    fault = parse.tokens[at].fault
    if fault is None:
        return None
    parse.tell(fault)
    return skip(parse, at)


def minus(parse: Parse, at: int) -> int | None:
    """`w-1/2`, `a -b`, `- 3`."""
    token = parse.tokens[at]
    if token.text != "-" or "STRING" in token.types:
        return None
    for terminal in ("MINUS", "NEGATIVE"):
        if parse.machine.accepts(terminal):
            parse.tell(problems.minus_blanks(parse.span(token), terminal == "MINUS"))
            parse.machine.feed(token, terminal)
            return at + 1
    before, behind = parse.before, parse.tokens[at + 1]
    if token.types != ("GLUED",) or before is None:
        return None
    text = f"{before.text}-{behind.text if behind.start == token.end else ''}"
    parse.tell(problems.dash_in_name(parse.span(before).to(parse.span(token)), text))
    return skip(parse, at)


def glued_by(parse: Parse, at: int) -> int | None:
    """`30 x11`: the x wants a blank behind it too."""
    token = parse.tokens[at]
    if not (token.text[:1] in "xX" and token.text[1:2].isdigit() and parse.machine.accepts("X")):
        return None
    parse.tell(problems.by_glued(parse.span(token), token.text))
    return skip(parse, at)


def unit_apart(parse: Parse, at: int) -> int | None:
    """`18 mm`."""
    token, before = parse.tokens[at], parse.before
    if not (before and before.number and not before.number.unit and token.text in known_units):
        return None
    parse.tell(problems.unit_apart(parse.span(before).to(parse.span(token)), before.text, token.text))
    _, start, end = parse.machine.values[-1]
    parse.machine.values[-1] = (replace(before, number=replace(before.number, unit=token.text)), start, end)
    return at + 1


def no_such_function(parse: Parse, at: int) -> int | None:
    """`sqrt(4)`."""
    token, before = parse.tokens[at], parse.before
    if token.types != ("LPAR",) or not before or before.type != "PATH" or not parse.machine.accepts("STAR"):
        return None
    parse.tell(problems.no_such_function(parse.span(before), before.text, parse.machine.table.functions))
    return skip(parse, at)


def rests(parse: Parse, at: int) -> int | None:
    """`block rest on board`: the word to be put right is the next one."""
    following = parse.tokens[at + 1] if at + 1 < len(parse.tokens) else parse.tokens[at]
    rests = parse.machine.table.spelling["RESTS"]
    if following.types[-1] != "PATH" or not parse.machine.accepts("SUBJECT") or not nearest(following.text, [rests]):
        return None
    parse.machine.feed(parse.tokens[at], "SUBJECT")
    return at + 1


def misspelt(parse: Parse, at: int) -> int | None:
    token = parse.tokens[at]
    if token.types[-1] != "PATH":
        return None
    can = {parse.machine.table.spelling[t]: t for t in parse.machine.expected() if t in parse.machine.table.spelling}
    words = [word for word in can if word[0].isalpha()]
    near = nearest(token.text, words)
    is_other_word = token.text in parse.machine.table.keywords and near != (f"{token.text}s",)
    if not near or is_other_word:
        return None
    parse.tell(problems.misspelt(parse.span(token), token.text, near))
    parse.machine.feed(replace(token, text=near[0]), can[near[0]])
    return at + 1
