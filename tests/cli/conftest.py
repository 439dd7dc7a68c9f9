"""A folder of its own for each run, with a small spec in it."""

from __future__ import annotations

from pathlib import Path

import pytest
from repository import Repository
from small_spec import SPEC

from setout.cli import main


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
