"""Makes the README's picture of the packet: python tests/picture.py PACKET.pdf .readme/packet.png PAGE PAGE PAGE"""

from __future__ import annotations

import sys

import pypdfium2
from PIL import Image


def main(pdf: str, picture: str, pages: list[int]) -> None:
    document = pypdfium2.PdfDocument(pdf)
    drawn = [document[n - 1].render(scale=0.75).to_pil().convert("L") for n in pages]
    sheet = Image.new("L", (sum(p.width for p in drawn) + 12 * (len(drawn) + 1), drawn[0].height + 24), 210)
    x = 12
    for page in drawn:
        sheet.paste(page, (x, 12))
        x += page.width + 12
    sheet.quantize(16).save(picture, optimize=True)


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], [int(n) for n in sys.argv[3:]])
