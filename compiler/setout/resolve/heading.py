"""What `project` says: units, the finest division of the tape, the paper. Each file has its own units."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.read import model as r
from setout.resolve import problems
from setout.units import Style, inches_per

UNITS = {
    **{"inch": "in", "inches": "in", "in": "in", "ft": "ft", "foot": "ft", "feet": "ft"},
    **{"mm": "mm", "millimetre": "mm", "millimetres": "mm", "cm": "cm", "centimetre": "cm", "centimetres": "cm"},
    **{"m": "m", "metre": "m", "metres": "m"},
}
OFFERED = ("inch", "ft", "mm", "cm", "m")
PAPERS = ("letter", "a4")
_MM = inches_per("mm")
INCH_MARKS = tuple(Fraction(1, 2**n) for n in range(8))
METRIC_MARKS = tuple(
    _MM * Fraction(n) for n in ("10", "5", "2", "1", "1/2", "1/4", "1/5", "1/10", "1/20", "1/50", "1/100")
)

Say = Callable[[Diagnostic], None]


@dataclass(frozen=True)
class Heading:
    title: str
    unit: str
    style: Style
    paper: str


def heading(projects: tuple[r.ProjectStatement, ...], say: Say) -> Heading:
    """The heading of the outermost file, with the defaults for what is not said."""
    if len(projects) > 1:
        say(problems.said_twice("project", projects[1].span, projects[0].span))
    project = projects[0] if projects else None
    settings = _settings(project)
    unit = _unit(settings.get("units"), say)
    metric = unit in ("mm", "cm", "m")
    mark = _mark(settings.get("mark"), unit, metric, say)
    paper = _paper(settings.get("paper"), "a4" if metric else "letter", say)
    return Heading(project.title.value if project else "", unit, Style(metric, mark), paper)


def unit_of(projects: tuple[r.ProjectStatement, ...], say: Say) -> str:
    """The unit of an included file: that is all its heading gives."""
    if len(projects) > 1:
        say(problems.said_twice("project", projects[1].span, projects[0].span))
    return _unit(_settings(projects[0]).get("units") if projects else None, say)


def _settings(project: r.ProjectStatement | None) -> dict[str, r.Setting]:
    settings: dict[str, r.Setting] = {}
    for setting in project.settings if project else ():
        settings.setdefault(setting.key.text, setting)
    return settings


def _word(setting: r.Setting) -> str:
    value = setting.value
    return value.text if isinstance(value, (r.Name, r.Path, r.Number)) else ""


def _unit(setting: r.Setting | None, say: Say) -> str:
    if setting is None:
        return "in"
    unit = UNITS.get(_word(setting).lower())
    if unit is None:
        say(problems.unknown_unit(setting, _word(setting), OFFERED))
    return unit or "in"


def _paper(setting: r.Setting | None, usual: str, say: Say) -> str:
    if setting is None:
        return usual
    paper = _word(setting).lower()
    if paper in PAPERS:
        return paper
    say(problems.unknown_paper(setting, _word(setting), PAPERS))
    return usual


def _mark(setting: r.Setting | None, unit: str, metric: bool, say: Say) -> Fraction:
    """A division that tapes have: a power of two of an inch, or a decimal part of a millimetre."""
    usual = _MM if metric else Fraction(1, 32)
    if setting is None:
        return usual
    value = setting.value
    mark = value.value * inches_per(value.unit or unit) if isinstance(value, r.Number) else None
    if mark in (METRIC_MARKS if metric else INCH_MARKS):
        return mark  # type: ignore[return-value]
    say(problems.odd_mark(setting, metric))
    return usual
