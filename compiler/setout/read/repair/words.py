"""A single word or mark put right. Nothing is lost, but where the statement is skipped."""

from __future__ import annotations

from dataclasses import replace

from setout.diagnostics.suggest import nearest
from setout.read import problems
from setout.read.parse import Parse
from setout.read.repair.skipping import skip
from setout.read.repair.synonyms import FILLERS, MEANT, UNITS
from setout.read.tokens import Token
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
            parse.tell(problems.minus_blanks(parse.span(token), terminal == "MINUS", _subtracted(parse, at)))
            parse.machine.feed(token, terminal)
            return at + 1
    before, behind = parse.before, parse.tokens[at + 1]
    if token.types != ("GLUED",) or before is None:
        return None
    text = f"{before.text}-{behind.text if behind.start == token.end else ''}"
    parse.tell(problems.dash_in_name(parse.span(before).to(parse.span(token)), text))
    return skip(parse, at)


def _subtracted(parse: Parse, at: int) -> tuple[str, str]:
    """What stands before and behind the minus, where that is a number or a name."""
    before, behind = parse.before, parse.tokens[at + 1]
    sides = (before.text if before else "", behind.text)
    return sides if all(side[:1].isalnum() for side in sides) else ("w", "1/2")


def mixed_apart(parse: Parse, at: int) -> int | None:
    """`3 1/2`: a mixed number goes in one piece."""
    token, before = parse.tokens[at], parse.before
    if not (before and before.number and token.number and before.text.isdigit() and not token.first):
        return None
    if not ("/" in token.text and token.text[0].isdigit() and "-" not in token.text and 0 < token.number.value < 1):
        return None
    where = parse.span(before).to(parse.span(token))
    parse.tell(problems.mixed_apart(where, before.text, token.text))
    number = replace(token.number, value=before.number.value + token.number.value, span=where)
    _, start, end = parse.machine.values[-1]
    parse.machine.values[-1] = (replace(before, number=number), start, end)
    return at + 1


def depth_unsaid(parse: Parse, at: int) -> int | None:
    """`dado 1/4`."""
    token, before = parse.tokens[at], parse.before
    if not (before and token.number and before.text in ("dado", "rabbet", "groove") and parse.machine.accepts("DEPTH")):
        return None
    parse.tell(problems.depth_unsaid(parse.span(token), before.text, token.text))
    parse.machine.feed(Token(("DEPTH",), "depth", token.start, token.start), "DEPTH")
    return at


def everyday(parse: Parse, at: int) -> int | None:
    """`below worktop`, `96 by 48`: the grammar has another word for it."""
    token = parse.tokens[at]
    meant = MEANT.get(token.text)
    if meant is None or "STRING" in token.types:
        return None
    terminal = parse.machine.table.literals.get(meant)
    if terminal is None or not parse.machine.accepts(terminal):
        return None
    after = parse.tokens[at + 1]
    filler = after.text in FILLERS and not after.first
    written = f"{token.text} {after.text}" if filler else token.text
    span = parse.span(token).to(parse.span(after)) if filler else parse.span(token)
    if meant == "x" and parse.before and parse.before.number and after.number:
        parse.tell(problems.by_in_words(span, written, parse.before.text, after.text))
    else:
        parse.tell(problems.misspelt(span, written, (meant,)))
    parse.machine.feed(replace(token, text=meant), terminal)
    return at + 1 + filler


def glued_by(parse: Parse, at: int) -> int | None:
    """`30 x11`: the x wants a blank behind it too."""
    token = parse.tokens[at]
    if not (token.text[:1] in "xX" and token.text[1:2].isdigit() and parse.machine.accepts("X")):
        return None
    parse.tell(problems.by_glued(parse.span(token), token.text))
    return skip(parse, at)


def unit_in_words(parse: Parse, at: int) -> int | None:
    """`4 feet 6`, `6 inches`."""
    token, before = parse.tokens[at], parse.before
    unit = UNITS.get(token.text)
    if not (unit and before and before.number and not before.number.unit):
        return None
    value, meant, end = before.number.value, before.text + unit, at
    after = parse.tokens[at + 1]
    if unit == "ft" and after.number and not after.first and before.text.isdigit():
        end = at + 2 if UNITS.get(parse.tokens[at + 2].text) == "in" else at + 1
        inches = after.text.rstrip('"')
        value, unit, meant = value * 12 + after.number.value, "in", f"{before.text}'{inches}\""
    elif token.text in known_units:
        return None  # `4 ft`: only apart
    where = parse.span(before).to(parse.span(parse.tokens[end]))
    parse.tell(problems.unit_in_words(where, f"{before.text} {_spoken(parse, at, end)}", meant))
    _, start, stop = parse.machine.values[-1]
    number = replace(before.number, value=value, unit=unit, span=where)
    parse.machine.values[-1] = (replace(before, number=number), start, stop)
    return end + 1


def _spoken(parse: Parse, at: int, end: int) -> str:
    return " ".join(token.text for token in parse.tokens[at : end + 1])


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
