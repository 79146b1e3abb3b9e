"""What a kind of face is."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.display import Node
from panelcad.drawing.faces.frame import Frame
from panelcad.model.flight import Flight

Draw = Callable[[Frame, Flight], tuple[Node, ...]]
_LABELLED: Final = frozenset(
    {"com", "nav", "nav com", "push", "legend push", "breaker", "lamp", "pull", "placard", "rail panel", "meter"}
    | {"clock", "digital clock", "hour meter", "indicator", "unit"}
)


@dataclass(frozen=True)
class FaceKind:
    """One kind of face: its name, the words that ask for it, how it is drawn, and what an owner reads about it.

    `square_draw` is used where the bezel is about as wide as high. A labelled face shows the item's name.
    """

    name: str
    words: tuple[str, ...]
    draw: Draw
    reads: str
    square_draw: Draw | None = None

    @property
    def labelled(self) -> bool:
        return self.name in _LABELLED

    def drawn_for(self, frame: Frame) -> Draw:
        square = abs(frame.width - frame.height) <= 0.12 * max(frame.width, frame.height)
        return self.square_draw if self.square_draw is not None and square else self.draw


def reading(kind: FaceKind, label: str) -> str:
    """What an owner reads about an instrument."""
    return kind.reads.format(label=label)
