"""Hold a cutting file against the project: which holes moved, grew, are missing or new, and which revision it is of.

The file may be ours, an older one, or one that came back from somebody who edited it. It is compared in cut sizes: with
what the project would have written with the options that the file names. A file that names none is tried front and
back, from the datum and from the lower left corner, and held against the plate that it fits best.
"""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.intake.dxf_file import DxfFile, read_dxf, rescaled
from panelcad.model.layout import PlateLayout
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.verify_claim import Claim, claim
from panelcad.outputs.verify_fit import Fit, Held, fitted, is_cut, seen, ways_to_hold
from panelcad.outputs.verify_match import Differing, differences
from panelcad.units import MM_PER_INCH, LengthUnit

TOLERANCE: Final = 0.01
"""mm: programs that edit a drawing keep at least four decimals of an inch."""

_MIX_UPS: Final = (MM_PER_INCH, 1 / MM_PER_INCH)
"""A file in the other unit than it says is this many times too small."""


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
    scale: float = 1.0
    """How many times larger the file should be: 25.4 where inches are called millimetres, 1 where it is right."""

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
        faults = (self.differing, self.open_ends, self.unreadable, self.lettering_differs, self.scale != 1.0)
        return not any(faults)


_DEFAULTS: Final = VerifyOptions()


def verify(project: Project, path: Path | str, options: VerifyOptions = _DEFAULTS) -> VerifyReport:
    """Hold a DXF file against the project. Raises `UnusableInput`, `UnknownName`."""
    drawing = read_dxf(path, options.unit or project.unit)
    if not seen(drawing, Placement()):
        raise UnusableInput(str(path), "", "it holds no closed contour on a layer that is cut", "a cutting file")
    said = claim(drawing.texts)
    ways = tuple(ways_to_hold(project, said, options.option, options.plate))
    finish = project.profile.finish_thickness
    scale, best = 1.0, _best(ways, drawing, finish, options.tolerance)
    for other in _MIX_UPS if best.same <= len(best.expected) / 2 else ():
        retried = _best(ways, rescaled(drawing, other), finish, options.tolerance)
        if retried.same > len(best.expected) / 2:
            scale, best, drawing = other, retried, rescaled(drawing, other)
    return replace(_report(project, drawing, said, best, options.tolerance), scale=scale)


def _best(ways: tuple[Held, ...], drawing: DxfFile, finish: float, tolerance: float) -> Fit:
    return max((fitted(held, drawing, finish, tolerance) for held in ways), key=_goodness)


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
