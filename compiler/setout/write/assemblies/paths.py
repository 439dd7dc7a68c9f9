"""Paths as seen from inside an assembly."""

from __future__ import annotations

from setout.place.model import Instance


def within(instance: Instance, path: str) -> str:
    """A path as seen from inside the instance; itself is ""."""
    if path == instance.path:
        return ""
    return path.removeprefix(instance.path + ".") if instance.path else path
