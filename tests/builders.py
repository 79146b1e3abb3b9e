"""Small projects and records for tests, made in one line each."""

from panelcad.model.cutout import Cutout, Mounting, Opening
from panelcad.model.plate import Cut, Plate
from panelcad.model.project import AS_FOUND, Aircraft, Item, Option, Project
from panelcad.model.shape import Circle, Rectangle, Shape
from panelcad.model.source import Source, Standing
from panelcad.units import LengthUnit

SOURCE = Source(standing=Standing.DEMO, text="a test")


def opening(shape: Shape, x: float = 0.0, y: float = 0.0) -> Opening:
    return Opening(shape=shape, x=x, y=y, source=SOURCE)


def round_cutout(diameter: float = 79.375, name: str = "round", **fields: object) -> Cutout:
    """A round opening without screws, unless `fields` say more."""
    plain = {
        "name": name,
        "title": name.capitalize(),
        "family": "test",
        "unit": LengthUnit.MM,
        "mounting": Mounting.FRONT,
        "openings": (opening(Circle(diameter=diameter)),),
    }
    return Cutout.model_validate(plain | fields)


def sheet(width: float = 600.0, height: float = 300.0, **fields: object) -> Plate:
    """A rectangular 2 mm sheet centred on the datum."""
    plain = {
        "id": "main",
        "name": "Main panel",
        "outline": Rectangle(width=width, height=height),
        "thickness": 2.0,
        "alloy": "2024-T3",
    }
    return Plate.model_validate(plain | fields)


def cut(cut_id: str, x: float, y: float, cutout: str | None = "round", **fields: object) -> Cut:
    plain = {"id": cut_id, "name": cut_id, "x": x, "y": y, "cutout": cutout}
    return Cut.model_validate(plain | fields)


def item(item_id: str, x: float, y: float, cutout: str = "round", **fields: object) -> Item:
    plain = {"id": item_id, "name": item_id, "cutout": cutout, "plate": "main", "x": x, "y": y}
    return Item.model_validate(plain | fields)


def project(
    *plates: Plate, items: tuple[Item, ...] = (), cutouts: tuple[Cutout, ...] | None = None, **fields: object
) -> Project:
    """A project in mm with one option 'new' of these plates (one sheet where none are given)."""
    plain = {
        "title": "Test",
        "unit": LengthUnit.MM,
        "aircraft": Aircraft(registration="TEST-1", type_name="Test aircraft", datum="centre of the panel"),
        "cutouts": (round_cutout(),) if cutouts is None else cutouts,
        "as_found": Option(id=AS_FOUND, name="As found", plates=(sheet(state="kept"),)),
        "options": (Option(id="new", name="New", plates=plates or (sheet(),), items=items),),
    }
    return Project.model_validate(plain | fields)
