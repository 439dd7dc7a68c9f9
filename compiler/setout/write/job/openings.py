"""What goes into the openings, as JSON. Heights count from the opening's floor; sizes run wide, high, deep."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setout.place.model import Drawer, DrawerBank, HungDoor, ItemFit, Opening, Scene, ShelfBay, Spacer
from setout.write.job.values import Json, box_of, length, maybe


def openings(scene: Scene) -> Json:
    return {
        "openings": [_opening(one) for one in scene.openings.values()],
        "banks": [_bank(bank) for bank in scene.banks],
        "doors": [_door(door) for door in scene.doors],
        "shelves": [_shelves(bay) for bay in scene.shelves],
        "items": [_item(item) for item in scene.items],
    }


def _opening(one: Opening) -> Json:
    return {"path": one.path, "assembly": one.owner, "box": box_of(one.box)}


def _bank(bank: DrawerBank) -> Json:
    return {
        "opening": bank.path,
        "assembly": bank.owner,
        "sizes": _lengths(bank.opening),
        "style": bank.style or "tray",
        "slides": None if bank.hardware is None else bank.hardware.name,
        "reveal": length(bank.reveal),
        "clearance": length(bank.clearance),
        "sides": list(bank.sides),
        "packers": list(bank.packers),
        "load": None if bank.load is None else str(bank.load),
        "drawers": [_drawer(drawer) for drawer in bank.drawers],
        "spacers": [_spacer(spacer) for spacer in bank.spacers],
    }


def _drawer(drawer: Drawer) -> Json:
    return {
        "number": drawer.number,
        "front": None if drawer.front is None else _lengths(drawer.front),
        "front_low": maybe(drawer.front_low),
        "box": None if drawer.box is None else _lengths(drawer.box),
        "box_low": maybe(drawer.box_low),
        "bottom": None if drawer.bottom is None else _lengths(drawer.bottom),
        "slide": maybe(drawer.slide),
        "boards": list(drawer.boards),
    }


def _spacer(spacer: Spacer) -> Json:
    return {"kind": spacer.kind, "size": length(spacer.size), "number": spacer.number, "count": spacer.count}


def _door(door: HungDoor) -> Json:
    return {
        "opening": door.path,
        "assembly": door.owner,
        "boards": list(door.boards),
        "sides": list(door.sides),
        "overlay": door.overlay,
        "hinge": None if door.hardware is None else door.hardware.name,
        "cups": _lengths(door.cups),
    }


def _shelves(bay: ShelfBay) -> Json:
    return {
        "opening": bay.path,
        "assembly": bay.owner,
        "boards": list(bay.boards),
        "sides": list(bay.sides),
        "pins": _lengths(bay.pins),
    }


def _item(item: ItemFit) -> Json:
    return {
        "title": item.title,
        "opening": item.opening,
        "sizes": _lengths(item.size),
        "spare": _lengths(item.spare),
    }


def _lengths(values: Iterable[Fraction]) -> list[Json]:
    return [length(value) for value in values]
