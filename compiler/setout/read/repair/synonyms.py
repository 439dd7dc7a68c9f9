"""Words of everyday speech, each with the word of the grammar that is meant."""

MEANT = {
    "above": "on",
    "alongside": "against",
    "atop": "on",
    "below": "under",
    "beneath": "under",
    "beside": "against",
    "by": "x",
    "center": "centred",
    "centered": "centred",
    "height": "high",
    "horizontal": "level",
    "next": "against",
    "tall": "high",
    "underneath": "under",
    "upon": "on",
    "vertical": "upright",
    "width": "wide",
}

UNITS = {"feet": "ft", "foot": "ft", "ft": "ft", "inch": "in", "inches": "in"}
"""Units as they are spoken, each with what the grammar has for it."""

FILLERS = ("to",)
"""What may go with such a word: `next to`."""
