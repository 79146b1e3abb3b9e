"""Hold a cutting file against the project: which holes moved, grew, are missing or new, and which revision it is of.

The file may be ours, an older one, or one that came back from somebody who edited it. It is compared in cut sizes: with
what the project would have written with the options that the file names. A file that names none is tried front and
back, from the datum and from the lower left corner, and held against the plate that it fits best.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.intake.dxf_file import DxfFile, read_dxf
from panelcad.model.layout import PlateLayout
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.verify_claim import Claim, claim
from panelcad.outputs.verify_fit import Fit, Held, fitted, is_cut, seen, ways_to_hold
from panelcad.outputs.verify_match import Differing, differences
from panelcad.units import LengthUnit

TOLERANCE: Final = 0.01
"""mm: programs that edit a drawing keep at least four decimals of an inch."""


@dataclass(frozen=True)
class VerifyOptions:
    """Option and plate by id where the file does not name them; the unit where it does not state one."""

    option: str | None = None
    plate: str | None = None
    unit: LengthUnit | None = None
    tolerance: float = TOLERANCE


@dataclass(frozen=True)
class VerifyReport:
    """What verifying found. Contours are in the plate's axes and in cut sizes, in mm."""

    source: str
    project: Project
    claim: Claim
    held: Held
    compared: int
    differing: tuple[Differing, ...]
    open_ends: tuple[tuple[str, Point], ...]
    unreadable: tuple[tuple[str, str], ...]
    engraved_expected: float
    engraved_found: float
    tolerance: float

    @property
    def option(self) -> Option:
        return self.held.option

    @property
    def plates(self) -> tuple[PlateLayout, ...]:
        return self.held.plates

    @property
    def written_as(self) -> DxfOptions:
        return self.held.written_as

    @property
    def lettering_differs(self) -> bool:
        return abs(self.engraved_expected - self.engraved_found) > max(self.tolerance, 1e-4 * self.engraved_expected)

    @property
    def is_same(self) -> bool:
        return not (self.differing or self.open_ends or self.unreadable or self.lettering_differs)


_DEFAULTS: Final = VerifyOptions()


def verify(project: Project, path: Path | str, options: VerifyOptions = _DEFAULTS) -> VerifyReport:
    """Hold a DXF file against the project. Raises `UnusableInput`, `UnknownName`."""
    drawing = read_dxf(path, options.unit or project.unit)
    if not seen(drawing, Placement()):
        raise UnusableInput(str(path), "", "it holds no closed contour on a layer that is cut", "a cutting file")
    said = claim(drawing.texts)
    finish = project.profile.finish_thickness
    ways = ways_to_hold(project, said, options.option, options.plate)
    best = max((fitted(held, drawing, finish, options.tolerance) for held in ways), key=_goodness)
    return _report(project, drawing, said, best, options.tolerance)


def _goodness(fit: Fit) -> tuple[int, int]:
    return fit.same, -abs(len(fit.expected) - len(fit.found))


def _report(project: Project, drawing: DxfFile, said: Claim, fit: Fit, tolerance: float) -> VerifyReport:
    back, strokes = fit.held.back, fit.held.plan.strokes
    letters = [stroke.track.segments for stroke in strokes if stroke.layer is Layer.ENGRAVE]
    return VerifyReport(
        source=drawing.source,
        project=project,
        claim=said,
        held=fit.held,
        compared=len(fit.expected),
        differing=differences(fit.expected, fit.found, tolerance),
        open_ends=tuple(
            (each.layer, back.point(each.track.vertices[0].point)) for each in drawing.tracks if is_cut(each.layer)
        ),
        unreadable=tuple(each for each in drawing.unreadable if is_cut(each[1])),
        engraved_expected=sum(segment.length for segments in letters for segment in segments),
        engraved_found=_engraved(drawing),
        tolerance=tolerance,
    )


def _engraved(drawing: DxfFile) -> float:
    """Length in mm of everything on the engraving layer."""
    tracks = (each.track.segments for each in drawing.tracks if each.layer.upper() == Layer.ENGRAVE)
    rings = (each.contour.segments for each in drawing.contours if each.layer.upper() == Layer.ENGRAVE)
    return sum(segment.length for segments in (*tracks, *rings) for segment in segments)
