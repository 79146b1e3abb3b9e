"""Every way in which a file may be held against a project's plates, and how well each fits."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.geometry.contour import circle
from panelcad.geometry.placement import Placement
from panelcad.intake.dxf_file import DxfFile
from panelcad.intake.dxf_outline import NOT_CUT
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf import to_file_axes
from panelcad.outputs.dxf_contents import plate_plan
from panelcad.outputs.dxf_finish import finish_on
from panelcad.outputs.dxf_layers import CUT_THROUGH, IN_THE_METAL, Layer
from panelcad.outputs.dxf_nest import part_plan
from panelcad.outputs.dxf_options import DxfOptions, FaceUp, Origin
from panelcad.outputs.dxf_plan import Plan
from panelcad.outputs.verify_claim import Claim
from panelcad.outputs.verify_match import Seen, count_same

_COMPARED: Final = CUT_THROUGH | IN_THE_METAL


@dataclass(frozen=True)
class Held:
    """Plates and the way a file is held against them; `back` leads from the file's axes to the plate's.

    Several plates nested on a stock sheet are compared in the stock's axes.
    """

    option: Option
    plates: tuple[PlateLayout, ...]
    written_as: DxfOptions
    plan: Plan
    back: Placement


@dataclass(frozen=True)
class Fit:
    """A way to hold the file with the contours of both sides in the plate's axes, and how many are in their place."""

    held: Held
    expected: tuple[Seen, ...]
    found: tuple[Seen, ...]
    same: int


def ways_to_hold(
    project: Project, said: Claim, option_id: str | None = None, plate_id: str | None = None
) -> Iterator[Held]:
    """Every plate and way that the file names, or all where it names none."""
    for option in _options(project, said, option_id):
        if said.parts:
            yield _nested(project, option, said)
            continue
        for plate in _plates(project, option, said, plate_id):
            for written in _ways(said):
                back = _inverse(to_file_axes(plate, project, written))
                yield Held(option, (plate,), written, plate_plan(plate, project, written), back)


def _nested(project: Project, option: Option, said: Claim) -> Held:
    written, laid = said.options or DxfOptions(), layout(project, option)
    plan = Plan()
    for part in said.parts:
        plan = plan.joined(part_plan(project, option, part, written))
    return Held(option, tuple(laid.plate(part.plate) for part in said.parts), written, plan, Placement())


def fitted(held: Held, drawing: DxfFile, finish: float, tolerance: float) -> Fit:
    """How well the drawing fits this way; `finish` is the thickness in mm on each surface."""
    cuts = tuple(
        Seen(loop.feature, loop.contour, finish_on(loop.layer, finish))
        for loop in held.plan.loops
        if loop.layer in _COMPARED
    )
    marks = (mark.at for mark in held.plan.marks if mark.layer is Layer.CENTRE_MARK)
    expected = (*cuts, *(Seen("centre mark", circle(at, 0.0)) for at in marks))
    found = seen(drawing, held.back)
    return Fit(held, expected, found, count_same(expected, found, tolerance))


def seen(drawing: DxfFile, back: Placement) -> tuple[Seen, ...]:
    """The file's cut contours and centre marks in the plate's axes."""
    cuts = (each for each in drawing.contours if is_cut(each.layer))
    marks = (at for layer, at in drawing.points if layer.upper() == Layer.CENTRE_MARK)
    return (
        *(Seen(f"on layer {each.layer}", back.contour(each.contour)) for each in cuts),
        *(Seen("centre mark", circle(back.point(at), 0.0)) for at in marks),
    )


def is_cut(layer: str) -> bool:
    """Whether what lies on a layer of this name, anybody's, counts as cut."""
    return layer.upper() not in NOT_CUT


def _options(project: Project, said: Claim, option_id: str | None) -> tuple[Option, ...]:
    if option_id is not None:
        return (project.option(option_id),)
    return tuple(option for option in project.all_options if option.id == said.option) or project.all_options


def _plates(project: Project, option: Option, said: Claim, plate_id: str | None) -> tuple[PlateLayout, ...]:
    laid = layout(project, option)
    if plate_id is not None:
        return (laid.plate(plate_id),)
    return tuple(plate for plate in laid.plates if plate.plate.id == said.plate) or laid.plates


def _ways(said: Claim) -> tuple[DxfOptions, ...]:
    if said.options is not None:
        return (said.options,)
    return tuple(DxfOptions(face_up=face, origin=origin) for origin in Origin for face in FaceUp)


def _inverse(placement: Placement) -> Placement:
    """From the file's axes back to the plate's; nothing is turned there."""
    if placement.mirrored:
        return Placement(placement.x, -placement.y, mirrored=True)
    return Placement(-placement.x, -placement.y)
