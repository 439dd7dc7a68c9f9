"""Demand-driven evaluation on a stack of its own, so that a long chain of references never meets Python's own limit.

A question is a key. A rule answers it as a generator: it yields an `Ask` for each thing it needs, returns the answer.
An answer of None is poison: something went wrong and has been reported, and what depends on it stays silent.
"""

from __future__ import annotations

from collections.abc import Callable, Generator
from typing import Any, NamedTuple

from setout.resolve.evaluate import Unworkable
from setout.source import Span

Key = tuple[Any, ...]


class Ask(NamedTuple):
    """A question put by a rule, and the place in the spec that makes it necessary."""

    key: Key
    span: Span | None


Work = Generator[Ask, Any, Any]


class Poisoned(Exception):
    """What is needed could not be worked out, which has been reported already. Caught by the engine alone."""


class Exhausted(Exception):
    """The job takes more steps than any real one. Caught by the stage."""


class Engine:
    """Answers keys, each at most once. `poisoned` tells whether any couldn't be answered.

    `on_loop` is told of a chain of questions that ends where it began, `on_stuck` of what has no worth.
    """

    def __init__(
        self,
        begin: Callable[[Key], Work],
        on_loop: Callable[[tuple[Ask, ...]], None],
        on_stuck: Callable[[Unworkable], None],
        steps: int,
    ) -> None:
        self._begin = begin
        self._on_loop = on_loop
        self._on_stuck = on_stuck
        self.steps = steps
        self.poisoned = False
        self._known: dict[Key, Any] = {}

    def answer(self, key: Key) -> Any:
        """The answer to `key`, or None when it could not be worked out. Raises Exhausted past the bound of steps."""
        known = self._known
        if key in known:
            return known[key]
        chain = [Ask(key, None)]
        work = {key: self._start(key)}
        reply: Any = None
        while chain:
            current = chain[-1].key
            try:
                ask = work[current].send(reply)
            except StopIteration as done:
                reply = done.value
            except Poisoned:
                reply = None
            except Unworkable as stuck:
                self._on_stuck(stuck)
                reply = None
            else:
                if ask.key not in known and ask.key not in work:
                    chain.append(ask)
                    work[ask.key] = self._start(ask.key)
                    reply = None
                elif ask.key in known:
                    reply = known[ask.key]
                else:
                    self._loop(chain, ask)
                    reply = None
                continue
            chain.pop()
            del work[current]
            known[current] = reply
            self.poisoned = self.poisoned or reply is None
        return reply

    def _start(self, key: Key) -> Work:
        self.steps -= 1
        if self.steps < 0:
            raise Exhausted
        return self._begin(key)

    def _loop(self, chain: list[Ask], last: Ask) -> None:
        first = next(i for i, ask in enumerate(chain) if ask.key == last.key)
        self._on_loop((*chain[first + 1 :], last))


def need(*key: Any, span: Span | None = None) -> Work:
    """The answer to `key`, inside a rule. Raises Poisoned when there is none."""
    got = yield Ask(key, span)
    if got is None:
        raise Poisoned
    return got
