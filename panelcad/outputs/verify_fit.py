"""Every way in which a file may be held against a project's plates, and how well each fits."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

from panelcad.geometry.contour import circle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import distance
from panelcad.intake.dxf_file import DxfFile
from panelcad.intake.dxf_outline import NOT_CUT
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf import to_file_axes
from panelcad.outputs.dxf_contents import plate_plan
from panelcad.outputs.dxf_finish import finish_on
from panelcad.outputs.dxf_layers import CUT_THROUGH, IN_THE_METAL, Layer
from panelcad.outputs.dxf_nest import part_plan
from panelcad.outputs.dxf_options import EVERYTHING, DxfOptions, FaceUp, Origin
from panelcad.outputs.dxf_plan import Plan
from panelcad.outputs.verify_claim import Claim
from panelcad.outputs.verify_layers import is_ours
from panelcad.outputs.verify_match import Seen, count_same

_COMPARED: Final = CUT_THROUGH | IN_THE_METAL
_STAYS: Final = Placement()


@dataclass(frozen=True)
class Held:
    """Plates and the way a file is held against them; `back` leads from the file's axes to the plate's.

    Several plates nested on a stock sheet are compared in the stock's axes. `finish` is in mm on each surface.
    """

    option: Option
    plates: tuple[PlateLayout, ...]
    written_as: DxfOptions
    plan: Plan
    back: Placement
    finish: float

    @cached_property
    def expected(self) -> tuple[Seen, ...]:
        """What a whole file of this kind has to cut or to mark, in the plate's axes."""
        cuts = (
            Seen(loop.feature, loop.contour, finish_on(loop.layer, self.finish), loop.layer)
            for loop in self.plan.loops
            if loop.layer in _COMPARED
        )
        marks = (mark for mark in self.plan.marks if mark.layer is Layer.CENTRE_MARK)
        return (*cuts, *(Seen(mark.feature, circle(mark.at, 0.0), layer=mark.layer) for mark in marks))


@dataclass(frozen=True)
class Fit:
    """A way to hold the file, what of it is cut, in the plate's axes, and how many contours are in their place.

    `back` leads from the file's axes to the plate's, past what is wrong with how the file lies.
    """

    held: Held
    found: tuple[Seen, ...]
    same: int
    back: Placement

    @property
    def is_mostly_right(self) -> bool:
        return self.same > len(self.held.expected) / 2


def ways_to_hold(
    project: Project, said: Claim, option_id: str | None = None, plate_id: str | None = None
) -> Iterator[Held]:
    """Every plate and way that the file names, or all where it names none."""
    finish = project.profile.finish_thickness
    for option in _options(project, said, option_id):
        if said.parts:
            yield _nested(project, option, said)
            continue
        for plate in _plates(project, option, said, plate_id):
            for written in _ways(said):
                back = _inverse(to_file_axes(plate, project, written))
                yield Held(option, (plate,), written, plate_plan(plate, project, written), back, finish)


def whole(project: Project, held: Held) -> int:
    """How many contours the same file would have with nothing left out by choice."""
    options = replace(held.written_as, content=EVERYTHING)
    plans = (plate_plan(plate, project, options) for plate in held.plates)
    return sum(len(replace(held, plan=plan).expected) for plan in plans)


def _nested(project: Project, option: Option, said: Claim) -> Held:
    written, laid = said.options or DxfOptions(), layout(project, option)
    plan = Plan()
    for part in said.parts:
        plan = plan.joined(part_plan(project, option, part, written))
    plates = tuple(laid.plate(part.plate) for part in said.parts)
    return Held(option, plates, written, plan, Placement(), project.profile.finish_thickness)


def fitted(held: Held, drawing: DxfFile, tolerance: float, right: Placement = _STAYS) -> Fit:
    """How well the drawing fits this way; `right` puts right in the plate's axes how it lies."""
    back = right.after(held.back)
    marks = [each for each in held.expected if each.layer == Layer.CENTRE_MARK]
    found = (*seen(drawing, back), *_marks_elsewhere(drawing, back, marks, tolerance))
    return Fit(held, found, count_same(held.expected, found, tolerance), back)


def seen(drawing: DxfFile, back: Placement) -> tuple[Seen, ...]:
    """The file's cut contours and centre marks in the plate's axes."""
    cuts = (each for each in drawing.contours if is_cut(each.layer))
    marks = ((layer, at) for layer, at in drawing.points if layer.upper() == Layer.CENTRE_MARK)
    return (
        *(Seen("", back.contour(each.contour), 0.0, each.layer, each.is_joined, each.is_curved) for each in cuts),
        *(Seen("", circle(back.point(at), 0.0), layer=layer) for layer, at in marks),
    )


def _marks_elsewhere(drawing: DxfFile, back: Placement, marks: list[Seen], tolerance: float) -> Iterator[Seen]:
    """Points on layers of other names that lie where a centre mark is expected."""
    for layer, at in drawing.points if marks else ():
        point = back.point(at)
        if not is_ours(layer) and any(distance(mark.middle, point) <= tolerance for mark in marks):
            yield Seen("", circle(point, 0.0), layer=layer)


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
