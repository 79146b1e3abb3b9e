"""Panels of any number of cutouts, on which speed is measured. Round instruments, displays and switches by turns."""

import math

from panelcad.model.cutout import BodyKind
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Rectangle
from tests.builders import opening, project, round_cutout, sheet
from tests.checks.made import bezel, body, fitted, four_screws, holes, instrument, screw_form

PITCH = 110.0


def panel_of(count: int) -> Project:
    """`count` fitted cutouts in rows on one sheet, about as near to each other as on a real panel."""
    columns = math.ceil(math.sqrt(count))
    side = (columns + 2) * PITCH
    pairs = [
        fitted(f"i{i}", (i % columns - columns / 2) * PITCH, (i // columns - columns / 2) * PITCH, _KINDS[i % 3].name)
        for i in range(count)
    ]
    made = sheet(2 * side, 2 * side, cuts=tuple(cut for cut, _ in pairs))
    return project(made, items=tuple(item for _, item in pairs), cutouts=_KINDS)


_PLUG = body(BodyKind.CONNECTOR, Circle(diameter=30), near=100.0, far=130.0)
_CORNERS = ((-38, -38), (38, -38), (38, 38), (-38, 38))
_KINDS = (
    instrument(holes=(four_screws(screw_form(head=7.0)),), bodies=(body(), _PLUG), own_web=2.6),
    round_cutout(
        name="display",
        openings=(opening(Rectangle(width=85, height=64, corner_radius=3)),),
        holes=(holes(*_CORNERS, form=screw_form(head=7.0)),),
        bezel=bezel(96, 96),
        bodies=(body(shape=Rectangle(width=84, height=63, corner_radius=3)),),
    ),
    round_cutout(
        12.0,
        name="toggle",
        mounting="bushing and nut",
        bodies=(
            body(shape=Rectangle(width=18, height=30), far=30.0),
            body(BodyKind.LEVER, Circle(diameter=6), far=20.0),
        ),
        bezel=bezel(15, 15, 2.0),
    ),
)
