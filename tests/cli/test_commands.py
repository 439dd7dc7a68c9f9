"""What may be typed, what comes back, and how fast the help is."""

from __future__ import annotations

import json
import os
import subprocess
import sys

import pytest
from small_spec import LONGER

from setout import __version__

BUFFERED = {name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"}
HEAVY = set("lark pint weasyprint graphviz jinja2 setout.pipeline setout.read setout.resolve setout.write".split())


@pytest.mark.parametrize("words", [["--help"], ["--version"], ["build", "--help"], ["check", "--help"]], ids=" ".join)
def test_help_imports_nothing_heavy(words):
    code = f"import sys; from setout.cli import main; main({words!r}); print(*sys.modules, sep='\\n')"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert not HEAVY & set(done.stdout.split("\n"))


def test_a_comparison_imports_neither_drawings_nor_what_solves_assignments(shop):
    """Where every board is best trimmed for its own place."""
    (shop.folder / "longer.rod").write_text(LONGER)
    code = "import sys; from setout.cli import main; main(sys.argv[1:]); print(*sys.modules, sep='\\n')"
    words = [sys.executable, "-c", code, "diff", "longer.rod", "boards.rod"]
    done = subprocess.run(words, capture_output=True, text=True, check=True, cwd=shop.folder)
    assert "saw 4 off" in done.stdout
    assert not {"numpy", "highspy", "subprocess", "setout.drawing"} & set(done.stdout.split("\n"))


def test_help_and_version(shop):
    assert shop.setout("--version") == 0 and shop.out == f"setout {__version__}\n"
    assert shop.setout("--help") == 0
    for word in ("build", "check", "why", "explain", "exit codes"):
        assert word in shop.out


@pytest.mark.parametrize(
    "words",
    [
        (),
        ("saw",),
        ("build",),
        ("build", "-"),
        ("build", "boards.marks"),
        ("build", "boards.rod", "--format", "docx"),
        ("build", "boards.rod", "--format", ""),
        ("build", "boards.rod", "--out", ""),
        ("build", "boards.rod", "--set", "long"),
        ("build", "boards.rod", "--set", "long="),
        ("build", "boards.rod", "--set", "=3"),
        ("build", "boards.rod", "--set", "long=3", "--set", "long=4"),
        ("check", "boards.rod", "--format", "pdf"),
        ("check", "nowhere.rod"),
        ("check", "."),
        ("why", "boards.rod"),
        ("why", "boards.rod", "no_such_part"),
        ("why", "boards.rod", "box.shelf.sideways"),
        ("explain", "rod999"),
    ],
)
def test_wrong_usage_is_2(shop, words):
    before = shop.files()
    assert shop.setout(*words) == 2
    assert shop.err or shop.out
    assert shop.files() == before


def test_check_says_it_on_standard_output_and_build_on_standard_error(shop):
    (shop.folder / "boards.rod").write_text("nonsense\n")
    assert shop.setout("check", "boards.rod") == 1
    assert "boards.rod:1" in shop.out and not shop.err
    said = shop.out
    assert shop.setout("build", "boards.rod") == 1
    assert shop.err == said and not shop.out


def test_check_for_programs(shop):
    assert shop.setout("check", "boards.rod", "--format", "json") == 0
    json.loads(shop.out)
    (shop.folder / "boards.rod").write_text("nonsense\n")
    assert shop.setout("check", "boards.rod", "--format", "json") == 1
    assert "rod1" in json.dumps(json.loads(shop.out))
    assert shop.setout("check", "nowhere.rod", "--format", "json") == 2
    assert "rod901" in json.dumps(json.loads(shop.out))


def test_check_reads_standard_input(shop):
    command = [sys.executable, "-m", "setout", "check", "-"]
    spec = (shop.folder / "boards.rod").read_bytes()
    assert subprocess.run(command, input=spec, capture_output=True).returncode == 0
    done = subprocess.run(command, input=b"nonsense\n", capture_output=True)
    assert done.returncode == 1 and b"standard input:1" in done.stdout


def test_a_reader_that_leaves_early_is_no_fault(shop):
    (shop.folder / "boards.rod").write_text("nonsense !\n" * 50)
    for words in (["check", "boards.rod"], ["explain"], ["--help"]):
        read, write = os.pipe()
        os.close(read)
        with os.fdopen(write, "wb") as gone:
            done = subprocess.run(
                [sys.executable, "-m", "setout", *words], env=BUFFERED, stdout=gone, stderr=subprocess.PIPE
            )
        assert done.returncode in (0, 141) and done.stderr == b"", done.stderr


def test_a_terminal_without_the_signs_gets_others(shop):
    """≈ and · can't be shown in plain ASCII."""
    done = subprocess.run(
        [sys.executable, "-m", "setout", "explain", "rod900"],
        env={**os.environ, "PYTHONIOENCODING": "ascii"},
        capture_output=True,
    )
    assert done.returncode == 0 and not done.stderr


@pytest.mark.parametrize("code", ["rod900", "ROD900", "900"])
def test_explain_prints_the_page(shop, code):
    assert shop.setout("explain", code) == 0
    assert shop.out.startswith("# rod900 error: ")


def test_explain_alone_lists_the_codes(shop):
    assert shop.setout("explain") == 0
    listed = [line.split()[0] for line in shop.out.splitlines() if line.startswith("rod")]
    assert listed == sorted(listed) and {"rod900", "rod901"} <= set(listed)


def test_a_fault_of_our_own_is_said_so(shop, monkeypatch):
    from setout.cli import check

    def broken(*_):
        raise KeyError("shelf\n\x1b[31m")

    monkeypatch.setattr(check, "compiled", broken)
    assert shop.setout("check", "boards.rod") == 3
    assert "rod900" in shop.err and "KeyError" in shop.err and "\x1b" not in shop.err


def test_progress_is_for_terminals(shop):
    pty = pytest.importorskip("pty")
    try:
        ours, theirs = pty.openpty()
    except OSError:
        pytest.skip("no terminals to be had here")
    with os.fdopen(theirs, "wb") as terminal:
        done = subprocess.run(
            [sys.executable, "-m", "setout", "build", "boards.rod", "--format", "csv"],
            stderr=terminal,
            stdout=subprocess.PIPE,
        )
    said = os.read(ours, 10_000).decode()
    os.close(ours)
    assert done.returncode == 0 and done.stdout == b""
    assert "placing parts" in said and "out/boards/cutlist.csv: 7 boards" in said
