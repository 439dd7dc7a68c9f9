"""Specs drawn at random, as text: cases and frames placed beside each other, turned, mirrored.

Directions along wide are written `$left`, `$right`, `$plus`, `$from`, `$quarter`, so that every job can be spelled a
second time with left and right swapped.
"""

from __future__ import annotations

from dataclasses import dataclass
from string import Template

from cabinetry import case, frame, length, maybe, one_of
from hypothesis import strategies as st

PLAIN = {"left": "left", "right": "right", "plus": "+", "from": "from", "quarter": "90"}
SWAPPED = {"left": "right", "right": "left", "plus": "-", "from": "to", "quarter": "270"}

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


@st.composite
def jobs(draw, order: bool = False) -> Job:
    """One to three definitions, each placed up to twice in a row along the wall; boards of the job's own."""
    unit = draw(one_of("inch", "mm"))
    lets = [f"let toe = {draw(length('some'))}", f"let w0 = {draw(one_of('18in', '22in + toe', '500mm'))}"]
    definitions, body, names, cases = [], [], [], []
    for letter in "abc"[: draw(st.integers(1, 3))]:
        kind = draw(one_of("case", "case", "frame"))
        definitions.append(draw(case(letter) if kind == "case" else frame(letter)))
        for number in range(draw(st.integers(1, 2))):
            name = f"{letter}{number}"
            body.append(draw(placing(letter, name, names[-1][1] if names else None)))
            names.append((letter, name))
            cases += [name] if kind == "case" else []
    if draw(st.booleans()):
        place = f"$left at {names[-1][1]}.$right $plus 2in; high 20in - gap from bottom; deep 6in to back"
        body.append(f"part riser of ply {{ upright; {place}; grain high }}")
    body += draw(loose_ends(cases))
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
def loose_ends(draw, cases: list[str]) -> list[str]:
    """A board on the first case, a strip on the wall, boards by size alone."""
    lines = []
    for first in cases[: draw(st.integers(0, 1))]:
        lines.append(f"part cover of ply {{ level on {first}; wide 8in centred on {first}; deep 6in to back }}")
        lines.append(draw(one_of(f"joint cover to {first} {{ glue }}", f"cover rests on {first}")))
    if draw(st.booleans()):
        lines.append("part strip of lath { across facing at back; bottom at 70in; wide 40in $from $left $plus 3in }")
        held = one_of("joint strip to room.back { screws }", "fit 2 pull { on strip.front; row along wide }")
        lines.append(draw(held))
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
            [(f"cut {def_a}", f"cut {def_b}")], [(first, f"set {a}")],
            [(f"set {a}", f"assemble {b}")] if a != b else [],
        )))  # fmt: skip
    return [(a, b) for a, b in dict.fromkeys(lines) if a != b]
