"""The numbers of cuts, attach screws and openings on the front view: those of the hole schedule and every list."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.display import Across, Along, Face, Group, Measured, Text
from panelcad.drawing.layers import Layer
from panelcad.drawing.numbering import numbering
from panelcad.drawing.style import ViewStyle
from panelcad.geometry.point import Point
from panelcad.model.kept import kept
from panelcad.model.layout import Layout

_HEIGHT_PX: Final = 8.0


def number_view(layout: Layout, plate_id: str, style: ViewStyle) -> tuple[Group, ...]:
    """One group without an owner: each number at the middle of its opening, or of its hole where that is all there is.

    Numbers keep their size on the screen.
    """
    sources = (layout.option, layout.project.cutouts, plate_id, style)
    return kept("numbers", sources, lambda: _drawn(layout, plate_id, style))


def _drawn(layout: Layout, plate_id: str, style: ViewStyle) -> tuple[Group, ...]:
    texts = tuple(
        Text(
            number,
            at,
            _HEIGHT_PX,
            style.palette.ink,
            Along.CENTRE,
            Across.MIDDLE,
            face=Face.BOLD,
            measured=Measured.PIXELS,
            rim=style.palette.background,
        )
        for number, at in _numbers(layout, plate_id)
    )
    return (Group(texts, layer=Layer.NUMBERS, title="Numbers"),) if texts else ()


def _numbers(layout: Layout, plate_id: str) -> Iterator[tuple[str, Point]]:
    numbers, plate = numbering(layout), layout.plate(plate_id)
    for cut in plate.cuts:
        first = cut.openings[0] if cut.openings else cut.features[0]
        yield numbers.cuts[cut.cut.id], first.centre
    for feature in (*plate.attach, *plate.inner):
        yield numbers.features[feature.id], feature.centre
