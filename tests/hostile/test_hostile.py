"""A spec is text from anywhere: whatever it holds, the answer is a clear error, soon, and nothing is written."""

from __future__ import annotations

import os
import resource
import socket
import subprocess
import sys
from pathlib import Path

import pytest

SECONDS = 20
MEMORY = 3 * 2**30
HEAD = 'project "x" { units inch; mark to 1/32; paper letter }\nstock ply { sheet 96 x 48 x 3/4 }\n'
PART = "part shelf of ply { size 30 x 12; count 1 }\n"
DEEP = 10_000
BOX = "size wide 1, high 1, deep 1"

TEXTS = {
    "empty": "",
    "blank": " \n\t\n  # nothing but a comment\n",
    "binary": bytes(range(256)) * 40,
    "latin1": HEAD.encode() + b"# caf\xe9\n",
    "utf16": (HEAD + PART).encode("utf-16"),
    "nul": (HEAD + 'stock a "b\0c" { sheet 9 x 9 x 1 }\n').encode(),
    "ten_megabytes_of_brackets": b"{" * 10_000_000,
    "brackets_just_below_the_limit": b"(" * 1_900_000,
    "braces_just_below_the_limit": b"{" * 1_900_000,
    "closing_brackets": b"}" * 200_000,
    "many_lines_of_rubbish": "% ! ?\n" * 200_000,
    "one_endless_word": "a" * 1_900_000,
    "one_endless_number": HEAD + "let x = " + "9" * 1_000_000 + "\n",
    "one_endless_path": HEAD + "let x = " + ".".join(["a"] * 100_000) + "\n",
    "endless_sum": HEAD + "let x = 1" + " + 1" * 100_000 + "\nlet y = x.wide\n",
    "parentheses_deep": HEAD + "let x = " + "(" * DEEP + "1" + ")" * DEEP + "\nnonsense\n",
    "minus_deep": HEAD + "let x = " + "- " * DEEP + "1\nnonsense\n",
    "not_deep": HEAD + "when " + "not " * DEEP + "1 = 1 { " + PART + "}\n",
    "blocks_deep": HEAD + "when 1 = 1 {\n" * DEEP + PART + "}\n" * DEEP,
    "calls_deep": HEAD + "let x = " + "min(1, " * DEEP + "1" + ")" * DEEP + "\nnonsense\n",
    "lets_in_a_long_chain": HEAD + "".join(f"let a{i} = a{i + 1}\n" for i in range(DEEP)),
    "lets_in_a_ring": HEAD + "let a = b + 1\nlet b = a + 1\n" + PART,
    "power_tower": HEAD + "let x = 9^9^9\n" + PART,
    "stars": HEAD + "let x = 9**9**9\n" + PART,
    "many_mistakes": HEAD + "practice {\n" + "".join(f"nothing{i} 3\n" for i in range(5000)) + "}\n",
    "squaring": HEAD + "let a0 = 99\n" + "".join(f"let a{i + 1} = a{i} * a{i}\n" for i in range(40)) + PART,
    "huge_count": HEAD + "part shelf of ply { size 30 x 12; count 1000000000000 }\n",
    "huge_repeat": HEAD
    + "assembly b { size wide 30, high 30, deep 12\n"
    + "part low of ply { level at bottom }\npart high_one of ply { level at top }\n"
    + "part shelf of ply { level; repeat 100000000 between low and high_one } }\nplace b { at left, bottom, back }\n"
    + 'room "r" { size wide 100, high 100, deep 100 }\n',
    "assemblies_that_double": HEAD
    + "assembly a0 { size wide 1, high 1, deep 1; part p of ply { level at bottom } }\n"
    + "".join(
        f"assembly a{n} {{ {BOX}\nplace a{n - 1} as l {{ at left }}\nplace a{n - 1} as r {{ at right }} }}\n"
        for n in range(1, 41)
    )
    + "place a40 { at left, bottom, back }\n"
    + 'room "r" { size wide 100, high 100, deep 100 }\n',
    "assembly_in_itself": HEAD
    + "assembly a { size wide 1, high 1, deep 1; place a as b { at left } }\nplace a { at left }\n",
    "fit_a_million": HEAD
    + 'hardware foot "f" { price 1; pack 1 }\n'
    + PART
    + "fit 100000000000 foot { on shelf.top }\n",
    "control_characters": HEAD + 'stock t "\x1b]0;owned\x07\x1b[2J" { sheet 1 }\n',
    "right_to_left": HEAD + 'stock t "\u202eabc\u2066" { sheet 1 }\n',
    "include_itself": HEAD + 'include "spec.rod"\n' + PART,
    "include_up": HEAD + 'include "../outside.rod"\n' + PART,
    "include_absolute": HEAD + 'include "/etc/passwd"\n' + PART,
    "include_device": HEAD + 'include "/dev/zero"\n' + PART,
    "include_device_link": HEAD + 'include "zero.rod"\n' + PART,
    "include_pipe": HEAD + 'include "pipe.rod"\n' + PART,
    "include_socket": HEAD + 'include "socket.rod"\n' + PART,
    "include_folder": HEAD + 'include "folder"\n' + PART,
    "include_link_out": HEAD + 'include "link.rod"\n' + PART,
    "include_through_a_linked_folder": HEAD + 'include "way/outside.rod"\n' + PART,
    "include_link_ring": HEAD + 'include "ring.rod"\n' + PART,
    "include_missing": HEAD + 'include "nowhere.rod"\n' + PART,
    "include_ring": HEAD + 'include "one.rod"\n' + PART,
    "include_nul": HEAD + 'include "a\\0b"\n' + PART,
    "include_long_name": HEAD + f'include "{"a" * 5000}.rod"\n' + PART,
}


@pytest.mark.parametrize("case", TEXTS)
def test_bad_text_is_refused_clearly_and_nothing_is_written(case, folder):
    text = TEXTS[case]
    (folder / "spec.rod").write_bytes(text if isinstance(text, bytes) else text.encode())
    before = listing(folder.parent)
    done = setout(["build", "spec.rod"], folder)
    clear_error(done, codes=(1,))
    assert listing(folder.parent) == before


@pytest.mark.parametrize(
    "name",
    ["missing.rod", "folder", "pipe.rod", "zero.rod", "ring.rod", "a" * 5000, "a/b/c.rod", ""],
    ids=lambda n: n[:9],
)
@pytest.mark.parametrize("command", ["check", "build"])
def test_what_is_no_spec_at_all_is_wrong_usage(name, command, folder):
    before = listing(folder.parent)
    clear_error(setout([command, name], folder), codes=(2,))
    assert listing(folder.parent) == before


def test_an_unreadable_spec_is_refused(folder):
    spec = folder / "spec.rod"
    spec.write_text(HEAD + PART)
    spec.chmod(0)
    if os.access(spec, os.R_OK):
        pytest.skip("whoever runs this may read everything")
    clear_error(setout(["check", "spec.rod"], folder), codes=(2,))


@pytest.mark.parametrize(
    "text",
    [
        (HEAD + PART).replace("\n", "\r\n").encode(),
        b"\xef\xbb\xbf" + (HEAD + PART).encode(),
        (HEAD + PART).replace(" ", "\t").replace('"\t"', '"x"').encode(),
        (HEAD + PART).rstrip("\n").encode(),
    ],
    ids=["crlf", "byte_order_mark", "tabs", "no_last_newline"],
)
def test_what_editors_leave_in_a_file_does_no_harm(text, folder):
    (folder / "spec.rod").write_bytes(text)
    done = setout(["check", "spec.rod"], folder)
    assert (done.returncode, done.stderr) == (0, ""), done.stdout + done.stderr


def test_no_control_character_reaches_the_terminal(folder):
    (folder / "spec.rod").write_text(TEXTS["control_characters"])
    name = "a\x1b[31mb.rod"
    for arguments in (
        ["check", "spec.rod"],
        ["check", "--format", "json", "spec.rod"],
        ["check", name],
        ["explain", name],
    ):
        done = setout(arguments, folder)
        assert not {c for c in done.stdout + done.stderr if c < " " and c != "\n"}, arguments


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A spec's folder with all that an include should not follow, and a file above it."""
    (tmp_path / "outside.rod").write_text("let secret = 7\n")
    folder = tmp_path / "job"
    folder.mkdir()
    (folder / "folder").mkdir()
    os.mkfifo(folder / "pipe.rod")
    for name, target in (
        ("zero.rod", "/dev/zero"),
        ("link.rod", "../outside.rod"),
        ("way", ".."),
        ("ring.rod", "ring.rod"),
    ):
        (folder / name).symlink_to(target)
    (folder / "one.rod").write_text('include "two.rod"\n')
    (folder / "two.rod").write_text('include "one.rod"\n')
    with socket.socket(socket.AF_UNIX) as plug:
        here = os.open(folder, os.O_RDONLY)
        plug.bind(f"/proc/self/fd/{here}/socket.rod" if os.path.isdir("/proc/self/fd") else str(folder / "socket.rod"))
        os.close(here)
    return folder


def setout(arguments: list[str], folder: Path) -> subprocess.CompletedProcess[str]:
    """Run the command in the folder, with little time and memory."""

    def limits() -> None:
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))

    return subprocess.run(
        [sys.executable, "-m", "setout", *arguments],
        cwd=folder,
        preexec_fn=limits,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        timeout=4 * SECONDS,
        text=True,
        errors="surrogateescape",
    )


def clear_error(done: subprocess.CompletedProcess[str], codes: tuple[int, ...]) -> None:
    said = done.stdout + done.stderr
    assert done.returncode in codes, said[:2000]
    assert "error" in said
    assert "Traceback" not in said and "rod900" not in said, said[:2000]
    assert len(said) < 100_000, "nobody reads that much"


def listing(folder: Path) -> list[tuple[str, int]]:
    return sorted((str(p), p.lstat().st_size) for p in folder.rglob("*"))
