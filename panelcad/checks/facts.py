"""What the drawing tells of each sheet without judging it: its mass before and after, and its weakest lines."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.checks.gone import gone_features
from panelcad.checks.net_section import Section, weakest_line
from panelcad.geometry.across import Across
from panelcad.model.alloy import density
from panelcad.model.layout import Layout, PlateLayout, layout
from panelcad.model.plate import Plate


@dataclass(frozen=True)
class SheetFacts:
    """Masses in kg, None where the alloy's density is not known; `as_found` also where the plate was not there."""

    plate: str
    uncut: float | None
    as_found: float | None
    cut: float | None
    weakest: tuple[Section, ...]
    """The weakest vertical and the weakest horizontal line; none on a plate without cuts."""


def sheet_facts(laid: Layout) -> tuple[SheetFacts, ...]:
    """The facts of each plate of an option."""
    before = {plate.plate.id: plate for plate in layout(laid.project, laid.project.as_found).plates}
    return tuple(_facts(plate, before.get(plate.plate.id)) for plate in laid.plates)


def sheet_mass(area: float, thickness: float, kg_per_mm3: float) -> float:
    """Kilograms of a sheet of this area in mm² and thickness in mm."""
    return area * thickness * kg_per_mm3


def metal_area(plate: PlateLayout) -> float:
    """Area in mm² of the sheet less all that is cut out of it; old cuts that lie in new ones count once."""
    gone = set().union(*gone_features(plate).values())
    return plate.outline.area - sum(f.contour.area for f in plate.features if f.id not in gone)


def _facts(plate: PlateLayout, before: PlateLayout | None) -> SheetFacts:
    return SheetFacts(
        plate=plate.plate.id,
        uncut=_mass(plate.plate, plate.outline.area),
        as_found=None if before is None else _mass(before.plate, metal_area(before)),
        cut=_mass(plate.plate, metal_area(plate)),
        weakest=tuple(_weakest(plate)),
    )


def _mass(plate: Plate, area: float) -> float | None:
    kg_per_mm3 = density(plate.alloy)
    return None if kg_per_mm3 is None else sheet_mass(area, plate.thickness, kg_per_mm3)


def _weakest(plate: PlateLayout) -> Iterator[Section]:
    for across in Across:
        found = weakest_line(plate, across)
        if found is not None:
            yield found
