"""`setout build`: all of the packet or nothing of it, and nothing else touched."""

from __future__ import annotations

import io
import os
import resource
import subprocess
import sys

import pytest

from setout.cli import output

FORMATS = "html,csv,json,svg"


def build(shop, *more: str) -> int:
    return shop.setout("build", "boards.rod", "--format", FORMATS, *more)


def test_a_clean_spec_gives_its_documents_and_its_marks(shop):
    assert build(shop) == 0
    assert shop.out == shop.err == "", "silence in a pipe"
    made = set(shop.files())
    assert {"out/boards/packet.html", "out/boards/cutlist.csv", "out/boards/job.json", "boards.marks"} <= made
    assert all(name.startswith("out/boards/") for name in made - {"boards.rod", "boards.marks"})
    assert any(name.endswith(".svg") for name in made)


def test_twice_gives_the_same_bytes_and_no_second_mark(shop):
    build(shop)
    first = shop.files()
    build(shop)
    assert shop.files() == first


def test_the_order_of_python_sets_decides_nothing(shop):
    made = []
    for seed in ("1", "2"):
        command = [sys.executable, "-m", "setout", "build", "boards.rod", "--out", seed]
        subprocess.run(command, env={**os.environ, "PYTHONHASHSEED": seed}, check=True)
        made.append({p.relative_to(shop.folder / seed): p.read_bytes() for p in (shop.folder / seed).rglob("*.*")})
    assert made[0] == made[1] and len(made[0]) > 5


def test_only_what_is_asked_for_is_written(shop):
    assert shop.setout("build", "boards.rod", "--format", "csv", "--out", "list") == 0
    assert set(shop.files()) == {"boards.rod", "boards.marks", "list/cutlist.csv", "list/buy.csv"}


def test_an_error_writes_nothing(shop):
    (shop.folder / "boards.rod").write_text((shop.folder / "boards.rod").read_text() + "part odd of oak { upright }\n")
    before = shop.files()
    assert build(shop) == 1
    assert "error rod" in shop.err and not shop.out
    assert shop.files() == before and not (shop.folder / "out").exists()


def test_marks_are_appended_and_the_old_lines_stay_as_they_were(shop):
    build(shop)
    marks = shop.folder / "boards.marks"
    old = marks.read_bytes().rstrip(b"\n")
    marks.write_bytes(old)  # an editor took the last newline off
    marks.chmod(0o640)
    assert build(shop, "--set", "long=33") == 0
    assert marks.read_bytes().startswith(old + b"\n") and marks.stat().st_mode & 0o777 == 0o640
    assert not list(shop.folder.glob(".*")), "nothing is left beside it"


def test_check_and_why_write_nothing(shop):
    before = shop.files()
    assert shop.setout("check", "boards.rod") == 0
    assert shop.setout("why", "boards.rod", "box.shelf") == 0
    assert shop.files() == before


def test_marks_that_lead_out_of_the_folder_are_refused(shop, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere") / "kept"
    elsewhere.write_text("")
    (shop.folder / "boards.marks").symlink_to(elsewhere)
    assert build(shop) == 1
    assert "rod904" in shop.err and elsewhere.read_text() == "" and not (shop.folder / "out").exists()


@pytest.mark.parametrize("out", ["boards.rod", "boards.rod/below", "taken/packet"])
def test_a_file_is_no_folder_for_documents(shop, out):
    (shop.folder / "taken").write_text("mine")
    before = shop.files()
    assert build(shop, "--out", out) == 3
    assert "rod902" in shop.err and shop.files() == before


def test_the_specs_own_folder_will_do_as_long_as_nothing_is_overwritten(shop):
    assert build(shop, "--out", ".") == 0
    assert (shop.folder / "cutlist.csv").exists()


def test_an_included_file_is_not_written_over(shop):
    (shop.folder / "cutlist.csv").write_text("let other = 1\n")
    with (shop.folder / "boards.rod").open("a") as spec:
        spec.write('include "cutlist.csv"\n')
    before = shop.files()
    assert build(shop, "--out", ".") == 2
    assert "rod903" in shop.err and shop.files() == before


def test_a_document_that_is_a_link_is_replaced_not_followed(shop, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere") / "kept"
    elsewhere.write_text("mine")
    (shop.folder / "made").mkdir()
    (shop.folder / "made" / "cutlist.csv").symlink_to(elsewhere)
    assert build(shop, "--out", "made") == 0
    assert elsewhere.read_text() == "mine" and not (shop.folder / "made" / "cutlist.csv").is_symlink()


def test_a_full_disk_leaves_the_old_packet_as_it_was(shop):
    """A limit on the size of files stands in for the disk."""
    assert build(shop) == 0
    before = shop.files()

    def small_disk() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (3000, 3000))

    command = [sys.executable, "-m", "setout", "build", "boards.rod", "--format", FORMATS, "--set", "long=33"]
    done = subprocess.run(command, capture_output=True, text=True, preexec_fn=small_disk)
    assert done.returncode == 3 and "rod902" in done.stderr and "Traceback" not in done.stderr
    assert shop.files() == before


def test_marks_that_cannot_be_written_hold_the_packet_back(shop, monkeypatch):
    from setout.cli import marks

    def refuse(path, data):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(marks, "rewrite", refuse)
    assert build(shop) == 3
    assert "rod904" in shop.err and set(shop.files()) == {"boards.rod"} and not (shop.folder / "out").exists()


def test_marks_added_by_another_build_meanwhile_are_taken_in(shop, monkeypatch):
    """The other build finishes just before this one writes."""
    lay_out = output.Delivery.lay_out
    others = []

    def slowly(delivery, documents):
        if not others:
            others.append("running")
            assert build(shop, "--set", "long=33", "--out", "theirs") == 0
            others.append((shop.folder / "boards.marks").read_bytes())
        return lay_out(delivery, documents)

    monkeypatch.setattr(output.Delivery, "lay_out", slowly)
    assert build(shop) == 0
    marks = (shop.folder / "boards.marks").read_bytes()
    assert marks.startswith(others[1]) and len(marks) > len(others[1])
    given = [line.split()[0] for line in marks.decode().splitlines() if line and not line.startswith("#")]
    assert len(given) == len(set(given))


def test_builds_at_the_same_time_agree_on_the_marks(shop):
    command = [sys.executable, "-m", "setout", "build", "boards.rod", "--format", "csv"]
    builds = [subprocess.Popen([*command, "--set", f"long={n}", "--out", str(n)]) for n in (31, 32, 33, 34)]
    assert all(one.wait() in (0, 3) for one in builds)
    marks = (shop.folder / "boards.marks").read_text()
    given = [line.split()[0] for line in marks.splitlines() if line and not line.startswith("#")]
    assert len(given) == len(set(given))


def test_stopping_it_leaves_nothing_half_written(shop, monkeypatch):
    def interrupted(delivery):
        raise KeyboardInterrupt

    monkeypatch.setattr(output.Delivery, "put_in_place", interrupted)
    assert build(shop) == 130
    assert "Traceback" not in shop.err and not (shop.folder / "out").exists()


def test_a_measure_can_be_given(shop):
    assert build(shop, "--set", "gap=25") == 0
    assert build(shop, "--set", "gab=25") == 1
    assert "gap" in shop.err, "the nearest name is offered"


def test_interrupting_while_standard_input_is_awaited_is_quiet(shop, monkeypatch):
    class Awaited(io.BytesIO):
        def read(self, *_):
            raise KeyboardInterrupt

    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(Awaited()))
    assert shop.setout("check", "-") == 130
    assert shop.out == shop.err == ""


def test_errors_are_told_before_notes():
    from io import StringIO

    from setout.cli.report import tell
    from setout.diagnostics import error, note, warning
    from setout.source import Source, Span

    source = Source("a.rod", "one\ntwo\nthree\nfour\n")
    found = [note("rod354", "n", Span("a.rod", 0, 3)), error("rod350", "e", Span("a.rod", 4, 7))]
    found += [warning("rod365", "w", Span("a.rod", 8, 13)), error("rod351", "f", Span("a.rod", 14, 18))]
    out = StringIO()
    tell(out, found, {"a.rod": source})
    assert [line.split()[1] for line in out.getvalue().splitlines() if line.startswith("a.rod")] == [
        "error", "error", "warning", "note"
    ]
