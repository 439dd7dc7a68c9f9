"""Where everything goes in the room, and what to look out for on the way."""

from setout.write.installing.build import Installing, build
from setout.write.installing.fixing import Fixing, fixings
from setout.write.installing.units import datum, room_views, waits

__all__ = ["Fixing", "Installing", "build", "datum", "fixings", "room_views", "waits"]
