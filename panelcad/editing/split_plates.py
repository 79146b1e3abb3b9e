"""One plate made two along a line, and two made one."""

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from panelcad.editing.fixed import refuse_kept
from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.made import Made
from panelcad.editing.marks import marks_without
from panelcad.editing.outline import as_outline
from panelcad.editing.parts import AROUND, with_parts
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.geometry.contour import Contour
from panelcad.geometry.crossing import nearest
from panelcad.geometry.point import Point, middle
from panelcad.geometry.segment import Line
from panelcad.geometry.split import joined, split
from panelcad.model.layout import Feature, FeatureKind, PlateLayout, layout
from panelcad.model.markup import Dimension, DrawingNote
from panelcad.model.plate import Plate
from panelcad.model.project import Item, Option, Project


@edit
def split_plate(project: Project, option_id: str, plate_id: str, start: Point, end: Point) -> Made:
    """The plate made two along the line through two points; what is on it goes to its side of the line.

    The part to the left of the line keeps the id and what stands around it. The id made is the new plate's. Raises
    `EditRefused` where the line meets a cut, a bend or a kept plate, or does not cross the outline exactly twice.
    """
    option = project.option(option_id)
    plate = option.plate(plate_id)
    refuse_kept(option, plate)
    try:
        halves = split(plate.outline.contour(), start, end)
    except ValueError as error:
        raise EditRefused(f"{str(error).capitalize()}.") from error
    _refuse_met(layout(project, option).plate(plate_id), halves.seam)
    side = _Side(start, end)
    new_id = fresh_id(plate.id, ids_in(project, option))
    left = plate.revised(outline=as_outline(halves.left), **side.parts(plate, left=True))
    right = plate.revised(
        id=new_id,
        name=fresh_name(plate.name, {other.name for other in option.plates}),
        outline=as_outline(halves.right),
        **side.parts(plate, left=False),
    )
    return Made(project.with_option(_with_halves(option, left, right, side)), (new_id,))


@edit
def join_plates(project: Project, option_id: str, first_id: str, second_id: str) -> Made:
    """Two plates of one plane, thickness and alloy made one, which keeps the first one's name.

    It keeps the id that more of the options know, so that what stands around that plate stands around it still; what is
    given on the other one is given on it from then on. A dimension that holds on to the other one's edge is left out.
    The id made is the whole plate's. Raises `EditRefused` where the two differ, are kept, or do not lie against each
    other along one stretch.
    """
    option = project.option(option_id)
    first, second = option.plate(first_id), option.plate(second_id)
    _refuse_different(option, first, second)
    try:
        outline = as_outline(joined(first.outline.contour(), second.outline.contour()))
    except ValueError as error:
        raise EditRefused(f"{str(error).capitalize()}.") from error
    kept, gone = sorted((first_id, second_id), key=lambda plate_id: -_options_with(project, plate_id))
    lists = ("inner_openings", "bends", "attach_screws", "cuts", "engravings")
    both = {name: (*getattr(first, name), *getattr(second, name)) for name in lists}
    whole = first.revised(id=kept, outline=outline, **both)
    plates = tuple(whole if plate.id == first_id else plate for plate in option.plates if plate.id != second_id)
    parts = {"items": option.items, **marks_without(option, frozenset({gone}))}
    for name in ("items", "dimensions", "drawing_notes"):
        parts[name] = _on_plate(parts[name], gone, kept)
    joint = project.with_option(option.revised(plates=_lying_over(plates, gone, kept), **parts))
    around = with_parts(joint.surroundings, AROUND, lambda things: _on_plate(things, gone, kept))
    return Made(joint if around is joint.surroundings else joint.revised(surroundings=around), (kept,))


def _options_with(project: Project, plate_id: str) -> int:
    return sum(any(plate.id == plate_id for plate in option.plates) for option in project.all_options)


def _on_plate(things: tuple[Any, ...], gone: str, kept: str) -> tuple[Any, ...]:
    """What was on the plate that is gone is on the one that is kept; the two have one frame."""
    if all(thing.plate != gone for thing in things):
        return things
    return tuple(thing.revised(plate=kept) if thing.plate == gone else thing for thing in things)


def _lying_over(plates: tuple[Plate, ...], gone: str, kept: str) -> tuple[Plate, ...]:
    return tuple(plate.revised(over=kept) if plate.over == gone else plate for plate in plates)


class _Side(NamedTuple):
    """The line that parts left from right."""

    start: Point
    end: Point

    def is_left(self, x: float, y: float) -> bool:
        across = (self.end.x - self.start.x) * (y - self.start.y) - (self.end.y - self.start.y) * (x - self.start.x)
        return across >= 0

    def parts(self, plate: Plate, *, left: bool) -> dict[str, Any]:
        """What of the plate lies on that side, by collection."""
        lists = ("inner_openings", "attach_screws", "cuts", "engravings")
        kept = {
            name: tuple(part for part in getattr(plate, name) if self.is_left(part.x, part.y) is left) for name in lists
        }
        bends = tuple(
            bend
            for bend in plate.bends
            if self.is_left(*middle(Point(bend.x1, bend.y1), Point(bend.x2, bend.y2))) is left
        )
        return {**kept, "bends": bends}


def _with_halves(option: Option, left: Plate, right: Plate, side: _Side) -> Option:
    plates = tuple(half for plate in option.plates for half in ((left, right) if plate.id == left.id else (plate,)))
    right_cuts = {cut.id for cut in right.cuts}

    def is_right(item: Item) -> bool:
        return item.cut in right_cuts if item.cut is not None else not side.is_left(item.x, item.y)

    items = tuple(
        item.revised(plate=right.id) if item.plate == left.id and is_right(item) else item for item in option.items
    )
    home = {item.id: item.plate for item in items} | {left.id: left.id, right.id: right.id}
    for half in (left, right):
        home |= {part.id: half.id for parts in (half.cuts, half.attach_screws, half.engravings) for part in parts}
    marks: dict[str, Any] = {}
    for kind in ("dimensions", "drawing_notes"):
        marks[kind] = tuple(_marks_at_home(getattr(option, kind), home, left.id))
    return option.revised(plates=plates, items=items, **marks)


def _marks_at_home(
    marks: tuple[Dimension | DrawingNote, ...], home: dict[str, str | None], split_id: str
) -> Iterator[Dimension | DrawingNote]:
    """A mark goes with what it holds on to; one that would span both plates is left out."""
    for mark in marks:
        plates = {home.get(part, mark.plate) for part in mark.parts}
        if mark.plate != split_id or not plates:
            yield mark
        elif len(plates) == 1:
            yield mark.revised(plate=plates.pop())


def _refuse_met(plate: PlateLayout, seam: Line) -> None:
    names = {cut.cut.id: f"'{cut.cut.name}'" for cut in plate.cuts}
    met = [_name(feature, names) for feature in plate.features if _meets(feature.contour, seam)]
    if met:
        raise EditRefused(f"The line runs through {', '.join(dict.fromkeys(met))}; it may not run through a cut.")
    for bend in plate.plate.bends:
        if nearest(Line(Point(bend.x1, bend.y1), Point(bend.x2, bend.y2)), seam).distance == 0.0:
            raise EditRefused("The line crosses a bend.")


def _name(feature: Feature, cut_names: Mapping[str, str]) -> str:
    if feature.kind is FeatureKind.ATTACH:
        return "an attach screw"
    return cut_names.get(feature.owner, f"the opening for {feature.purpose}")


def _meets(contour: Contour, seam: Line) -> bool:
    return any(nearest(segment, seam).distance == 0.0 for segment in contour.segments)


def _refuse_different(option: Option, first: Plate, second: Plate) -> None:
    if first.id == second.id:
        raise EditRefused("Two different plates are needed to join.")
    for plate in (first, second):
        refuse_kept(option, plate)
    for what in ("frame", "thickness", "alloy", "role", "over", "sway"):
        if getattr(first, what) != getattr(second, what):
            raise EditRefused(f"'{first.name}' and '{second.name}' differ in their {what} and cannot be one plate.")
