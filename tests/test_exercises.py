"""Answers are judged as a patient master would: any notation, the slip named, a hint before the solution."""

import re
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from html.parser import HTMLParser

import numpy
import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as some

from woodmath import exercises
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.exercises import Answers, Reply, answers_for
from woodmath.piece import Piece
from woodmath.questions.kinds import (
    AngleAnswer,
    AnswerKind,
    ChoiceAnswer,
    CountAnswer,
    LengthAnswer,
    NumberAnswer,
)
from woodmath.questions.question import Question, Slip

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")
LENGTH, ANGLE, COUNT = LengthAnswer(), AngleAnswer(), CountAnswer("holes")
TURNS = NumberAnswer("turns", Fraction(1, 4))
CHOICE = ChoiceAnswer(("the end", "the side", "one_long"))


def asked(kind: AnswerKind, truth: float | str, *slips: Slip, key: str = "toy-1") -> Question:
    return Question(
        key=key,
        ask="How much?",
        kind=kind,
        given=lambda piece: {"post": "1 3/4 in"},
        truth=lambda piece: truth,
        slips=slips,
        hints=("The first hint.", "The second hint.", "The third hint."),
        worked=lambda piece: "$$a = 1$$",
    )


@pytest.fixture
def ask(monkeypatch: pytest.MonkeyPatch) -> Iterator[object]:
    """Open a page of one question for a piece; answers then go to that question."""

    def opened(kind: AnswerKind, truth: float | str, *slips: Slip, piece: Piece = CAT_BED) -> "OneQuestion":
        monkeypatch.setattr(exercises, "PAGES", ((asked(kind, truth, *slips),),))
        return OneQuestion(answers_for(piece))

    return opened


class OneQuestion:
    def __init__(self, answers: Answers) -> None:
        self.answers = answers

    def __call__(self, given: object = ...) -> Reply:
        return self.answers("toy-1", given)


@pytest.mark.parametrize(
    "given",
    [
        "1 1/4", "1-1/4", "1¼", "1.25", "5/4", '1 1/4"', "1 1/4 in", "31.75 mm", "3.175 cm", " 1 3/16 ",
        "1 5/16", 1.25, 1.1875, 1.3125, Fraction(5, 4), Decimal("1.25"), numpy.float64(1.25),
        numpy.array(1.25), sympy.Rational(5, 4), sympy.Float(1.25), sympy.sqrt(sympy.Rational(25, 16)),
    ],
)  # fmt: skip
def test_a_right_length_is_right_in_any_notation(ask, given):
    assert ask(LENGTH, 1.25)(given).right


@pytest.mark.parametrize(
    "given", ["34", "3.4 cm", "34.25 mm", 33.5, "1 5/16 in", Fraction(34), numpy.int64(34), 34]
)
def test_a_piece_in_millimetres_takes_inches_too(ask, given):
    assert ask(LENGTH, 33.75, piece=LOG_BOX)(given).right


@pytest.mark.parametrize(
    "given", [45, 45.0, "45", "45.0", "45°", "45 °", "45 degrees", "45 deg.", "45 Degrees", 44.75, "45 1/4"]
)
def test_a_right_angle_is_right_with_or_without_its_sign(ask, given):
    assert ask(ANGLE, 45.0)(given).right


@pytest.mark.parametrize(
    "given", [7, 7.0, "7", "7.0", "7 holes", Fraction(7), numpy.int32(7), sympy.Integer(7)]
)
def test_a_count_is_right_as_a_number_or_in_words(ask, given):
    assert ask(COUNT, 7.0)(given).right


@pytest.mark.parametrize("given", [7.5, "7.5", "7 1/2", -7])
def test_half_a_hole_is_no_count_and_costs_no_hint(ask, given):
    one = ask(COUNT, 7.0)
    assert one(given).verdict == "unread"
    assert "whole" in one(given).told
    assert one(6).told == "The first hint."


@pytest.mark.parametrize("given", [6.5, "6 1/2", "6½", "6½ turns", "6 1/2 turn", "6.75", 6.25])
def test_turns_may_have_fractions(ask, given):
    assert ask(TURNS, 6.5)(given).right


@pytest.mark.parametrize("given", ["the side", "The Side", "  THE  SIDE "])
def test_a_choice_is_right_in_capitals_or_not(ask, given):
    assert ask(CHOICE, "the side")(given).right


def test_a_choice_is_right_with_its_words_joined_or_apart(ask):
    assert ask(CHOICE, "one_long")("one long").right


@pytest.mark.parametrize(
    ("kind", "truth", "tolerance"),
    [
        (LENGTH, 1.25, 1 / 16),
        (ANGLE, 45.0, 0.25),
        (TURNS, 6.5, 0.25),
        (LengthAnswer(Fraction(1, 4)), 1.25, 1 / 64),
    ],
)
def test_just_inside_the_tolerance_is_right_and_just_outside_is_not(ask, kind, truth, tolerance):
    one = ask(kind, truth)
    for side in (-1, 1):
        assert one(truth + side * tolerance).right
        assert not one(truth + side * tolerance * 1.001).right


def test_one_mark_is_a_mark_of_the_pieces_own_rule(ask):
    assert ask(LENGTH, 34.0, piece=LOG_BOX)(34.5).right
    assert not ask(LENGTH, 34.0, piece=LOG_BOX)(34.51).right


@pytest.mark.parametrize("kind", [LENGTH, ANGLE, COUNT, TURNS, CHOICE])
@pytest.mark.parametrize(
    "given",
    [
        True, False, numpy.True_, sympy.true, None, "", "about so", "1,25", b"1.25", 1j, [1.25], object,
        float("nan"), float("inf"), numpy.array([1.25]), sympy.Symbol("a"), sympy.zoo, -(10**400), "1/0",
        pytest.param(10**5000, id="thousands of digits"), "\ud800", "x" * 5000,
    ],
)  # fmt: skip
def test_what_cannot_be_read_gets_a_sentence_with_two_examples_and_costs_no_hint(ask, kind, given):
    truth = "the end" if kind is CHOICE else 3.0
    one = ask(kind, truth)
    reply = one(given)
    assert reply.verdict == "unread"
    assert "cannot be read as" in reply.told or "is not one of the choices" in reply.told
    assert ' or "' in reply.told
    assert len(reply.told) < 260
    assert one("the side" if kind is CHOICE else 2).told == "The first hint."
    reply._repr_markdown_().encode("utf-8")


def test_a_decimal_comma_is_told_to_be_a_point(ask):
    assert "A decimal is written with a point" in ask(ANGLE, 45.0)("22,5").told


@pytest.mark.parametrize("kind", [LENGTH, ANGLE, COUNT, TURNS, CHOICE])
def test_three_dots_are_no_answer_and_say_so(ask, kind):
    reply = ask(kind, "the end" if kind is CHOICE else 3.0)()
    assert reply.verdict == "waiting"
    for text in (repr(reply), reply._repr_markdown_()):
        assert "Not answered yet" in text
        assert "A hint" in text
    assert "How much?" in repr(reply)  # on the page the question stands above the cell
    assert "1 3/4 in" in repr(reply)
    assert "1¾ in" in reply._repr_markdown_()
    assert "worked solution" not in reply._repr_markdown_()
    assert "a = 1" not in reply._repr_markdown_() + repr(reply)


def test_a_hint_that_is_not_asked_for_stays_folded(ask):
    shown = ask(LENGTH, 1.25)()._repr_markdown_()
    assert shown.index("<details>") < shown.index("The first hint") < shown.index("</details>")


def test_hints_come_in_order_and_the_last_one_stays(ask):
    one = ask(LENGTH, 1.25)
    told = [one(wrong).told for wrong in (3, 4, 5, 6, 7)]
    assert told[:2] == ["The first hint.", "The second hint."]
    assert all(text.startswith("The third hint.") and "folded below" in text for text in told[2:])


def test_the_same_wrong_answer_again_gets_the_same_hint_in_any_notation(ask):
    one = ask(LENGTH, 1.25)
    assert [one(wrong).told for wrong in ("3 1/2", 3.5, '3 1/2"', "4")] == [
        *["The first hint."] * 3,
        "The second hint.",
    ]
    assert one("3.5").told == "The first hint."


def test_two_openings_of_one_page_know_nothing_of_each_other(ask):
    first = ask(LENGTH, 1.25)
    second = OneQuestion(answers_for(CAT_BED))
    first(3)
    assert first(4).told == "The second hint."
    assert second(4).told == "The first hint."


def test_a_slip_is_met_with_its_own_hint_and_uses_up_no_other(ask):
    one = ask(LENGTH, 1.25, Slip("That is the short point.", lambda piece: 0.75))
    assert [one(wrong).told for wrong in ("3/4", 0.75, 3)] == ["That is the short point."] * 2 + [
        "The first hint."
    ]


def test_a_slip_is_recognised_within_the_tolerance_of_its_kind(ask):
    one = ask(LENGTH, 1.25, Slip("That is the short point.", lambda piece: 0.75))
    assert one("11/16").told == "That is the short point."
    assert one("5/8").told == "The first hint."


def test_the_likelier_of_two_slips_that_meet_is_named(ask):
    one = ask(ANGLE, 30.0, Slip("First.", lambda piece: 20.0), Slip("Second.", lambda piece: 20.1))
    assert one(20.05).told == "First."


def test_a_slip_that_leads_to_the_truth_is_no_slip(ask):
    one = ask(LENGTH, 1.25, Slip("That is the set-back.", lambda piece: 1.25 + 1 / 16))
    assert one("1 5/16").right
    assert one("1 3/8").told == "The first hint."


def test_a_slip_that_a_piece_does_not_allow_is_passed_over(ask):
    def impossible(piece: Piece) -> float:
        raise ImpossibleShape("no such post")

    one = ask(LENGTH, 1.25, Slip("Never.", impossible), Slip("Nor this.", lambda piece: None))
    assert one(3).told == "The first hint."


def test_a_number_in_the_other_unit_is_told_to_take_its_unit_along(ask):
    assert "right in millimetres" in ask(LENGTH, 1.25)(31.75).told
    assert "right in inches" in ask(LENGTH, 31.75, piece=LOG_BOX)("1.25").told


def test_an_angle_from_the_other_side_and_one_in_radians_are_known(ask):
    one = ask(ANGLE, 30.0)
    assert "from the other side" in one(60).told
    assert "radians" in one(0.5236).told
    assert "from the other side" not in ask(ANGLE, 45.0)(44).told


def test_the_worked_solution_comes_only_after_a_try_and_folded(ask):
    one = ask(LENGTH, 1.25)
    for reply in (one(1.25), one(3)):
        shown = reply._repr_markdown_()
        assert reply.worked == "$$a = 1$$"
        assert shown.index("<details>") < shown.index("$$a = 1$$") < shown.index("</details>")
        assert "<details open" not in shown
        assert "a = 1" not in repr(reply)
    assert one().worked == one("about so").worked == ""


def test_a_verdict_is_a_word_and_a_sign_and_never_a_colour_alone(ask):
    one = ask(LENGTH, 1.25)
    told = {reply._repr_markdown_().split("\n\n")[1] for reply in (one(1.25), one(3), one(), one("about so"))}
    assert {re.match(r"\*\*(\S+) ([^*]+)\*\*", line)[0] for line in told} == {
        "**✓ Right.**", "**✗ Not right yet.**", "**○ Not answered yet.**", "**? That could not be read.**"
    }  # fmt: skip


def test_a_right_answer_is_told_what_it_is_exactly(ask):
    assert ask(LENGTH, 1.23)("1 1/4").told == "Worked out it is 1.23 in, on the rule 1 1/4."
    assert ask(LENGTH, 1.25)("1 1/4").told == "Worked out it is 1 1/4 in."
    assert ask(ANGLE, 38.6598)("38.7°").told == "Worked out it is 38.66°."


def test_an_unknown_question_is_met_with_those_of_its_page():
    answer = answers_for(CAT_BED)
    with pytest.raises(UnknownName, match=r"This page has: post-1, post-2, post-3, post-4, post-5\."):
        answer("post-9", "1 1/4")
    with pytest.raises(UnknownName, match=r"“Bevel 1”. This page has: bevel-1, "):
        answer("Bevel 1")
    for nonsense in ("dovetail-1", "", None, 7):
        with pytest.raises(UnknownName, match=r"There are: start-1, .* own-3\."):
            answer(nonsense)


def test_a_piece_without_the_part_is_sent_to_one_that_has_it():
    answer = answers_for(LOG_BOX)
    for typed in (..., "20"):
        reply = answer("ellipse-1", typed)
        assert reply.verdict == "elsewhere"
        assert "no [rocker]" in reply.told
        assert 'Piece.demo("cat-bed")' in reply.told
        assert "cat-bed" in reply._repr_markdown_()


class Tags(HTMLParser):
    """Notes every tag, and whether each that is opened is closed."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.seen: list[str] = []
        self.open: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.seen.append(tag)
        self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


HARMLESS = {"div", "details", "summary", "code"}


@pytest.mark.parametrize(
    "given",
    [
        "<script>alert(1)</script>",
        "</div></details>",
        "$$x$$ \\(y\\)",
        "**bold** _it_ `code`",
        "[a](b)",
        "&lt;b&gt;",
        "1\n\n# 2",
    ],
)
def test_what_a_student_types_is_shown_and_never_run(ask, given):
    shown = ask(LENGTH, 1.25)(given)._repr_markdown_()
    assert set(Tags(shown).seen) <= HARMLESS
    assert not Tags(shown).open
    assert "You wrote <code>" in shown
    for sign in "<$*_`[\\&#":
        if sign in given:
            assert f"&#{ord(sign)};" in shown


@settings(deadline=None)
@given(some.text() | some.integers() | some.floats() | some.binary() | some.complex_numbers() | some.none())
def test_no_answer_at_all_makes_a_page_fail(given):
    answer = answers_for(CAT_BED)
    for key in ("post-1", "post-2", "boring-2", "boring-4", "post-5"):
        reply = answer(key, given)
        assert reply.verdict in ("right", "wrong", "unread")
        shown = reply._repr_markdown_()
        shown.encode("utf-8")
        assert set(Tags(shown).seen) <= HARMLESS
        assert not Tags(shown).open
        assert shown.count("\n\n") == len(list(reply._paragraphs())) - 1 + reply.worked.count("\n\n")


def test_a_reply_is_shown_by_jupyter_as_markdown_and_as_text():
    formatter = pytest.importorskip("IPython.core.formatters").DisplayFormatter()
    shown, _ = formatter.format(answers_for(CAT_BED)("post-1", "1 1/4"))
    assert set(shown) == {"text/markdown", "text/plain"}
