"""Cases and frames drawn at random: assemblies joined in any way that usually holds. Directions as in speccing.py."""

from __future__ import annotations

from hypothesis import strategies as st

LENGTHS = {
    "wide": ("20in", "24in", "31-1/4in", "600mm", "w0"),
    "high": ("16in", "22-1/2in", "30in", "800mm"),
    "deep": ("10-1/2in", "14in", "400mm"),
    "some": ("2in", "3-1/2in", "60mm"),
}


def one_of(*items: str):
    return st.sampled_from(items)


def maybe(*items: str):
    """One of these, or nothing."""
    return st.sampled_from(("", *items))


def length(of: str):
    return st.sampled_from(LENGTHS[of])


@st.composite
def joint(draw, pair: str, face: str, stock: str, housings=()) -> str:
    """How the ends of a level or standing board are held. A dowel would come out of thin board."""
    dowels = ("dowels",) if stock == "ply" else ()
    how = draw(one_of(f"pockets on {face}", "screws", "brads every 5in", "glue", *dowels, *housings))
    glue = draw(maybe("; glue")) if how != "glue" else ""
    return f"joint {pair} {{ {how}{glue} }}"


DADOES = ("dado depth 1/4in", "dado depth 3/16in stopped front 1/2in", "dado")


@st.composite
def case(draw, name: str) -> str:
    """An upright box with shelves; perhaps a back, a kick board, dividers, and a tray inside it."""
    stock, shelves = draw(one_of("ply", "mdf")), draw(st.integers(0, 3))
    back, toe = draw(one_of("", "over", "between")), draw(st.booleans())
    lines = [
        f"size wide w, high {draw(length('high'))}, deep {draw(length('deep'))}",
        "default deep from front to back_panel.front" if back else "",
        draw(left_side(back, toe)),
        "part right_side mirrors left_side",
        "part bottom_panel of body { level at bottom + toe; wide between left_side and right_side }",
        f"part top_panel of body {{ level at top; wide between left_side and right_side; {draw(maybe('show top'))} }}",
        draw(joint("top_panel to left_side, right_side", "bottom", stock, ("rabbet depth 1/4in",))),
        draw(joint("bottom_panel to left_side, right_side", "bottom", stock, DADOES)),
        *draw(shelving(shelves, stock)),
        *draw(dividers("shelf.1" if shelves else "top_panel", stock)),
        *draw(backs(back, shelves)),
        *draw(fronts(toe)),
    ]
    return _assembly(f'{name} "Case {name}" (w = {draw(length("wide"))}, body = {stock})', lines)


@st.composite
def left_side(draw, back: str, toe: bool) -> str:
    clauses = [
        "upright at $left; grain high",
        draw(maybe("show $left", "show $right")),
        "deep from front to back" if back == "between" else "",
        "notch deep 2in from front, high toe from bottom" if toe else "",
        draw(maybe("hole 1in at deep back - 2in, high top - 3in")),
        draw(maybe("hole 1/4in at deep front + 4in, high top - 2in depth 3/8in into $right")),
    ]
    return f"part left_side of body {{ {'; '.join(filter(None, clauses))} }}"


@st.composite
def shelving(draw, shelves: int, stock: str) -> list[str]:
    if not shelves:
        return []
    clauses = f"repeat {shelves} between bottom_panel and top_panel; {draw(maybe('show bottom', 'grain any'))}"
    return [
        f"part shelf of body {{ level; wide between left_side and right_side; {clauses} }}",
        draw(joint("shelf to left_side, right_side", draw(one_of("bottom", "top")), stock, DADOES)),
    ]


@st.composite
def dividers(draw, above: str, stock: str) -> list[str]:
    """Between the bottom and what is above it: nothing, evenly divided bays, or one that stands off the middle."""
    how = draw(one_of("", "", "repeat 2 between left_side and right_side", "$left at left_side.$right $plus 5in"))
    if not how:
        return []
    face = draw(one_of("$left", "$right"))
    return [
        f"part divider of body {{ upright; high between bottom_panel and {above}; {how}; grain high }}",
        draw(joint(f"divider to bottom_panel, {above}", face, stock, ("dado depth 3/16in",))),
    ]


@st.composite
def fronts(draw, toe: bool) -> list[str]:
    """A kick board across the toe notches, feet, a tray standing on the bottom."""
    lines = [draw(maybe("fit 4 foot { under bottom_panel; at corners; inset 2in }"))]
    if toe and draw(st.booleans()):
        place = "back at front + 2in; wide over left_side and right_side; high from bottom to bottom_panel.bottom"
        lines.append(f"part kick of ply {{ facing; {place}; show front }}")
        held = "joint kick to left_side, right_side, bottom_panel { brads; glue }"
        lines.append(draw(one_of(held, "kick rests on bottom_panel")))
    if draw(st.booleans()):
        turn = draw(maybe("turned 180", "mirrored", "turned 180 mirrored"))
        place = "$left at left_side.$right $plus 1in; bottom at bottom_panel.top; at front"
        lines += [f"place tray {turn} {{ {place} }}", "tray rests on bottom_panel"]
    return lines


@st.composite
def backs(draw, how: str, shelves: int) -> list[str]:
    if not how:
        return []
    line = f"part back_panel of thin {{ facing at back; wide {how} left_side and right_side; "
    line += f"high from bottom_panel.bottom to top; {draw(maybe('grain high', 'show front'))} }}"
    inner = "joint back_panel to bottom_panel, top_panel" + (", shelf" if shelves else "")
    let_in = draw(maybe("rabbet depth 3/8in; ")) if how == "between" else ""
    return [line, f"joint back_panel to left_side, right_side {{ {let_in}brads }}", inner + " { brads every 4in }"]


@st.composite
def frame(draw, name: str) -> str:
    """Legs and rails of sticks, with a top that is cut out, or slats."""
    run, face = draw(one_of("facing", "upright")), draw(one_of("through upright", "through level"))
    lid, rail = draw(st.booleans()), draw(one_of("at top", "top at top - 2in"))
    lines = [
        f"size wide w, high {draw(length('high'))}, deep {draw(length('deep'))}",
        f"part leg_a of post {{ up {run}; at $left, front }}",
        "part leg_b mirrors leg_a",
        "part leg_c mirrors leg_a across deep",
        f"part leg_d of post {{ up {run}; at $right, back }}",
        f"part rail of lath {{ {face} at $left; deep between leg_a and leg_c; {'at top' if lid else rail} }}",
        "part far_rail mirrors rail",
        "part stretcher of lath { across facing at front; wide between leg_a and leg_b; bottom at bottom + toe }",
    ]
    method = st.sampled_from(("dowels", "screws", "dowels; glue", "glue"))
    lines.append(f"joint rail to leg_a, leg_c {{ {draw(method)} }}")
    lines.append(f"joint far_rail to leg_b, leg_d {{ {draw(method)} }}")
    lines.append(f"joint stretcher to leg_a, leg_b {{ {draw(method)} }}")
    if lid:
        cut = draw(maybe("cutout wide 4in $from $left $plus 4in, deep 3in from front + 3in",
                         "mitre $left 45 long front", "notch wide 3in $from $left, deep 2in to back"))  # fmt: skip
        lines.append(f"part lid of body {{ level; bottom at rail.top; grain wide; show top; proud top; {cut} }}")
        lines.append("joint lid to rail, far_rail { screws through lid }")
    return _assembly(f'{name} "Frame {name}" (w = {draw(length("wide"))}, body = mdf)', lines)


def _assembly(title: str, lines: list[str]) -> str:
    return f"assembly {title} {{\n" + "".join(f"  {line}\n" for line in lines if line) + "}"
