"""job.json keeps to its schema, exactly."""

from __future__ import annotations

import json
from fractions import Fraction
from hashlib import sha256
from importlib.resources import files

import jsonschema
import pytest
from sample import plan

from setout.write import write

SCHEMA = json.loads((files("setout.write.job") / "schema.json").read_text("utf-8"))


@pytest.fixture(scope="module")
def job():
    return json.loads(write(plan(), frozenset({"json"}))["job.json"])


def test_the_schema_is_one(job):
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    jsonschema.validate(job, SCHEMA, cls=jsonschema.Draft202012Validator)


def test_sizes_are_exact(job):
    b4 = next(piece for piece in job["pieces"] if piece["mark"] == "B4")
    assert b4["length"] == {"in": "361/16", "mm": 573.0875}
    assert Fraction(b4["thick"]["in"]) == Fraction(23, 32)


def test_a_held_size_gives_its_formula(job):
    deck = next(piece for piece in job["pieces"] if piece["mark"] == "A2")
    assert deck["measures"] == ["bed"]
    assert deck["width"]["formula"] == {
        "start": {"in": "12", "mm": 304.8},
        "terms": [{"measure": "bed", "times": "-1"}],
    }


def test_the_revision_is_the_hash_of_the_rest(job):
    rest = {k: v for k, v in job.items() if k != "revision"}
    text = json.dumps(rest, ensure_ascii=False, indent=1, sort_keys=True) + "\n"
    assert job["revision"] == sha256(text.encode()).hexdigest()[:8]


def test_another_job_has_another_revision(job):
    other = json.loads(write(plan("Another"), frozenset({"json"}))["job.json"])
    assert other["revision"] != job["revision"]
