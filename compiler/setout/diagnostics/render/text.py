"""Diagnostics for a terminal: where, what, the line with the place underlined, what to do."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from setout.diagnostics.model import Diagnostic, Label, Severity
from setout.diagnostics.render.line import excerpt, safe
from setout.source import Source

_COLOURS = {Severity.ERROR: "31", Severity.WARNING: "33", Severity.NOTE: "36"}


def render_text(found: Iterable[Diagnostic], sources: Mapping[str, Source], colour: bool = False) -> str:
    """All of them, then a line that counts them; "" when there are none. Colour only repeats what the words say.

    What stands in `sources` is quoted; a place in another file is only named.
    """
    found = tuple(found)
    if not found:
        return ""
    blocks = ["\n".join(_block(d, sources, colour)) for d in found]
    return "\n\n".join([*blocks, summary(found)]) + "\n"


def summary(found: Iterable[Diagnostic]) -> str:
    """`2 errors, 1 warning`."""
    severities = [d.severity for d in found]
    counts = [(severities.count(s), s.value) for s in Severity]
    return ", ".join(f"{n} {word}{'s' if n != 1 else ''}" for n, word in counts if n) or "no errors"


def _block(d: Diagnostic, sources: Mapping[str, Source], colour: bool) -> list[str]:
    labels = ([d.label] if d.label else []) + list(d.others)
    margin = max((len(str(_line(label, sources))) for label in labels), default=0) + 1
    message, *more = safe(d.message).split("\n")
    where = f"{_where(d.label, sources)}: " if d.label else ""
    lines = [f"{where}{_painted(d, colour)}: {message}", *("  " + line for line in more)]
    file, number = (d.label.span.file, 0) if d.label else ("", 0)
    for i, label in enumerate(labels):
        source = sources.get(label.span.file)
        if label.span.file != file or (source is None and i):
            lines.append(f"{' ' * margin} in {_where(label, sources)}" + ("" if source else f" {safe(label.text)}"))
            file, number = label.span.file, 0
        if source:
            lines += _quoted(label, source, "^" if label is d.label else "-", margin, number)
            number = _line(label, sources)
        elif not i and label.text:
            lines.append(f"{' ' * margin} = {safe(label.text)}")
    first, *rest = safe(d.help).split("\n")
    if first:
        lines += [f"{' ' * margin} = help: {first}", *(f"{' ' * margin}         {line}" for line in rest)]
    return [line.rstrip() for line in lines]


def _quoted(label: Label, source: Source, mark: str, margin: int, shown: int) -> list[str]:
    """The line and what underlines it; the underline alone when the line stands there already."""
    number, column = source.position(label.span.start)
    last, end_column = source.position(max(label.span.start, label.span.end))
    line = source.line(number)
    end = end_column if last == number else len(line) + 1
    text, before, width = excerpt(line, column - 1, max(end - column, 1))
    said = safe(label.text).replace("\n", " ")
    if last > number and label.span.end > source.line_starts[number]:
        said = f"{said} (to line {last})" if said else f"(to line {last})"
    under = f"{' ' * margin} | {' ' * before}{mark * width} {said}"
    return [under] if number == shown else [f"{number:>{margin}} | {text}", under]


def _where(label: Label, sources: Mapping[str, Source]) -> str:
    source = sources.get(label.span.file)
    name = safe(label.span.file).replace("\n", " ")
    return ":".join([name, *map(str, source.position(label.span.start))]) if source else name


def _line(label: Label, sources: Mapping[str, Source]) -> int:
    source = sources.get(label.span.file)
    return source.position(label.span.start)[0] if source else 0


def _painted(d: Diagnostic, colour: bool) -> str:
    words = f"{d.severity.value} {d.code}"
    return f"\x1b[1;{_COLOURS[d.severity]}m{words}\x1b[0m" if colour else words
