"""Whole runs, kept as text: what `build` writes for each spec, and what it says.

A case is a folder with `spec.rod` and `expected/`; the names of the documents compared are those found in `WRITTEN`.
"""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from setout.cli import main

HERE = Path(__file__).parent
CASES = sorted(p.parent.name for p in HERE.glob("*/spec.rod"))
WRITTEN = ("cutlist.csv", "job.json")


@pytest.mark.parametrize("case", CASES)
def test_the_run_is_as_before(case, tmp_path, monkeypatch, capsys, expected):
    shutil.copytree(HERE / case, tmp_path / case, ignore=shutil.ignore_patterns("expected"))
    monkeypatch.chdir(tmp_path / case)
    code = main(["build", "spec.rod", "--out", "made", "--format", "csv,json"])
    said = capsys.readouterr().err
    assert code == 0, said
    made = {name: Path("made", name).read_bytes().decode() for name in WRITTEN}
    made |= {"said.txt": said, "spec.marks": Path("spec.marks").read_text("utf-8")}
    for name, text in made.items():
        expected.same(text, HERE / case / "expected" / name)
    expected.nothing_else(HERE / case / "expected", set(made))
