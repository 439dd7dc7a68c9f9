"""`setout new`: a file that was not there before, and never one that was."""

from __future__ import annotations

from importlib.resources import files

import pytest

from setout.cli.arguments import TEMPLATES


@pytest.mark.parametrize("template", TEMPLATES)
def test_a_template_is_written_and_checks(shop, template):
    assert shop.setout("new", "hall_desk", "--template", template) == 0
    text = (shop.folder / "hall_desk.rod").read_text()
    assert 'project "Hall desk" {' in text and shop.err == "hall_desk.rod is written\n"
    assert shop.setout("check", "hall_desk.rod") == 0 and shop.out == ""
    assert shop.setout("fmt", "--check", "hall_desk.rod") == 0


def test_all_templates_can_be_chosen():
    shipped = {path.name for path in (files("setout.new") / "templates").iterdir() if path.name.endswith(".rod")}
    assert shipped == {f"{name}.rod" for name in TEMPLATES}


def test_a_table_becomes_a_spec(shop):
    (shop.folder / "list.csv").write_text("part,length (mm),width,qty\nside,720,300,2\nlid,,1,1\n")
    assert shop.setout("new", "hall.rod", "--from", "list.csv") == 0
    assert shop.err.startswith("hall.rod is written from list.csv\n  1 part of 1 stock\n")
    assert "  left out row 3: its length is missing\n" in shop.err and shop.out == ""
    assert shop.setout("check", "hall.rod") == 0


@pytest.mark.parametrize("there", ["boards.rod", "hall.rod", "hall.marks"])
def test_nothing_is_written_over(shop, there):
    (shop.folder / "list.csv").write_text("part,length,width\nside,72,30\n")
    (shop.folder / there).touch()
    before = shop.files()
    name = there.split(".")[0]
    for words in (("new", name), ("new", f"{name}.rod"), ("new", name, "--from", "list.csv")):
        assert shop.setout(*words) == 2 and "rod921" in shop.err and there in shop.err
    assert shop.files() == before


def test_a_link_that_leads_nowhere_is_no_free_place(shop):
    (shop.folder / "hall.rod").symlink_to("elsewhere.rod")
    assert shop.setout("new", "hall") == 2 and not (shop.folder / "elsewhere.rod").exists()


def test_a_file_that_comes_at_the_last_moment_stays(shop, monkeypatch):
    from setout.cli import new

    monkeypatch.setattr(new, "_in_the_way", lambda place: None)
    before = shop.files()
    assert shop.setout("new", "boards") == 2 and "rod921" in shop.err and shop.files() == before


@pytest.mark.parametrize(
    "words, code, said",
    [
        (("new",), 2, ""),
        (("new", ""), 2, "is no name"),
        (("new", ".rod"), 2, "is no name"),
        (("new", "no_name/"), 2, "is no name"),
        (("new", "-"), 2, "is no name"),
        (("new", "../.."), 2, "is no name"),
        (("new", "a", "--template", "wardrobe"), 2, "wardrobe"),
        (("new", "a", "--template", "base", "--from", "b.csv"), 2, "not allowed with"),
        (("new", "no/such/folder"), 3, "rod920"),
        (("new", "a", "--from", "nowhere.csv"), 2, "rod922"),
        (("new", "a", "--from", "."), 2, "rod922"),
        (("new", "a", "--from", "/dev/zero"), 2, "rod922"),
        (("new", "a", "--from", "boards.rod"), 1, "rod923"),
        (("new", "a\0b"), 3, "rod920"),
    ],
)
def test_what_cannot_be_started(shop, words, code, said):
    before = shop.files()
    assert shop.setout(*words) == code and said in shop.err and "Traceback" not in shop.err
    assert shop.files() == before
