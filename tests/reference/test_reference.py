"""What the written pages say is so: examples compile, commands and options are those there are."""

from __future__ import annotations

import re

import pytest
from compiling import SPECS, compiled, sound
from examples import REFERENCE, examples

from setout.cli import main
from setout.cli.arguments import FORMATS

REPO = REFERENCE.parents[1]
README = (REPO / "README.md").read_text("utf-8")
EXAMPLES = examples()


@pytest.mark.parametrize("line", EXAMPLES)
def test_an_example_of_the_reference_compiles(line):
    found = compiled(EXAMPLES[line]).diagnostics
    assert not [(d.code, d.message) for d in found if d.severity.value != "note"]


def test_the_reference_has_an_example_for_every_chapter():
    page = REFERENCE.read_text("utf-8")
    chapters = re.split(r"^## ", page, flags=re.MULTILINE)[1:]
    without = [text.split("\n")[0] for text in chapters if "```rod" not in text]
    assert without == ["include", "The marks file"]  # they speak of a second file


@pytest.mark.parametrize("spec", sorted(SPECS.glob("*.rod")), ids=lambda path: path.name)
def test_a_spec_of_our_own_leaves_nothing_to_be_said(spec):
    sound(spec.read_text("utf-8"))


def readme_specs() -> list[str]:
    return [block for block in re.findall(r"^```\w*\n(.*?)^```$", README, re.M | re.S) if block.startswith("project")]


def test_the_specs_in_the_readme_compile():
    assert readme_specs()
    for text in readme_specs():
        sound(text)


def test_what_the_readme_asks_why_is_answered(tmp_path, monkeypatch, capsys):
    """The spec in the README, saved under the name that its commands use."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "bookcase.rod").write_text(readme_specs()[0], "utf-8")
    asked = re.findall(r"^\$ setout (why .*)$", README, re.M)
    assert asked
    for words in asked:
        assert main(words.split()) == 0
        assert "30-9/16" in capsys.readouterr().out


# --- commands and options -----------------------------------------------------------------------------------


def help_of(capsys, *words: str) -> str:
    assert main([*words, "--help"]) == 0
    return capsys.readouterr().out


@pytest.fixture
def commands(capsys) -> list[str]:
    """The commands there are, in the order of the help."""
    listed = help_of(capsys).split("\ncommands:\n")[1].split("\n\n")[0]
    return re.findall(r"^    (\w+)", listed, re.M)


def test_the_readme_lists_the_commands_there_are(commands):
    assert re.findall(r"^\| `setout (\w+)", README, re.M) == commands


def test_the_readme_names_the_options_there_are(commands, capsys):
    known = {option for command in commands for option in re.findall(r"--[\w-]+", help_of(capsys, command))}
    assert set(re.findall(r"(?<![\w-])--[a-z][\w-]*", commands_chapter())) == known


def commands_chapter() -> str:
    return README.split("\n## Commands\n")[1].split("\n## ")[0]


def test_the_readme_names_the_formats_there_are():
    assert ",".join(FORMATS) in commands_chapter()


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md", "grammar/REFERENCE.md"])
def test_pages_speak_of_no_other_command(page, commands):
    text = (REPO / page).read_text("utf-8")
    assert set(re.findall(r"(?:`|\$ |bin/)setout (\w+)", text)) <= set(commands)


def test_files_that_the_pages_link_to_are_there():
    for page in (REPO / "README.md", REPO / "DEVELOPERS.md", REFERENCE):
        links = re.findall(r"\]\((?!https?:|#)([^)#]+)", page.read_text("utf-8"))
        assert not [link for link in links if not (page.parent / link).exists()], page.name
