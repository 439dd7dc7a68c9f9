"""No back-arrows: a folder imports only those above it, a heavy library has one importer, only cli/ touches files."""

from __future__ import annotations

import ast
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

REPO = Path(__file__).parents[1]
PACKAGE = REPO / "compiler" / "setout"
ROOMS = (
    "units",
    "source",
    "geometry",
    "diagnostics",
    "values",
    "practice",
    "strength",
    "read",
    "fmt",
    "new",
    "resolve",
    "place",
    "join",
    "piece",
    "inspect",
    "plan",
    "compare",
    "drawing",
    "write",
    "pipeline",
    "cli",
)
ONLY_IMPORTER = {
    "pint": "units/",
    "graphviz": "drawing/",
    "weasyprint": "write/printing.py",
    "lark": "read/",
    "jinja2": "write/",
}
WITH_REASON = {
    "drawing/ordering/dot.py",  # Graphviz is a program, and where it is must be found out
    "read/generate.py",  # a developer's tool, run by hand: it writes the parse table beside the grammar
    "write/fonts.py",  # where the fonts are that weasyprint and fontconfig read
    "write/printing.py",  # fontconfig takes its settings from a file and from nothing else
}
OF_OUR_OWN = {
    *(".ci", ".gitignore", ".pre-commit-hooks.yaml", ".readme"),
    *("DEVELOPERS.md", "LICENSE", "README.md", "pyproject.toml"),
    *("compiler", "grammar", "specs", "tests"),
}
TO_THE_OUTSIDE = set("os pathlib shutil tempfile subprocess socket urllib http glob ctypes".split())

MODULES = sorted(p for p in PACKAGE.rglob("*.py") if p.parent != PACKAGE or p.name == "pipeline.py")


def imported(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are written in full"
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def room_of(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


@pytest.mark.parametrize("path", MODULES, ids=lambda p: p.relative_to(PACKAGE).as_posix())
def test_a_module_imports_only_from_above(path):
    own = ROOMS.index(room_of(path))
    for name in imported(ast.parse(path.read_text("utf-8"))):
        top, *rest = name.split(".")
        if top == "setout" and rest and rest[0] in ROOMS:
            assert ROOMS.index(rest[0]) <= own, f"{name} lies below"
        home = ONLY_IMPORTER.get(top)
        assert home is None or path.relative_to(PACKAGE).as_posix().startswith(home), f"{top} belongs to {home}"


@pytest.mark.parametrize("path", MODULES, ids=lambda p: p.relative_to(PACKAGE).as_posix())
def test_only_the_command_line_touches_files(path):
    """Data that setout ships is read through importlib.resources."""
    if room_of(path) == "cli" or path.relative_to(PACKAGE).as_posix() in WITH_REASON:
        return
    tree = ast.parse(path.read_text("utf-8"))
    assert not {name.split(".")[0] for name in imported(tree)} & TO_THE_OUTSIDE
    calls = [node.func for node in ast.walk(tree) if isinstance(node, ast.Call)]
    assert not [call.lineno for call in calls if isinstance(call, ast.Name) and call.id in ("open", "__import__")]


def test_every_folder_has_its_place_in_the_layout():
    found = {room_of(p) for p in MODULES}
    assert found <= set(ROOMS)


def test_nothing_stands_at_the_top_that_was_not_agreed():
    if not shutil.which("git"):
        pytest.skip("git is not installed")
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"], cwd=REPO, capture_output=True, text=True
    )
    if listed.returncode:
        pytest.skip("not a git checkout")
    assert {line.split("/")[0].strip('"') for line in listed.stdout.splitlines()} <= OF_OUR_OWN
