"""A photograph of a plate, rectified: it lies on the plate true to scale."""

import base64
import binascii
from functools import cached_property
from typing import Annotated

from pydantic import AfterValidator, Field

from panelcad.model.base import Id, Length, Name, PositiveLength, Record

_LARGEST: int = 12_000_000


def _is_picture(text: str) -> str:
    try:
        content = base64.b64decode(text, validate=True)
    except (binascii.Error, ValueError):
        raise ValueError("a PNG or JPEG in base64 is expected") from None
    if not content.startswith((b"\x89PNG", b"\xff\xd8\xff")):
        raise ValueError("a PNG or JPEG in base64 is expected")
    return text


class Photograph(Record):
    """`content` is a PNG or JPEG in base64, stretched over a rectangle of the plate whose lower left corner is x, y."""

    plate: Id
    name: Name
    content: Annotated[str, Field(max_length=_LARGEST), AfterValidator(_is_picture)]
    x: Length
    y: Length
    width: PositiveLength
    height: PositiveLength

    @cached_property
    def bytes(self) -> bytes:
        """The PNG or JPEG itself."""
        return base64.b64decode(self.content)
