"""A sheet of paper and what stands on it, in mm from its lower left corner."""

from dataclasses import dataclass

from panelcad.drawing.display import Node


@dataclass(frozen=True)
class Sheet:
    """`title` is its bookmark; `level` 1 puts it under the sheet before it."""

    width: float
    height: float
    nodes: tuple[Node, ...]
    title: str
    level: int = 0
