"""The sort by itself, judged by networkx."""

from __future__ import annotations

import networkx as nx
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.plan.order.sorting import loops, stable_order, urgency

NODES = list("abcdefgh")
edges = st.lists(st.tuples(st.sampled_from(NODES), st.sampled_from(NODES)), max_size=16)
priorities = st.fixed_dictionaries({n: st.integers(0, 3) for n in NODES})


def graph(pairs):
    made = nx.DiGraph()
    made.add_nodes_from(NODES)
    made.add_edges_from(pairs)
    return made


@settings(max_examples=300)
@given(edges, priorities)
def test_the_order_is_the_least_valid_one_by_priority(pairs, priority):
    order = stable_order(NODES, pairs, priority)
    if nx.is_directed_acyclic_graph(graph(pairs)):
        place = {n: i for i, n in enumerate(NODES)}
        key = {n: (priority[n], place[n]) for n in NODES}
        assert order == list(nx.lexicographical_topological_sort(graph(pairs), key=key.__getitem__))
    else:
        caught = set().union(*(c for c in nx.strongly_connected_components(graph(pairs)) if _goes_round(c, pairs)))
        behind = set().union(caught, *(nx.descendants(graph(pairs), n) for n in caught))
        assert set(order) == set(NODES) - behind


def _goes_round(component, pairs) -> bool:
    return len(component) > 1 or any(a == b and a in component for a, b in pairs)


@settings(max_examples=300)
@given(edges, st.data())
def test_a_loop_is_found_in_every_knot_and_nowhere_else(pairs, data):
    through = data.draw(st.lists(st.sampled_from(pairs), max_size=3)) if pairs else []
    found = loops(NODES, pairs, through)
    knots = [c for c in nx.strongly_connected_components(graph(pairs)) if _goes_round(c, pairs)]
    assert sorted(min(k) for loop in found for k in knots if set(loop) <= k) == sorted(min(k) for k in knots)
    for loop in found:
        assert len(set(loop)) == len(loop)
        assert all(ends in pairs for ends in zip(loop, [*loop[1:], loop[0]]))
        inside = [e for e in through if any(set(e) <= k for k in knots if set(loop) <= k)]
        if inside:
            assert (loop[-1], loop[0]) == inside[0]


def test_what_others_wait_for_is_as_urgent_as_they_are():
    order = stable_order("abc", [("c", "a")], {"a": 0, "b": 1, "c": 2})
    assert urgency(order, [("c", "a")], {"a": 0, "b": 1, "c": 2}) == {"a": 0, "b": 1, "c": 0}
