"""Ways of holding a contact together, each a function from a task to what it drills and counts."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from setout.join.methods import brads, dowels, glue, pockets, screws
from setout.join.methods.task import Laid, Task, Way

METHODS: Mapping[str, Callable[[Task], Laid]] = {
    "pockets": pockets.lay,
    "screws": screws.lay,
    "brads": brads.lay,
    "dowels": dowels.lay,
    "glue": glue.lay,
}

__all__ = ["METHODS", "Laid", "Task", "Way"]
