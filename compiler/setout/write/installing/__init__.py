"""Where everything goes in the room, and what to look out for on the way."""

from setout.write.installing.build import Installing, build
from setout.write.installing.units import room_views

__all__ = ["Installing", "build", "room_views"]
