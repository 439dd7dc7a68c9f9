"""The outline that a shape's text tells of: the way back, for held shapes whose measures have since been taken."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache

from setout.piece.numbers import FORM, form
from setout.piece.outline import End, Item, Outline, Skeleton
from setout.piece.shape import AXES, VERSION, shape

# Patterns are left to `re` to compile when first used: many a run has no marks to read.
_NAME = r"[^\W\d]\w*"
_END = rf"([+-]?[{AXES}])"
_HEADER = rf"(sheet|stick) ({_NAME}) ({FORM}) x ({FORM}) x ({FORM})(?: grain (length|any|none))?"
_VARYING = rf"varies ({_NAME}(?: {_NAME})*): "
_GOOD = rf"good {_END}"
_CUT = "cut " + " ".join(rf"{a} ({FORM})\.\.({FORM})" for a in AXES)
_BORE = (
    rf"(hole|pocket) {_END}(?: at((?: [{AXES}] {FORM})+))?(?: toward {_END})? dia ({FORM}) (?:deep ({FORM})|through)"
)
_MITRE = rf"mitre {_END} ({FORM}) long {_END}"
_BAND = rf"band {_END} ({_NAME})( added)?"
_PLACE = rf" ([{AXES}]) ({FORM})"

Rows = list[Mapping[str, Fraction]]
_ZERO: Mapping[str, Fraction] = {"": Fraction(0)}


@lru_cache(maxsize=4096)
def parse_shape(text: str) -> Outline | None:
    """The outline of a shape's text (without its version), lying in its own frame; None when it is not such a text."""
    head, *rest = text.split("; ")
    found = re.fullmatch(_HEADER, head)
    if found is None or (found[1] == "sheet") != (found[6] is not None):
        return None
    try:
        rows: Rows = [form(found[i]) for i in (3, 4, 5)]
        show, items = _details(rest, rows)
    except (ValueError, ZeroDivisionError):
        return None
    grain = found[6] or ""
    long = None if grain in ("any", "none") else 0
    return _outline(Skeleton(found[1], found[2], grain, 2, long, show, tuple(items)), rows)


def bare(text: str) -> str:
    """An entry's shape without its version."""
    return text.removeprefix(f"{VERSION} ")


def is_shape(text: str) -> bool:
    """Whether an entry's shape is one that setout wrote: any slip of the pen is told by writing it again."""
    if not text.startswith(f"{VERSION} "):
        return False
    told = re.match(_VARYING, bare(text))
    if told is None:
        return _is_plain(bare(text))
    head, *scenes = bare(text)[told.end() :].split(" | ")
    return bool(scenes) and re.fullmatch(_HEADER, head.replace("?", "0")) is not None and all(map(_is_plain, scenes))


def measures_of(text: str) -> frozenset[str]:
    """The measures that an entry's shape hangs on."""
    told = re.match(_VARYING, bare(text))
    if told:
        return frozenset(told[1].split())
    outline = parse_shape(bare(text))
    return frozenset(outline.measures if outline else ())


def evaluated(outline: Outline, taken: Mapping[str, Fraction]) -> Outline:
    """The outline with those measures replaced by their values."""
    first, *slopes = outline.columns
    constants, kept, names = list(first), [], []
    for name, column in zip(outline.measures, slopes):
        if name in taken:
            constants = [c + k * taken[name] for c, k in zip(constants, column)]
        else:
            names.append(name)
            kept.append(column)
    return Outline(outline.skeleton, (tuple(constants), *kept), tuple(names))


def _is_plain(text: str) -> bool:
    outline = parse_shape(text)
    return outline is not None and shape(outline).text == text


def _details(words: list[str], rows: Rows) -> tuple[End | None, list[Item]]:
    show, items = None, []
    for i, word in enumerate(words):
        good = re.fullmatch(_GOOD, word)
        if good and i == 0:
            show = _end(good[1])
        else:
            items.append(_item(word, rows))
    return show, items


def _item(word: str, rows: Rows) -> Item:
    if found := re.fullmatch(_CUT, word):
        rows.extend(form(found[2 * i + 1 + high]) for high in (0, 1) for i in range(3))
        return Item("cut", (), 2, 0)
    if found := re.fullmatch(_MITRE, word):
        rows.append(form(found[2]))
        return Item("mitre", (_end(found[1]), _end(found[3])), 0, 1)
    if found := re.fullmatch(_BAND, word):
        return Item(f"band {found[2]}{found[3] or ''}", (_end(found[1]),), 0, 0)
    found = re.fullmatch(_BORE, word)
    if found is None or (found[1] == "pocket") != (found[4] is not None):
        raise ValueError(word)
    said = {AXES.index(a): form(value) for a, value in re.findall(_PLACE, found[3] or "")}
    rows.extend(said.get(axis, _ZERO) for axis in range(3))
    numbers = [form(text) for text in (found[5], found[6]) if text]
    rows.extend(numbers)
    faces = tuple(_end(text) for text in (found[2], found[4]) if text)
    return Item(found[1], faces, 1, len(numbers), tuple(a for a in range(3) if a not in said))


def _end(text: str) -> End:
    return AXES.index(text[-1]), {"+": 1, "-": -1}.get(text[0], 0)


def _outline(skeleton: Skeleton, rows: Rows) -> Outline:
    names = tuple(sorted({name for row in rows for name in row if name}))
    columns = tuple(tuple(row.get(name, Fraction(0)) for row in rows) for name in ("", *names))
    return Outline(skeleton, columns, names)
