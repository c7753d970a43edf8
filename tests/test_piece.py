"""A piece file is read whole, or refused whole: every fault with its key, what was given, and what to do."""

from __future__ import annotations

from dataclasses import replace
from importlib import resources
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.errors import BadPiece, ImpossibleShape, UnknownName
from woodmath.piece import Piece
from woodmath.piece_details import Tongue
from woodmath.piece_tables import Bit, Joint, Post, TenonPlace
from woodmath.rule import Rule

CAT_BED = (resources.files("woodmath") / "pieces" / "cat-bed.toml").read_text(encoding="utf-8")
LEAST = """
name = "Stool"
rule = "1 mm"
post = {square = 40, length = 400, foot = 0, top = 0}
joint = {tenon_thickness = 12, set_back = 10, ends = "square"}
bit = {diameter = 10, point_length = 6, lead = 2}
"""


def read(folder: Path, text: str) -> Piece:
    file = folder / "piece.toml"
    file.write_text(text, encoding="utf-8")
    return Piece.read(file)


def faults(folder: Path, text: str) -> list[str]:
    with pytest.raises(BadPiece) as refused:
        read(folder, text)
    return str(refused.value).splitlines()


def changed(old: str, new: str) -> str:
    assert CAT_BED.count(old) == 1, f"{old!r} should stand in the cat's bed exactly once"
    return CAT_BED.replace(old, new)


def test_the_cats_bed_is_read_in_inches() -> None:
    piece = Piece.demo("cat-bed")
    assert piece.rule == Rule.inches(16)
    assert replace(piece.post, turned=None) == Post(square=1.75, length=14, foot=3, top=2)
    assert piece.joint == Joint(
        tenon_thickness=0.5,
        set_back=0.5,
        ends="mitred",
        end_clearance=0.0625,
        tenons=(TenonPlace(0.75, 2.5), TenonPlace(4.75, 2.5)),
        tongue=Tongue(length=0.3125, clearance=0.0625, rebated_from="outer face"),
    )
    assert piece.end is not None and piece.end.top > piece.end.bottom
    assert piece.side is not None and piece.side.length == 18
    assert piece.rocker is not None and piece.rocker.bottom_radius == 30
    assert 0.5 in piece.tools.chisels and 0.4375 in piece.tools.bits


def test_the_log_box_is_upright_in_millimetres_with_unequal_tenons_and_no_rocker() -> None:
    piece = Piece.demo("log-box")
    assert piece.rule == Rule.millimetres(0.5)
    assert piece.end is not None and piece.end.top == piece.end.bottom
    assert piece.rocker is None
    assert piece.joint.other_thickness != piece.joint.tenon_thickness
    with pytest.raises(ImpossibleShape, match=r"has no rocker\. Add \[rocker\] to its file \(length, rise"):
        piece.ellipse()


@pytest.mark.parametrize("name", ["cat-bed", "hound-bed", "log-box"])
def test_the_demo_pieces_read_the_same_from_a_copy_of_their_file(name: str, tmp_path: Path) -> None:
    text = (resources.files("woodmath") / "pieces" / f"{name}.toml").read_text(encoding="utf-8")
    assert read(tmp_path, text) == Piece.demo(name)


def test_a_demo_piece_that_is_not_there_is_answered_with_those_that_are() -> None:
    with pytest.raises(
        UnknownName, match=r"'catbed'\. Did you mean cat-bed\? There are: cat-bed, hound-bed, log-box\."
    ):
        Piece.demo("catbed")
    with pytest.raises(UnknownName, match=r"There are: cat-bed, hound-bed, log-box\."):
        Piece.demo("../pieces/cat-bed")


def test_a_piece_needs_no_more_than_posts_a_joint_and_a_bit(tmp_path: Path) -> None:
    piece = read(tmp_path, LEAST)
    assert (piece.end, piece.side, piece.rocker) == (None, None, None)
    assert piece.bit == Bit(diameter=10, point_length=6, lead=2)
    assert [finding.severity for finding in piece.findings() if finding.severity == "stop"] == []


def test_the_topics_get_the_sizes_of_the_piece() -> None:
    piece = Piece.demo("log-box")
    joint, bit = piece.post_joint(), piece.auger_bit()
    assert (joint.tenon.thickness, joint.tenon.set_back) == (12, 12)
    assert (joint.other_tenon.thickness, joint.other_tenon.set_back) == (15, 11)
    assert (bit.diameter, bit.point_length) == (10, 8)
    oval = Piece.demo("cat-bed").ellipse()
    assert oval.height_at(9.5) == pytest.approx(2)
    assert oval.radius_at_bottom == pytest.approx(30)


def test_ten_threads_an_inch_advance_a_tenth_of_25_4_mm_and_two_starts_twice_as_far(tmp_path: Path) -> None:
    # 1 in = 25.4 mm exactly (NIST, 1959; from memory).
    assert Piece.demo("log-box").auger_bit().lead == pytest.approx(2.54)
    double = read(tmp_path, LEAST.replace("lead = 2}", "threads_per_inch = 10, starts = 2}"))
    assert double.auger_bit().lead == pytest.approx(5.08)
    assert read(tmp_path, LEAST).auger_bit().lead == 2


@pytest.mark.parametrize(
    ("written", "inches"),
    [
        ('"44.45 mm"', 1.75),
        ('"4.445 cm"', 1.75),
        ("1.75", 1.75),
        ("2", 2.0),
        ('"1-3/4"', 1.75),
        ("'1¾\"'", 1.75),
    ],
)
def test_a_length_may_be_written_as_on_the_rule_with_a_unit_or_as_a_number(
    written: str, inches: float, tmp_path: Path
) -> None:
    assert read(tmp_path, changed('square = "1 3/4"', f"square = {written}")).post.square == pytest.approx(
        inches
    )


sizes = some.floats(min_value=0.01, max_value=3000, allow_nan=False)


@given(
    values=some.lists(sizes, min_size=12, max_size=12),
    threads=some.floats(0.5, 100),
    count=some.integers(0, 4),
)
def test_a_piece_written_with_any_sizes_reads_back_the_same_numbers(
    values: list[float], threads: float, count: int, tmp_path_factory: pytest.TempPathFactory
) -> None:
    square, length, foot, top, thickness, back, clearance, across, point, place, width, chisel = values
    rows = ", ".join(f'{{ place = "{place + row:.3f}", width = {width!r} }}' for row in range(count))
    piece = read(
        tmp_path_factory.mktemp("piece"),
        f'name = "Any"\nrule = "0.5 mm"\n'
        f"[post]\nsquare = {square!r}\nlength = {length!r}\nfoot = {foot!r}\ntop = {top!r}\n"
        f'[joint]\ntenon_thickness = {thickness!r}\nset_back = {back!r}\nends = "mitred"\n'
        f"end_clearance = {clearance!r}\ntenons = [{rows}]\n"
        f"[bit]\ndiameter = {across!r}\nthreads_per_inch = {threads!r}\npoint_length = {point!r}\n"
        f"[tools]\nchisels = [{chisel!r}]\n",
    )
    assert piece.post == Post(square, length, foot, top)
    assert (piece.joint.tenon_thickness, piece.joint.set_back) == (thickness, back)
    assert piece.joint.end_clearance == clearance
    assert piece.joint.tenons == tuple(TenonPlace(float(f"{place + row:.3f}"), width) for row in range(count))
    assert piece.bit == Bit(across, point, threads)
    assert piece.tools.chisels == (chisel,)


@given(marks=some.integers(1, 3000), divisions=some.sampled_from([8, 16, 32, 64]))
def test_a_size_written_as_the_rule_marks_it_reads_back_the_same(
    marks: int, divisions: int, tmp_path_factory: pytest.TempPathFactory
) -> None:
    rule = Rule.inches(divisions)
    text = LEAST.replace('"1 mm"', f'"1/{divisions} in"').replace(
        "40,", f'"{rule.mark(rule.length(marks))}",'
    )
    piece = read(tmp_path_factory.mktemp("piece"), text)
    assert piece.rule == rule
    assert piece.post.square == rule.length(marks)


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        (
            'square = "1 3/4"',
            'square = "1 3/x"',
            "post.square: “1 3/x” cannot be read as a length: ",
        ),
        (
            'square = "1 3/4"',
            "square = -1.5",
            "post.square: “-1.5” cannot be read as a length: it is negative, and a rule begins at 0. ",
        ),
        (
            'square = "1 3/4"',
            "square = inf",
            "post.square: “Infinity” cannot be read as a length: it is infinite",
        ),
        ('square = "1 3/4"', "square = nan", "post.square: “NaN” cannot be read as a length: "),
        ('square = "1 3/4"', "square = 1e9", "it is longer than 100 m"),
        ('square = "1 3/4"', 'square = ""', "post.square: “” cannot be read as a length: nothing is written"),
        (
            'square = "1 3/4"',
            "square = true",
            'post.square = true: this is no length. Write it as on the rule, such as "1 3/4".',
        ),
        ('square = "1 3/4"', "square = 1979-05-27", "post.square = 1979-05-27: this is no length."),
        ('square = "1 3/4"', "square = [1]", "post.square = a list: this is no length."),
        (
            'square = "1 3/4"',
            'square = "0"',
            'post.square = "0": it must be more than 0 (side of the post\'s square section).',
        ),
        (
            'square = "1 3/4"',
            "",
            "post.square is missing (side of the post's square section). "
            'Add it under [post], written like square = "1 3/4".',
        ),
        (
            'square = "1 3/4"',
            'square = "1 3/4"\nsqare = 3',
            "post.sqare is not known under [post]. Did you mean square? Possible: square, length, foot, top, turned.",
        ),
        (
            'square = "1 3/4"',
            'square = "1 3/4"\nset_back = "1/2"',
            "post.set_back is not known under [post]. It belongs under [joint].",
        ),
        (
            "[tools]",
            "[toolz]",
            "toolz is not known at the top of the file. Did you mean tools? "
            "Possible: name, rule, post, joint, bit, end, side, rocker, bead, bottom, ornament, timber, load, tools, "
            "boards, scaled_from, scale, wanted, stock, as_made.",
        ),
        ("[bit]", "[finish]\noil = 'linseed'\n[bit]", "finish is not known at the top of the file."),
        (
            'name = "A rocking bed for the workshop cat"',
            "",
            "name is missing (what the piece is called). Add it at the top of the file, written like "
            'name = "Log box".',
        ),
        (
            'name = "A rocking bed for the workshop cat"',
            'name = "two\\nlines"',
            'name = "two lines": a sign in it cannot be printed. Type it again, on one line,',
        ),
        ('name = "A rocking bed for the workshop cat"', "name = 7", "name = 7: give a text on one line"),
        (
            'rule = "1/16 in"',
            'rule = "16"',
            'rule = "16": name the smallest mark of your rule with its unit: "1/16 in" or "0.5 mm".',
        ),
        ('rule = "1/16 in"', "rule = 16", "rule = 16: name the smallest mark of your rule with its unit"),
        (
            'rule = "1/16 in"',
            'rule = "1/7 in"',
            'rule = "1/7 in": There is no rule with 7 marks to the inch.',
        ),
        (
            'rule = "1/16 in"',
            'rule = "0.3 mm"',
            'rule = "0.3 mm": There is no rule with marks of 3/10 millimetre.',
        ),
        (
            'ends = "mitred"',
            'ends = "mitered"',
            'joint.ends = "mitered": did you mean "mitred"? Possible: mitred, square, one_long, halved.',
        ),
        ('ends = "mitred"', "ends = 45", "joint.ends = 45: Possible: mitred, square, one_long, halved."),
        (
            'ends = "mitred"',
            'ends = "one_long"',
            'joint.reserve is missing, and ends = "one_long" needs it: the wood left behind the long tenon.',
        ),
        (
            '{ place = "3/4", width = "2 1/2" }',
            '{ place = "3/4" }',
            "joint.tenons, number 1, width is missing (width of the tenon, measured along the post). "
            "Add it in joint.tenons, number 1,",
        ),
        (
            '{ place = "3/4", width = "2 1/2" }',
            '{ place = "3/4", width = "2 1/2", hight = 1 }',
            "joint.tenons, number 1, hight is not known in joint.tenons, number 1. Possible: place, width.",
        ),
        (
            '{ place = "3/4", width = "2 1/2" }',
            '"3/4"',
            "joint.tenons = a list: give a list of small tables, such as "
            '[{ place = "1 3/4", width = "1 3/4" }].',
        ),
        (
            "threads_per_inch = 12",
            'threads_per_inch = "12"',
            'bit.threads_per_inch = "12": give a plain number, more than 0, at most 100, without quotes',
        ),
        ("threads_per_inch = 12", "threads_per_inch = 0", "bit.threads_per_inch = 0: give a plain number"),
        (
            "threads_per_inch = 12",
            "threads_per_inch = nan",
            "bit.threads_per_inch = nan: give a plain number",
        ),
        (
            "threads_per_inch = 12",
            "threads_per_inch = true",
            "bit.threads_per_inch = true: give a plain number",
        ),
        (
            "threads_per_inch = 12",
            "",
            "bit.lead is missing: say how far one turn takes the bit. "
            "Add either lead with a length, or threads_per_inch with a number.",
        ),
        (
            "threads_per_inch = 12",
            'threads_per_inch = 12\nlead = "1/12"',
            "bit.lead and threads_per_inch say the same thing twice. Keep the one that you measured.",
        ),
        (
            "threads_per_inch = 12",
            'lead = "1/8"\nstarts = 2',
            "bit.starts goes with threads_per_inch only: lead is already the advance of a whole turn.",
        ),
        (
            "threads_per_inch = 12",
            "threads_per_inch = 12\nstarts = 1.5",
            "bit.starts = 1.5: give a whole number from 1 to 4, without quotes",
        ),
        ("threads_per_inch = 12", "threads_per_inch = 12\nstarts = 0", "bit.starts = 0: give a whole number"),
        (
            'chisels = ["1/4", "3/8", "1/2", "3/4"]',
            'chisels = "1/4"',
            'tools.chisels = "1/4": give a list, such as ["1/4", "1/2"].',
        ),
        (
            'chisels = ["1/4", "3/8", "1/2", "3/4"]',
            'chisels = ["1/4", "half"]',
            "tools.chisels, number 2: “half” cannot be read as a length",
        ),
    ],
)
def test_each_fault_is_told_with_its_key_and_its_remedy(
    old: str, new: str, fault: str, tmp_path: Path
) -> None:
    first, *listed = faults(tmp_path, changed(old, new))
    assert first == "piece.toml has one fault; put right what is listed and read it again."
    assert len(listed) == 1
    assert fault in listed[0]


@pytest.mark.parametrize("table", ["post", "joint", "bit"])
def test_a_table_that_must_be_there_is_asked_for_with_its_keys(table: str, tmp_path: Path) -> None:
    line = next(line for line in LEAST.splitlines() if line.startswith(f"{table} ="))
    [_, fault] = faults(tmp_path, LEAST.replace(line, ""))
    assert fault.startswith(f"  {table} is missing (")
    assert f"Add [{table}], a table with " in fault
    [_, fault] = faults(tmp_path, LEAST.replace(line, f"{table} = 3"))
    assert fault.startswith(f"  {table} = 3: write it as [{table}], a table with ")


def test_all_faults_are_told_at_once_in_the_order_of_the_tables(tmp_path: Path) -> None:
    text = """
        rule = "1/16 in"
        nmae = "A bed"
        [post]
        square = "1 3/x"
        length = 0
        foot = -2
        [joint]
        tenon_thickness = true
        ends = "one_long"
        tenons = [{ place = "1" }, { width = "x" }]
        [bit]
        diameter = "7/16"
        [tools]
        bits = ["1/4", "-3"]
        [rocker]
        """
    first, *listed = faults(tmp_path, text)
    keys = [line.split()[0].rstrip(":,") for line in listed]
    assert keys == [
        "name",
        *("post.square", "post.length", "post.foot", "post.top"),
        *(
            "joint.tenon_thickness",
            "joint.set_back",
            "joint.tenons",
            "joint.tenons",
            "joint.tenons",
            "joint.reserve",
        ),
        *("bit.point_length", "bit.lead"),
        *("rocker.length", "rocker.rise", "rocker.bottom_radius", "rocker.thickness", "rocker.depth"),
        "tools.bits",
        "nmae",
    ]
    assert first == f"piece.toml has {len(keys)} faults; put right what is listed and read it again."


def test_a_piece_with_sizes_that_no_post_can_hold_can_still_be_opened(tmp_path: Path) -> None:
    piece = read(tmp_path, changed('set_back = "1/2"', 'set_back = "1 1/2"'))
    with pytest.raises(ImpossibleShape):
        piece.post_joint()
    assert piece.findings()[0].severity == "stop"


def test_a_line_that_is_no_toml_is_shown_with_its_number_and_the_remedy(tmp_path: Path) -> None:
    lines = faults(tmp_path, changed('square = "1 3/4"', "square = 1 3/4"))
    number = (
        CAT_BED.splitlines().index(next(line for line in CAT_BED.splitlines() if line.startswith("square")))
        + 1
    )
    assert lines[0].startswith(f"piece.toml cannot be read at line {number}: square = 1 3/4")
    assert "A length with a fraction stands between straight quotation marks" in lines[2]


@pytest.mark.parametrize(
    "line",
    [
        "square = “1 3/4”",
        'square = "1 3/4""',
        "square",
        'square = "1"\nsquare = "2"',
        "[post",
        "square = 1_",
        "x = 9" * 90,
    ],
)
def test_no_slip_of_the_pen_in_the_file_gives_anything_but_a_plain_sentence(
    line: str, tmp_path: Path
) -> None:
    assert "cannot be read at line " in faults(tmp_path, f"[post]\n{line}\n")[0]


def test_a_text_that_is_never_closed_is_told_too(tmp_path: Path) -> None:
    assert "cannot be read at line 2: " in faults(tmp_path, 'name = """Box\nrule = 3')[0]


def test_a_file_that_is_not_there_is_answered_with_those_that_are(tmp_path: Path) -> None:
    with pytest.raises(BadPiece, match=r"bed\.toml\. No \.toml file lies in that folder\..*Piece\.demo"):
        Piece.read(tmp_path / "bed.toml")
    (tmp_path / "stool.toml").write_text(LEAST, encoding="utf-8")
    with pytest.raises(
        BadPiece, match=r"There is no file .*bed\.toml\. In that folder there are: stool\.toml\."
    ):
        Piece.read(str(tmp_path / "bed.toml"))


def test_a_folder_or_a_name_that_no_file_can_have_is_refused_in_words(tmp_path: Path) -> None:
    for path in (tmp_path, "bed\0.toml"):
        with pytest.raises(BadPiece, match=r"cannot be read \(.*Give the path of a \.toml file"):
            Piece.read(path)


def test_a_file_in_another_encoding_is_refused_with_the_line(tmp_path: Path) -> None:
    file = tmp_path / "piece.toml"
    file.write_bytes('name = "Box"\n# 1½ thick\n'.encode("latin-1"))
    with pytest.raises(
        BadPiece, match=r"not written in UTF-8 \(line 2 .*save it again with the encoding UTF-8"
    ):
        Piece.read(file)
    file.write_bytes(LEAST.encode("utf-16"))
    with pytest.raises(BadPiece, match=r"not written in UTF-8 \(line 1 "):
        Piece.read(file)


def test_line_ends_and_the_mark_that_some_editors_put_first_do_not_matter(tmp_path: Path) -> None:
    file = tmp_path / "piece.toml"
    file.write_bytes(b"\xef\xbb\xbf" + CAT_BED.replace("\n", "\r\n").encode("utf-8"))
    assert Piece.read(file) == Piece.demo("cat-bed")


plain = some.one_of(some.none(), some.booleans(), some.integers(), some.floats(), some.text(max_size=50))


@given(
    value=some.one_of(plain, some.lists(plain, max_size=2)),
    key=some.sampled_from(["square", "ends", "starts"]),
)
def test_nothing_written_behind_a_key_gives_a_traceback(
    value: object, key: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    written = "{}" if value is None else _in_toml(value)
    old = {"square": "square = 40", "ends": 'ends = "square"', "starts": "lead = 2"}[key]
    new = f"threads_per_inch = 10, starts = {written}" if key == "starts" else f"{key} = {written}"
    try:
        read(tmp_path_factory.mktemp("piece"), LEAST.replace(old, new)).findings()
    except BadPiece as refused:
        assert f".{key}" in str(refused)


def _in_toml(value: object) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return f"[{', '.join(_in_toml(item) for item in value if item is not None)}]"
    if isinstance(value, str):
        shown = (
            sign if sign.isprintable() and sign not in '"\\' else f"\\U{ord(sign):08X}" for sign in value
        )
        return f'"{"".join(shown)}"'
    return repr(value)
