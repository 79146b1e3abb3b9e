"""What a keep-out is to the pilot's eye, in the words that forms offer."""

from enum import Enum


class Sight(Enum):
    """Whether the pilot sees the panel through a keep-out."""

    CLEAR = "a space to be kept free"
    HIDES = "hides what is behind it"
