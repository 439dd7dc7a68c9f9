"""What filling the openings adds to a scene."""

from __future__ import annotations

from dataclasses import dataclass, field

from setout.geometry import Box
from setout.place.model import Board, DrawerBank, Fitting, HungDoor, ItemFit, Joint, ShelfBay
from setout.source import Span


@dataclass(frozen=True)
class Front:
    """A drawer's front or a door, in the job's coordinates. `bank` names what it belongs to."""

    path: str
    box: Box
    bank: str
    door: bool
    span: Span


@dataclass
class Made:
    banks: list[DrawerBank] = field(default_factory=list)
    doors: list[HungDoor] = field(default_factory=list)
    shelves: list[ShelfBay] = field(default_factory=list)
    items: list[ItemFit] = field(default_factory=list)
    fittings: list[Fitting] = field(default_factory=list)
    boards: dict[str, Board] = field(default_factory=dict)
    joints: list[Joint] = field(default_factory=list)
    fronts: list[Front] = field(default_factory=list)
    lost: set[str] = field(default_factory=set)  # boards of what doesn't go in: reported
