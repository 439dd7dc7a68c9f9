"""Diagnostics are data: a code, a severity, a message, places, and what to do about it."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import Generic, TypeVar

from setout.source import Span

T = TypeVar("T")


class Severity(Enum):
    """ERROR: nothing is written. WARNING: a foreman would say something. NOTE: worth knowing."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True)
class Label:
    """What is the matter at this very place. `text` may be empty."""

    span: Span
    text: str = ""


@dataclass(frozen=True)
class Diagnostic:
    """One finding. `message` is a short phrase, `label` the place, `help` what to write instead."""

    code: str
    severity: Severity
    message: str
    label: Label | None
    others: tuple[Label, ...] = ()
    help: str = ""


@dataclass(frozen=True)
class Checked(Generic[T]):
    """What a stage could build, and what it found. `value` is None when nothing could be built."""

    value: T | None
    diagnostics: tuple[Diagnostic, ...] = field(default=())

    @property
    def failed(self) -> bool:
        return any(d.severity is Severity.ERROR for d in self.diagnostics)


def _maker(severity: Severity):
    def make(code: str, message: str, at: Span | None, says: str = "", *others: Label, help: str = "") -> Diagnostic:
        label = Label(at, says) if at is not None else None
        return Diagnostic(code, severity, message, label, others, help)

    return make


error = _maker(Severity.ERROR)
warning = _maker(Severity.WARNING)
note = _maker(Severity.NOTE)
