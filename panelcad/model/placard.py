"""Placards: fitted plates that carry words; what such an item is called is what it says."""

from typing import Final

from panelcad.model.cutout import Cutout

PLACARDS: Final = "placards"
"""The family of cutouts that carry words."""


def is_placard(cutout: Cutout) -> bool:
    return cutout.family == PLACARDS
