"""The grammar is one file; the parse table beside it is made from it and from nothing else."""

import json
import subprocess
import sys

from setout.read.build import ACTIONS
from setout.read.generate import generate
from setout.read.table import GRAMMAR, TABLE, grammar_folder, grammar_table


def test_the_table_is_the_grammars():
    """After a change to the grammar: python -m setout.read.generate grammar"""
    made = generate((grammar_folder() / GRAMMAR).read_text("utf-8"))
    assert json.loads((grammar_folder() / TABLE).read_text("utf-8")) == made


def test_every_rule_has_its_action():
    rules = grammar_table().rules
    assert {r.name for r in rules if not r.splice} - set(ACTIONS) <= {"atom"}
    assert set(ACTIONS) <= {r.name for r in rules}


def test_reading_needs_no_lark():
    """It takes longer to import, and to make the table with, than all the rest of a run."""
    code = "import sys; from setout.read import read; from setout.source import Source; read(Source('a', 'let 1'))"
    subprocess.run([sys.executable, "-c", f"{code}; assert not {{'lark', 'pint'}} & set(sys.modules)"], check=True)


def test_a_table_of_another_grammar_is_not_used(monkeypatch, tmp_path):
    text = (grammar_folder() / GRAMMAR).read_text("utf-8").replace('"glue"', '"paste"')
    (tmp_path / GRAMMAR).write_text(text, "utf-8")
    (tmp_path / TABLE).write_text((grammar_folder() / TABLE).read_text("utf-8"), "utf-8")
    monkeypatch.setattr("setout.read.table.grammar_folder", lambda: tmp_path)
    assert "paste" in grammar_table.__wrapped__().keywords
