"""A folder of its own for each run, with a small spec in it."""

from __future__ import annotations

from pathlib import Path

import pytest
from repository import Repository

from setout.cli import main

SPEC = """\
project "Boards" { units inch; mark to 1/32; paper letter }
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96 }
let long = 30
measure gap "between the walls" expect 20 to 30
assembly box "Box" {
  size wide long + 2, high 20, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part shelf of ply { level at bottom + 4; wide between left_side and right_side }
  joint shelf to left_side, right_side { dado depth 1/4; glue }
}
place box { at left, bottom, back }
room "Study" { size wide 100, high 96, deep 90 }
part spare of ply { size long x 11-1/4; count 4 }
"""


class Shop:
    """Runs setout in one folder and keeps what it said."""

    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.folder = folder
        self._capsys = capsys
        self.out = self.err = ""

    def setout(self, *words: str) -> int:
        code = main(words)
        self.out, self.err = self._capsys.readouterr()
        assert "Traceback" not in self.out + self.err
        return code

    def files(self) -> dict[str, bytes]:
        return {p.relative_to(self.folder).as_posix(): p.read_bytes() for p in self.folder.rglob("*") if p.is_file()}


@pytest.fixture
def shop(tmp_path, monkeypatch, capsys) -> Shop:
    (tmp_path / "boards.rod").write_text(SPEC)
    monkeypatch.chdir(tmp_path)
    return Shop(tmp_path, capsys)


@pytest.fixture
def repository(shop, monkeypatch) -> Repository:
    """The shop's folder in version control, the small spec committed as it is."""
    made = Repository(shop.folder, monkeypatch)
    made.commit()
    return made
