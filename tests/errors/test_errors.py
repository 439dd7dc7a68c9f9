"""Every diagnostic has a page, and a smallest spec that brings it about.

A case is a folder `<code>/` with `spec.rod` and `expected.txt`, what `setout check spec.rod` prints. Two files are
optional: `command.txt`, the arguments to run instead of `check spec.rod`, and `arrange.py` with `arrange(folder,
monkeypatch)`, for trouble that can't be kept in a repository (a file too large, a library missing).
"""

from __future__ import annotations

import re
import runpy
import shutil
from pathlib import Path

import pytest

from setout.cli import main
from setout.diagnostics.catalogue import CODES, page

HERE = Path(__file__).parent
REPO = HERE.parents[1]
CASES = sorted(p.name for p in HERE.iterdir() if p.is_dir() and re.fullmatch(r"rod\d{3}", p.name))
HEADING = re.compile(r"(?m)^(?:\S.*?: )?(error|warning|note) (rod\d{3}): ")


@pytest.mark.parametrize("code", CASES)
def test_the_case_says_what_is_expected(code, tmp_path, monkeypatch, capsys, expected):
    said = _run(code, tmp_path, monkeypatch, capsys)
    severity_of = {found: severity for severity, found in HEADING.findall(said)}
    assert code in severity_of, said
    assert "Traceback" not in said
    assert re.match(rf"# {code} {severity_of[code]}: \S", page(code)), "the page's first line tells another severity"
    expected.same(said, HERE / code / "expected.txt")


def test_every_code_has_a_case_and_every_case_a_code():
    assert CASES == sorted(CODES)


def test_every_code_that_is_emitted_is_in_the_catalogue():
    emitted = {"rod900"}  # that one is printed without a stage
    for path in (REPO / "compiler" / "setout").rglob("*.py"):
        emitted |= set(re.findall(r"\"(rod\d{3})\"", path.read_text("utf-8")))
    assert emitted == set(CODES)


@pytest.mark.parametrize("code", sorted(CODES))
def test_a_page_shows_a_wrong_and_a_mended_spec(code):
    text = page(code)
    assert re.match(rf"# {code} (error|warning|note): [^\n]+\n", text)
    assert text.count("```rod") >= 2 or code.startswith("rod9")


def _run(code: str, tmp_path: Path, monkeypatch, capsys) -> str:
    folder = tmp_path / "case"
    shutil.copytree(HERE / code, folder, ignore=shutil.ignore_patterns("expected.txt", "*.py", "__pycache__"))
    monkeypatch.chdir(folder)
    if (HERE / code / "arrange.py").exists():
        runpy.run_path(str(HERE / code / "arrange.py"))["arrange"](folder, monkeypatch)
    command = folder / "command.txt"
    main(command.read_text("utf-8").split() if command.exists() else ["check", "spec.rod"])
    printed = capsys.readouterr()
    return printed.out + printed.err
