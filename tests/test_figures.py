"""The still pictures in figures/: they show what would be drawn now, and say so in words."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from woodmath import figures
from woodmath.figures import StillPicture, difference, faults, main, still_pictures, write

ROOT = Path(__file__).resolve().parent.parent
FIGURES = ROOT / "figures"
SHOWN = re.compile(r"!\[([^\]]*)\]\((?:\.\./)?figures/([^)]+)\)")


@pytest.fixture(scope="module")
def bevel() -> StillPicture:
    """Return one picture of the table."""
    return next(picture for picture in still_pictures() if picture.file == "06-strike-the-bevel.svg")


@pytest.fixture(scope="module")
def drawn(bevel: StillPicture) -> str:
    """Return that picture as it would be drawn now."""
    return bevel.svg()


@pytest.mark.parametrize("picture", still_pictures(), ids=lambda picture: picture.file)
def test_a_picture_that_is_kept_shows_what_would_be_drawn_now(picture: StillPicture) -> None:
    kept = (FIGURES / picture.file).read_text(encoding="utf-8")
    assert difference(kept, picture.svg()) == "", f"renew it: {figures.RENEW}"


def test_no_picture_is_kept_that_nothing_draws() -> None:
    assert {file.name for file in FIGURES.glob("*.svg")} == {picture.file for picture in still_pictures()}


def test_a_picture_drawn_twice_is_the_same_file(bevel: StillPicture, drawn: str) -> None:
    assert bevel.svg() == drawn


def moved_line(text: str) -> str:
    """Move the end of the last drawn line by a fiftieth of a point."""
    *before, last = re.split(r"(?=L \d+\.\d+ \d)", text)
    return "".join(before) + re.sub(r"\d+\.\d+", lambda found: f"{float(found[0]) + 0.02}", last, count=1)


def changed_text(text: str) -> str:
    """Let one figure of a text be another that the picture has too."""
    first, other = sorted(set(re.findall(r'<use xlink:href="(#DejaVuSans-[0-9a-f]+)"', text)))[:2]
    return text.replace(f'<use xlink:href="{first}"', f'<use xlink:href="{other}"', 1)


@pytest.mark.parametrize(
    ("change", "seen"),
    [
        (moved_line, r"path \d+ has .* in its d,"),
        (changed_text, r"use \d+ has \"#DejaVuSans-\w+\" in its href"),
        (lambda text: text.replace("stroke-width: 2.7", "stroke-width: 2.8", 1), "in its style"),
        (lambda text: text.replace("#b5411e", "#1f5f8b", 1), "in its style"),
        (
            lambda text: text.replace("The end of a tenon", "The end of a post", 1),
            'title 1 says "post seen on its", and would say "tenon seen on its"',
        ),
        (lambda text: text.replace("</svg>", "<path/></svg>"), "elements, and would have"),
        (lambda text: text[:-20], "not an SVG file"),
    ],
    ids=[
        "moved line",
        "changed text",
        "thicker line",
        "other colour",
        "other title",
        "one more",
        "cut short",
    ],
)
def test_the_check_sees_a_picture_that_shows_something_else(
    drawn: str, change: Callable[[str], str], seen: str
) -> None:
    altered = change(drawn)
    assert altered != drawn
    assert re.search(seen, difference(altered, drawn))


def test_the_check_sees_nothing_where_only_a_last_digit_differs(drawn: str) -> None:
    assert (
        difference(re.sub(r"\b(\d+\.\d{6})\b", lambda found: f"{float(found[1]) + 1e-4:.6f}", drawn), drawn)
        == ""
    )


def test_the_check_sees_nothing_where_only_the_names_of_clips_differ(drawn: str) -> None:
    names = re.findall(r'<clipPath id="(\w+)"', drawn)
    assert names
    renamed = drawn
    for name in names:
        renamed = renamed.replace(name, f"p{(int(name[1:], 16) + 7) % 16**10:010x}")
    assert renamed != drawn
    assert difference(renamed, drawn) == ""


def test_a_folder_is_told_what_is_missing_and_what_nothing_draws(tmp_path: Path, bevel: StillPicture) -> None:
    write((bevel,), tmp_path)
    assert list(faults((bevel,), tmp_path)) == []
    (tmp_path / bevel.file).rename(tmp_path / "old.svg")
    told = list(faults((bevel,), tmp_path))
    assert told == [
        "06-strike-the-bevel.svg is missing.",
        "old.svg is drawn by nothing here: take it away, or add it to the table of still pictures.",
    ]


def test_a_view_that_draws_otherwise_makes_the_check_fail(tmp_path: Path, bevel: StillPicture) -> None:
    write((bevel,), tmp_path)
    changed = replace(bevel, settings=(("offset", 0.5625),))
    (told,) = faults((changed,), tmp_path)
    assert told.startswith("06-strike-the-bevel.svg is not what would be drawn now: ")


def test_the_command_says_which_picture_is_old_and_how_to_renew_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], bevel: StillPicture
) -> None:
    changed = replace(bevel, settings=(("offset", 0.5625),))
    monkeypatch.setattr(figures, "still_pictures", lambda: (changed,))
    assert main(["--check"]) == 1
    told = capsys.readouterr().out
    assert "06-strike-the-bevel.svg is not what would be drawn now" in told
    assert "python3 -m woodmath figures" in told


def test_the_command_says_when_all_is_well(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path, bevel: StillPicture
) -> None:
    monkeypatch.setattr(figures, "still_pictures", lambda: (bevel,))
    monkeypatch.setattr(figures, "__file__", str(tmp_path / "woodmath" / "figures.py"))
    assert main([]) == 0
    assert main(["--check"]) == 0
    assert "1 of 1 pictures show what would be drawn now." in capsys.readouterr().out
    assert [file.name for file in (tmp_path / "figures").iterdir()] == [bevel.file]


def test_a_command_that_is_not_understood_is_answered_with_the_two_that_are(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["--renew"]) == 2
    assert "figures does not know --renew" in capsys.readouterr().out


def texts() -> list[tuple[Path, str]]:
    """Return the README and the Markdown of every page."""
    found = [(file, file.read_text(encoding="utf-8")) for file in [ROOT / "README.md"] if file.is_file()]
    for page in sorted((ROOT / "notebooks").glob("*.ipynb")):
        cells = json.loads(page.read_text(encoding="utf-8"))["cells"]
        found.append((page, "\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "markdown")))
    return found


def test_wherever_a_picture_is_shown_its_words_go_with_it() -> None:
    alts = {picture.file: picture.alt for picture in still_pictures()}
    shown = [(page.name, *found) for page, text in texts() for found in SHOWN.findall(text)]
    assert shown
    for page, alt, file in shown:
        assert alt == alts[file], (
            f"{page} shows {file} with other words than the table in woodmath/figures.py"
        )


def test_every_page_shows_its_own_picture() -> None:
    for page, text in texts():
        if page.suffix == ".ipynb":
            assert f"figures/{page.stem}.svg" in text


def test_the_words_of_a_picture_are_one_sentence_without_signs_that_markdown_would_take_up() -> None:
    for picture in still_pictures():
        assert picture.alt.endswith(".")
        assert not set("[]*_`<>\n") & set(picture.alt)


def test_a_picture_s_title_is_in_the_file(bevel: StillPicture, drawn: str) -> None:
    assert "<title>The end of a tenon seen on its edge, with a bevel struck across it</title>" in drawn


def test_the_table_is_read_without_matplotlib() -> None:
    code = (
        "import sys\n"
        "from woodmath.figures import still_pictures\n"
        "still_pictures()\n"
        "assert not {'numpy', 'matplotlib'} & set(sys.modules)\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, cwd=ROOT)
