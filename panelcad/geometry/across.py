"""The two ways a line runs straight across the plane."""

from enum import StrEnum


class Across(StrEnum):
    """A line of constant x, or one of constant y."""

    VERTICAL = "vertical"
    HORIZONTAL = "horizontal"
