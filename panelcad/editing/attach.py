"""Attach screws along an edge of the plate, evenly spread at a pitch."""

import math
from dataclasses import dataclass

from panelcad.editing.fixed import refuse_kept
from panelcad.editing.ids import fresh_id, ids_in
from panelcad.editing.made import Made
from panelcad.editing.outline import edges, outline_of
from panelcad.editing.place import with_plate
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.geometry.curve import aside
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Segment
from panelcad.model.hole import HoleForm
from panelcad.model.plate import AttachScrew, Backing, Plate
from panelcad.model.project import Project
from panelcad.model.shape import Shape


@dataclass(frozen=True)
class Spread:
    """Screws `inset` mm inside the edge, the first and last `ends` mm from its corners, at most `pitch` mm apart."""

    inset: float
    ends: float
    pitch: float


def places_along(outline: Shape, edge: int, spread: Spread) -> tuple[Point, ...]:
    """Where the screws go; edges are numbered as in `panelcad.editing.outline`.

    Distances along an arc are measured where the screws are. Raises `EditRefused` where nothing fits.
    """
    if spread.pitch <= 0 or spread.inset <= 0 or spread.ends < 0:
        raise EditRefused("A pitch and an inset larger than 0 are expected.")
    try:
        line = aside(edges(outline_of(outline))[edge], spread.inset)
    except ValueError as error:
        raise EditRefused("The edge is bowed too tightly for that inset.") from error
    free = line.length - 2 * spread.ends
    if free < 0:
        raise EditRefused("The edge is shorter than the distances from its corners.")
    steps = math.ceil(free / spread.pitch - 1e-9)
    shares = [0.5] if steps == 0 else [(spread.ends + free * i / steps) / line.length for i in range(steps + 1)]
    return tuple(line.at(share) for share in shares)


def screws_along(plate: Plate, edge: int, spread: Spread) -> tuple[str, ...]:
    """The ids of the attach screws that are nearer to this edge than to any other that has room for such a spread."""
    segments = edges(outline_of(plate.outline))
    roomy = [i for i in range(len(segments)) if i == edge or _has_room(segments[i], spread)]

    def nearest_edge(screw: AttachScrew) -> int:
        at = Point(screw.x, screw.y)
        return min(roomy, key=lambda i: distance(segments[i].nearest(at), at))

    return tuple(screw.id for screw in plate.attach_screws if nearest_edge(screw) == edge)


@edit
def attach_along(  # noqa: PLR0913, PLR0917 - what, and where on which plate
    project: Project,
    option_id: str,
    plate_id: str,
    edge: int,
    spread: Spread,
    form: HoleForm,
    backing: Backing | None = None,
) -> Made:
    """Attach screws along an edge; places that already hold a screw are left out. The ids made are the screws'.

    Raises `EditRefused` for a kept plate or an edge that takes none, `UnknownName`.
    """
    option = project.option(option_id)
    plate = option.plate(plate_id)
    refuse_kept(option, plate)
    taken, screws = set(ids_in(project, option)), list(plate.attach_screws)
    made: list[str] = []
    for spot in places_along(plate.outline, edge, spread):
        if any(distance(Point(screw.x, screw.y), spot) < form.diameter for screw in screws):
            continue
        made.append(fresh_id("attach-1", taken))
        taken.add(made[-1])
        screws.append(AttachScrew(id=made[-1], x=spot.x, y=spot.y, form=form, backing=backing))
    plate = plate.revised(attach_screws=tuple(screws))
    return Made(project.with_option(with_plate(option, plate)), tuple(made))


@edit
def attach_all_round(  # noqa: PLR0913, PLR0917 - as `attach_along`
    project: Project,
    option_id: str,
    plate_id: str,
    spread: Spread,
    form: HoleForm,
    backing: Backing | None = None,
) -> Made:
    """Attach screws along every edge that has room for one; rounded corners and short steps are left out.

    Raises `EditRefused` for a kept plate or one with no edge long enough, `UnknownName`.
    """
    outline = project.option(option_id).plate(plate_id).outline
    segments = edges(outline_of(outline))
    long_enough = [edge for edge, segment in enumerate(segments) if _has_room(segment, spread)]
    if not long_enough:
        raise EditRefused("No edge is long enough for a screw at these distances.")
    made: list[str] = []
    for edge in long_enough:
        drilled = attach_along(project, option_id, plate_id, edge, spread, form, backing)
        project = drilled.project
        made.extend(drilled.ids)
    return Made(project, tuple(made))


def _has_room(edge: Segment, spread: Spread) -> bool:
    """Reckoned where the screws go: inside an arc there is less of it."""
    try:
        return aside(edge, spread.inset).length >= 2 * spread.ends
    except ValueError:
        return False
