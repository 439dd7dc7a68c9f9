"""Specs made of tables: what is recognised, what is left out, and that what comes out compiles whatever came in."""

from __future__ import annotations

import csv
import re
from io import StringIO

import pytest
from compiling import compiled
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.diagnostics import Severity
from setout.fmt import fmt
from setout.new import listed, started, titled
from setout.new.names import quoted
from setout.source import Source


def made(table: str | bytes):
    data = table.encode() if isinstance(table, str) else table
    return listed("list.csv", data, "Hall")


def parts(table: str | bytes) -> list[str]:
    value = made(table).value
    assert value is not None, made(table).diagnostics
    sound(value.text)
    return re.findall(r"^part (.*)$", value.text, re.M)


def told(table: str) -> str:
    return "\n".join(made(table).value.told)


def sound(text: str) -> None:
    checked = compiled(text)
    assert not [d for d in checked.diagnostics if d.severity is Severity.ERROR], checked.diagnostics
    assert fmt(Source("spec.rod", text)).value == text


# --- what is recognised -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "heads",
    [
        "name,length,width,qty",
        "Part,Long,Wide,Count",
        "ITEM;Length (in);Width (in);Number",
        "Piece\tL [in]\tW [in]\tPcs",
        "part name, length_in, width_in, how many",
        'Description,Length in inches,"Width ("")",quantity',
    ],
)
def test_usual_heads(heads):
    mark = next(c for c in "\t;," if c in heads)
    assert parts(f"{heads}\n{mark.join(('side', '48', '11.25', '2'))}\n") == [
        "side of boards { size 48 x 11.25; count 2 }"
    ]


@pytest.mark.parametrize(
    "cell, spelled",
    [
        ("23-1/4", "23-1/4"),
        ("23 1/4", "23-1/4"),
        ("23 - 1/4 in", "23-1/4"),
        ('23 1/4"', "23-1/4"),
        ("23¼", "23-1/4"),
        ("23 1⁄4″", "23-1/4"),
        ("5/8", "5/8"),
        ("23.250 inches", "23.25"),
        (".5", "0.5"),
        ("23,25", "23.25"),
        ("2' 3 1/2\"", "27-1/2"),
        ("2ft 3", "27"),
        ("3'", "3ft"),
        ("600 mm", "600mm"),
        ("60cm", "60cm"),
        ("1.2 m", "1.2m"),
        ("”40”", "40"),
        ("“23 1/4”", "23-1/4"),
        ("12 ins", "12"),
        ("2' 3 ins", "27"),
    ],
)
def test_lengths_as_they_are_written(cell, spelled):
    row = StringIO()
    csv.writer(row).writerows([("part", "length (in)", "width (in)"), ("side", cell, "1/4")])
    assert parts(row.getvalue()) == [f"side of boards {{ size {spelled} x 1/4; count 1 }}"]


def test_millimetres_are_told_by_their_size():
    table = "part,length,width,thickness\nside,1200,300,18\nshelf,764,280,18\n"
    text = made(table).value.text
    assert "units mm" in text and "sheet 2440 x 1220 x 18" in text
    assert parts(table) == [
        "side of boards { size 1200 x 300; count 1 }",
        "shelf of boards { size 764 x 280; count 1 }",
    ]
    assert "taken for millimetres" in told(table)


def test_materials_and_thicknesses_are_stocks():
    table = "part,length,width,material,thk\na,20,10,Birch ply,3/4\nb,20,10,birch  ply,1/2\nc,20,10,12 mm MDF,\nd,1,1,,"
    text = made(table).value.text
    sound(text)
    assert re.findall(r"^stock (.*) {\n  sheet (.*?)  ", text, re.M) == [
        ('birch_ply "Birch ply, 3/4 in"', "96 x 48 x 3/4"),
        ('birch_ply_2 "birch ply, 1/2 in"', "96 x 48 x 1/2"),
        ('mm_mdf "12 mm MDF"', "96 x 48 x 12mm"),
        ('boards "boards, 3/4 in"', "96 x 48 x 3/4"),
    ]
    assert "boards: no thickness is said, 3/4 in was written" in told(table)


def test_grain():
    table = "part,length,width,grain\na,20,10,along\nb,20,10,across\nc,20,10,any\nd,20,10,\n"
    assert [re.search(r"\{ (.*) \}", part)[1] for part in parts(table)] == [
        "size 20 x 10; count 1",
        "size 10 x 20; count 1",
        "size 20 x 10; count 1; grain any",
        "size 20 x 10; count 1",
    ]


def test_a_grain_that_is_said_is_kept_and_else_runs_along_the_longer_side():
    table = "part,length,width,grain\nb,10,20,along\nc,10,20,across\nd,10,20,\n"
    assert [re.search(r"size (.*?);", part)[1] for part in parts(table)] == ["10 x 20", "20 x 10", "20 x 10"]


def test_a_grain_not_understood_is_told():
    said = told("part,length,width,grain\na,20,10,vertical\nb,20,10,length\n,20,10,Vertical\n")
    assert "grain 'vertical' is not understood, it runs along the longer side: row 2 (a), row 4" in said


def stocks(table: str) -> list[tuple[str, str]]:
    text = made(table).value.text
    sound(text)
    return re.findall(r"^stock (.*?) .*{\n  (.*?)  ", text, re.M)


def test_lumber_by_its_name_and_solid_woods_become_sticks():
    """Dressed sizes: check-values, softwood lumber (R)."""
    table = (
        "part,length,width,material,thickness\na,20,3.5,2x4,\nb,20,3,2x4,1-1/2\nc,110,1.5,1 × 2 poplar,\n"
        "d,20,6,1x4,\ne,20,5,Pine,3/4\nf,20,2,oak,1\ng,20,3,oak,1\nh,20,5,4 x 8 birch ply,1/2\ni,9,9,grain,\n"
    )
    assert stocks(table) == [
        ("lumber_2x4", "stick 3-1/2 x 1-1/2 long 96"),
        ("lumber_2x4_2", "stick 3-1/2 x 1-1/2 long 96"),
        ("poplar_1x2", "stick 1-1/2 x 3/4 long 120"),
        ("lumber_1x4", "sheet 96 x 48 x 3/4"),
        ("pine", "stick 5 x 3/4 long 96"),
        ("oak", "sheet 96 x 48 x 1"),
        ("x_8_birch_ply", "sheet 96 x 48 x 1/2"),
        ("grain_stock", "sheet 96 x 48 x 3/4"),
    ]
    said = told(table)
    assert "pine: taken for sticks, 5 in x 3/4 in; 96 in long is a guess" in said
    assert "lumber_1x4: a 1x4 is 3-1/2 x 3/4 in, and not all its boards are: a sheet was written" in said
    assert "oak: solid wood by its name" in said and "grain_stock: solid" not in said


def test_lumber_in_millimetres():
    assert stocks("part,length (mm),width,material\na,700,89,2x4\nb,700,300,18 mm MDF\n") == [
        ("lumber_2x4", "stick 89 x 1-1/2in long 2400"),
        ("mm_mdf", "sheet 2440 x 1220 x 18"),
    ]


def test_lumber_dressed_to_other_sizes_is_lumber_all_the_same():
    """45 x 45 and 45 x 95 mm are common sizes of what is called 2x2 and 2x4. Common practice, no source."""
    bare = "part,length,width,qty,material\nLeg,700,45,4,2x2 pine\nRail,900,95,2,2x4 pine\n"
    assert stocks(bare) == [("pine_2x2", "stick 45 x 45 long 2400"), ("pine_2x4", "stick 95 x 1-1/2in long 2400")]
    assert "pine_2x2: no thickness is said, 45 mm was written" in told(bare)
    assert "pine_2x4: no thickness is said, 1-1/2 in was written" in told(bare)
    thick = "part,length,width,thickness,material\nLeg,700,45,45,2x2 pine\n"
    assert stocks(thick) == [("pine_2x2", "stick 45 x 45 long 2400")] and "no thickness" not in told(thick)
    assert stocks(thick.replace("700,45", "700,60"))[0][1].startswith("sheet")


def test_a_sheet_is_made_to_hold_its_boards():
    table = "part,length,width,grain\ntop,120,30,\nback,40,60,across\n"
    assert "sheet 122 x 48 x 3/4" in made(table).value.text and "122 x 48 in was written" in told(table)


def test_a_sheet_holds_its_boards_once_its_edges_are_trimmed():
    table = "part,length,width,grain\nlong,96,9,\nbroad,48,48,along\nfree,47.75,96,any\n"
    text = made(table).value.text
    assert "sheet 98 x 50 x 3/4" in text and "part broad of boards { size 48 x 48; count 1 }" in text
    assert compiled(text).diagnostics == ()


def test_names_are_made_safe_and_kept_apart():
    names = ("left", "Left", '"3 ""bad"" } part x # y"', "\u202e\x01", "sheet", "Regalböden")
    table = "part,length,width\n" + "".join(f"{name},9,9\n" for name in names)
    assert [part.split()[0] for part in parts(table)] == [
        *("left_board", "left_board_2", "bad_part_x_y", "board", "sheet", "regalböden"),
    ]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_a_table_in_any_encoding_of_spreadsheets(encoding):
    table = "part;length;width\nBöden;600,5;300\n"
    assert parts(table.encode(encoding)) == ["böden of boards { size 600.5 x 300; count 1 }"]


def test_a_column_for_the_unit():
    table = "part,length,width,unit\nside,720,300,mm\nlid,12,10,in\nrail,400,200,mm\nfoot,2,2,each\nfar,2,2,furlong\n"
    assert "left out row 6 (far): its unit 'furlong' is not known" in told(table)
    assert parts(table) == [
        "side of boards { size 720 x 300; count 1 }",
        "lid of boards { size 12in x 10in; count 1 }",
        "rail of boards { size 400 x 200; count 1 }",
        "foot of boards { size 2 x 2; count 1 }",
    ]


def test_a_formula_is_text():
    table = "part,length,width\n=1+1,20,10\nside,=20+1,10\n'@SUM(A1:A9),20,10\n"
    assert [part.split()[0] for part in parts(table)] == ["board", "sum_a1_a9"]
    assert "left out row 3 (side): its length '=20+1' can't be read" in told(table)


def test_rows_are_counted_as_a_spreadsheet_does():
    assert parts('part,"length\n(mm)",width\n\n"left\nside",720,300\nlid,,3\n') == [
        "left_side of boards { size 720 x 300; count 1 }"
    ]
    assert "left out row 4" in told('part,"length\n(mm)",width\n\n"left\nside",720,300\nlid,,3\n')


# --- what is left out ---------------------------------------------------------------------------------------


def test_what_was_understood_and_left_out_is_told():
    table = (
        "Boards for the hall,,,,\nPart,Length (mm),Width,Qty,Edge\nside,720,300,2,y\nkick,,60,1,\n"
        'lid,"1,200",300,1,\npin,0,10,1,\nwall,99999,300,1,\nrail,500,50,some,\nTotal,,,4,\n'
        "top,1.200,300,1,\nslip,571.500,30,-1,\nshim,90,30,,\n"
    )
    said = made(table).value.told
    assert said == (
        "2 parts of 1 stock",
        "row 2 names the columns: name in 'Part', length in 'Length (mm)' (millimetres), width in 'Width', "
        "count in 'Qty'",
        "not used: 'Edge'",
        "numbers without a unit were taken for millimetres (as elsewhere in the table)",
        "nothing is said of the grain: it runs along the longer side",
        "no number is said, 1 was written: row 12 (shim)",
        "nothing is said of the sheets: 2440 x 1220 mm was written, put in the size that you buy",
        "boards: no thickness is said, 18 mm was written",
        "left out row 4 (kick): its length is missing",
        "left out row 5 (lid): its length '1,200' may be thousands or a decimal",
        "left out row 6 (pin): its length '0' is nothing",
        "left out row 7 (wall): it is larger than any board",
        "left out row 8 (rail): its number 'some' is not a count from 1 to 1,000",
        "left out row 9 (Total): its length is missing",
        "left out row 10 (top): its length '1.200' may be thousands or a decimal",
        "left out row 11 (slip): its number '-1' is not a count from 1 to 1,000",
    )


@pytest.mark.parametrize(
    "table, code",
    [
        (b"", "rod922"),
        (b"a,b\0", "rod922"),
        ("part,length,width\nside,48,11\n".encode("utf-16-le"), "rod922"),
        (b" , \n", "rod922"),
        (b'part,length,width\n"' + b"x" * 200_000 + b'",1,1\n', "rod922"),
        (b"x" * 1_000_001, "rod922"),
        (b"side,48,11\n", "rod923"),
        (b"part,length\nside,48\n", "rod923"),
        (b"part,length,width\n", "rod923"),
        (b"part,length,width\nside,long,wide\n", "rod923"),
    ],
)
def test_no_spec_of_what_is_no_table(table, code):
    checked = made(table)
    assert checked.value is None and [found.code for found in checked.diagnostics] == [code]


def test_a_long_table_is_cut_short():
    assert len(parts("part,length,width\n" + "side,20,10\n" * 1500)) == 1000
    assert "left out the last 500 rows" in told("part,length,width\n" + "side,20,10\n" * 1500)


CELLS = st.one_of(
    st.text(max_size=12),
    st.sampled_from(('23 1/4"', "600 mm", "1,200", "3'", "½", "left", "part", '"', "#", "\\", "3/0", "-4", "=1+1")),
    st.sampled_from(("1e9", "1.200", "mm", "across", "any", "sheet", "\n", "3/4 ply", "18mm MDF")),
    st.sampled_from(("2x4", "1x6 Pine", "oak", "furlong", "”40”")),
    st.integers(0, 3000).map(str),
    st.decimals(0, 300, places=3).map(str),
)
HEADS = st.permutations(("name", "Length (mm)", "width", "qty", "material", "thickness", "grain", "unit", "?"))


@settings(max_examples=60, derandomize=True, deadline=None)
@given(HEADS, st.lists(st.lists(CELLS, min_size=6, max_size=9), max_size=8), st.sampled_from(",;\t"))
def test_whatever_the_table_holds_the_spec_compiles(heads, rows, separator):
    text = StringIO()
    csv.writer(text, delimiter=separator).writerows([heads, *rows])
    checked = made(text.getvalue().encode("utf-8", "surrogatepass"))
    if checked.value is None:
        assert checked.failed
        return
    sound(checked.value.text)


# --- templates ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize("template", ["list", "bookcase", "base"])
@pytest.mark.parametrize("title", ["Hall", '"} # \\', "\x1b\n", "x" * 300])
def test_a_template_compiles_without_a_word(template, title):
    text = started(template, title)
    assert f"project {quoted(title)} {{" in text
    assert compiled(text).diagnostics == ()
    assert fmt(Source("spec.rod", text)).value == text


def test_a_title_of_a_file_name():
    assert titled("hall_shelves-2") == "Hall shelves 2"
