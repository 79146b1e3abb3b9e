"""Small panels to edit."""

from panelcad.model.cutout import Bezel
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from tests import builders


def one_instrument(**cut_fields: object) -> Project:
    plate = builders.sheet(cuts=(builders.cut("hole", 10.0, 20.0, **cut_fields),))
    return builders.project(plate, items=(builders.item("gauge", 10.0, 20.0, cut="hole"),))


def stack() -> Project:
    plate = builders.sheet(cuts=(builders.cut("bay", 0.0, 0.0),))
    items = (builders.item("upper", 0.0, 20.0, cut="bay"), builders.item("lower", 0.0, -20.0, cut="bay"))
    return builders.project(plate, items=items)


def where(project: Project) -> dict[str, tuple[float, float]]:
    option = project.option("new")
    return {thing.id: (thing.x, thing.y) for thing in (*option.items, *(c for p in option.plates for c in p.cuts))}


def row(*across: float, width: float = 40.0) -> Project:
    """Square items without cuts, named a, b, c, ... at these x, each `width` wide."""
    bezel = Bezel(shape=Rectangle(width=width, height=width), source=builders.SOURCE)
    cutout = builders.round_cutout(name="square", openings=(), bezel=bezel)
    items = tuple(builders.item(name, x, 0.0, cutout="square") for name, x in zip("abcdefgh", across, strict=False))
    return builders.project(items=items, cutouts=(cutout,))
