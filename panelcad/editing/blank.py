"""A project to start from: an empty sheet as found and one option that is a copy of it."""

from typing import Final

from panelcad.geometry.contour import rectangle
from panelcad.geometry.point import Point
from panelcad.model.plate import Plate, PlateState
from panelcad.model.profile import Profile
from panelcad.model.project import AS_FOUND, NOT_ENTERED, Aircraft, Option, Project
from panelcad.model.shape import Corner, Outline
from panelcad.units import LengthUnit

_SHEETS: Final = {
    LengthUnit.INCH: (36 * 25.4, 10 * 25.4, 0.090 * 25.4, 0.5 * 25.4),
    LengthUnit.MM: (900.0, 250.0, 2.0, 12.0),
}
"""Width, height, thickness and corner radius of a first sheet in mm; the user changes them (common practice)."""
_TOLERANCES: Final = {LengthUnit.INCH: 0.127, LengthUnit.MM: 0.1}
"""Tolerance of a cut in mm, a round number in either unit (shop setting)."""


def blank_project(unit: LengthUnit, title: str = "New panel") -> Project:
    """A project with one rectangular sheet, its datum in the middle of the lower edge."""
    return Project(
        title=title,
        unit=unit,
        profile=Profile(sheet_tolerance=_TOLERANCES[unit]),
        aircraft=Aircraft(
            registration=NOT_ENTERED, type_name=NOT_ENTERED, datum="middle of the panel's lower edge, front face"
        ),
        as_found=Option(id=AS_FOUND, name="As found", plates=(_sheet(unit, PlateState.KEPT),)),
        options=(Option(id="option-1", name="Option 1", plates=(_sheet(unit, PlateState.NEW),)),),
    )


def _sheet(unit: LengthUnit, state: PlateState) -> Plate:
    width, height, thickness, radius = _SHEETS[unit]
    return Plate(
        id="panel",
        name="Panel",
        state=state,
        outline=_standing_on_the_datum(width, height, radius),
        thickness=thickness,
        alloy="2024-T3",
    )


def _standing_on_the_datum(width: float, height: float, radius: float) -> Outline:
    contour = rectangle(Point(0.0, height / 2), width, height, radius)
    return Outline(corners=tuple(Corner(x=v.x, y=v.y, bulge=v.bulge) for v in contour.chain.vertices))
