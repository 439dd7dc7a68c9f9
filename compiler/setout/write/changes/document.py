"""The comparison for other programs; `schema.json` beside this file says what each field means."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from fractions import Fraction
from typing import Any

from setout.compare.model import Changes, Delta, Loss
from setout.write.changes.build import Names
from setout.write.job.values import Json, length

VERSION = 1


def as_json(changes: Changes, names: Names) -> str:
    content: Json = {
        "setout_changes": VERSION,
        "changed": changes.changed,
        "old": _named(names.old, changes.old_title, changes.old_metric, changes.old_mark),
        "new": _named(names.new, changes.new_title, changes.metric, changes.mark),
        "units": _units(changes.metric),
        "kept": [[pair.old, pair.new] for pair in changes.pairs],
        "boards": [_plain(one) for one in changes.boards],
        "assemblies": [_plain(one) for one in changes.assemblies],
        "cut_already": [_plain(one) for one in changes.reuse.fates],
        "to_cut": [_plain(one) for one in changes.reuse.to_cut],
        "losses": [_plain(one) for one in changes.reuse.losses],
        "narrowed": changes.reuse.narrowed,
        "numbers": [_plain(one) for one in changes.numbers],
        "steps": [_plain(one) for one in changes.steps],
        "told": [_plain(one) for one in changes.told],
    }
    return json.dumps(content, ensure_ascii=False, indent=1, sort_keys=True) + "\n"


def _named(name: str, title: str, metric: bool, mark: Fraction) -> Json:
    return {"name": name, "title": title, "units": _units(metric), "mark": length(mark)}


def _units(metric: bool) -> str:
    return "mm" if metric else "inch"


_BARE: Mapping[type, tuple[str, ...]] = {Delta: ("old", "new"), Loss: ("cut", "lost")}
"""Numbers that are no lengths: fractions as text."""


def _plain(value: Any) -> Any:
    if is_dataclass(value):
        bare = _BARE.get(type(value), ())
        return {f.name: _field(getattr(value, f.name), f.name in bare) for f in fields(value)}
    if isinstance(value, Fraction):
        return length(value)
    if isinstance(value, Enum):
        return value.value
    return [_plain(part) for part in value] if isinstance(value, tuple) else value


def _field(value: Any, bare: bool) -> Any:
    return str(value) if bare and isinstance(value, Fraction) else _plain(value)
