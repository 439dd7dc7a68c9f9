"""The one layout. A case is a file: a spec, a line `# output`, the same laid out, which `--update` writes."""

from __future__ import annotations

from pathlib import Path

import pytest
from laying import same, tree

from setout.fmt import fmt
from setout.fmt.proof import difference
from setout.read import read
from setout.source import Source

HERE = Path(__file__).parent
REPO = HERE.parents[1]
CASES = sorted(HERE.glob("*.rod"))
SHIPPED = sorted([*REPO.glob("specs/**/*.rod"), *REPO.glob("compiler/setout/new/templates/*.rod")])
OTHERS = sorted({*REPO.glob("tests/**/*.rod")} - {*CASES})
OUTPUT = "# output\n"


def laid(text: str) -> str | None:
    return fmt(Source("spec.rod", text)).value


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_a_case_is_laid_out_as_expected(path, expected):
    before = path.read_text("utf-8").partition(OUTPUT)[0]
    after = laid(before)
    assert after is not None and laid(after) == after
    same(before, after)
    expected.same(before + OUTPUT + after, path)


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_what_is_shipped_is_laid_out(path):
    text = path.read_text("utf-8")
    assert laid(text) == text, f"setout fmt {path.relative_to(REPO)}"


@pytest.mark.parametrize("path", OTHERS, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_any_spec_keeps_its_meaning_and_its_comments_or_is_left_alone(path):
    text = path.read_bytes().decode("utf-8", "replace").replace("\r", "")
    checked = read(Source("spec.rod", text))
    after = fmt(Source("spec.rod", text))
    if checked.failed:
        assert after.value is None and after.diagnostics == checked.diagnostics
        return
    assert after.value is not None and laid(after.value) == after.value
    same(text, after.value)


@pytest.mark.parametrize(
    "one, other",
    [
        ("let a = 1", "let a = 2"),
        ("let a = 1-1/2", "let a = 1.5"),
        ("let a = (1 + 2)", "let a = 1 + 2"),
        ("let a = 1 - 2 - 3", "let a = 1 - (2 - 3)"),
        ("part a of b { in sequence; count 1 }", "part a of b { count 1 }"),
        ("let a = 1\nlet b = 2", "let b = 2\nlet a = 1"),
        ("let a = 1  # c", "let a = 1"),
        ("let a = 1  # c", "let a = 1\n# c"),
        ("# c\nlet a = 1", "let a = 1\n# c"),
        ("let a = 1  # c\nlet b = 2", "let a = 1\nlet b = 2  # c"),
        ("let a = (1 +  # c\n2)", "let a = (1  # c\n+ 2)"),
    ],
)
def test_the_proof_sees_a_difference(one, other):
    assert difference(tree(one), tree(other))
    assert not difference(tree(one), tree(one.replace(" ", "  ").replace("#  c", "# c")))


def test_a_layout_that_changed_the_meaning_is_never_handed_over(monkeypatch):
    monkeypatch.setattr("setout.fmt.laid_out", lambda items: "let a = 2\n")
    with pytest.raises(RuntimeError, match="meaning"):
        laid("let a  = 1\n")


def test_a_text_that_would_grow_too_long_is_told_of():
    deep = "when 1 = 1 { " * 60 + "a rests on b; " * 15_000 + "}" * 60
    assert not read(Source("spec.rod", deep)).failed
    checked = fmt(Source("spec.rod", deep))
    assert checked.value is None and [found.code for found in checked.diagnostics] == ["rod102"]
