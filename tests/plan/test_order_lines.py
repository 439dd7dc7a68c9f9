"""Any order lines on one job: they hold, or a loop is reported, exactly as networkx says."""

from __future__ import annotations

import networkx as nx
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from setout.plan.order.draft import YIELDING
from setout.plan.order.problems import label

JOB = """
measure bed "height of the bed" expect 2 to 5
place box as first { at left, back; bottom at bottom + 1 }
place box as second { at back; bottom at bottom + 1; wide from first.right + 30 }
part riser of ply { upright at left + 40; high from bottom to bottom + 20 - bed; deep 16 to back; grain high }
fit 4 foot { at corners; inset 2; under first.floor_panel }
fit 4 foot { at corners; inset 2; under second.floor_panel }
"""
STEPS = [
    "measure bed", "cut box", "machine box", "assemble first", "assemble second", "cure first", "cure second",
    "fit first.foot", "fit second.foot", "set first", "set second", "cut riser", "set riser",
]  # fmt: skip
lines = st.lists(st.tuples(st.sampled_from(STEPS), st.sampled_from(STEPS)), max_size=5, unique=True)


def edges_of(plan):
    return {(label(r.after), label(s.id)): r.kind for s in plan.order.steps for r in s.reasons}


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(lines)
def test_order_lines_hold_or_go_round(compiled, pairs):
    plain = edges_of(compiled(JOB)[0])
    assert {n for ends in plain for n in ends} == set(STEPS)
    text = "".join(f"  {a} before {b}\n" for a, b in pairs)
    plan, found = compiled(f"{JOB}order {{\n{text}}}" if pairs else JOB)
    opposite = {(b, a) for a, b in pairs}
    structure = [ends for ends, kind in plain.items() if kind not in YIELDING or ends not in opposite]
    graph = nx.DiGraph([*structure, *pairs])

    assert ("rod501" in {d.code for d in found}) == (not nx.is_directed_acyclic_graph(graph))
    if not nx.is_directed_acyclic_graph(graph):
        knots = [c for c in nx.strongly_connected_components(graph) if len(c) > 1 or graph.has_edge(*(list(c) * 2)[:2])]
        assert len(found) == len(knots)
        return
    place = {label(s.id): s.number for s in plan.order.steps}
    assert all(place[a] < place[b] for a, b in graph.edges)
    assert [d.code for d in found] == ["rod502"] * len(idle(structure, pairs))


def idle(structure, pairs):
    """The lines that can be left out one after the other, the last first, with nothing lost."""
    kept, out = list(pairs), []
    for pair in reversed(pairs):
        rest = nx.DiGraph([*structure, *(p for p in kept if p != pair)])
        if rest.has_node(pair[0]) and rest.has_node(pair[1]) and nx.has_path(rest, *pair):
            kept.remove(pair)
            out.append(pair)
    return out
