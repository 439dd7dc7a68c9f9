"""The build order as a picture."""

from __future__ import annotations

import drawing_samples as s
import networkx
from drawing_reading import clashes, sizes, words
from hypothesis import given
from hypothesis import strategies as st

from setout.drawing import order_graph
from setout.drawing.ordering import dot
from setout.drawing.ordering.leveling import levelled, reduced, sheets

needs_of = (
    st.integers(1, 40)
    .flatmap(
        lambda count: st.tuples(
            *(st.lists(st.integers(0, max(n - 1, 0)), max_size=4 if n else 0) for n in range(count))
        )
    )
    .map(lambda rows: dict(enumerate(map(tuple, rows))))
)


def test_every_step_has_its_box_once():
    order = s.long_order(6)
    drawings = order_graph(order, s.step_words(order), 520, 680)
    assert drawings is not None and len(drawings) == 2
    numbers = [int(w) for d in drawings for w in words(d) if w.isdigit()]
    assert sorted(numbers) == [step.number for step in order.steps]
    for d in drawings:
        assert d.width <= 520 and d.height <= 680
        assert min(sizes(d)) >= 9 and not clashes(d)
    assert drawings == order_graph(order, s.step_words(order), 520, 680)


def test_what_a_step_waits_for_elsewhere_is_said():
    order = s.order_of(
        {"cut a": (), **{f"set b{n}": (f"set b{n - 1}",) if n else () for n in range(40)}, "fit c": ("cut a",)}
    )
    drawings = order_graph(order, {}, 520, 400)
    assert drawings is not None and "after 1" in words(drawings[-1])


def test_foreign_text_never_reaches_the_program(monkeypatch):
    sent = []
    real = dot._source
    monkeypatch.setattr(dot, "_source", lambda *given: sent.append(real(*given)) or sent[-1])
    order = s.order_of({'step "]; evil -> all [label=<b>': (), "cut é\x00<x>": ('step "]; evil -> all [label=<b>',)})
    drawings = order_graph(order, s.step_words(order), 520, 400)
    assert drawings is not None and "&lt;b&gt;" in drawings[0].svg
    assert "evil" not in sent[0]


def test_without_the_program_there_is_no_drawing(monkeypatch):
    monkeypatch.setattr(dot, "program", lambda: None)
    order = s.long_order(1)
    assert order_graph(order, s.step_words(order), 520, 680) is None


def test_the_systems_own_program_will_do(monkeypatch, tmp_path):
    monkeypatch.setattr(dot.shutil, "which", lambda name: f"/usr/bin/{name}" if name == "dot" else None)
    monkeypatch.setattr(dot.sys, "executable", str(tmp_path / "python"))
    assert dot.program.__wrapped__() == "/usr/bin/dot"


def test_an_order_without_steps_has_no_drawings():
    assert order_graph(s.order_of({}), {}, 520, 680) == ()


@given(needs_of)
def test_reduction_is_that_of_graph_theory(needs):
    graph = networkx.DiGraph([(a, b) for b, wanted in needs.items() for a in wanted])
    graph.add_nodes_from(needs)
    graph.remove_edges_from(list(networkx.selfloop_edges(graph)))
    expected = networkx.transitive_reduction(graph)
    found = {
        (a, b) for b, wanted in reduced({n: [a for a in w if a != n] for n, w in needs.items()}).items() for a in wanted
    }
    assert found == set(expected.edges)


@given(needs_of, st.integers(1, 5), st.integers(2, 12))
def test_levels_and_sheets_keep_their_bounds(needs, most, deep):
    needs = {n: [a for a in w if a != n] for n, w in needs.items()}
    levels = levelled(list(needs), needs, most)
    at = {i: n for n, level in enumerate(levels) for i in level}
    assert all(len(level) <= most for level in levels) and len(at) == len(needs)
    assert all(at[a] < at[b] for b, wanted in needs.items() for a in wanted)
    parts = sheets(list(needs), needs, most, deep, 10)
    assert [i for part in parts for i in part] == list(needs)
    assert all(len(part) <= 10 and len(levelled(part, needs, most)) <= deep for part in parts)


def test_long_words_make_higher_boxes_and_are_never_cut():
    said = "Drill and mill the boards of the drawers of the fabric case and of the trays that stand in its upper half"
    order = s.order_of({**{f"cut b{n}": () for n in range(6)}, "fit c": tuple(f"cut b{n}" for n in range(6))})
    drawings = order_graph(order, {order.steps[n].id: said for n in (2, 6)}, 520, 200)
    told = " ".join(word for d in drawings for word in words(d))
    assert "…" not in told and told.count(said) == 2
    assert all(d.height <= 200 and not clashes(d) for d in drawings)
