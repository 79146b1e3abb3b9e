"""The views the canvas can show, in one table; another view is one more line."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from panelcad.desktop.theme import Theme
from panelcad.drawing.display import Group, Path
from panelcad.drawing.layers import Layer
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.layout import Layout, PlateLayout

if TYPE_CHECKING:
    from panelcad.drawing.views.names import Sight

Draw = Callable[[Layout, str, Theme], tuple[Group, ...]]
Place = Callable[[Layout, str, Point], Point]
Names = Callable[[Layout, str, Theme, "Sight"], tuple[Group, ...]]


_AS_IT_IS: Final = Placement()
_MIRRORED: Final = Placement(mirrored=True)


@dataclass(frozen=True)
class ViewKind:
    """How one view is drawn, and how a place of the plate comes to a place of the picture."""

    id: str
    title: str
    shortcut: str
    hint: str
    draw: Draw
    to_picture: Placement = _AS_IT_IS
    place: Place | None = None
    """Where a place of a plate is on the picture, for a view that no placement leads to."""
    names: Names | None = None
    """The names on it as it is looked at; some views have none."""
    moves_things: bool = True
    """Whether things can be dragged and put down in it."""
    shows_findings: bool = True
    """Whether signs of findings stand on it; what an owner looks at is clean."""
    keeps_pixmaps: bool = False
    """Whether each thing is painted once for a zoom and copied from then on: for pictures of many small shapes."""

    @property
    def is_mirrored(self) -> bool:
        return self.to_picture.mirrored


def _front(layout: Layout, plate_id: str, theme: Theme) -> tuple[Group, ...]:
    from panelcad.drawing.views.front import front_view  # noqa: PLC0415 - a view loads when it is first looked at
    from panelcad.drawing.views.keep_outs import keep_out_view  # noqa: PLC0415
    from panelcad.drawing.views.markup import markup_view  # noqa: PLC0415
    from panelcad.drawing.views.numbers import number_view  # noqa: PLC0415
    from panelcad.drawing.views.placards import placard_view  # noqa: PLC0415

    style = theme.view
    front = front_view(layout, plate_id, style)
    over = (placard_view, keep_out_view, markup_view, number_view)
    return (
        *_openings(layout.plate(plate_id)),
        *front,
        *(group for view in over for group in view(layout, plate_id, style)),
    )


def _behind(layout: Layout, plate_id: str, theme: Theme) -> tuple[Group, ...]:
    from panelcad.drawing.views.behind import behind_view, mirrored_plate  # noqa: PLC0415

    return (*_openings(mirrored_plate(layout.plate(plate_id))), *behind_view(layout, plate_id, theme.view))


def _openings(plate: PlateLayout) -> tuple[Group, ...]:
    """The sheet's own openings, to be pointed at; the sheet shows them."""
    return tuple(Group((Path((each.contour,)),), each.id, Layer.METAL, title=each.purpose) for each in plate.inner)


def _front_names(layout: Layout, plate_id: str, theme: Theme, sight: "Sight") -> tuple[Group, ...]:
    from panelcad.drawing.views.names import front_names  # noqa: PLC0415

    return front_names(layout, plate_id, theme.view, sight)


def _behind_names(layout: Layout, plate_id: str, theme: Theme, sight: "Sight") -> tuple[Group, ...]:
    from panelcad.drawing.views.names import behind_names  # noqa: PLC0415

    return behind_names(layout, plate_id, theme.view, sight)


def _as_it_will_look(light: str) -> Draw:
    def draw(layout: Layout, plate_id: str, theme: Theme) -> tuple[Group, ...]:  # noqa: ARG001 - it looks so in any theme
        from panelcad.drawing.appearance import Look, appearance_view  # noqa: PLC0415
        from panelcad.drawing.appearance_light import LIGHTS  # noqa: PLC0415

        return appearance_view(layout, plate_id, Look(lighting=LIGHTS[light]))

    return draw


def _appearance(light: str, title: str, shortcut: str, hint: str) -> ViewKind:
    return ViewKind(
        f"look-{light}", title, shortcut, hint, _as_it_will_look(light), shows_findings=False, keeps_pixmaps=True
    )


def _pilot(view_id: str, title: str, shortcut: str, hint: str, whose: int = 0) -> ViewKind:
    """The panel, every plate of it, as one of `eye_heights` sees it."""

    def draw(layout: Layout, plate_id: str, theme: Theme) -> tuple[Group, ...]:  # noqa: ARG001 - it shows every plate
        from panelcad.checks.pilot_hidden import eye_heights  # noqa: PLC0415
        from panelcad.drawing.views.pilot import pilot_view  # noqa: PLC0415

        return pilot_view(layout, theme.view, eye_heights(layout.project.profile)[whose])

    def place(layout: Layout, plate_id: str, at: Point) -> Point:
        from panelcad.checks.pilot_hidden import eye_heights  # noqa: PLC0415
        from panelcad.drawing.views.pilot import seen_at  # noqa: PLC0415

        return seen_at(layout, plate_id, at, eye_heights(layout.project.profile)[whose])

    return ViewKind(view_id, title, shortcut, hint, draw, place=place, moves_things=False)


SHOWS_SECTION: Final = frozenset({"front", "behind"})
"""Ids of the views that show where the section runs."""
VIEWS: Final = (
    ViewKind("front", "Front", "F5", "The metal and its cuts, as the pilot sees it", _front, names=_front_names),
    ViewKind(
        "behind",
        "Behind",
        "F7",
        "Mirrored, as the mechanic sees it, with cases and obstacles",
        _behind,
        _MIRRORED,
        names=_behind_names,
    ),
    _pilot(
        "pilot",
        "Pilot's eye",
        "F9",
        "In true perspective from the pilot's eye, with fields of view, hidden parts and reach",
    ),
    _pilot("pilot-shorter", "Pilot's eye, shorter", "Shift+F9", "The same from a shorter pilot's eye", 1),
    _pilot("pilot-taller", "Pilot's eye, taller", "Ctrl+F9", "The same from a taller pilot's eye", 2),
    _appearance("day", "Appearance, day", "F8", "As the owner will see it, with instruments that show one flight"),
    _appearance("dusk", "Appearance, dusk", "Shift+F8", "The same at dusk, legends and screens lit"),
    _appearance("night", "Appearance, night", "Ctrl+F8", "The same at night under white flood lights"),
    _appearance("night-red", "Appearance, night, red light", "Ctrl+Shift+F8", "The same under red flood lights"),
)


def view_kind(view_id: str) -> ViewKind:
    """The view of this id, the front view where there is none."""
    return next((view for view in VIEWS if view.id == view_id), VIEWS[0])
