"""All the documents bound together, as one page of HTML."""

from __future__ import annotations

from dataclasses import fields

from setout.write.fonts import Embedded
from setout.write.packet.build import DOCUMENTS, Made, Packet, build
from setout.write.render import render


def html(packet: Packet, fonts: tuple[Embedded, ...]) -> str:
    """The packet as one page; `fonts` are carried inside it (none where the printer has them)."""
    data = {field.name: getattr(packet, field.name) for field in fields(packet)}
    return render("packet/page.html.j2", fonts=fonts, **data)


__all__ = ["DOCUMENTS", "Made", "Packet", "build", "html"]
