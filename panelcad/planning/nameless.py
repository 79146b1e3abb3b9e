"""Items that are plainly equipment and named as no unit: what they do is not known, and unknown is never nothing."""

from typing import Final

from panelcad.model.cutout import BodyKind, Cutout
from panelcad.model.project import Item, Option, Project

SMALL_PARTS: Final = frozenset(
    {
        *("blanks", "breakers", "coaxial-connectors", "d-subminiature", "engine-controls", "jacks", "key-switches"),
        *("lamps", "placards", "push-buttons", "rocker-switches", "rotary-controls", "toggle-switches", "vents"),
    }
)
"""Families of what stands on a panel without giving the pilot a function of its own."""


def nameless(project: Project, option: Option) -> tuple[Item, ...]:
    """The option's items of equipment without a unit, in its order."""
    cutouts = {cutout.name: cutout for cutout in project.cutouts}
    return tuple(
        item for item in option.items if item.unit is None and is_equipment(item, cutouts.get(item.cutout or ""))
    )


def is_equipment(item: Item, cutout: Cutout | None) -> bool:
    """Whether it has a circuit, a place in a stack, a case, or a face that shows something, and is no small part."""
    if cutout is None:
        return _has_circuit(item)
    if cutout.family in SMALL_PARTS or cutout.control is not None:
        return False
    cased = any(body.kind in {BodyKind.CASE, BodyKind.TRAY} for body in cutout.bodies)
    return _has_circuit(item) or cutout.rack is not None or cased or bool(cutout.shows)


def _has_circuit(item: Item) -> bool:
    return item.circuit.bus is not None or item.circuit.breaker is not None
