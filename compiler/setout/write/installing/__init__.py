"""Where everything goes in the room, and what to look out for on the way."""

from setout.write.installing.build import Installing, build
from setout.write.installing.fixing import Fixing, fixings
from setout.write.installing.units import place, room_views

__all__ = ["Fixing", "Installing", "build", "fixings", "place", "room_views"]
