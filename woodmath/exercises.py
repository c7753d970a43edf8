"""Questions that know the usual slips: `answer("post-1", "1 1/4")` says whether it is right, and if not, why.

A page opens them for its piece with `answer = answers_for(piece)`; what was tried is remembered there and
nowhere else.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from woodmath.as_given import quoted
from woodmath.errors import UnknownName, WoodmathError
from woodmath.fractions_in_print import set_fractions
from woodmath.questions import (
    bevel,
    boring,
    edges,
    ellipse,
    grain,
    ornament,
    own_piece,
    post_joint,
    rocker_choice,
    rocking,
    scaling,
    seasons,
    setting_out,
    splay,
    splayed_corner,
    start,
    turning,
)
from woodmath.questions.kinds import Value
from woodmath.questions.notation import SAME_NUMBER, as_typed
from woodmath.questions.question import Question

if TYPE_CHECKING:
    from woodmath.piece import Piece

PAGES = (
    start.QUESTIONS,
    scaling.QUESTIONS,
    splay.QUESTIONS,
    edges.QUESTIONS,
    post_joint.QUESTIONS,
    bevel.QUESTIONS,
    setting_out.QUESTIONS,
    boring.QUESTIONS,
    splayed_corner.QUESTIONS,
    ellipse.QUESTIONS,
    rocking.QUESTIONS,
    rocker_choice.QUESTIONS,
    seasons.QUESTIONS,
    grain.QUESTIONS,
    turning.QUESTIONS,
    ornament.QUESTIONS,
    own_piece.QUESTIONS,
)
"""The questions of every page, in the order of the pages and from easy to hard."""

Verdict = Literal["right", "wrong", "unread", "waiting", "elsewhere"]

_SIGNS: Mapping[Verdict, tuple[str, str, str]] = MappingProxyType(
    {
        "right": ("✓", "Right.", "var(--jp-success-color1, #2e7d32)"),
        "wrong": ("✗", "Not right yet.", "var(--jp-warn-color1, #b5411e)"),
        "unread": ("?", "That could not be read.", "var(--jp-info-color1, #1f5f8b)"),
        "waiting": ("○", "Not answered yet.", "var(--jp-border-color1, #757575)"),
        "elsewhere": ("–", "Not a question for this piece.", "var(--jp-border-color1, #757575)"),
    }
)
_ANOTHER_PIECE = 'A piece that has all that is asked about opens with Piece.demo("cat-bed").'
_LAST_HINT = "That was the last hint; the worked solution is folded below."


@dataclass(frozen=True)
class Reply:
    """What a page says to an answer; it shows itself when it is the last line of a cell.

    Parameters
    ----------
    key, ask : str
        Of the question.
    verdict : {"right", "wrong", "unread", "waiting", "elsewhere"}
        Elsewhere: the piece at hand has no part that the question is about.
    given : mapping of str to str
        The sizes that the answer follows from, with this piece's numbers.
    typed : str
        What was answered, as it is shown.
    told : str
        A hint, the sentence for what could not be read, or the exact answer once it was found.
    folded_hint, worked : str
        What can be unfolded; "" where there is nothing to unfold.

    >>> Reply("post-1", "How long is the tenon?", "waiting", {"post": "1 3/4 in"})
    post-1: ○ Not answered yet. How long is the tenon?
    Given: post 1 3/4 in.
    """

    key: str
    ask: str
    verdict: Verdict
    given: Mapping[str, str] = field(default_factory=dict)
    typed: str = ""
    told: str = ""
    folded_hint: str = ""
    worked: str = ""

    @property
    def right(self) -> bool:
        """Whether the answer was right."""
        return self.verdict == "right"

    def __repr__(self) -> str:
        sign, words, _ = _SIGNS[self.verdict]
        typed = f" You wrote {self.typed}." if self.typed else ""
        lines = [f"{self.key}: {sign} {words}{typed} {self.ask}"]
        if self.given:
            lines.append(f"Given: {self._sizes()}.")
        if self.told:
            lines.append(self.told)
        if self.folded_hint:
            lines.append("A hint is folded below the question on the page.")
        return "\n".join(lines)

    def _repr_markdown_(self) -> str:
        return "\n\n".join(self._paragraphs())

    def _paragraphs(self) -> Iterator[str]:
        sign, words, colour = _SIGNS[self.verdict]
        yield f'<div style="border-left: 4px solid {colour}; padding: 2px 14px">'
        typed = f" You wrote <code>{_harmless(self.typed)}</code>." if self.typed else ""
        given = f" Given: {_in_print(self._sizes())}." if self.given else ""
        yield f"**{sign} {words}**{typed}{given}"
        if self.told:
            yield _in_print(self.told)
        if self.folded_hint:
            yield from _folded("A hint", _in_print(self.folded_hint))
        if self.worked:
            yield from _folded("The worked solution", self.worked)
        yield "</div>"

    def _sizes(self) -> str:
        return ", ".join(f"{name} {size}" for name, size in self.given.items())


class Answers:
    """The questions of the course for one piece, and what was tried so far.

    Made by `answers_for`. Two of them know nothing of one another.

    >>> from woodmath.piece import Piece
    >>> Answers(Piece.demo("cat-bed"))("bevel-1", "1/2").verdict
    'right'
    """

    def __init__(self, piece: Piece) -> None:
        self._piece = piece
        self._tried: dict[str, list[Value]] = {}

    def __call__(self, key: str, given: object = ...) -> Reply:
        """Judge an answer.

        Parameters
        ----------
        key : str
            Of the question, "post-1".
        given : text, number or ...
            The answer in any notation that its kind knows; `...` means not yet answered.

        Returns
        -------
        Reply
            A right answer within tolerance is right; a wrong one that a known slip leads to gets the hint of
            that slip; any other gets the next hint, and the same wrong answer the same hint again.

        Raises
        ------
        UnknownName
            If there is no such question; the message lists those of its page.
        """
        question = question_named(key)
        try:
            sizes = question.given(self._piece)
            truth = question.truth(self._piece)
        except WoodmathError as error:
            return Reply(key, question.ask, "elsewhere", told=f"{error} {_ANOTHER_PIECE}")
        if given is ...:
            told = f"Put {question.kind.accepts(self._piece.rule)} in place of the three dots."
            return Reply(key, question.ask, "waiting", sizes, told=told, folded_hint=question.hints[0])
        typed = as_typed(given)
        try:
            value = question.kind.read(given, self._piece.rule)
        except WoodmathError as error:
            return Reply(key, question.ask, "unread", sizes, typed, str(error))
        if question.kind.same(value, truth, self._piece.rule):
            exact = f"Worked out it is {question.kind.write(truth, self._piece.rule)}."
            told = "" if isinstance(truth, str) else exact
            return Reply(key, question.ask, "right", sizes, typed, told, worked=question.worked(self._piece))
        hint = self._slip(question, value, truth) or self._next_hint(question, value)
        return Reply(key, question.ask, "wrong", sizes, typed, hint, worked=question.worked(self._piece))

    def _slip(self, question: Question, value: Value, truth: Value) -> str:
        """Hint of the slip that leads to an answer; a slip that leads to the truth is none."""
        rule, same = self._piece.rule, question.kind.same
        own = ((slip.hint, slip.leads_to(self._piece)) for slip in question.slips)
        for hint, wrong in (*own, *question.kind.usual_slips(truth, rule)):
            if wrong is not None and same(value, wrong, rule) and not same(wrong, truth, rule):
                return hint
        return ""

    def _next_hint(self, question: Question, value: Value) -> str:
        tried = self._tried.setdefault(question.key, [])
        place = next((number for number, before in enumerate(tried) if _same_try(before, value)), len(tried))
        if place == len(tried):
            tried.append(value)
        if place + 1 < len(question.hints):
            return question.hints[place]
        return f"{question.hints[-1]} {_LAST_HINT}"


def answers_for(piece: Piece) -> Answers:
    """Open the questions of the course for a piece.

    Parameters
    ----------
    piece : Piece
        Whose sizes the questions are about.

    Returns
    -------
    Answers
        To be called with a question's key and an answer.

    >>> from woodmath.piece import Piece
    >>> answer = answers_for(Piece.demo("cat-bed"))
    >>> answer("bevel-1", ...).verdict, answer("bevel-1", "1/2").verdict
    ('waiting', 'right')
    """
    return Answers(piece)


def question_named(key: str) -> Question:
    """Return the question of that key.

    Raises
    ------
    UnknownName
        If there is none; the message lists those of its page, or of all where no page is meant.

    >>> question_named("post-9")
    Traceback (most recent call last):
    woodmath.errors.UnknownName: There is no question “post-9”.
    This page has: post-1, post-2, post-3, post-4, post-5.
    """
    for page in PAGES:
        for question in page:
            if question.key == key:
                return question
    word = re.match(r"[a-z]*", str(key).strip().lower())
    meant = [page for page in PAGES if word and word[0] and page[0].key.startswith(word[0])]
    keys = ", ".join(question.key for page in meant or PAGES for question in page)
    where = "This page has" if meant else "There are"
    raise UnknownName(f"There is no question {quoted(key)}. {where}: {keys}.")


def _same_try(before: Value, value: Value) -> bool:
    if isinstance(before, str) or isinstance(value, str):
        return before == value
    return abs(before - value) <= SAME_NUMBER


def _folded(title: str, markdown: str) -> Iterator[str]:
    yield f'<details><summary style="cursor: pointer">{title}</summary>'
    yield markdown
    yield "</details>"


def _in_print(text: str) -> str:
    """Text as Markdown shows it letter by letter; fractions are set, and what is to be typed stays as it is typed."""
    parts = re.split(r'([\w.]*\(?"[^"]*"\)?)', text)
    return "".join(
        f"<code>{_harmless(part, keep=' .()/-°')}</code>"
        if '"' in part
        else _harmless(set_fractions(part), keep=" .,:;?()/'-°“”’%+=⁄")
        for part in parts
    )


def _harmless(text: str, keep: str = " .") -> str:
    """Text that neither Markdown nor HTML nor the setter of formulas can take for anything but text."""
    return "".join(sign if sign.isalnum() or sign in keep else f"&#{ord(sign)};" for sign in text)
