"""How much of a panel an option uses, and what could still be added; lengths in mm, areas in mm²."""

from collections.abc import Iterator
from dataclasses import dataclass

import shapely

from panelcad.checks.depth import shallowest
from panelcad.checks.report import CheckReport
from panelcad.checks.run import check
from panelcad.editing.stack_opening import needed
from panelcad.geometry.placement import Placement
from panelcad.geometry.polygon import Side, polygon
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import PlacedCut, PlateLayout, layout
from panelcad.model.surroundings import DepthLimit
from panelcad.planning.equipment import Equipment
from panelcad.planning.report import finding
from panelcad.planning.room import Room, rooms


@dataclass(frozen=True)
class StackSpace:
    """A stack of rack units: the height of its opening and how much of it the units and their joints leave."""

    cut: str
    name: str
    height: float
    left: float


@dataclass(frozen=True)
class PlateSpace:
    """One plate: its area, what bezels and cuts cover of it, the share of its width free of them at some height."""

    plate: str
    name: str
    area: float
    covered: float
    free_width_share: float
    deepest: float
    depth_left: float | None
    """From the bodies that stand before a depth limit to it; None where none does, or there is no limit."""
    has_depth_limit: bool
    stacks: tuple[StackSpace, ...]

    @property
    def covered_share(self) -> float:
        return self.covered / self.area


@dataclass(frozen=True)
class Space:
    """The panel of an option. `fits` is None where a check could not judge."""

    plates: tuple[PlateSpace, ...]
    faces_before: int
    faces: int
    not_placed: tuple[str, ...]
    errors: int
    is_judged: bool
    rooms: tuple[Room, ...]

    @property
    def fits(self) -> bool | None:
        """Whether nothing is in the way and everything has its place; None where a rule could not judge."""
        if self.errors or self.not_placed:
            return False
        return True if self.is_judged else None


def space(equipment: Equipment, report: CheckReport | None = None) -> Space:
    """The panel space of an option; `report` saves checking it again."""
    project, option = equipment.project, equipment.option
    judged = report or check(project, option)
    laid = layout(project, option)
    return Space(
        plates=tuple(_plate_space(plate, equipment) for plate in laid.plates),
        faces_before=_faces(layout(project, project.as_found).plates),
        faces=_faces(laid.plates),
        not_placed=tuple(item.id for item in option.items if item.cutout is not None and item.plate is None),
        errors=judged.count(Severity.ERROR),
        is_judged=not judged.not_judged,
        rooms=rooms(laid),
    )


def _faces(plates: tuple[PlateLayout, ...]) -> int:
    """How many units of equipment show a face; where none is listed as a unit, how many items do something."""
    return sum(1 for plate in plates for placed in plate.items if placed.shows or placed.unit is not None)


def _plate_space(plate: PlateLayout, equipment: Equipment) -> PlateSpace:
    sheet = polygon(plate.outline)
    covered = shapely.intersection(sheet, _covered(plate))
    limits = [limit for limit in equipment.project.surroundings.depth_limits if limit.plate == plate.plate.id]
    return PlateSpace(
        plate=plate.plate.id,
        name=plate.plate.name,
        area=float(sheet.area),
        covered=float(covered.area),
        free_width_share=_free_width_share(sheet, covered),
        deepest=max((body.far for placed in plate.items for body in placed.behind), default=0.0),
        depth_left=min(_depths_left(plate, limits), default=None),
        has_depth_limit=bool(limits),
        stacks=tuple(_stacks(plate, equipment)),
    )


def _depths_left(plate: PlateLayout, limits: list[DepthLimit]) -> Iterator[float]:
    """What is left behind each body to each limit, where the one stands before the other."""
    for limit in limits:
        footprint = Placement(limit.x, limit.y, limit.rotation).contour(limit.shape.contour())
        for body in (body for placed in plate.items for body in placed.behind):
            at = shallowest(body.footprint, footprint, limit)
            if at is not None:
                yield limit.depth_at(*at) - body.far


def _covered(plate: PlateLayout) -> shapely.geometry.base.BaseGeometry:
    """What faces, cuts, screws and inner openings cover."""
    contours = [feature.contour for feature in plate.features]
    contours += [placed.face for placed in plate.items]
    return shapely.union_all([polygon(contour, Side.CIRCUMSCRIBED) for contour in contours])


def _free_width_share(sheet: shapely.geometry.base.BaseGeometry, covered: shapely.geometry.base.BaseGeometry) -> float:
    """The share of the plate's width over which nothing stands at any height."""
    left, _, right, _ = sheet.bounds
    spans = sorted((part.bounds[0], part.bounds[2]) for part in shapely.get_parts(covered))
    taken, reach = 0.0, left
    for start, end in spans:
        taken += max(0.0, end - max(start, reach))
        reach = max(reach, end)
    return float(1.0 - taken / (right - left))


def _stacks(plate: PlateLayout, equipment: Equipment) -> Iterator[StackSpace]:
    for cut in plate.cuts:
        racks = [p.cutout.rack for p in plate.items if p.item.cut == cut.cut.id and p.cutout.rack]
        if racks:
            height = _opening_height(cut)
            _, used = needed(racks, equipment.project.profile)
            yield StackSpace(cut.cut.id, cut.cut.name, height, height - used)


def _opening_height(cut: PlacedCut) -> float:
    _, low, _, high = cut.openings[0].contour.bounds
    return high - low


def judge_space(equipment: Equipment, report: CheckReport) -> Iterator[Finding]:
    """What is not placed yet, every error of the panel's checks, and each panel rule that could not judge."""
    waiting = tuple(item.id for item in equipment.option.items if item.cutout is not None and item.plate is None)
    if waiting:
        yield finding("not-placed", Severity.WARNING, waiting, "Not placed on the panel yet", "the option itself")
    yield from (found for found in report.findings if found.severity is Severity.ERROR)
    for broken in report.not_judged:
        words = f"The panel rule '{broken.rule}' could not judge"
        source, rule = "the checks of the panel", (broken.rule,)
        yield finding("panel-not-judged", Severity.ERROR, (), words, source, features=rule, acceptable=False)
