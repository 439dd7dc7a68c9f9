"""Parts sized and set by what they touch: Project -> Placed."""

from setout.place.model import (
    Board,
    Feature,
    Fitting,
    Hole,
    Instance,
    Joint,
    LooseBoard,
    Method,
    Mitre,
    Notch,
    Opening,
    Placed,
    Rest,
    Scene,
    Side,
)
from setout.place.stage import place

__all__ = [
    "Board",
    "Feature",
    "Fitting",
    "Hole",
    "Instance",
    "Joint",
    "LooseBoard",
    "Method",
    "Mitre",
    "Notch",
    "Opening",
    "Placed",
    "Rest",
    "Scene",
    "Side",
    "place",
]
