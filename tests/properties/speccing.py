"""Specs drawn at random, as text: cases and frames, placed, turned, mirrored, joined in any way that usually holds.

Directions along wide are written `$left`, `$right`, `$plus`, `$minus`, `$from`, `$to`, `$quarter`, so that every job can
be spelled a second time with left and right swapped.
"""

from __future__ import annotations

from dataclasses import dataclass
from string import Template

from hypothesis import strategies as st

PLAIN = {"left": "left", "right": "right", "plus": "+", "minus": "-", "from": "from", "to": "to", "quarter": "90"}
SWAPPED = {"left": "right", "right": "left", "plus": "-", "minus": "+", "from": "to", "to": "from", "quarter": "270"}

HEAD = """project "Job" { units $unit }
stock ply "3/4 plywood" { sheet 96in x 48in x 23/32in; grain along 96in; price 68 }
stock mdf "1/2 MDF" { sheet 97in x 49in x 1/2in }
stock thin "1/4 plywood" { sheet 96in x 48in x 7/32in; grain along 96in }
stock post "2x2" { stick 1-1/2in x 1-1/2in long 96in }
stock lath "1x2" { stick 1-1/2in x 3/4in long 72in, 96in; price 6.80 each 96in }
hardware foot "levelling foot" { price 3.20; pack 4; hole 5/16in depth 3/8in }
hardware pull "pull" { price 4 }
room "Study" { size wide 260in, high 80in, deep 60in }
measure gap "height of the sill" expect 1in to 3in
assembly tray "Tray" {
  size wide 3in, high 1-1/2in, deep 6in
  part floor_board of thin { level at bottom }
  part rim of thin { upright at $left; high from floor_board.top to top; grain deep }
  joint rim to floor_board { glue }
}
"""
SIZE = "size wide 260in, high 80in, deep 60in"


@dataclass(frozen=True)
class Job:
    """`lets`, `definitions` and `order` are statements; `body` those of the outermost assembly. All are templates."""

    unit: str
    lets: tuple[str, ...]
    definitions: tuple[str, ...]
    body: tuple[str, ...]
    order: tuple[tuple[str, str], ...] = ()

    @property
    def statements(self) -> list[str]:
        """All but the lets."""
        order = "order {\n" + "".join(f"  {a} before {b}\n" for a, b in self.order) + "}"
        return [*self.definitions, SIZE, *self.body, *([order] if self.order else [])]

    def text(self, way=PLAIN) -> str:
        """The job as a spec of its own."""
        return self.spelled([*self.lets, *self.statements], way)

    def spelled(self, statements: list[str], way=PLAIN) -> str:
        return Template(HEAD.replace("$unit", self.unit) + "\n".join(statements) + "\n").substitute(way)

    def wrapped(self, how: str = "", again: str | None = None) -> str:
        """The job as an assembly, placed `how`; `again`: that one as an assembly too, placed so."""
        whole = 'assembly whole "Whole" {\n' + "\n".join([SIZE, *self.body]) + "\n}"
        lines = [*self.lets, *self.definitions, whole]
        place = "place {} {} {{ at left, bottom, back }}"
        if again is not None:
            lines.append(f'assembly outer "Outer" {{ {SIZE}\n{place.format("whole", how)} }}')
            how = again
        lines += [SIZE, place.format("whole" if again is None else "outer", how)]
        return self.spelled(lines)


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
def joint(draw, ends: str, stock: str, housings=()) -> str:
    """How the ends of a level or standing board are held. A dowel would come out of thin board."""
    dowels = ("dowels",) if stock == "ply" else ()
    how = draw(one_of("pockets on BROAD", "screws", "brads every 5in", "glue", *dowels, *housings))
    return ends.format(how + draw(maybe("; glue")) if how != "glue" else how)


@st.composite
def case(draw, name: str) -> str:
    """An upright box with shelves; perhaps a back, a kick board, dividers, and a tray inside it."""
    stock, shelves = draw(one_of("ply", "mdf")), draw(st.integers(0, 3))
    back = draw(one_of("", "over", "between"))
    side = ["upright at $left", "grain high", draw(maybe("show $left", "show $right"))]
    side += ["deep from front to back" if back == "between" else "", draw(maybe("hole 1in at deep back - 2in, high top - 3in"))]
    toe = draw(st.booleans())
    if toe:
        side.append("notch deep 2in from front, high toe from bottom")
    side.append(draw(maybe("hole 1/4in at deep front + 4in, high top - 2in depth 3/8in into $right")))
    lines = [
        f"size wide w, high {draw(length('high'))}, deep {draw(length('deep'))}",
        "default deep from front to back_panel.front" if back else "",
        f"part left_side of body {{ {'; '.join(filter(None, side))} }}",
        "part right_side mirrors left_side",
        "part bottom_panel of body { level at bottom + toe; wide between left_side and right_side }",
        f"part top_panel of body {{ level at top; wide between left_side and right_side; {draw(maybe('show top'))} }}",
    ]
    rabbet, dado = ("rabbet depth 1/4in",), ("dado depth 1/4in", "dado depth 3/16in stopped front 1/2in", "dado")
    ends = "joint {} to left_side, right_side {{{{ {{}} }}}}"
    lines.append(draw(joint(ends.format("top_panel"), stock, rabbet)).replace("BROAD", "bottom"))
    lines.append(draw(joint(ends.format("bottom_panel"), stock, dado)).replace("BROAD", "bottom"))
    if shelves:
        lines += [
            "part shelf of body { level; wide between left_side and right_side; "
            f"repeat {shelves} between bottom_panel and top_panel; {draw(maybe('show bottom', 'grain any'))} }}",
            draw(joint(ends.format("shelf"), stock, dado)).replace("BROAD", draw(one_of("bottom", "top"))),
        ]
    lines += draw(dividers("shelf.1" if shelves else "top_panel", stock))
    lines += draw(backs(back, shelves))
    if toe and draw(st.booleans()):
        lines.append("part kick of ply { facing; back at front + 2in; wide over left_side and right_side; "
                     "high from bottom to bottom_panel.bottom; show front }")  # fmt: skip
        lines.append(draw(one_of("joint kick to left_side, right_side, bottom_panel {{ {} }}".format("brads; glue"),
                                 "kick rests on bottom_panel")))  # fmt: skip
    lines.append(draw(maybe("fit 4 foot { under bottom_panel; at corners; inset 2in }")))
    if draw(st.booleans()):
        turn = draw(maybe("turned 180", "mirrored", "turned 180 mirrored"))
        lines.append(f"place tray {turn} {{ $left at left_side.$right $plus 1in; bottom at bottom_panel.top; at front }}")
        lines.append("tray rests on bottom_panel")
    return _assembly(f'{name} "Case {name}" (w = {draw(length("wide"))}, body = {stock})', lines)


@st.composite
def dividers(draw, above: str, stock: str) -> list[str]:
    """Between the bottom and what is above it: nothing, evenly divided bays, or one that stands off the middle."""
    how = draw(one_of("", "", "repeat 2 between left_side and right_side", "$left at left_side.$right $plus 5in"))
    if not how:
        return []
    holds = draw(joint(f"joint divider to bottom_panel, {above} {{{{ {{}} }}}}", stock, ("dado depth 3/16in",)))
    part = f"part divider of body {{ upright; high between bottom_panel and {above}; {how}; grain high }}"
    return [part, holds.replace("BROAD", draw(one_of("$left", "$right")))]


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


@st.composite
def jobs(draw, order: bool = False) -> Job:
    """One to three definitions, each placed up to twice in a row along the wall; boards of the job's own."""
    unit = draw(one_of("inch", "mm"))
    lets = [f"let toe = {draw(length('some'))}", f"let w0 = {draw(one_of('18in', '22in + toe', '500mm'))}"]
    definitions, body, names, placed = [], [], [], []
    for letter in "abc"[: draw(st.integers(1, 3))]:
        kind = draw(one_of("case", "case", "frame"))
        definitions.append(draw(case(letter) if kind == "case" else frame(letter)))
        for number in range(draw(st.integers(1, 2))):
            name = f"{letter}{number}"
            body.append(draw(placing(letter, name, names[-1][1] if names else None)))
            names.append((letter, name))
            placed.append((kind, name))
    if draw(st.booleans()):
        body.append(f"part riser of ply {{ upright; $left at {names[-1][1]}.$right $plus 2in; high 20in - gap from bottom; "
                    "deep 6in to back; grain high }")  # fmt: skip
    body += draw(loose_ends(next((name for kind, name in placed if kind == "case"), None)))
    lines = draw(order_lines(names)) if order else ()
    return Job(unit, tuple(lets), tuple(definitions), tuple(body), tuple(lines))


@st.composite
def placing(draw, definition: str, name: str, before: str | None) -> str:
    """Beside the one before it, at some distance, in any direction."""
    turn = draw(one_of("", "", "turned $quarter", "turned 180"))
    given = draw(maybe(f" (w = {draw(length('wide'))})"))
    side = "at $left" if before is None else f"$left at {before}.$right $plus {draw(one_of('1in', '30mm', '5-1/3in'))}"
    mirrored = draw(maybe("mirrored"))
    return f"place {definition}{given} {turn} {mirrored} as {name} {{ {side}; at bottom, back }}"


@st.composite
def loose_ends(draw, first: str | None) -> list[str]:
    """A board on the first case, a strip on the wall, boards by size alone."""
    lines = []
    if first is not None and draw(st.booleans()):
        lines.append(f"part cover of ply {{ level on {first}; wide 8in centred on {first}; deep 6in to back }}")
        lines.append(draw(one_of(f"joint cover to {first} {{ glue }}", f"cover rests on {first}")))
    if draw(st.booleans()):
        lines.append("part strip of lath { across facing at back; bottom at 70in; wide 40in $from $left $plus 3in }")
        lines.append(draw(one_of("joint strip to room.back { screws }", "fit 2 pull { on strip.front; row along wide }")))
    if draw(st.booleans()):
        lines.append("part spare of thin { size 20in x 10in; count 3 }")
    return lines


@st.composite
def order_lines(draw, names) -> list[tuple[str, str]]:
    """Lines that mostly agree with each other and with how things are built."""
    lines = []
    for count in range(draw(st.integers(0, 3))):
        pair = draw(st.lists(st.integers(0, len(names) - 1), min_size=2, max_size=2).map(sorted))
        (def_a, a), (def_b, b) = (names[n] for n in pair)
        first = f'step "Sand {count}"'
        lines += draw(st.sampled_from((
            [(f"set {a}", f"set {b}")], [(f"assemble {a}", f"assemble {b}")], [(f"cut {def_a}", f"assemble {b}")],
            [(f"cut {def_a}", f"cut {def_b}")], [(first, f"set {a}")], [(f"set {a}", f"assemble {b}")] if a != b else [],
        )))  # fmt: skip
    return [(a, b) for a, b in dict.fromkeys(lines) if a != b]
