"""A wheel built from this tree carries all it needs, and works where the tree is not."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

REPO = Path(__file__).parents[2]
PACKAGE = REPO / "compiler" / "setout"


@pytest.fixture(scope="module")
def wheel(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    run([sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder), str(REPO)], REPO)
    (made,) = folder.glob("*.whl")
    return made


def test_it_carries_the_modules_the_data_and_the_grammar(wheel):
    within = set(zipfile.ZipFile(wheel).namelist())
    needed = {f"setout/{p.relative_to(PACKAGE).as_posix()}" for p in shipped(PACKAGE)}
    needed |= {f"setout/grammar/{p.relative_to(REPO / 'grammar').as_posix()}" for p in shipped(REPO / "grammar")}
    assert needed <= within
    assert "setout/grammar/setout.lark" in needed and "setout/practice/rows.toml" in needed


def test_it_builds_every_spec_from_another_folder(wheel, tmp_path):
    elsewhere, work = tmp_path / "installed", tmp_path / "work"
    shutil.copytree(REPO / "specs", work)
    with zipfile.ZipFile(wheel) as packed:  # what pip does with a wheel of plain Python, less the script
        packed.extractall(elsewhere)
    environment = {**os.environ, "PYTHONPATH": str(elsewhere)}
    where = run([sys.executable, "-c", "import setout; print(setout.__file__)"], elsewhere, environment).stdout
    assert where.startswith(str(elsewhere))
    for spec in sorted(work.glob("*.rod")):
        formats = "pdf,html,csv,json,svg" if spec.stem == "shelf_list" else "html,csv,json,svg"  # one PDF tells enough
        words = ["build", f"../work/{spec.name}", "--format", formats]
        run([sys.executable, "-m", "setout", *words], elsewhere, environment)
        assert "</html>" in (elsewhere / "out" / spec.stem / "packet.html").read_text("utf-8")
    assert (elsewhere / "out" / "shelf_list" / "packet.pdf").read_bytes().startswith(b"%PDF")


def shipped(folder: Path) -> list[Path]:
    found = (p for p in folder.rglob("*") if p.is_file())
    return [
        p for p in found if not any(part[0] == "." or part == "__pycache__" for part in p.relative_to(folder).parts)
    ]


def run(
    command: list[str], folder: Path, environment: dict[str, str] | None = None
) -> subprocess.CompletedProcess[str]:
    done = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    return done
