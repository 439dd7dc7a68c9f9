"""Whole runs, kept as text: what `build` writes for each spec, and what it says.

A case is a folder with `spec.rod` and `expected/`, or a spec of specs/ whose `expected/` stands here under its name.
The names of the documents compared are those found in `WRITTEN`.
"""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from setout.cli import main

HERE = Path(__file__).parent
SPECS = HERE.parents[1] / "specs"
OWN = {path.parent.name: path for path in sorted(HERE.glob("*/spec.rod"))}
CASES = OWN | {name: SPECS / f"{name}.rod" for name in ("bookcase", "potting_bench")}
WRITTEN = ("cutlist.csv", "buy.csv", "job.json")


@pytest.mark.parametrize("case", CASES)
def test_the_run_is_as_before(case, tmp_path, monkeypatch, capsys, expected):
    spec = CASES[case]
    shutil.copytree(spec.parent, tmp_path / case, ignore=shutil.ignore_patterns("expected", "*.marks"))
    monkeypatch.chdir(tmp_path / case)
    code = main(["build", spec.name, "--out", "made", "--format", "csv,json"])
    said = capsys.readouterr().err
    assert code == 0, said
    made = {name: Path("made", name).read_bytes().decode() for name in WRITTEN}
    made |= {"said.txt": said, "spec.marks": Path(f"{spec.stem}.marks").read_text("utf-8")}
    for name, text in made.items():
        expected.same(text, HERE / case / "expected" / name)
    expected.nothing_else(HERE / case / "expected", set(made))
