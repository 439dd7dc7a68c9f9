"""A bookcase in millimetres worked by hand. Layout rules: common practice, no source (check-values.md section 7):

dowels half the thickness at the most, a quarter of a short joint from its ends; brads 1 in from the ends. The rest is
subtraction, from 800 x 1900 x 300, boards of 18 and 6, dadoes 6 deep, the back let in 9.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from compiling import sound
from taping import cut_list, cuts, diagonals, fasteners, held_by, holes, inch, mm, stands

# clear between bottom (98) and top (1882): 1784, less four shelves of 18: 1712; five openings of 342.4
LOW = {"bottom_panel": "80", "shelf.1": "440.4", "shelf.2": "800.8", "shelf.3": "1161.2", "shelf.4": "1521.6"}


@pytest.fixture(scope="module")
def bookcase():
    return sound((Path(__file__).parent / "bookcase.rod").read_text("utf-8"))


def test_the_cut_list(bookcase):
    assert cut_list(bookcase) == {
        names: (count, mm(length), mm(width), mm(thick))
        for names, count, length, width, thick in (
            ("left_side", 1, 1900, 300, 18),
            ("right_side", 1, 1900, 300, 18),
            # 800 - 2 x 18 = 764, 6 more in each side; 300 - 6. The top is a shelf turned over: good face down.
            ("top_panel bottom_panel shelf.1 shelf.2 shelf.3 shelf.4", 6, 776, 294, 18),
            ("kick", 1, 764, 80, 18),
            ("back_panel", 1, 1820, 782, 6),  # 1900 - 80 along the grain; 764 + 2 x 9
        )
    }


@pytest.mark.parametrize(("board", "low"), LOW.items())
def test_where_shelves_stand(bookcase, board, low):
    assert stands(bookcase, f"bookcase.{board}", "high") == (mm(low), mm(low) + mm(18))


def test_what_is_milled_in_the_sides(bookcase):
    for side, face in (("left_side", "right"), ("right_side", "left")):
        dadoes = {("dado", face, mm(6), mm(low), mm(low) + mm(18)) for low in LOW.values()}
        assert cuts(bookcase, f"bookcase.{side}") == dadoes | {
            ("rabbet", face, mm(6), mm(1882), mm(1900)),
            ("rabbet", face, mm(9), mm(294), mm(300)),  # along the back
        }
    for board in ("top_panel", "bottom_panel", "kick", "back_panel", "shelf.1"):
        assert not cuts(bookcase, f"bookcase.{board}")


def test_dowels(bookcase):
    # Half of 18 is 9: 5/16 in (7.9). The kick is 80 high: a quarter in is 20. Its middle lies 40 + 9 from the front.
    assert holes(bookcase, "bookcase.left_side", "dowel") == {("right", ""): [(mm(20), mm(49)), (mm(60), mm(49))]}
    assert holes(bookcase, "bookcase.right_side", "dowel") == {("left", ""): [(mm(20), mm(49)), (mm(60), mm(49))]}
    both = [(mm(20), mm(9)), (mm(60), mm(9))]
    assert holes(bookcase, "bookcase.kick", "dowel") == {("left", ""): both, ("right", ""): both}
    # 1-1/2 in (38.1) long. The side, 18, keeps 1/8 + 1/16 in (4.7625): 13.2375 of the dowel. 24.8625 is left for the
    # kick. Each hole 1/16 in (1.5875) deeper.
    assert depths(bookcase, "left_side") == depths(bookcase, "right_side") == {mm("14.825")}
    assert depths(bookcase, "kick") == {mm("26.45")}


def depths(plan, name: str) -> set:
    return {bore.depth for bore in plan.pieces.joined.drawn.boards[f"bookcase.{name}"].bores}


def test_fasteners(bookcase):
    # Up the sides 1820 less 25.4 at both ends is 1769.2: twelve steps of at most 150. Across 764: 713.2, five steps.
    across = {"top_panel": 6, "bottom_panel": 6, "shelf.1": 6, "shelf.2": 6, "shelf.3": 6, "shelf.4": 6}
    sides = {"left_side": 13, "right_side": 13}
    assert held_by(bookcase, "brads") == {f"back_panel {name}": count for name, count in (across | sides).items()}
    # three times 6 is 18: 3/4 in (19.05) is the next on sale
    assert fasteners(bookcase) == {
        ("brads", None, inch("3/4"), None): 6 * 6 + 2 * 13,
        ("dowels", None, inch("1-1/2"), inch("5/16")): 4,
    }


def test_glued_surfaces(bookcase):
    """End and both cheeks of a dado, end and the one cheek of a rabbet; edges of the kick."""
    drawn = bookcase.pieces.joined.drawn
    total = sum(f.area for f in drawn.fastenings if f.kind == "glue")
    dado, rabbet = (18 + 2 * 6) * 294, (18 + 6) * 294
    assert total == (10 * dado + 2 * rabbet + 2 * 18 * 80 + 764 * 18) * mm(1) ** 2


def test_the_diagonal(bookcase):
    # 800² + 1900² = 4 250 000, between 2061² = 4 247 721 and 2062² = 4 251 844, nearer the second
    assert diagonals(bookcase) == [("Bookcase", "2062", True)]


def test_nothing_else_is_drilled(bookcase):
    boards = bookcase.pieces.joined.drawn.boards
    drilled = {path: len(board.bores) for path, board in boards.items() if board.bores}
    assert drilled == {"bookcase.left_side": 2, "bookcase.right_side": 2, "bookcase.kick": 4}
