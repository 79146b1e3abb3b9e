"""Hold a cutting file against the project: which holes moved, grew, are missing or new, and which revision it is of.

The file may be ours, an older one, or one that came back from somebody who edited it. It is compared in cut sizes: with
what the project would have written with the options that the file names. A file that names none is tried front and
back, from the datum and from the lower left corner, and held against the plate that it fits best. One that fits nowhere
is tried scaled, mirrored, turned and shifted as a whole; that is told first, then what differs apart from it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Segment
from panelcad.intake.dxf_file import Curves, DxfFile, UnitFrom, read_dxf, rescaled
from panelcad.model.layout import PlateLayout
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf_layers import OUTLINES, Layer
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_plan import placed_track
from panelcad.outputs.verify_claim import Claim, claim
from panelcad.outputs.verify_fit import Fit, Held, fitted, is_cut, seen, ways_to_hold, whole
from panelcad.outputs.verify_layers import Uncut, is_ours, lettering_on_foreign_layers
from panelcad.outputs.verify_lettering import Lettering, compared_lettering
from panelcad.outputs.verify_lie import RIGHT, Lie, best_lie
from panelcad.outputs.verify_match import Difference, Differing, Seen, differences, in_place, same_place
from panelcad.units import LARGEST_LENGTH, MM_PER_INCH, LengthUnit

TOLERANCE: Final = 0.01
"""mm: programs that edit a drawing keep at least four decimals of an inch."""
_R12: Final = "AC1009"
_OTHER_UNIT: Final = (MM_PER_INCH, 1 / MM_PER_INCH)
_FARTHEST: Final = 1000 * LARGEST_LENGTH
"""mm: a panel may be a thousand times too large, where metres were made of millimetres."""
_STRANGER: Final = 4
"""A file of which less than one part in so many agrees is of something else."""


@dataclass(frozen=True)
class VerifyOptions:
    """Option and plate by id where the file does not name them; the unit where it does not state one."""

    option: str | None = None
    plate: str | None = None
    unit: LengthUnit | None = None
    tolerance: float = TOLERANCE


@dataclass(frozen=True)
class ReadAs:
    """What the file was read as: the unit of its numbers, and who said so."""

    unit: LengthUnit
    unit_from: UnitFrom
    is_unit_guessed: bool = False
    """Whether nobody said it, and the unit is the one that fits."""
    has_unit_header: bool = True
    """Whether the version of DXF has a place for the unit; R12 has none."""
    header_says: str = ""
    """Another unit that the file's header states, one that nobody cuts in."""


@dataclass(frozen=True)
class VerifyReport:
    """What verifying found. Contours are in the plate's axes and in cut sizes, in mm.

    `whole` counts the contours of the same file with nothing left out by choice, `relayered` pairs what lies on another
    layer than written with what was expected, `joined` counts contours that came as loose pieces, `curved` those that
    came as splines or ellipses; none of these, nor `doubled`, makes the geometry another.
    """

    source: str
    project: Project
    claim: Claim
    held: Held
    lie: Lie
    read_as: ReadAs
    whole: int
    holes: int
    holes_agreeing: int
    is_foreign: bool
    differing: tuple[Differing, ...]
    doubled: tuple[Differing, ...]
    relayered: tuple[tuple[Seen, Seen], ...]
    joined: int
    curved: int
    open_ends: tuple[tuple[str, Point], ...]
    unreadable: tuple[tuple[str, str], ...]
    lettering: Lettering
    tolerance: float

    @property
    def compared(self) -> int:
        return len(self.held.expected)

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
    def is_same(self) -> bool:
        """Whether the part that the file makes is the one of the project."""
        faults = (self.differing, self.open_ends, self.unreadable, self.lettering.differs, self.is_foreign)
        return self.lie == RIGHT and not any(faults)


_DEFAULTS: Final = VerifyOptions()


def verify(project: Project, path: Path | str, options: VerifyOptions = _DEFAULTS) -> VerifyReport:
    """Hold a DXF file against the project. Raises `UnusableInput`, `UnknownName`."""
    drawing = read_dxf(path, options.unit or project.unit, Curves.CHORDS, _FARTHEST)
    if not seen(drawing, Placement()) and not any(_engraved(drawing, Placement())):
        expected = "a cutting file"
        raise UnusableInput(
            str(path), "", "it holds no closed contour on a layer that is cut, and no lettering", expected
        )
    said = claim(drawing.texts)
    ways = tuple(ways_to_hold(project, said, options.option, options.plate))
    fit, lie = _best(ways, drawing, options.tolerance), RIGHT
    if fit.held.expected and not fit.is_mostly_right:
        fit, lie = _put_right(ways, drawing, fit, options.tolerance)
        drawing = rescaled(drawing, lie.scale)
    is_guessed = drawing.unit_from is UnitFrom.TOLD and options.unit is None
    read = ReadAs(drawing.unit, drawing.unit_from, is_guessed, drawing.version > _R12, drawing.header_says)
    if is_guessed and lie.scale in _OTHER_UNIT:
        read = replace(read, unit=next(unit for unit in LengthUnit if unit is not drawing.unit))
        lie = replace(lie, scale=1.0)
    return _report(project, drawing, said, fit, _Found(lie, read, options.tolerance))


@dataclass(frozen=True)
class _Found:
    """How the file lies and was read."""

    lie: Lie
    read_as: ReadAs
    tolerance: float


def _best(ways: tuple[Held, ...], drawing: DxfFile, tolerance: float) -> Fit:
    return max((fitted(held, drawing, tolerance) for held in ways), key=_goodness)


def _goodness(fit: Fit) -> tuple[int, int]:
    return fit.same, -abs(len(fit.held.expected) - len(fit.found))


def _put_right(ways: tuple[Held, ...], drawing: DxfFile, best: Fit, tolerance: float) -> tuple[Fit, Lie]:
    """The way to hold the file that fits once it is put right; the best as it lies where none does."""
    found = seen(drawing, Placement())
    tried = [(*best_lie(held.expected, found, held.back, tolerance), held) for held in _plain(ways)]
    same, lie, held = max(tried, key=lambda each: each[0])
    if same <= max(len(held.expected) / 2, best.same):
        return best, RIGHT
    return fitted(held, rescaled(drawing, lie.scale), tolerance, lie.placement), lie


def _plain(ways: tuple[Held, ...]) -> tuple[Held, ...]:
    """One way for each plate: the others are mirrored or shifted from it."""
    plain = (DxfOptions().face_up, DxfOptions().origin)
    chosen = tuple(held for held in ways if (held.written_as.face_up, held.written_as.origin) == plain)
    return chosen or ways


def _report(project: Project, drawing: DxfFile, said: Claim, fit: Fit, found: _Found) -> VerifyReport:
    held, tolerance = fit.held, found.tolerance
    uncut = Uncut(held.plan, tolerance, is_nested=bool(said.parts))
    there = tuple(each for each in fit.found if not _is_uncut(each, held, uncut, tolerance))
    pairs = in_place(held.expected, there, tolerance)
    told = differences(held.expected, there, tolerance)
    holes = [each for each in held.expected if each.layer not in OUTLINES]
    agreeing = [one for one, _ in pairs if one.layer not in OUTLINES]
    return VerifyReport(
        source=drawing.source,
        project=project,
        claim=said,
        held=held,
        lie=found.lie,
        read_as=found.read_as,
        whole=whole(project, held) if held.written_as.left_out else len(held.expected),
        holes=len(holes),
        holes_agreeing=len(agreeing),
        is_foreign=_is_foreign(held.expected, there, pairs),
        differing=tuple(each for each in told if each.kind is not Difference.DOUBLED),
        doubled=tuple(each for each in told if each.kind is Difference.DOUBLED),
        relayered=tuple((one, other) for one, other in pairs if other.layer.upper() != one.layer),
        joined=sum(each.is_joined for each in there),
        curved=sum(each.is_curved for each in there),
        open_ends=_open_ends(drawing, fit, uncut),
        unreadable=tuple(each for each in drawing.unreadable if is_cut(each[1])),
        lettering=_lettering(drawing, fit, uncut, tolerance),
        tolerance=tolerance,
    )


def _is_uncut(each: Seen, held: Held, uncut: Uncut, tolerance: float) -> bool:
    """Whether a contour on a layer that is not ours is one that we draw without cutting it."""
    if is_ours(each.layer) or any(same_place(one, each, tolerance) is not None for one in held.expected):
        return False
    return uncut.holds(each.contour)


def _is_foreign(expected: tuple[Seen, ...], found: tuple[Seen, ...], pairs: list[tuple[Seen, Seen]]) -> bool:
    if not expected or any(one.layer in OUTLINES for one, _ in pairs):
        return False
    return len(pairs) * _STRANGER < min(len(expected), len(found))


def _open_ends(drawing: DxfFile, fit: Fit, uncut: Uncut) -> tuple[tuple[str, Point], ...]:
    ends = []
    for each in drawing.tracks:
        if is_cut(each.layer):
            track = placed_track(each.track, fit.back)
            if is_ours(each.layer) or not uncut.is_line(track.segments):
                ends.append((each.layer, track.vertices[0].point))
    return tuple(ends)


def _lettering(drawing: DxfFile, fit: Fit, uncut: Uncut, tolerance: float) -> Lettering:
    """The file's strokes, past how the whole of it lies, held against the plan's."""
    written = [stroke for stroke in fit.held.plan.strokes if stroke.feature]
    expected = [stroke for stroke in written if stroke.layer is Layer.ENGRAVE]
    standing = [stroke for stroke in written if stroke.layer is not Layer.ENGRAVE]
    chains = (*_engraved(drawing, fit.back), *lettering_on_foreign_layers(drawing, fit.back, uncut))
    return compared_lettering(expected, standing, chains, tolerance)


def _engraved(drawing: DxfFile, back: Placement) -> Iterator[tuple[Segment, ...]]:
    """Everything on the engraving layer, in the plate's axes."""
    for each in drawing.tracks:
        if each.layer.upper() == Layer.ENGRAVE:
            yield placed_track(each.track, back).segments
    for ring in drawing.contours:
        if ring.layer.upper() == Layer.ENGRAVE:
            yield back.contour(ring.contour).segments
