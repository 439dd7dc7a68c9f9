"""From trees of cuts to the order in which a person works: sheets broken down, then batches at one setting of a saw."""

from __future__ import annotations

import heapq
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from setout.plan.cutting.model import Cut, Falls, Setting
from setout.plan.cutting.saws import Way
from setout.plan.cutting.sequence.bench import Bench, Open, settle
from setout.plan.cutting.sequence.breaking import Break, breaking
from setout.plan.cutting.sequence.manner import PLAIN, Manner
from setout.plan.cutting.sequence.model import Blank, Job, other, size
from setout.plan.cutting.sequence.trimming import Start, trims

Key = tuple[str, str, Fraction]
"""Kind of cut, name of the saw, setting: boards that wait under one key are cut in one batch."""


@dataclass(frozen=True)
class Failed:
    """A cut that no saw of the shop can make: the board as it lay, what is cut off it, and the cut."""

    board: Open
    part: Job | Blank
    cut: Cut


class Floor:
    """All boards of the job, the cuts made so far, the settings used."""

    def __init__(self, manner: Manner = PLAIN) -> None:
        self.manner = manner
        self.number = 0
        self.settings: list[Setting] = []
        self.failed: list[Failed] = []
        self._large: list[tuple[int, int, Open]] = []  # boards for the saw that is brought to them
        self._ready: dict[Key, dict[int, Open]] = {}
        self._keys: dict[int, list[Key]] = {}
        self._to_come: Counter[Fraction] = Counter()  # settings that boards not cut out yet will ask for
        self._boards = 0

    def run(self, starts: Iterable[Start]) -> None:
        waiting = list(starts)
        for start in waiting:
            self._expect(start.job)
        for start in waiting:
            self._start(start)
            self._break_down()
        while self._ready:
            key = min(self._ready, key=self._urgency)
            self._batch(key)
            self._break_down()

    # --- boards come and go -------------------------------------------------------------------------------

    def _start(self, start: Start) -> None:
        board = Open(start.bench, start.bench.source.id, *start.corner, *start.sizes, start.job.along, start.job.parts)
        for trim in trims(start):
            self._record(start.bench, replace(trim, number=self.number + 1))
        self._lies(board, start.job)

    def _lies(self, board: Open, job: Job | None = None) -> Falls:
        """A board has come off the saw: what it is, and where it waits."""
        bench, now = board.bench, settle(board)
        if now is None:
            return bench.put_by(board.x, board.y, board.dx, board.dy)
        if isinstance(now, Blank):
            return bench.take(now, board.x, board.y)
        if now.along != board.along or now.parts != board.parts or job is not None:
            self._to_come.subtract(now.settings())
        self._wait(now)
        return Falls("board", "", 0, now.name, now.dx, now.dy)

    def _wait(self, board: Open) -> None:
        self._boards += 1
        if board.to_stop is None:
            board = board.going_on(board.along, board.parts, board.extent >= board.across)
        limits = board.bench.limits
        ways = [way for s in board.settings() if (way := board.fixed(s))]
        if not ways or (limits.heavy(board.dx, board.dy) and any(board.guided(s) for s in board.settings())):
            heapq.heappush(self._large, (board.bench.index, self._boards, board))
            return
        keys = [_key(way) for way in ways]
        self._keys[self._boards] = keys
        for key in keys:
            self._ready.setdefault(key, {})[self._boards] = board

    def _take(self, number: int, key: Key) -> Open:
        board = self._ready[key][number]
        for one in dict.fromkeys(self._keys.pop(number)):
            del self._ready[one][number]
            if not self._ready[one] and one != key:
                del self._ready[one]
        return board

    def _expect(self, job: Job) -> None:
        waiting: list[Job] = [job]
        while waiting:
            one = waiting.pop()
            self._to_come.update({size(part, one.along) for part in one.parts})
            for part in one.parts:
                if isinstance(part, Job):
                    waiting.append(part)
                elif size(part, other(one.along)) < size(one, other(one.along)):
                    self._to_come[size(part, other(one.along))] += 1

    # --- cuts ------------------------------------------------------------------------------------------------

    def _urgency(self, key: Key) -> tuple:
        """What is put off last of all; batches first that nothing more will be added to; rips before crosscuts; one saw
        after the other; the wide before the narrow."""
        kind, saw, setting = key
        return (setting in self.manner.late, self._to_come[setting] > 0, kind != "rip", saw, -setting)

    def _batch(self, key: Key) -> None:
        made: list[int] = []
        while self._ready[key]:
            board = self._take(min(self._ready[key]), key)
            part, way = next((p, w) for p in board.parts if (w := board.fixed(size(p, board.along))) and _key(w) == key)
            made.append(self._cut(board, Break((part,), _without(board.parts, part), way)))
        del self._ready[key]
        self._set(way, tuple(made))

    def _set(self, way: Way, made: tuple[int, ...]) -> None:
        """Cuts made at a setting; the fence stays where it is when it was there for the cuts before."""
        last = self.settings[-1] if self.settings else None
        if last and (last.saw, last.kind, last.setting) == (way.saw, way.kind, way.setting):
            self.settings[-1] = replace(last, cuts=last.cuts + made)
        else:
            self.settings.append(Setting(way.saw, way.kind, way.setting, made))

    def _break_down(self) -> None:
        while self._large:
            board = heapq.heappop(self._large)[2]
            how = breaking(board)
            number = self._cut(board, how)
            if how.way is not None and how.way.kind != "break down":
                self._set(how.way, (number,))

    def _cut(self, board: Open, how: Break) -> int:
        """Cut the parts in `how.low` off the low side of the board in one piece."""
        bench, way = board.bench, how.way
        kerf = way.saw.kerf if way else bench.limits.kerf
        extent = how.extent(board)
        remains = board.extent - extent - kerf
        low = board.piece_of(0, extent, "", how.low)
        high = board.piece_of(extent + kerf, remains, "", how.high) if remains > 0 else None
        near, far = self._named(board, low, high)
        low_falls = self._lies(near)
        high_falls = self._lies(far) if far else None
        start = board.x if board.along == "x" else board.y
        from_far = way is not None and way.reference == "high"
        off, rest = (high_falls, low_falls) if from_far else (low_falls, high_falls)
        assert off is not None
        natural = "crosscut" if board.extent >= board.across else "rip"
        cut = Cut(
            number=self.number + 1,
            source=bench.source.id,
            board=board.name,
            kind=way.kind if way else natural,
            across=board.along,
            setting=way.setting if way else extent,
            at=start + extent,
            cut_length=board.across,
            kerf=kerf,
            saw=way.saw if way else None,
            off=off,
            rest=rest,
            reference="high" if from_far else "low",
        )
        number = self._record(bench, cut)
        if way is None:
            self.failed.append(Failed(board, how.low[0], bench.cuts[-1]))
        return number

    def _named(self, board: Open, low: Open, high: Open | None) -> tuple[Open, Open | None]:
        """The larger of what goes on keeps the board's name, the other one gets a letter."""
        both = [one for one in (low, high) if one is not None and isinstance(settle(one), Open)]
        keeps = max(both, key=lambda one: one.extent, default=None)

        def called(one: Open) -> Open:
            if (one is keeps and one.name == board.name) or all(one is not goes_on for goes_on in both):
                return one
            name = board.name if one is keeps else f"{board.bench.source.id}-{board.bench.letter()}"
            return replace(one, name=name)

        return called(low), called(high) if high else None

    def _record(self, bench: Bench, cut: Cut) -> int:
        self.number += 1
        bench.cuts.append(cut)
        return self.number


def _key(way: Way) -> Key:
    return way.kind, way.saw.name, way.setting


def _without(parts: Sequence[Job | Blank], part: Job | Blank) -> tuple[Job | Blank, ...]:
    at = next(i for i, one in enumerate(parts) if one is part)
    return (*parts[:at], *parts[at + 1 :])
