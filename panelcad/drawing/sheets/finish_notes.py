"""Notes on what is done to a plate beside cutting it: only those that apply, with blanks for what is not known."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.drawing_plates import worked_plates
from panelcad.drawing.engravings import standing
from panelcad.drawing.schedule import holes
from panelcad.drawing.subject import Subject
from panelcad.model.hole import HoleKind
from panelcad.model.plate import PlateState

_BOX: Final = "[__]"
_BLANK: Final = "____________________"
_HARDWARE: Final = {
    HoleKind.COUNTERSUNK: "Countersinks",
    HoleKind.NUTPLATE: "Nutplates",
    HoleKind.TAPPED: "Threads",
    HoleKind.INSERT: "Inserts",
}


def finish_notes(subject: Subject) -> Iterator[tuple[str, str]]:
    """Each note with what the shop has to fill in beside it."""
    kinds = _kinds(subject)
    yield "Deburr both faces; no tool marks across the edge of a hole. Break all edges, by:", _BLANK
    yield from _sheets(subject)
    yield from _coat(subject)
    seats = ", earth points and nutplate seats" if HoleKind.NUTPLATE in kinds else " and earth points"
    yield f"Mask bonding pads{seats} on the back before coating; places:", _BLANK
    hardware = [word for kind, word in _HARDWARE.items() if kind in kinds]
    if hardware:
        named = ", ".join([hardware[0], *(word.lower() for word in hardware[1:])])
        yield f"{named} as in the hole schedule; try each fastener in scrap of the same sheet.", ""
    yield "Try the full-size template in the aircraft before cutting. Tried by, date:", _BLANK


def _sheets(subject: Subject) -> Iterator[tuple[str, str]]:
    """How a new sheet is laid, and how one that is there already is set up; plates are named where there are both."""
    plates = [each.plate for each in worked_plates(subject)]
    new = [plate.name for plate in plates if plate.state is PlateState.NEW]
    used = [plate.name for plate in plates if plate.state is not PlateState.NEW]
    if new:
        of = f" ({', '.join(new)})" if used else ""
        yield f"Grain along the panel's width{of} unless the shop says otherwise. Grain:", _BLANK
        yield f"Good face to the pilot{of}: mark it before cutting and keep its film on.", _BOX
    if used:
        of = f" ({', '.join(used)})" if new else ""
        measure = "measure the values in brackets on it before cutting; where they differ, ask the shop"
        yield f"The sheet is there already{of}: {measure}. Measured by, date:", _BLANK
        yield f"Protect the front{of} before it is clamped.", _BOX


def _kinds(subject: Subject) -> set[HoleKind]:
    """The kinds of the holes that are to be made."""
    made = (hole for plate in worked_plates(subject) for hole in holes(subject, plate) if not hole.is_there)
    return {hole.feature.form.kind for hole in made if hole.feature.form is not None}


def _coat(subject: Subject) -> Iterator[tuple[str, str]]:
    """The look that the owner was shown; the paint itself is the shop's to name."""
    look = subject.option.appearance
    is_engraved = any(len(each.plate.engravings) > len(standing(subject, each)) for each in worked_plates(subject))
    order = f" {_BOX} before engraving   {_BOX} after engraving." if is_engraved else ""
    yield f"Coat as shown to the owner: {look.finish.value}, colour {look.colour} (sRGB).{order} Paint:", _BLANK
    if is_engraved:
        yield from _engraving(subject)
        yield f"Engraving filled, colour as shown to the owner: {look.placard} (sRGB). Fill:", _BLANK


def _engraving(subject: Subject) -> Iterator[tuple[str, str]]:
    """The file has the middle of each stroke: how wide and deep it is cut must be told."""
    tool = subject.project.profile.engraving_tool
    line = "Engrave the front, the tool along the middle of each stroke of the layer ENGRAVE."
    if tool is None:
        yield f"{line} Width and depth of the stroke:", _BLANK
    else:
        yield f"{line} Strokes {subject.length(tool)} wide; depth:", _BLANK
