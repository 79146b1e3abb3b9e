"""Fresh ids that people can read: 'altimeter', 'altimeter-2', 'altimeter-cut'."""

import re
import unicodedata
from collections.abc import Collection
from itertools import count
from typing import Final

from panelcad.editing.parts import all_things
from panelcad.model.project import Option, Project

_LONGEST_STEM: Final = 80
_NUMBERED = re.compile(r"-\d+$")


def slug(text: str) -> str:
    """Small letters, digits and dashes made of what a person typed; 'part' where nothing is left.

    >>> slug("Turn & bank (2.25 in)")
    'turn-bank-2.25-in'
    """
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9.]+", "-", plain).strip("-.")
    return words[:_LONGEST_STEM].strip("-.") or "part"


def fresh_id(wanted: str, taken: Collection[str]) -> str:
    """The slug of `wanted`, or its first numbered form that is not taken.

    >>> fresh_id("clock", {"clock", "clock-2"})
    'clock-3'
    """
    stem = slug(wanted)
    if stem not in taken:
        return stem
    stem = _NUMBERED.sub("", stem)
    return next(name for number in count(2) if (name := f"{stem}-{number}") not in taken)


def fresh_name(wanted: str, taken: Collection[str]) -> str:
    """`wanted`, or its first numbered form that no one bears yet.

    >>> fresh_name("Clock", {"Clock"})
    'Clock 2'
    """
    if wanted not in taken:
        return wanted
    stem = re.sub(r" \d+$", "", wanted)
    return next(name for number in count(2) if (name := f"{stem} {number}") not in taken)


def ids_in(project: Project, option: Option) -> frozenset[str]:
    """Every id that something in the option, or around the panel, bears."""
    marks = (mark.id for mark in option.marks())
    return frozenset((*marks, *(p.id for p in option.plates), *(thing.id for thing in all_things(project, option))))
