"""`setout fmt`: files put in order where they lie, or only looked at."""

from __future__ import annotations

import os
import shutil
import stat
import subprocess
import sys
from io import BytesIO, TextIOWrapper

import pytest
from small_spec import SPEC

WILD = "let a=1 # one\r\nlet  b =  2\r\n"
TAME = "let a = 1  # one\r\nlet b = 2\r\n"


@pytest.fixture
def wild(shop):
    path = shop.folder / "wild.rod"
    path.write_bytes(WILD.encode())
    return path


def test_a_file_is_laid_out_in_place_with_its_permissions_and_line_ends(shop, wild):
    wild.chmod(0o640)
    assert shop.setout("fmt", "wild.rod", "boards.rod") == 0
    assert wild.read_bytes() == TAME.encode() and stat.S_IMODE(wild.stat().st_mode) == 0o640
    assert sorted(shop.files()) == ["boards.rod", "wild.rod"] and shop.out == ""
    before = wild.stat().st_ino
    assert shop.setout("fmt", "wild.rod") == 0 and wild.stat().st_ino == before, "nothing to do, nothing written"


@pytest.mark.parametrize("start", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("end", [b"\n", b"\r\n"])
def test_twice_is_once_whatever_begins_the_file_and_ends_its_lines(shop, start, end):
    path = shop.folder / "some.rod"
    path.write_bytes(start + b"let a=1" + end + end + end + b"let b=2")
    assert shop.setout("fmt", "some.rod") == 0
    assert path.read_bytes() == start + b"let a = 1" + end + end + b"let b = 2" + end
    assert shop.setout("fmt", "--check", "some.rod") == 0 and shop.out == ""


def test_an_included_file_is_laid_out_by_itself(shop):
    """Names that only the spec it belongs to knows are none of its business."""
    (shop.folder / "hinges.rod").write_text('assembly lid "Lid" { part a of  elsewhere { wide  gap } }')
    assert shop.setout("fmt", "hinges.rod") == 0
    assert (shop.folder / "hinges.rod").read_text() == 'assembly lid "Lid" { part a of elsewhere { wide gap } }\n'


def test_check_and_diff_write_nothing(shop, wild):
    assert shop.setout("fmt", "--check", "boards.rod", "wild.rod") == 1
    assert shop.out == "wild.rod would be laid out anew\n"
    assert shop.setout("fmt", "--diff", "wild.rod") == 0
    assert shop.out.startswith("--- wild.rod\n+++ wild.rod\n@@") and "\n+let b = 2\n" in shop.out
    assert shop.setout("fmt", "--check", "--diff", "wild.rod") == 1 and "\n+let b = 2\n" in shop.out
    assert wild.read_bytes() == WILD.encode()
    assert shop.setout("fmt", "wild.rod") == 0 and shop.setout("fmt", "--check", "wild.rod") == 0


@pytest.mark.skipif(not shutil.which("patch"), reason="patch is not installed")
@pytest.mark.parametrize("text", ["let  a = 1\n\n\nlet b=2", "let  a = 1 # é\n"])
def test_the_difference_is_a_patch(shop, text):
    spec = shop.folder / "some.rod"
    spec.write_text(text, "utf-8")
    assert shop.setout("fmt", "--diff", "some.rod") == 0
    subprocess.run(["patch", "-s", "some.rod"], input=shop.out, text=True, encoding="utf-8", check=True)
    assert shop.setout("fmt", "--check", "some.rod") == 0


def test_standard_input_to_standard_output(shop, monkeypatch):
    for text, code, out in ((WILD, 0, TAME.replace("\r", "")), ("let a = \n", 1, "")):
        monkeypatch.setattr(sys, "stdin", TextIOWrapper(BytesIO(text.encode())))
        assert shop.setout("fmt", "-") == code and shop.out == out and bool(shop.err) == bool(code)


def test_a_merge_that_is_not_settled_is_left_alone(shop):
    (shop.folder / "boards.rod").write_text("<<<<<<< HEAD\nlet a=1\n=======\nlet a=2\n>>>>>>> other\n" + SPEC)
    before = shop.files()
    assert shop.setout("fmt", "boards.rod") == 1 and shop.files() == before
    assert shop.err.count("error rod") == 1 and "error rod116" in shop.err


def test_mistakes_are_told_and_the_file_is_left_alone(shop, wild):
    broken = shop.folder / "broken.rod"
    broken.write_text("let a=1\nlett b=2\n")
    assert shop.setout("fmt", "broken.rod", "wild.rod") == 1
    assert "broken.rod:2:1: error rod111" in shop.err and broken.read_text() == "let a=1\nlett b=2\n"
    assert wild.read_bytes() == TAME.encode(), "the other file is seen to all the same"
    assert shop.setout("fmt", "nowhere.rod") == 2 and "rod901" in shop.err
    assert shop.setout("fmt", "nowhere.rod", "boards.rod", "broken.rod") == 2, "the worst of them"
    assert shop.setout("fmt", ".") == 2 and "it is a folder" in shop.err and shop.setout("fmt") == 2
    os.mkfifo(shop.folder / "pipe.rod")
    assert shop.setout("fmt", "pipe.rod") == 2 and "not an ordinary file" in shop.err


def test_a_link_stays_a_link(shop, wild):
    link = shop.folder / "link.rod"
    link.symlink_to("wild.rod")
    assert shop.setout("fmt", "link.rod") == 0
    assert link.is_symlink() and wild.read_bytes() == TAME.encode()


def test_a_file_that_cannot_be_written_stays_whole(shop, wild, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    assert shop.setout("fmt", "wild.rod") == 3
    assert "rod920" in shop.err and "No space left" in shop.err
    assert sorted(shop.files()) == ["boards.rod", "wild.rod"] and wild.read_bytes() == WILD.encode()


def test_a_file_changed_meanwhile_is_not_written_over(shop, wild, monkeypatch):
    from setout.cli import fmt

    def slow(source):
        wild.write_bytes(b"let c = 3\n")
        return true(source)

    true = fmt.fmt
    monkeypatch.setattr(fmt, "fmt", slow)
    assert shop.setout("fmt", "wild.rod") == 3
    assert "changed meanwhile" in shop.err and wild.read_bytes() == b"let c = 3\n"


def test_the_hooks_name_commands_that_there_are(repo, shop, wild):
    """Both take several files, as hooks are given them."""
    hooks = (repo / ".pre-commit-hooks.yaml").read_text("utf-8")
    entries = [line.split(": setout ")[1] for line in hooks.splitlines() if "entry" in line]
    assert entries == ["fmt", "check"]
    assert [line.split(": ")[1] for line in hooks.splitlines() if line.startswith("- id")] == [
        "setout-fmt",
        "setout-check",
    ]
    (shop.folder / "wrong.rod").write_text("stock ply { sheet 96 x 48 x 3/4 }\npart a of plly { size 3 x 3 }\n")
    for command in entries:
        assert shop.setout(command, "boards.rod", "boards.rod") == 0
    assert shop.setout("check", "wrong.rod", "boards.rod") == 1 and "wrong.rod:2" in shop.out
