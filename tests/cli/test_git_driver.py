"""The driver that Git runs, tried with Git itself in a scratch repository."""

from __future__ import annotations

import shlex
import sys
from pathlib import Path

import pytest
from small_spec import INCLUDING, LONGER, SPEC

import setout

PACKAGE = Path(setout.__file__).parents[1]


@pytest.fixture
def repository(repository):
    """With the two lines of the README."""
    command = f"PYTHONPATH={shlex.quote(str(PACKAGE))} {shlex.quote(sys.executable)} -m setout diff --for-git"
    repository.git("config", "diff.setout.command", command)
    repository.commit({".gitattributes": "*.rod diff=setout\n"})
    return repository


def test_git_diff_speaks_of_boards(repository):
    (repository.folder / "boards.rod").write_text(LONGER)
    said = repository.git("diff")
    assert "boards.rod@" in said and "→ boards.rod" in said and "30 × 11-1/4 → 34 × 11-1/4" in said
    assert "let long" not in said


def test_git_log_does_with_its_option(repository):
    repository.commit({"boards.rod": LONGER})
    assert "let long" in repository.git("log", "-p") and "30 × 11-1/4 → 34 × 11-1/4" not in repository.git("log", "-p")
    said = repository.git("log", "-p", "--ext-diff")
    assert "30 × 11-1/4 → 34 × 11-1/4" in said and "a new spec, 7 boards of 3 kinds" in said
    last, before, _ = repository.git("log", "--format=%H").split()
    assert f"boards.rod@{before[:7]} → boards.rod@{last[:7]}" in said


def test_includes_are_of_the_two_revisions(repository):
    repository.commit({"boards.rod": INCLUDING, "parts/sizes.rod": "let long = 30\n"})
    repository.commit({"boards.rod": INCLUDING + "# again\n", "parts/sizes.rod": "let long = 34\n"})
    repository.commit({"boards.rod": INCLUDING + "# and again\n", "parts/sizes.rod": "let long = 38\n"})
    said = repository.git("log", "-p", "--ext-diff", "-2", "--format=", "--", "boards.rod")
    assert "30 × 11-1/4 → 34 × 11-1/4" in said and "34 × 11-1/4 → 38 × 11-1/4" in said
    (repository.folder / "boards.rod").write_text(INCLUDING)
    (repository.folder / "parts/sizes.rod").write_text("let long = 42\n")
    assert "38 × 11-1/4 → 42 × 11-1/4" in repository.git("diff", "--", "boards.rod")


def test_a_file_that_others_include_is_shown_line_by_line(repository):
    repository.commit({"boards.rod": INCLUDING, "parts/sizes.rod": "let long = 30\n"})
    (repository.folder / "parts/sizes.rod").write_text("let long = 34\n")
    said = repository.git("diff")
    assert said.startswith(
        "--- a/parts/sizes.rod\n+++ b/parts/sizes.rod\n@@ -1 +1 @@\n-let long = 30\n+let long = 34\n"
    )


def test_errors_are_told_and_the_lines_shown_and_git_goes_on(repository):
    (repository.folder / "boards.rod").write_text(SPEC.replace("let long = 30", "let long = ply"))
    (repository.folder / "also.txt").write_text("more\n")
    repository.git("add", "-N", "also.txt")
    said = repository.git("diff", "--", "boards.rod", "also.txt")
    assert "boards.rod:3:12: error" in said and "-let long = 30" in said and "+let long = ply" in said
    assert "also.txt" in said


def test_specs_that_come_go_and_are_renamed(repository):
    repository.commit({"boards.rod": None, "hall.rod": LONGER})
    assert "the spec is gone, 7 boards of 3 kinds" in repository.git("show", "--ext-diff", "--no-renames")
    renamed = repository.git("show", "--ext-diff", "-M")
    assert "boards.rod@" in renamed and "hall.rod@" in renamed and "30 × 11-1/4 → 34 × 11-1/4" in renamed


@pytest.mark.parametrize("more", ["", "# a line more\n"])
def test_a_spec_renamed_with_its_marks_keeps_them(repository, shop, more):
    assert shop.setout("build", "boards.rod", "--format", "csv") == 0
    (repository.folder / ".gitignore").write_text("out/\n")
    before = repository.commit()
    (repository.folder / "deep").mkdir()
    for end in ("rod", "marks"):
        repository.git("mv", f"boards.{end}", f"deep/room.{end}")
    (repository.folder / "deep/room.rod").write_text(SPEC + more)
    repository.git("add", "-A")
    name = f"boards.rod@{before[:7]} → deep/room.rod"
    for staged in (repository.git("diff", "--cached", "-M"), repository.git("diff", "HEAD")):
        assert f"{name} (staged)" in staged and "another mark" not in staged
    after = repository.commit()
    for words in (("log", "-1", "-p", "--ext-diff"), ("show", "--ext-diff"), ("diff", "HEAD~1", "HEAD")):
        said = repository.git(*words)
        assert f"{name}@{after[:7]}" in said and "another mark" not in said
    repository.commit({"deep/room.rod": SPEC + more + "# and one\n"})
    said = repository.git("diff", "-M", before, "HEAD", "--", "boards.rod", "deep/room.rod")
    assert f"{name}@{repository.git('rev-parse', 'HEAD')[:7]}" in said and "another mark" not in said


def test_what_is_staged_is_said_to_be(repository):
    (repository.folder / "boards.rod").write_text(LONGER)
    repository.git("add", "boards.rod")
    head = repository.git("rev-parse", "HEAD")[:7]
    assert f"boards.rod@{head} → boards.rod (staged)" in repository.git("diff", "--cached")
    (repository.folder / "boards.rod").write_text(LONGER.replace("34", "35"))
    assert "boards.rod (staged) → boards.rod (lengths" in repository.git("diff")


def test_a_spec_of_one_board(repository):
    stock = 'project "All 1 boards" {}\nstock ply "plywood" { sheet 96 x 48 x 3/4 }\n'
    one = f"{stock}part a of ply {{ size 9 x 8; count 1 }}\n"
    repository.commit({"one.rod": one})
    said = repository.git("show", "--ext-diff")
    assert said.endswith("a new spec, 1 board of 1 kind\n\n") and "All 1 boards: one.rod@" in said


def test_a_merge_that_is_not_settled_is_said_to_be(repository):
    repository.git("checkout", "-q", "-b", "other")
    repository.commit({"boards.rod": LONGER})
    repository.git("checkout", "-q", "main")
    repository.commit({"boards.rod": SPEC.replace("let long = 30", "let long = 32")})
    with pytest.raises(AssertionError):
        repository.git("merge", "-q", "other")
    assert "boards.rod: its merge is not settled yet" in repository.git("diff", "--cached", "--", "boards.rod")


@pytest.mark.parametrize(
    "name", ["-x.rod", "--output=x.rod", "$(touch x).rod", "a;touch x.rod", "a b@HEAD.rod", "a\nb.rod"]
)
def test_a_hostile_name_does_no_more_than_another(repository, name):
    repository.commit({name: SPEC})
    (repository.folder / name).write_text(LONGER)
    before = {path.name for path in repository.folder.iterdir()}
    assert "30 × 11-1/4 → 34 × 11-1/4" in repository.git("diff")
    assert {path.name for path in repository.folder.iterdir()} == before


@pytest.mark.parametrize("text", [b"\xff\xfe\0", b"\x1b[31m", b'project "x" {' * 2_000, b""])
def test_a_text_that_is_no_spec_stops_nothing(repository, text):
    (repository.folder / "boards.rod").write_bytes(text)
    assert "\x1b" not in repository.git("diff")
