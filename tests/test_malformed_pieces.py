"""A malformed piece file gives one plain error, with the key and a remedy, at once; nothing is written or lost."""

from __future__ import annotations

import contextlib
import json
import os
import time
from dataclasses import dataclass
from importlib import resources
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.errors import BadPiece
from woodmath.piece import Piece

CAT_BED = (resources.files("woodmath") / "pieces" / "cat-bed.toml").read_text(encoding="utf-8")
SCALED = 'name = "Mine"\nscaled_from = "cat-bed"\nscale = "2"\n'
AT_ONCE = 0.1
"""Seconds that a refusal may take, once the package is loaded."""


plain = some.recursive(
    some.one_of(some.booleans(), some.integers(), some.floats(-9, 9), some.text("ab 1/:.", max_size=9)),
    lambda inner: some.one_of(
        some.lists(inner, max_size=3),
        some.dictionaries(some.text("abcut", min_size=1), inner, max_size=2).map(str),
    ),
    max_leaves=4,
)


@dataclass(frozen=True)
class Malformed:
    """A file that no piece has, and what the refusal must name: the key or place, and a remedy."""

    what: str
    text: str | bytes
    key: str
    remedy: str
    beside: tuple[tuple[str, str], ...] = ()


def cat(old: str, new: str) -> str:
    assert CAT_BED.count(old) == 1, old
    return CAT_BED.replace(old, new)


def square(written: str) -> str:
    return cat('square = "1 3/4"', f"square = {written}")


def bed(*lines: str) -> str:
    return 'name = "Mine"\n' + "\n".join(lines) + "\n"


FILES = (
    Malformed("a wrong type", square("true"), "post.square = true", 'such as "1 3/4"'),
    Malformed("a date for a length", square("2026-02-03"), "post.square", "Write it as on the rule"),
    Malformed("a list for a length", square("[[[1]]]"), "post.square = a list", "Write it as on the rule"),
    Malformed(
        "a table for a length", square("{ a = 1 }"), "post.square = a table", "Write it as on the rule"
    ),
    Malformed(
        "a missing key", square('"1"').replace('square = "1"', ""), "post.square is missing", "Add it under"
    ),
    Malformed(
        "a missing table", CAT_BED.split("[tools]")[0].replace("[bit]", "[joint.bit]"), "bit", "belongs"
    ),
    Malformed("a negative length", square('"-2"'), "post.square", "negative"),
    Malformed("a negative number", square("-2.5"), "post.square", "negative"),
    Malformed("a length of nothing", square("0"), "post.square", "more than 0"),
    Malformed("the text NaN", square('"nan"'), "post.square", "for example 7 5/8"),
    Malformed("no number", square("nan"), "post.square", "for example 7 5/8"),
    Malformed("an infinite length", square("-inf"), "post.square", "for example 7 5/8"),
    Malformed("a length longer than a street", square('"1 km"'), "post.square", "for example 7 5/8"),
    Malformed("a number of 4000 digits", square("9" * 4000), "post.square = a huge number", "as on the rule"),
    Malformed("a number of 5000 digits", square("9" * 5000), "cannot be read", "A length with a fraction"),
    Malformed("a huge number in sixteens", square("0x" + "f" * 9000), "a huge number", "as on the rule"),
    Malformed(
        "a huge count", cat("threads_per_inch = 12", "threads_per_inch = 0x" + "f" * 9000), "a huge", "12"
    ),
    Malformed("a length of 30000 signs", square(f'"{"1" * 30000}"'), "post.square", "for example 7 5/8"),
    Malformed(
        "an unknown key with a near miss", cat("set_back =", "setback ="), "joint.setback", "set_back?"
    ),
    Malformed(
        "a key in the wrong table", cat("[tools]", "[tools]\nset_back = 1"), "tools.set_back", "under [joint]"
    ),
    Malformed("a duplicate key", square('"1 3/4"\nsquare = 2'), "line 9: square = 2", "only once"),
    Malformed("a duplicate table", CAT_BED + "\n[post]\n", "[post]", "only once"),
    Malformed("mixed units in one length", square('"1 3/4 in 5 mm"'), "post.square", "for example 7 5/8"),
    Malformed("a unit that nobody has", square('"3 furlongs"'), "post.square", "for example 7 5/8"),
    Malformed(
        "a rule in two units", cat('rule = "1/16 in"', 'rule = "1/16 mm"'), "rule", '"1/16 in" or "0.5 mm"'
    ),
    Malformed("a fraction outside quotes", square("1 3/4"), "square = 1 3/4", "quotation marks"),
    Malformed("curly quotes", square("“1 3/4”"), "square = “1 3/4”", "straight quotation marks"),
    Malformed("a name with a line break", cat("bed for", "bed\\nfor"), "name", "cannot be printed"),
    Malformed("a name with a bell in it", cat("bed for", "bed\\u0007for"), "name", "cannot be printed"),
    Malformed("a name that runs backwards", cat("bed for", "bed\\u202Efor"), "name", "cannot be printed"),
    Malformed("a name of 50000 signs", cat("bed for", "x" * 50000), "name", "at most 120"),
    Malformed("an empty file", "", "name is missing", "Add it at the top"),
    Malformed("a NUL in the text", square('"1\0"'), "square", "straight quotation marks"),
    Malformed("binary rubbish", bytes(range(256)) * 20, "UTF-8", "save it again"),
    Malformed("a picture", b"\x89PNG\r\n\x1a\n" + bytes(200), "UTF-8", "save it again"),
    Malformed("another encoding", CAT_BED.encode("utf-16"), "UTF-8", "save it again"),
    Malformed("50 MB", b"# wood\n" * (50 * 2**20 // 7), "larger than 64 kB", "own .toml file"),
    Malformed("lists within lists", f"a = {'[' * 30000}", "brackets", "nothing deeper"),
    Malformed("tables within tables", f"a = {'{a=' * 15000}", "brackets", "nothing deeper"),
    Malformed("a key of 20000 parts", f"{'a.' * 20000}a = 1", "line 1", "A key stands in its table"),
    Malformed("a table of 20000 parts", f"[{'a.' * 20000}a]", "line 1", "A key stands in its table"),
    Malformed("a quoted key of 9000 parts", '"a" . ' * 9000 + "b = 1", "line 1", "A key stands in its table"),
    Malformed("a key of 60000 signs", f"{'k' * 60000} = 1", "kkk...", "Possible: name"),
    Malformed("5000 unknown keys", "".join(f"key{n} = 1\n" for n in range(5000)), "more than 25", "Possible"),
    Malformed("9000 tenons", cat("tenons = [", "tenons = [" + "{}," * 9000), "joint.tenons", "at most 100"),
    Malformed(
        "9000 chisels", cat("chisels = [", "chisels = [" + "1," * 9000), "tools.chisels", "at most 100"
    ),
    Malformed(
        "scaled from itself", bed('scaled_from = "piece.toml"', "scale = 2"), "scaled_from", "own sizes"
    ),
    Malformed(
        "scaled in a circle",
        bed('scaled_from = "other.toml"', "scale = 2"),
        "scaled_from",
        "Let one of them give its own sizes",
        (("other.toml", bed('scaled_from = "piece.toml"', "scale = 2")),),
    ),
    Malformed(
        "scaled from a long row of others",
        bed('scaled_from = "p1.toml"', "scale = 2"),
        "scaled_from",
        "Scale it from the first of them",
        tuple((f"p{n}.toml", bed(f'scaled_from = "p{n + 1}.toml"', "scale = 2")) for n in range(1, 9)),
    ),
    Malformed(
        "scaled from a piece with faults",
        bed('scaled_from = "other.toml"', "scale = 2"),
        'scaled_from = "other.toml"',
        "post is missing",
        (("other.toml", 'name = "x"\nrule = "1 mm"\n'),),
    ),
    Malformed("a path up", bed('scaled_from = "../x.toml"', "scale = 2"), "scaled_from", "beside this one"),
    Malformed(
        "a path from the root", bed('scaled_from = "/etc/x.toml"', "scale = 2"), "scaled_from", "beside"
    ),
    Malformed("a path of Windows", bed("scaled_from = 'c:\\x.toml'", "scale = 2"), "scaled_from", "beside"),
    Malformed("a NUL in a path", bed('scaled_from = "\\u0000.toml"', "scale = 2"), "scaled_from", "beside"),
    Malformed(
        "scaled from nothing", bed('scaled_from = "x.toml"', "scale = 2"), "scaled_from", "In that folder"
    ),
    Malformed("no such demo", SCALED.replace("cat-bed", "catbed"), "scaled_from", "Did you mean cat-bed?"),
    Malformed(
        "scaled from a number", SCALED.replace('"cat-bed"', "3"), "scaled_from = 3", "name a demo piece"
    ),
    Malformed("no scale", SCALED.replace('scale = "2"', ""), "scale is missing", 'scale = "3/2"'),
    Malformed("a scale without a drawing", 'scale = "2"\n' + CAT_BED, "scale goes with", "Add scaled_from"),
    Malformed("a scale of nothing", SCALED.replace('"2"', "0"), "scale", "3/2"),
    Malformed("a scale that is none", SCALED.replace('"2"', '"larger"'), "scale", "3/2"),
    Malformed("a scale of 0x", SCALED.replace('"2"', "0x" + "f" * 9000), "scale = a huge number", "3/2"),
    Malformed("no scale but no number", SCALED.replace('"2"', "nan"), "scale", "3/2"),
    Malformed("a scale to the moon", SCALED.replace('"2"', '"9999"'), "scale", "100 m"),
    Malformed("a scale twice", SCALED + 'wanted = { "end.top" = "24" }', "scale and wanted", "Keep one"),
    Malformed(
        "wanted stock", SCALED.replace('scale = "2"', 'wanted = { "post.square" = 2 }'), "stock", "Possible"
    ),
    Malformed("wanted nothing", SCALED.replace('scale = "2"', "wanted = {}"), "wanted", "exactly one"),
    Malformed("stock of nothing", SCALED + 'stock = ["rocker.dept"]', "rocker.dept", 'mean "rocker.depth"?'),
    Malformed("no name of its own", SCALED.replace('name = "Mine"', ""), "name is missing", "Add it"),
    Malformed("made of nothing", CAT_BED + "\n[as_made.sid]\nthickness = 1", "as_made.sid", "mean side?"),
    Malformed(
        "made so wrong", CAT_BED + "\n[as_made.side]\nthickness = 0", "as_made.side.thickness", "more than 0"
    ),
    Malformed(
        "cut what is not there", CAT_BED + '\n[as_made]\ncut = ["post"]', "as_made.cut", 'mean "posts"?'
    ),
    Malformed("made as a number", "as_made = 3\n" + CAT_BED, "as_made = 3", "[as_made.side]"),
)


def state(folder: Path) -> dict[str, tuple[int, int]]:
    return {file.name: (file.stat().st_size, file.stat().st_mtime_ns) for file in folder.iterdir()}


@pytest.mark.parametrize("bad", FILES, ids=lambda bad: bad.what)
def test_a_malformed_file_is_refused_at_once_in_one_plain_sentence(bad: Malformed, tmp_path: Path) -> None:
    Piece.demo("hound-bed")
    for name, text in bad.beside:
        (tmp_path / name).write_text(text, encoding="utf-8")
    file = tmp_path / "piece.toml"
    held = bad.text if isinstance(bad.text, bytes) else bad.text.encode("utf-8")
    file.write_bytes(held)
    before = state(tmp_path)
    began = time.perf_counter()
    with pytest.raises(BadPiece) as refused:
        Piece.read(file)
    took = time.perf_counter() - began
    words = str(refused.value)
    assert bad.key in words and bad.remedy in words
    assert len(words) < 9000
    assert all(sign.isprintable() or sign == "\n" for sign in words)
    assert state(tmp_path) == before and file.read_bytes() == held
    assert took < AT_ONCE


def test_there_are_more_than_thirty_of_them_and_each_says_another_thing() -> None:
    assert len({bad.what for bad in FILES}) == len(FILES) > 30


def test_a_link_that_leads_out_of_the_folder_is_refused_too(tmp_path: Path) -> None:
    (tmp_path / "outside.toml").write_text(CAT_BED, encoding="utf-8")
    inside = tmp_path / "inside"
    inside.mkdir()
    try:
        Path(inside / "link.toml").symlink_to(tmp_path / "outside.toml")
    except OSError:
        pytest.skip("only on Linux and macOS")
    (inside / "mine.toml").write_text(bed('scaled_from = "link.toml"', "scale = 2"), encoding="utf-8")
    with pytest.raises(BadPiece, match="leads out of the folder"):
        Piece.read(inside / "mine.toml")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="only on Linux and macOS")
def test_what_is_no_ordinary_file_is_refused_and_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.toml")
    for path in (tmp_path / "pipe.toml", Path("/dev/zero")):
        with pytest.raises(BadPiece, match="no ordinary file"):
            Piece.read(path)


@pytest.mark.parametrize(
    "name", ["a/b\\c", 'the "best" bed', "<script>x</script>", "..", "Łóżko für 猫", "CON"]
)
def test_a_name_with_any_printable_sign_is_a_name(name: str, tmp_path: Path) -> None:
    text = cat('name = "A rocking bed for the workshop cat"', f"name = '{name}'")
    (tmp_path / "piece.toml").write_text(text, encoding="utf-8")
    assert Piece.read(tmp_path / "piece.toml").name == name


def test_a_text_that_lies_in_no_folder_may_be_scaled_from_a_demo_piece_only() -> None:
    assert Piece.from_text(SCALED).name == "Mine"
    with pytest.raises(BadPiece, match="lies in no folder yet"):
        Piece.from_text(SCALED.replace("cat-bed", "other.toml"))


def test_a_text_that_is_too_long_is_refused_as_a_file_is() -> None:
    with pytest.raises(BadPiece, match="70000 signs"):
        Piece.from_text("x" * 70000)


MADE = '\n[as_made]\ncut = ["posts"]\n[as_made.side]\nthickness = "13/16"\n'
HOUND = (resources.files("woodmath") / "pieces" / "hound-bed.toml").read_text(encoding="utf-8") + MADE


@given(
    slips=some.lists(
        some.tuples(
            some.integers(0, len(HOUND) - 1),
            some.sampled_from(["", "0", "-", '"', "[", "{", "=", ".", "\n", "nan"]),
        ),
        min_size=1,
        max_size=4,
    )
)
def test_no_slip_of_the_pen_gives_anything_but_a_piece_or_a_plain_refusal(
    slips: list[tuple[int, str]],
) -> None:
    text = HOUND
    for place, sign in slips:
        text = text[:place] + sign + text[place + 1 :]
    try:
        Piece.from_text(text).findings()
    except BadPiece as refused:
        assert len(str(refused)) < 9000


@given(
    values=some.dictionaries(some.sampled_from(["scale", "wanted", "stock", "as_made", "scaled_from"]), plain)
)
def test_nothing_written_behind_the_keys_at_the_top_gives_a_traceback(values: dict[str, object]) -> None:
    lines = "".join(f"{key} = {json.dumps(value)}\n" for key, value in values.items())
    with contextlib.suppress(BadPiece):
        Piece.from_text(f'name = "Mine"\n{lines}')
