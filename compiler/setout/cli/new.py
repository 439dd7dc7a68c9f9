"""`setout new`: a spec that is not there yet, from a template or a table."""

from __future__ import annotations

import os
import sys
from argparse import Namespace
from pathlib import Path

from setout.cli import problems
from setout.cli.codes import CLEAN, FAILED, USAGE
from setout.cli.files import Refusal, read_bytes, resolved, said_by_system
from setout.cli.output import KEPT_SUFFIXES, create
from setout.cli.report import tell
from setout.cli.terminal import shown
from setout.diagnostics import Diagnostic
from setout.new import MAX_BYTES, Listed, listed, started, titled

_SPEC, *_BESIDE = KEPT_SUFFIXES


def run(given: Namespace) -> int:
    place = _place(given.name)
    if not any(c.isalnum() for c in place.name.removesuffix(_SPEC)):
        print(f"setout new: {shown(given.name)!r} is no name for a spec, such as hall_shelves", file=sys.stderr)
        return USAGE
    if trouble := _in_the_way(place):
        return _told(trouble, USAGE)
    title = titled(place.stem)
    made = _of_table(given.table, title) if given.table else Listed(started(given.template, title), ())
    if isinstance(made, int):
        return made
    return _written(place, made, given.table)


def _place(name: str) -> Path:
    return Path(name if name.endswith(_SPEC) else name + _SPEC)


def _in_the_way(place: Path) -> Diagnostic | None:
    """What is kept beside a spec would belong to the new one."""
    for there in (place, *(place.with_suffix(end) for end in _BESIDE)):
        if os.path.lexists(there):
            return problems.in_the_way(place.as_posix(), there.as_posix())
    return None


def _of_table(name: str, title: str) -> Listed | int:
    path = resolved(Path(name))
    data = path if isinstance(path, Refusal) else read_bytes(path, MAX_BYTES + 1)
    if isinstance(data, Refusal):
        return _told(problems.table_refused(name, data.reason, data.detail), USAGE)
    checked = listed(name, data, title)
    return _told(checked.diagnostics[0], USAGE) if checked.value is None else checked.value


def _written(place: Path, made: Listed, table: str | None) -> int:
    name = place.as_posix()
    try:
        create(place, made.text.encode())
    except FileExistsError:
        return _told(problems.in_the_way(name, name), USAGE)
    except (OSError, ValueError) as trouble:
        return _told(problems.spec_unwritable(name, said_by_system(trouble)), FAILED)
    print(shown(f"{name} is written" + (f" from {table}" if table else "")), file=sys.stderr)
    for line in made.told:
        print(f"  {shown(line)}", file=sys.stderr)
    return CLEAN


def _told(found: Diagnostic, code: int) -> int:
    tell(sys.stderr, [found], {})
    return code
