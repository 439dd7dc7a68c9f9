"""A sheet for each kind of assembly."""

from setout.write.assemblies.build import build
from setout.write.assemblies.groups import Group, groups, room_for_drawing
from setout.write.assemblies.model import Assemblies

__all__ = ["Assemblies", "Group", "build", "groups", "room_for_drawing"]
