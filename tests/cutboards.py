"""Cut boards by their shapes' texts, and every way to make one of another, tried one by one. Knows nothing of compare/.

The rule: what was done to a board lies wholly in what is sawn off, or wholly within one cut that the new board has, or
is the very thing that the new board has there (a hole may also be drilled larger, deeper or right through).

At its own place a board may keep other holes too, plugged: those that don't go through and pockets, in the broad face
behind the good one, 1/8 in or more from all that is new to the board, its sawn edges as well. Such a board is sawn at
one end of its length and width at the most.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import permutations, product

Vec = tuple[Fraction, ...]
End = tuple[int, int]
Lay = tuple[tuple[int, ...], tuple[int, ...]]


@dataclass(frozen=True)
class Work:
    """`lo`, `hi`: no wood is certain within. `at` is the point drilled at, `faces` where from and where to."""

    word: str
    faces: tuple[End, ...]
    at: Vec
    numbers: tuple
    lo: Vec
    hi: Vec


@dataclass(frozen=True)
class Cut:
    kind: str
    stock: str
    size: Vec
    grain: str
    show: End | None
    works: tuple[Work, ...]

    @property
    def volume(self) -> Fraction:
        return self.size[0] * self.size[1] * self.size[2]


# --- reading ---------------------------------------------------------------------------------------------


@cache
def cut(shape: str) -> Cut:
    head, *rest = shape.removeprefix("1 ").split("; ")
    kind, stock, *words = head.split()
    size = tuple(_number(word) for word in words[:5:2])
    grain = words[words.index("grain") + 1] if "grain" in words else ""
    good = [_end(text.split()[1]) for text in rest if text.startswith("good ")]
    works = [_work(text.split(), size) for text in rest if text.split()[0] in ("cut", "hole", "pocket", "mitre")]
    return Cut(kind, stock, size, grain, good[0] if good else None, tuple(works))


def _number(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split("-")), Fraction(0))


def _end(text: str) -> End:
    return "lwt".index(text[-1]), {"+": 1, "-": -1}.get(text[0], 0)


def _work(words: Sequence[str], size: Vec) -> Work:
    said = dict(zip(words[1 + (words[0] != "cut") :], words[2 + (words[0] != "cut") :]))
    if words[0] == "cut":
        ends = [said[axis].split("..") for axis in "lwt"]
        lo, hi = (tuple(_number(end[k]) for end in ends) for k in (0, 1))
        return Work("cut", (), lo, (), lo, hi)
    if words[0] == "mitre":
        return _mitre(_end(words[1]), Fraction(_number(words[2])), _end(said["long"]), size)
    return _bore(words, said, size)


def _mitre(end: End, angle: Fraction, long: End, size: Vec) -> Work:
    assert angle <= 45
    reach = min(size[end[0]], size[long[0]])
    lo, hi = [Fraction(0)] * 3, list(size)
    if end[1] > 0:
        lo[end[0]] = size[end[0]] - reach
    else:
        hi[end[0]] = reach
    return Work("mitre", (end, long), tuple(lo), (angle,), tuple(lo), tuple(hi))


def _bore(words: Sequence[str], said: dict[str, str], size: Vec) -> Work:
    faces = [_end(words[1])] + ([_end(said["toward"])] if "toward" in said else [])
    at = [_number(said[axis]) if axis in said else Fraction(0) for axis in "lwt"]
    for axis, sign in faces:
        if "lwt"[axis] not in said and sign > 0:
            at[axis] = size[axis]
    across = _number(said["dia"])
    deep = None if "through" in words else _number(said["deep"])
    lo, hi = [x - across / 2 for x in at], [x + across / 2 for x in at]
    axis, sign = faces[0]
    ends = (Fraction(0), size[axis]) if deep is None else (at[axis], at[axis] - sign * deep)
    lo[axis], hi[axis] = min(ends), max(ends)
    if len(faces) > 1:  # a pocket slants towards its edge: nowhere near as far as this
        out, end = faces[1]
        ends = at[out], at[out] - end * 2 * (size[axis] + across)
        lo[out], hi[out] = min(ends), max(ends)
    return Work(words[0], tuple(faces), tuple(at), (across, deep), tuple(lo), tuple(hi))


# --- trying ----------------------------------------------------------------------------------------------


def lays(old: Cut) -> Iterator[Lay]:
    """All turns of a sheet that leave its broad faces broad, and of a stick that leave its length along."""
    for axes in permutations(range(3)):
        still = axes[2] == 2 if old.kind == "sheet" else axes[0] == 0
        if not still or (old.kind == "stick" and axes[2] != 2 and old.size[1] != old.size[2]):
            continue
        odd = sum(axes[i] > axes[j] for i in range(3) for j in range(i + 1, 3)) % 2
        for signs in product((1, -1), repeat=3):
            if (signs[0] * signs[1] * signs[2] < 0) == bool(odd):
                yield axes, signs


def laid(old: Cut, lay: Lay) -> Cut:
    axes, signs = lay

    def point(p: Vec) -> Vec:
        return tuple(p[a] if s > 0 else old.size[a] - p[a] for a, s in zip(axes, signs))

    def end(e: End) -> End:
        new = axes.index(e[0])
        return new, e[1] * signs[new]

    def work(w: Work) -> Work:
        ends = point(w.lo), point(w.hi)
        lo, hi = tuple(map(min, *ends)), tuple(map(max, *ends))
        return Work(w.word, tuple(map(end, w.faces)), point(w.at), w.numbers, lo, hi)

    size = tuple(old.size[a] for a in axes)
    return Cut(old.kind, old.stock, size, old.grain, old.show and end(old.show), tuple(map(work, old.works)))


BETWEEN = Fraction(1, 8)


def good(old: Cut, new: Cut, lay: Lay, offset: Sequence[Fraction]) -> bool:
    """Whether the new board can be had of the old one, so laid, with its low corner at `offset`."""
    return left_over(old, new, lay, offset) == []


def plugs(old: Cut, new: Cut, lay: Lay, offset: Sequence[Fraction]) -> int | None:
    """How many holes must be plugged for that; None if it won't do."""
    left = left_over(old, new, lay, offset)
    if left is None or new.show is None or new.show[0] != 2:
        return None
    turned = laid(old, lay)
    slack = [a - b for a, b in zip(turned.size, new.size)]
    if any(0 < offset[k] < slack[k] for k in (0, 1)):
        return None
    kept = [shifted(work, offset) for work in turned.works]
    ahead = [work for work in new.works if work not in kept]
    for hole in (shifted(work, offset) for work in left):
        if hole.word not in ("hole", "pocket") or hole.faces[0] != (2, -new.show[1]):
            return None
        if hole.word == "hole" and hole.numbers[1] is None:
            return None
        if any(offset[k] > 0 and hole.lo[k] < BETWEEN for k in (0, 1)):
            return None
        if any(offset[k] < slack[k] and new.size[k] - hole.hi[k] < BETWEEN for k in (0, 1)):
            return None
        if any(max(max(c - b, a - d) for a, b, c, d in _sides(hole, work)) < BETWEEN for work in ahead):
            return None
    return len(left)


def _sides(one: Work, other: Work):
    return zip(one.lo, one.hi, other.lo, other.hi)


def left_over(old: Cut, new: Cut, lay: Lay, offset: Sequence[Fraction]) -> list[Work] | None:
    """What of the old board's work would show or clash, as that lies; None where the new board isn't within it."""
    if (old.kind, old.stock) != (new.kind, new.stock):
        return None
    turned = laid(old, lay)
    inside = all(0 <= o and o + n <= s for o, n, s in zip(offset, new.size, turned.size))
    if not inside or turned.size[2] != new.size[2]:
        return None
    if new.grain == old.grain == "length" and lay[0][0] != 0:
        return None
    if new.show and turned.show and turned.show == (new.show[0], -new.show[1]):
        return None
    return [work for work in turned.works if not _harmless(shifted(work, offset), turned, new, offset)]


def shifted(work: Work, offset: Sequence[Fraction]) -> Work:
    def point(p: Vec) -> Vec:
        return p[0] - offset[0], p[1] - offset[1], p[2]

    return Work(work.word, work.faces, point(work.at), work.numbers, point(work.lo), point(work.hi))


def _harmless(work: Work, turned: Cut, new: Cut, offset: Sequence[Fraction]) -> bool:
    """`work` in the new board's place."""
    lo, hi = tuple(max(Fraction(0), x) for x in work.lo), tuple(map(min, new.size, work.hi))
    if any(a >= b for a, b in zip(lo[:2], hi[:2])):
        return True
    for other in new.works:
        if other.word == "cut" and all(a >= c and b <= d for a, b, c, d in zip(lo[:2], hi[:2], other.lo, other.hi)):
            if work.lo[2] >= other.lo[2] and work.hi[2] <= other.hi[2]:
                return True
        if other.word == work.word != "cut" and _very(work, other, turned, new, offset):
            return True
    return False


def _very(work: Work, other: Work, turned: Cut, new: Cut, offset: Sequence[Fraction]) -> bool:
    if work.word == "mitre":
        axes = [axis for axis, _ in work.faces if axis < 2]
        end = work.faces[0]
        far = turned.size[end[0]] - new.size[end[0]] if end[1] > 0 else 0
        flush = offset[end[0]] == far and all(turned.size[a] == new.size[a] for a in axes if a != end[0])
        return work.faces == other.faces and work.numbers == other.numbers and flush
    along = other.faces[0][0]
    if work.faces[0][0] != along or any(work.at[k] != other.at[k] for k in range(3) if k != along):
        return False
    if work.faces == other.faces and work.numbers == other.numbers:
        return work.faces[0][1] == 0 or work.at == other.at
    (across, deep), (wide, far) = work.numbers, other.numbers
    if work.word != "hole" or across > wide:
        return False
    if far is None:
        return along == 2
    return deep is not None and deep <= far and work.faces == other.faces and work.at == other.at


def ways(old: Cut, new: Cut) -> Iterator[tuple[Lay, Vec]]:
    """All of them, at every place where anything of the one comes to lie on anything of the other."""
    for lay in lays(old):
        turned = laid(old, lay)
        slack = [a - b for a, b in zip(turned.size, new.size)]
        if min(slack) < 0 or slack[2]:
            continue
        places = [sorted(x for x in _differences(turned, new, k) if 0 <= x <= slack[k]) for k in (0, 1)]
        for x, y in product(*places):
            if good(old, new, lay, (x, y, Fraction(0))):
                yield lay, (x, y)


def _differences(old: Cut, new: Cut, axis: int) -> set[Fraction]:
    before, now = (_lines(board, axis) for board in (old, new))
    return {a - b for a in before for b in now}


def _lines(board: Cut, axis: int) -> set[Fraction]:
    ends = {Fraction(0), board.size[axis]}
    return ends.union(*({work.lo[axis], work.hi[axis], work.at[axis]} for work in board.works))


def fits(old: str, new: str) -> bool:
    return any(True for _ in ways(cut(old), cut(new)))


def fits_plugged(old: str, new: str) -> bool:
    """Whether it keeps its place, if that is its own."""
    one, other = cut(old), cut(new)
    for lay in lays(one):
        slack = [a - b for a, b in zip(laid(one, lay).size, other.size)]
        if any(plugs(one, other, lay, (x, y, Fraction(0))) is not None for x in (0, slack[0]) for y in (0, slack[1])):
            return True
    return False


def most_saved(old: Sequence[str], new: Sequence[str], own: Container[tuple[int, int]] = ()) -> Fraction:
    """The most wood that cut boards may be put to use again, one board for one, every pairing tried. `own`: which of
    the old and new boards are one board in both."""

    def may(i: int, j: int) -> bool:
        return fits(old[i], new[j]) or ((i, j) in own and fits_plugged(old[i], new[j]))

    table = [[cut(b).volume if may(i, j) else None for j, b in enumerate(new)] for i in range(len(old))]

    @cache
    def best(i: int, taken: int) -> Fraction:
        if i == len(old):
            return Fraction(0)
        found = best(i + 1, taken)
        for j, saved in enumerate(table[i]):
            if saved is not None and not taken >> j & 1:
                found = max(found, saved + best(i + 1, taken | 1 << j))
        return found

    return best(0, 0)


def with_stock(shape: str, stock: str) -> str:
    """The shape with another name for its stock."""
    return re.sub(r"^(1 (?:sheet|stick)) \S+", rf"\1 {stock}", shape)
