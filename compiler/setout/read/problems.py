"""What can be wrong with a spec's text, in the builder's words."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error
from setout.diagnostics.suggest import did_you_mean
from setout.read.limits import MAX_BYTES, MAX_DIGITS, MAX_MISTAKES, MAX_NAME
from setout.source import Span
from setout.units import exact

# --- the file as a whole ------------------------------------------------------------------------------


def not_text(name: str, line: int, what: str) -> Diagnostic:
    return error(
        "rod101",
        f"{name} is not a text file: line {line} holds {what}",
        None,
        help="a spec is plain text, saved as UTF-8; a word processor's file must be saved as plain text first",
    )


def file_too_large(name: str, size: int) -> Diagnostic:
    return error(
        "rod102",
        f"{name} holds {size:,} bytes or more; a spec may have {MAX_BYTES:,}",
        None,
        help="is it the right file? A long spec can be split, and the pieces read with `include`",
    )


def text_too_large(span: Span, size: int) -> Diagnostic:
    return error(
        "rod102",
        f"The spec is {size:,} characters long; it may have {MAX_BYTES:,}",
        span,
        help="is it the right file? A long spec can be split, and the pieces read with `include`",
    )


def nothing_there(span: Span) -> Diagnostic:
    return error(
        "rod103",
        "There is nothing in this spec",
        span,
        help="the shortest one lists some boards: `stock ply { sheet 96 x 48 x 3/4 }` and "
        "`part shelf of ply { size 30 x 11-1/4; count 4 }`",
    )


def too_many_tokens(span: Span, most: int) -> Diagnostic:
    return error(
        "rod102",
        f"The spec has more than {most:,} words and numbers",
        span,
        "reading stopped here",
        help="split it into several files, and read them with `include`",
    )


def too_deep(span: Span, most: int) -> Diagnostic:
    return error(
        "rod106",
        f"More than {most} braces and parentheses are open here",
        span,
        "one too many",
        help="close those that are done with, or name a part of the sum with `let`",
    )


def too_many_operators(span: Span, most: int) -> Diagnostic:
    return error(
        "rod107",
        f"This statement has more than {most} operators",
        span,
        "reading stopped here",
        help="work it out in steps, each with a name: `let a = …`",
    )


def too_many_mistakes(at: Span | None) -> Diagnostic:
    return error(
        "rod108",
        f"There are more than {MAX_MISTAKES} mistakes; the rest are not shown",
        at,
        help="mend the first ones: some of the others may go with them",
    )


def merge_conflict(first: Span, rest: Sequence[Span]) -> Diagnostic:
    return error(
        "rod116",
        "A merge conflict stands here",
        first,
        "Git could not tell which of two versions is meant",
        *(Label(span, "the conflict goes on here") for span in rest[:-1]),
        *(Label(span, "and ends here") for span in rest[-1:]),
        help="keep the lines that are meant, from the one version or the other, and take these lines out",
    )


# --- characters ------------------------------------------------------------------------------------------


def odd_character(span: Span, char: str, name: str) -> Diagnostic:
    if char == "^":
        return error("rod104", "`^` is not in the language: there are no powers", span, help="multiply: `a * a`")
    if char in "“”„«»‘’":
        return _character(span, char, "a curly quotation mark", 'use the straight one, `"`')
    if unicodedata.numeric(char, 0.0) % 1:
        out = _spelt(char)
        return _character(span, char, "a fraction in one character", f"write it out, as in `{out}` or `23-{out}`")
    return _character(span, char, name, "take it out; if it belongs to a name, put the text in quotes")


def swapped_character(span: Span, char: str, straight: str) -> Diagnostic:
    return _character(span, char, "not on the keyboard", f"write `{straight}`")


def _character(span: Span, char: str, what: str, mend: str) -> Diagnostic:
    return error("rod104", f"`{char}` can't be read here", span, what, help=mend)


def _spelt(char: str) -> str:
    return exact(Fraction(unicodedata.numeric(char)).limit_denominator(64))


def curly_quotes(span: Span, inside: str) -> Diagnostic:
    return error(
        "rod104", "The quotation marks are curly ones", span, "not straight", help=f'write `"{_short(inside)}"`'
    )


def invisible(span: Span, char: str) -> Diagnostic:
    return error(
        "rod104",
        f"There is a character here that can't be seen (U+{ord(char):04X})",
        span,
        help="take it out; it may have come along when text was pasted",
    )


def unclosed_text(span: Span) -> Diagnostic:
    return error(
        "rod105",
        "The text has no closing quotation mark",
        span,
        "begins here",
        help='end it with `"`; a quotation mark within a text is written `\\"`',
    )


# --- numbers ---------------------------------------------------------------------------------------------


def improper(span: Span, text: str, whole: int, rest: Fraction) -> Diagnostic:
    return error(
        "rod120",
        f"`{text}`: the fraction of a mixed number must be less than 1",
        span,
        help=f"for the mixed number write `{exact(whole + rest)}`; to subtract, put blanks round the minus",
    )


def zero_denominator(span: Span, text: str) -> Diagnostic:
    return error("rod121", f"`{text}` divides by zero", span, help="a fraction needs something under the stroke: `1/2`")


def unknown_unit(span: Span, amount: str, unit: str, known: Sequence[str]) -> Diagnostic:
    said = did_you_mean(unit, known)
    units = ", ".join(known)
    return error(
        "rod122",
        f"`{_short(unit)}` is not a unit that setout knows",
        span,
        help=f"{said + ' ' if said else ''}units are glued to their number, as in `{_short(amount)}mm`: {units}",
    )


def unit_apart(span: Span, amount: str, unit: str) -> Diagnostic:
    return error("rod122", f"The unit `{unit}` stands apart from its number", span, help=f"write `{amount}{unit}`")


def unit_in_words(span: Span, text: str, meant: str) -> Diagnostic:
    return error("rod122", f"`{_short(text)}` is no length", span, "spelled out", help=f"write `{_short(meant)}`")


def by_without_blanks(span: Span, text: str, spaced: str) -> Diagnostic:
    return error("rod115", f"`{text}` is read as one number", span, help=f"put blanks round the x: `{spaced}`")


def by_in_words(span: Span, text: str, one: str, other: str) -> Diagnostic:
    return error("rod111", f"`{text}` is not a word that can stand here", span, help=f"write `{one} x {other}`")


def by_glued(span: Span, text: str) -> Diagnostic:
    return error("rod115", f"`{text}` is read as one word", span, help=f"put blanks round the x: `x {text[1:]}`")


def dash_in_number(span: Span, text: str) -> Diagnostic:
    return error(
        "rod114",
        f"`{text}` is neither a mixed number nor a subtraction",
        span,
        help=f"a mixed number goes on with a fraction, `23-1/4`; to subtract, write `{text.replace('-', ' - ')}`",
    )


def unfinished_feet(span: Span, text: str) -> Diagnostic:
    return error("rod123", f"`{text}` has feet but no mark for the inches", span, help=f'write `{text}"`')


def mixed_apart(span: Span, whole: str, rest: str) -> Diagnostic:
    return error("rod123", "A mixed number is written in one piece", span, help=f"write `{whole}-{rest}`")


def malformed_number(span: Span, text: str) -> Diagnostic:
    return error(
        "rod123",
        f"`{_short(text)}` can't be read as a number",
        span,
        help="numbers are written `12`, `5/8`, `23-1/4`, `1.5`, `600mm` or `3'4-1/2\"`; put blanks round operators",
    )


def too_many_digits(span: Span, digits: int) -> Diagnostic:
    return error(
        "rod124", f"A number of {digits:,} digits is too long", span, help=f"{MAX_DIGITS} digits in a row are the most"
    )


# --- names and words -------------------------------------------------------------------------------------


def minus_blanks(span: Span, subtracts: bool, sides: tuple[str, str]) -> Diagnostic:
    if subtracts:
        return error(
            "rod114",
            "A minus needs a blank on both sides",
            span,
            help=f"write `{_short(sides[0])} - {_short(sides[1])}`; without blanks, `23-1/4` is 23¼",
        )
    return error("rod114", "A minus sign is glued to its number", span, help="write `-3`, not `- 3`")


def dash_in_name(span: Span, text: str) -> Diagnostic:
    return error(
        "rod114",
        f"`{_short(text)}` is neither a name nor a subtraction",
        span,
        help=f"a name is written `{_short(text.replace('-', '_'))}`; to subtract, `{_short(text.replace('-', ' - '))}`",
    )


def dotted_name(span: Span, text: str) -> Diagnostic:
    return error(
        "rod131",
        f"`{_short(text)}` can't be given as a name: it has a dot in it",
        span,
        help=f"a dot leads from one thing into another; write `{_short(text.replace('.', '_'))}`",
    )


def name_too_long(span: Span, length: int) -> Diagnostic:
    return error("rod131", f"A name of {length:,} characters is too long", span, help=f"{MAX_NAME} are the most")


def misspelt(span: Span, text: str, near: Sequence[str]) -> Diagnostic:
    meant = " or ".join(f"`{word}`" for word in near)
    return error("rod111", f"`{_short(text)}` is not a word that can stand here", span, help=f"did you mean {meant}?")


# --- statements ------------------------------------------------------------------------------------------


def unexpected(span: Span, found: str, expected: str, after: str, listed: str = "") -> Diagnostic:
    """`listed`: how the two words would go on as a list."""
    behind = f" after {after}" if after else ""
    help = f"is a comma missing? `{_short(listed)}`" if listed else ""
    return error("rod110", f"Expected {expected}{behind}", span, f"found {found}", help=help)


def run_together(span: Span, found: str, after: str) -> Diagnostic:
    behind = f" after {after}" if after else ""
    return error(
        "rod110",
        f"Expected the end of the line{behind}",
        span,
        f"found {found}",
        help=f"put {found} on a line of its own, or a `;` before it",
    )


def cannot_begin(span: Span, found: str, words: Sequence[str]) -> Diagnostic:
    return error("rod110", f"{found} can't begin anything here", span, help=f"what can stand here: {', '.join(words)}")


def no_such_function(span: Span, name: str, known: Sequence[str]) -> Diagnostic:
    said = did_you_mean(name, known)
    return error(
        "rod111",
        f"There is no function `{_short(name)}`",
        span,
        help=f"{said + ' ' if said else ''}the functions are {', '.join(known)}",
    )


def depth_unsaid(span: Span, method: str, amount: str) -> Diagnostic:
    return error(
        "rod110",
        f"Expected `depth` after `{method}`",
        span,
        f"found `{_short(amount)}`",
        help=f"write `{method} depth {_short(amount)}`",
    )


def not_closed(opened: Span, mark: str, at: Span, found: str) -> Diagnostic:
    close = {"{": "}", "(": ")"}[mark]
    return error(
        "rod112",
        f"This `{mark}` is not closed",
        opened,
        "opened here",
        Label(at, f"{found} comes before its `{close}`"),
        help=f"put a `{close}` where it ends",
    )


def nothing_open(span: Span, mark: str) -> Diagnostic:
    return error(
        "rod113",
        f"There is nothing for this `{mark}` to close",
        span,
        help="take it out, or look above for one too many",
    )


def said_twice(span: Span, what: str, before: Span) -> Diagnostic:
    return error(
        "rod130",
        f"`{what}` is said twice",
        span,
        "said again",
        Label(before, "first said here"),
        help="keep the one that is meant",
    )


def one_end(span: Span, axis: str, kind: str) -> Diagnostic:
    missing = "to …" if kind == "from" else "from …"
    return error(
        "rod133",
        f"One end of `{axis}` is missing",
        span,
        "says one end only",
        help=f"say the other end as well (`{missing}`), or a length: `{axis} 24 {kind} …`",
    )


def fit_nowhere(span: Span) -> Diagnostic:
    return error(
        "rod134",
        "It isn't said where this hardware goes",
        span,
        help="say `under bottom_panel`, `on shelf` or `on door.front` in the braces",
    )


def _short(text: str, most: int = 40) -> str:
    return text if len(text) <= most else text[: most - 1] + "…"
