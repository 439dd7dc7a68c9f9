"""The bundled type: where it lies, and its letters to carry inside a page."""

from __future__ import annotations

from base64 import b64encode
from dataclasses import dataclass
from importlib.resources import files
from io import BytesIO
from pathlib import Path

FAMILY = "IBM Plex Sans Condensed"
FOLDER = Path(str(files("fontpkg_ibm_plex_sans_condensed"))) / "files"
WEIGHTS = ((400, "IBMPlexSansCondensed-Regular.ttf"), (700, "IBMPlexSansCondensed-Bold.ttf"))


@dataclass(frozen=True)
class Embedded:
    """One weight of the type as a data address."""

    weight: int
    address: str


def embedded(text: str) -> tuple[Embedded, ...]:
    """Both weights, holding no more letters than `text` uses (and plain ASCII)."""
    letters = sorted(set(map(ord, text)) | set(range(32, 127)))
    return tuple(Embedded(weight, _data_address(FOLDER / name, letters)) for weight, name in WEIGHTS)


def _data_address(file: Path, letters: list[int]) -> str:
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    font = TTFont(file, recalcTimestamp=False)
    options = Options(hinting=False, layout_features=["kern"], notdef_outline=True, drop_tables=["meta"])
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=letters)
    subsetter.subset(font)
    font.flavor = "woff"
    out = BytesIO()
    font.save(out)
    return "data:font/woff;base64," + b64encode(out.getvalue()).decode("ascii")
