"""Where in the text of a piece file each value stands, so that one can be changed and all the rest left alone."""

from __future__ import annotations

import re

Path = tuple[str | int, ...]
"""Tables and key, as in ("post", "square"); a number counts the rows of a list from 0."""

_BLANK = re.compile(r"(?:\s|#[^\n]*)*")
_SPACE = re.compile(r"[ \t]*")
_PART = re.compile(r"""[\w-]+|"(?:[^"\\\n]|\\.)*"|'[^'\n]*'""")
_TEXT = re.compile(
    r'"""(?:[^\\]|\\.)*?"{3,5}' r"|'''.*?'{3,5}" r'|"(?:[^"\\\n]|\\.)*"' r"|'[^'\n]*'", re.DOTALL
)
_PLAIN = re.compile(r"[^,\]}#\n]*")


def value_places(text: str) -> dict[Path, tuple[int, int]]:
    """Return where every value of a text stands.

    Parameters
    ----------
    text : str
        TOML that can be parsed.

    Returns
    -------
    dict of path to (int, int)
        From the first sign of the value to behind its last; of lists and tables within a line as a whole, and of
        everything in them.

    >>> text = 'rule = "1 mm"  # marks'
    >>> start, end = value_places(text)[("rule",)]
    >>> text[start:end]
    '"1 mm"'
    """
    return _Scan(text).places


class _Scan:
    """One walk through a text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.places: dict[Path, tuple[int, int]] = {}
        rows: dict[Path, int] = {}
        table: Path = ()
        self._skip(_BLANK)
        while self.at < len(text):
            if text.startswith("[[", self.at):
                table = self._key(2)
                rows[table] = rows.get(table, -1) + 1
                table = (*table, rows[table])
                self.at += 2
            elif text[self.at] == "[":
                table = self._key(1)
                self.at += 1
            else:
                self._pair(table)
            self._skip(_BLANK)

    def _skip(self, what: re.Pattern[str]) -> str:
        found = what.match(self.text, self.at)
        if found is None:
            raise AssertionError(f"nothing that can stand there at {self.at}")
        self.at = found.end()
        return found[0]

    def _key(self, brackets: int = 0) -> Path:
        self.at += brackets
        parts: list[str] = []
        while True:
            self._skip(_SPACE)
            part = self._skip(_PART)
            parts.append(part[1:-1] if part[0] in "\"'" else part)
            self._skip(_SPACE)
            if not self.text.startswith(".", self.at):
                return tuple(parts)
            self.at += 1

    def _pair(self, table: Path) -> None:
        path = (*table, *self._key())
        self.at += 1
        self._skip(_SPACE)
        self._value(path)

    def _value(self, path: Path) -> None:
        start = self.at
        opening = self.text[start : start + 1]
        if opening in ("[", "{") and opening:
            self.at += 1
            place = 0
            self._skip(_BLANK)
            while self.text[self.at] not in "]}":
                if opening == "[":
                    self._value((*path, place))
                else:
                    self._pair(path)
                place += 1
                self._skip(_BLANK)
                if self.text[self.at] == ",":
                    self.at += 1
                    self._skip(_BLANK)
            self.at += 1
        elif opening and opening in "\"'":
            self._skip(_TEXT)
        else:
            self.at = start + len(self._skip(_PLAIN).rstrip())
        self.places[path] = (start, self.at)
