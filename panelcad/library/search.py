"""Find things by words, in any order and with slips of the pen."""

import re
import unicodedata
from collections.abc import Iterable
from difflib import SequenceMatcher
from typing import Final

_WORD = re.compile(r"\d+(?:[./]\d+)*|[^\W\d_]+")
_ALIKE: Final = 0.72
"""How alike two words must be, as a share of their letters, to pass for a slip of the pen."""
_TITLE_COUNTS: Final = 1.5
"""How much more a word of the title counts than one of the other words."""
_LEADS: Final = 0.01
"""What a title that begins with the first typed word is ahead of one that only has it."""
_LONG: Final = 4
"""From so many letters on, a typed word may stand anywhere within a known one; a shorter one begins or ends it."""


def words(text: str) -> list[str]:
    """Small letters without accents, and numbers with their fractions: '3-1/8 in' is '3', '1/8', 'in'."""
    plain = unicodedata.normalize("NFKD", text.replace("⁄", "/")).casefold()
    return _WORD.findall("".join(char for char in plain if not unicodedata.combining(char)))


class Index:
    """Entries of a name, a title and further words."""

    def __init__(self, entries: Iterable[tuple[str, str, str]]) -> None:
        self._entries = [(name, tuple(words(title)), frozenset(words(more))) for name, title, more in entries]
        self._known = frozenset(word for _, title, more in self._entries for word in more.union(title))

    def search(self, text: str) -> list[str]:
        """Names of the entries that suit every word of `text`, best first; all in their order where it is blank."""
        return [name for _, name in self._ranked(text)]

    def best(self, text: str) -> list[str]:
        """Those of `search` that suit the words equally well as the first of them."""
        ranked = self._ranked(text)
        return [name for rank, name in ranked if rank == ranked[0][0]]

    def _ranked(self, text: str) -> list[tuple[float, str]]:
        wanted = [_suits(typed, self._known) for typed in words(text)]
        ranked = [(_rank(title, more, wanted), name) for name, title, more in self._entries]
        return [found for found in sorted(ranked, key=lambda found: -found[0]) if found[0] > 0 or not wanted]


def _suits(typed: str, known: frozenset[str]) -> dict[str, float]:
    """How well each known word suits a typed one, 0 to 1; words that do not suit are left out.

    Only what no known word has in it may be a slip of the pen.
    """
    as_typed = {word: score for word in known if (score := _spelled(typed, word)) > 0}
    return as_typed or {word: score for word in known if (score := _slip(typed, word)) > 0}


def _spelled(typed: str, word: str) -> float:
    if typed == word:
        return 1.0
    if typed[0].isdigit():
        return 0.0
    if word.startswith(typed):
        return 0.9
    if len(typed) >= 3 and (typed in word if len(typed) >= _LONG else word.endswith(typed)):
        return 0.65
    return 0.0


def _slip(typed: str, word: str) -> float:
    if typed[0].isdigit() or len(typed) < 4 or abs(len(typed) - len(word)) > 3:
        return 0.0
    alike = SequenceMatcher(None, typed, word, autojunk=False).ratio()
    return 0.6 * alike if alike >= _ALIKE else 0.0


def _rank(title: tuple[str, ...], more: frozenset[str], wanted: list[dict[str, float]]) -> float:
    """The sum over the typed words, 0 where one of them suits nothing of the entry."""
    total = 0.0
    for suits in wanted:
        best = max(
            _TITLE_COUNTS * max((suits.get(word, 0.0) for word in title), default=0.0),
            max((suits.get(word, 0.0) for word in more), default=0.0),
        )
        if best == 0.0:
            return 0.0
        total += best
    return total + (_LEADS if wanted and title and title[0] in wanted[0] else 0.0)
