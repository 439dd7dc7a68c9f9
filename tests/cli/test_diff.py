"""`setout diff`: which two are compared, what is printed and written, and the exit codes."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from pathlib import Path

import jsonschema
import pytest
from small_spec import INCLUDING, LONGER, SPEC

from setout.cli.codes import CHANGED
from setout.cli.revisions import named

SCHEMA = Path(__file__).parents[2] / "compiler" / "setout" / "write" / "changes" / "schema.json"


# --- two files ------------------------------------------------------------------------------------------------


def test_changed_and_unchanged_end_differently(shop):
    (shop.folder / "longer.rod").write_text(LONGER)
    (shop.folder / "same.rod").write_text("# another layout\n\n" + SPEC.replace("; ", "\n", 2))
    assert shop.setout("diff", "boards.rod", "longer.rod") == CHANGED == 4
    assert "boards.rod → longer.rod" in shop.out and "30 × 11-1/4 → 34 × 11-1/4" in shop.out and not shop.err
    assert shop.setout("diff", "boards.rod", "same.rod") == 0
    assert "Nothing changes." in shop.out


def test_errors_in_either_are_told_and_nothing_is_compared(shop):
    (shop.folder / "broken.rod").write_text(SPEC.replace("let long = 30", "let long = width"))
    (shop.folder / "other.rod").write_text(SPEC.replace("depth 1/4", "depth 4"))
    assert shop.setout("diff", "broken.rod", "other.rod") == 1
    assert not shop.out and "broken.rod:3:" in shop.err and "other.rod:" in shop.err


@pytest.mark.parametrize(
    "words",
    [
        (),
        ("boards.rod",),
        ("boards.rod", "boards.rod"),
        ("boards.rod", "nowhere.rod"),
        ("nowhere.rod", "boards.rod"),
        ("boards.rod", "."),
        ("boards.rod", "longer.rod", "--format", "csv"),
        ("boards.rod", "longer.rod", "--format", "text,json"),
        ("boards.rod", "longer.rod", "--format", "pdf", "--out", "."),
        ("--for-git",),
        ("--for-git", "boards.rod", "boards.rod"),
    ],
)
def test_wrong_usage_is_2(shop, words):
    (shop.folder / "longer.rod").write_text(LONGER)
    (shop.folder / "changes.pdf").mkdir()
    before = shop.files()
    assert shop.setout("diff", *words) in (2, 3)
    assert shop.err and shop.files() == before


def test_a_measure_just_taken_counts_for_both(shop):
    (shop.folder / "longer.rod").write_text(LONGER)
    assert shop.setout("diff", "boards.rod", "longer.rod", "--set", "gap=25", "--set", "long=31") == 0


# --- forms ----------------------------------------------------------------------------------------------------


def test_markdown_is_a_page_of_tables(shop):
    (shop.folder / "longer.rod").write_text(LONGER)
    assert shop.setout("diff", "boards.rod", "longer.rod", "--format", "markdown") == CHANGED
    assert shop.out.startswith("# Boards: what changes\n") and "| --- |" in shop.out


OTHERS = (
    SPEC,
    LONGER,
    SPEC.replace("part spare", "part more"),
    SPEC.replace("20, deep", "gap, deep"),
    SPEC.replace("count 4", "count 0"),
)


@pytest.mark.parametrize("text", OTHERS)
def test_json_is_as_its_schema_says(shop, text):
    (shop.folder / "other.rod").write_text(text)
    for words in (("boards.rod", "other.rod"), ("other.rod", "boards.rod")):
        code = shop.setout("diff", *words, "--format", "json")
        said = json.loads(shop.out)
        jsonschema.Draft202012Validator(json.loads(SCHEMA.read_text("utf-8"))).validate(said)
        assert said["changed"] == (code == CHANGED)


def test_the_schema_describes_every_field():
    schema = json.loads(SCHEMA.read_text("utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    objects = [part for part in (schema, *schema["$defs"].values()) if part.get("type") == "object"]
    assert len(objects) > 10
    for part in objects:
        assert part["additionalProperties"] is False and set(part["required"]) == set(part["properties"])
        without = [name for name, field in part["properties"].items() if not field.get("description")]
        assert not without


def test_the_sheet_is_written_the_same_each_time(shop):
    (shop.folder / "longer.rod").write_text(LONGER)
    words = ("diff", "longer.rod", "boards.rod", "--format", "html,pdf")
    assert shop.setout(*words) == CHANGED and not shop.out
    made = shop.files()
    assert {"out/boards/changes.pdf", "out/boards/changes.html"} <= set(made)
    assert made["out/boards/changes.pdf"].startswith(b"%PDF")
    page = made["out/boards/changes.html"].decode()
    assert "Cut lines on boards cut already" in page and page.count("<svg") >= 4
    assert ">4 off</text>" in page and ">31-1/16</text>" in page
    assert shop.setout(*words) == CHANGED and shop.files() == made


def test_the_sheet_takes_any_of_our_papers_and_says_when_nothing_changes(shop):
    (shop.folder / "a4.rod").write_text(SPEC.replace("paper letter", "paper a4"))
    assert shop.setout("diff", "boards.rod", "a4.rod", "--format", "html,text", "--out", "sheets") == 0
    page = shop.files()["sheets/changes.html"].decode()
    assert "size: a4" in page and "Nothing changes." in page and "Nothing changes." in shop.out


# --- revisions ------------------------------------------------------------------------------------------------


def test_one_name_compares_a_revision_with_the_file_as_it_is(shop, repository):
    (shop.folder / "boards.rod").write_text(LONGER)
    assert shop.setout("diff", "boards.rod@HEAD") == CHANGED
    assert "boards.rod@HEAD → boards.rod" in shop.out and "30 × 11-1/4 → 34 × 11-1/4" in shop.out
    repository.commit()
    assert shop.setout("diff", "boards.rod@HEAD") == 0
    assert shop.setout("diff", "boards.rod@HEAD", "boards.rod@HEAD~1") == CHANGED
    assert "34 × 11-1/4 → 30 × 11-1/4" in shop.out


def test_any_name_of_a_commit_will_do(shop, repository):
    first = repository.git("rev-parse", "HEAD").strip()
    repository.commit({"boards.rod": LONGER})
    repository.git("tag", "cut")
    repository.git("branch", "wide/hall")
    for name in (first, first[:8], "cut^", "wide/hall~1", "@~1", "HEAD@{1}", "main@{1}"):
        assert shop.setout("diff", f"boards.rod@{name}") == CHANGED, name


def test_a_spec_is_found_from_any_folder(shop, repository, monkeypatch):
    repository.commit({"jobs/hall.rod": SPEC})
    repository.commit({"jobs/hall.rod": LONGER})
    for folder, name in (("jobs", "hall.rod"), ("jobs", "../jobs/hall.rod"), (".", str(shop.folder / "jobs/hall.rod"))):
        monkeypatch.chdir(shop.folder / folder)
        assert shop.setout("diff", f"{name}@HEAD~1") == CHANGED
    monkeypatch.chdir(shop.folder)
    repository.commit({"jobs/hall.rod": None})
    assert not (shop.folder / "jobs").exists()
    assert shop.setout("diff", "jobs/hall.rod@HEAD~2", "jobs/hall.rod@HEAD~1") == CHANGED


def test_what_is_included_is_read_at_the_same_revision(shop, repository):
    repository.commit({"boards.rod": INCLUDING, "parts/sizes.rod": "let long = 30\n"})
    assert shop.setout("diff", "boards.rod@HEAD~1") == 0
    repository.commit({"parts/sizes.rod": "let long = 34\n"})
    assert shop.setout("diff", "boards.rod@HEAD~1") == CHANGED and "30 × 11-1/4 → 34 × 11-1/4" in shop.out


def test_marks_are_read_at_the_same_revision(shop, repository):
    assert shop.setout("build", "boards.rod", "--format", "csv") == 0
    marks = (shop.folder / "boards.marks").read_text()
    repository.commit()
    (shop.folder / "boards.marks").write_text(marks.replace("B1 ", "B7 "))
    assert shop.setout("diff", "boards.rod@HEAD", "--format", "json") == CHANGED
    changed = [board for board in json.loads(shop.out)["boards"] if "marked" in board["how"]]
    assert [(board["old"]["mark"], board["new"]["mark"]) for board in changed] == [("B1", "B7")]


def test_an_error_at_a_revision_is_named_by_it(shop, repository):
    repository.commit({"boards.rod": INCLUDING, "parts/sizes.rod": "let long = ply\n"})
    (shop.folder / "boards.rod").write_text(SPEC)
    assert shop.setout("diff", "boards.rod@HEAD") == 1
    assert "parts/sizes.rod@HEAD:1:12: error" in shop.err and "let long = ply" in shop.err


def test_a_file_of_that_very_name_wins(shop, repository):
    (shop.folder / "boards.rod@HEAD").write_text(LONGER)
    assert shop.setout("diff", "boards.rod@HEAD", "boards.rod") == CHANGED and "34 × 11-1/4 → 30 × 11-1/4" in shop.out
    assert (named("a@b/c.rod@HEAD@{1}").path, named("a@b/c.rod@HEAD@{1}").revision) == ("a@b/c.rod", "HEAD@{1}")
    assert (named("list@v1").path, named("list@v1").revision) == ("list", "v1")


def test_a_link_and_a_folder_are_no_specs(shop, repository):
    (shop.folder / "link.rod").symlink_to("boards.rod")
    repository.commit({"folder.rod/list.txt": "a folder"})
    for name, why in (("link.rod", "a link"), ("folder.rod", "a folder")):
        assert shop.setout("diff", f"{name}@HEAD", "boards.rod") == 2
        assert "rod927" in shop.err and why in shop.err


def test_nothing_is_read_through_links_or_out_of_other_repositories(shop, repository, tmp_path_factory):
    """Whatever stands in the working folder: what is included must be an ordinary file at the revision."""
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    (elsewhere / "sizes.rod").write_text("let long = 30\n")
    inner = shop.folder / "inner"
    inner.mkdir()
    (inner / "sizes.rod").write_text("let long = 30\n")
    for words in (["init", "-q"], ["add", "-A"], ["-c", "user.name=B", "-c", "user.email=b@b", "commit", "-qm", "x"]):
        subprocess.run(["git", "-C", str(inner), *words], check=True)
    (shop.folder / "away").symlink_to(elsewhere)
    (shop.folder / "link.rod").symlink_to(elsewhere / "sizes.rod")
    for name, why in (("inner/sizes", "rod165"), ("away/sizes", "rod165"), ("link", "a link"), ("../x", "outside")):
        repository.commit({"boards.rod": INCLUDING.replace("parts/sizes", name)})
        (shop.folder / "boards.rod").write_text(SPEC)
        assert shop.setout("diff", "boards.rod@HEAD") == 1
        assert "boards.rod@HEAD:3:" in shop.err and why in shop.err


def test_a_huge_blob_is_not_read(shop, repository):
    repository.commit({"huge.rod": "#" * 1_000_002})
    assert shop.setout("diff", "huge.rod@HEAD", "boards.rod") == 2
    assert "rod927" in shop.err and "1,000,002 bytes" in shop.err


def test_a_hook_s_environment_does_not_mislead(shop, repository, tmp_path_factory, monkeypatch):
    """As when a spec in another repository is compared within a hook of this one."""
    (shop.folder / "boards.rod").write_text(LONGER)
    other = tmp_path_factory.mktemp("other")
    subprocess.run(["git", "init", "-q", str(other)], check=True)
    for name, value in {"GIT_DIR": str(other / ".git"), "GIT_WORK_TREE": str(other), "GIT_INDEX_FILE": "x"}.items():
        monkeypatch.setenv(name, value)
    assert shop.setout("diff", "boards.rod@HEAD") == CHANGED


RUNS = (
    "core.fsmonitor core.pager core.editor core.sshCommand core.askPass core.gitProxy core.alternateRefsCommand"
    " credential.helper diff.external diff.x.command diff.x.textconv filter.x.clean filter.x.smudge filter.x.process"
    " gpg.program log.showSignature pager.log uploadpack.packObjectsHook"
)


def test_no_program_that_a_repository_names_is_run(shop, repository):
    """Its settings, attributes and hooks are a stranger's; and so is where it would fetch what it lacks."""
    repository.commit({"boards.rod": LONGER, ".gitattributes": "* diff=x filter=x\n"})
    blob, lost = (repository.git("rev-parse", f"{name}:boards.rod").strip() for name in ("HEAD", "HEAD~1"))
    program = shop.folder / "program"
    program.write_text(f"#!/bin/sh\ntouch {shop.folder}/run\n")
    program.chmod(0o755)
    for hook in ("post-index-change", "reference-transaction", "fsmonitor-watchman"):
        shutil.copy(program, shop.folder / ".git/hooks" / hook)
    for name in RUNS.split():
        repository.git("config", name, str(program))
    repository.git("config", "extensions.partialClone", "origin")
    repository.git("config", "remote.origin.promisor", "true")
    repository.git("config", "remote.origin.url", "ssh://nowhere.invalid/boards")  # for core.sshCommand
    (shop.folder / "run").unlink(missing_ok=True)  # Git itself may have
    assert shop.setout("diff", "boards.rod@HEAD~1", "boards.rod@HEAD") == CHANGED
    shop.setout("diff", "--for-git", "boards.rod", "boards.rod", blob, "100644", "boards.rod", "0" * 40, "100644")
    (shop.folder / ".git/objects" / lost[:2] / lost[2:]).unlink()
    assert shop.setout("diff", "boards.rod@HEAD~1") == 2 and "rod927" in shop.err
    assert not (shop.folder / "run").exists()


def test_git_is_not_looked_for_in_the_folder_itself(shop, repository, monkeypatch):
    program = shop.folder / "git"
    program.write_text(f"#!/bin/sh\ntouch {shop.folder}/run\n")
    program.chmod(0o755)
    monkeypatch.setenv("PATH", os.pathsep.join([".", os.environ["PATH"]]))
    assert shop.setout("diff", "boards.rod@HEAD") == 3 and "rod924" in shop.err
    assert not (shop.folder / "run").exists()


HOSTILE = [
    "",
    "-x",
    "--output=x",
    "--all",
    "$(touch x)",
    "`touch x`",
    ";touch x",
    "HEAD;touch x",
    "HEAD\n--output=x",
    "HEAD\0",
    "..",
    "HEAD..HEAD",
    "^HEAD",
    "HEAD^@",
    "@{-1}",
    "HEAD:boards.rod",
    "HEAD:../../etc/passwd",
    ":/",
    ":0:boards.rod",
    "x" * 100_000,
    "HEAD" + "^0" * 100_000,
    os.fsdecode(b"\xff\xfe"),
    "\x1b[31m",
    "ext::sh -c touch% x",
    "https://example.org/x.git",
]


@pytest.mark.parametrize("name", HOSTILE, ids=lambda name: ascii(name[:24]))
def test_a_hostile_revision_is_nothing_but_an_error(shop, repository, name):
    before = shop.files()
    assert shop.setout("diff", f"boards.rod@{name}") == 2
    assert "rod926" in shop.err and "\x1b" not in shop.err and not shop.out
    assert shop.files() == before


def test_where_the_branch_was_is_a_revision_too(shop, repository):
    before = repository.commit({"boards.rod": LONGER})
    repository.commit({"boards.rod": SPEC})
    assert shop.setout("diff", "boards.rod@{1}") == CHANGED and "boards.rod@{1} → boards.rod" in shop.out
    assert shop.setout("diff", "boards.rod@@{1}", f"boards.rod@{before}") == 0
    assert shop.setout("diff", "boards.rod@{1}..HEAD") == 2
    assert "setout diff boards.rod@{1} boards.rod@HEAD" in shop.err


PATHS = [
    "../../etc/passwd",
    "/etc/passwd",
    "../x.rod",
    "-x.rod",
    "--output=x.rod",
    ":/x.rod",
    ":(glob)*.rod",
    "*.rod",
    "$(touch x).rod",
    "a\nb.rod",
    "a\0b.rod",
    "x" * 5_000 + ".rod",
    "x/" * 2_000 + "y.rod",
    os.fsdecode(b"\xff.rod"),
    ".git/config",
    "boards.rod/x.rod",
]


@pytest.mark.parametrize("path", PATHS, ids=lambda path: ascii(path[:24]))
def test_a_hostile_path_is_nothing_but_an_error(shop, repository, path):
    before = shop.files()
    words = [f"{path}@HEAD", "boards.rod"]
    assert shop.setout("diff", *(["--", *words] if path.startswith("-") else words)) == 2
    assert "error rod9" in shop.err and not shop.out
    assert shop.files() == before
