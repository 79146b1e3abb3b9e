"""The opening of a stack of rack units.

It is as wide as the rails need and as high as the units, an allowance for each joint (trays measure taller than drawn)
and the clearance of the whole, both from the project's profile. Its upper edge stays where it is.
"""

from typing import Final

from panelcad.editing.fixed import is_made, refuse_kept
from panelcad.errors import EditRefused
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.cutout import Opening, RackUnit
from panelcad.model.plate import Cut, CutState, Plate
from panelcad.model.profile import Profile
from panelcad.model.project import Option, Project
from panelcad.model.shape import Rectangle
from panelcad.model.source import Source, Standing

CORNER_RADIUS: Final = 1.5875
"""1/16 in leaves a square tray free: a shop setting."""
_SAME: Final = 1e-6
_SOURCE: Final = Source(
    standing=Standing.SHOP_SETTING,
    text="the units' rail distance and heights with the profile's allowances for joints and clearance",
)


def needed(racks: list[RackUnit], profile: Profile) -> tuple[float, float]:
    """Width and height of the opening in mm."""
    units = sum(rack.height for rack in racks)
    joints = max(0, len(racks) - 1) * profile.stack_joint
    return max(rack.rail_distance for rack in racks), units + joints + profile.stack_clearance


def rack_opening(width: float, height: float) -> Opening:
    shape = Rectangle(width=width, height=height, corner_radius=min(CORNER_RADIUS, width / 2, height / 2))
    return Opening(shape=shape, purpose="rack opening", source=_SOURCE)


def resized(project: Project, option: Option, plate: Plate, cut: Cut, racks: list[RackUnit]) -> Cut:
    """The opening that fits, its upper edge where it was; metal that is already cut only ever gives way further."""
    width, height = needed(racks, project.profile)
    old, state = _rectangle(project, cut), cut.state
    if is_made(option, plate, cut):
        width, height, state = max(width, old.width), max(height, old.height), CutState.ENLARGED
    if abs(width - old.width) < _SAME and abs(height - old.height) < _SAME:
        return cut
    refuse_kept(option, plate)
    middle = Placement(cut.x, cut.y, cut.rotation, cut.mirrored).point(Point(0.0, (old.height - height) / 2))
    opening = rack_opening(width, height)
    return cut.revised(x=middle.x, y=middle.y, state=state, cutout=None, openings=(opening,), holes=())


def spots_from_above(project: Project, cut: Cut, racks: list[RackUnit]) -> list[Point]:
    """Each unit's centre on the plate, from above; the clearance is shared by both ends."""
    at = Placement(cut.x, cut.y, cut.rotation)
    edge = _rectangle(project, cut).height / 2 - project.profile.stack_clearance / 2
    spots: list[Point] = []
    for rack in racks:
        spots.append(at.point(Point(0.0, edge - rack.height / 2)))
        edge -= rack.height + project.profile.stack_joint
    return spots


def rectangle_of(project: Project, cut: Cut) -> Rectangle | None:
    """The rectangle that the cut's one opening is, about the cut's own origin; None where it is something else."""
    openings = project.cutout(cut.cutout).openings if cut.cutout else cut.openings
    if len(openings) != 1 or (openings[0].x, openings[0].y, openings[0].rotation) != (0.0, 0.0, 0.0):
        return None
    shape = openings[0].shape
    return shape if isinstance(shape, Rectangle) else None


def _rectangle(project: Project, cut: Cut) -> Rectangle:
    shape = rectangle_of(project, cut)
    if shape is None:
        raise EditRefused(f"'{cut.name}' is no single rectangular opening, so units cannot be stacked in it.")
    return shape
