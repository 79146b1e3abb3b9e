"""What a tool is told: where the pointer is on the panel, and which keys are held."""

from dataclasses import dataclass

from PySide6.QtCore import Qt

from panelcad.geometry.point import Point


@dataclass(frozen=True)
class Held:
    """Keys held beside the pointer, by what they mean."""

    adds: bool = False
    takes_out: bool = False
    free: bool = False
    """Snapping is suspended."""
    constrained: bool = False

    @staticmethod
    def of(modifiers: Qt.KeyboardModifier) -> "Held":
        """Shift adds to a selection and holds a drag straight, Ctrl adds or takes out; Alt or Ctrl suspends snapping.

        Many window managers take Alt with the mouse for themselves.
        """
        return Held(
            adds=bool(modifiers & Qt.KeyboardModifier.ShiftModifier),
            takes_out=bool(modifiers & Qt.KeyboardModifier.ControlModifier),
            free=bool(modifiers & (Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier)),
            constrained=bool(modifiers & Qt.KeyboardModifier.ShiftModifier),
        )


@dataclass(frozen=True)
class Pointer:
    """`at` in mm of the plate; `mm_per_pixel` says how fine the screen is."""

    at: Point
    mm_per_pixel: float
    held: Held = Held()
    button: Qt.MouseButton = Qt.MouseButton.NoButton
