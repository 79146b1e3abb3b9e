"""Small things for the rules' tests, each made in one call. Lengths in mm."""

from panelcad.model.cutout import Bezel, Body, BodyKind, RackUnit
from panelcad.model.hole import BoltCircle, Countersink, HoleForm, HoleGroup, HoleKind, Nutplate, Spot
from panelcad.model.plate import AttachScrew, Cut
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import KeepOut, MovingPart, Obstacle, ObstacleKind, Surroundings, Volume
from tests.builders import SOURCE, cut, item, opening, project, round_cutout, sheet

CASE = 70.0
"""The diameter of the round instrument's case."""


def screw_form(diameter=4.318, fastener=3.5052, **fields):
    """A #6 screw: 0.138 in nominal (Machinery's Handbook), 0.170 in hole."""
    return HoleForm(diameter=diameter, fastener=fastener, **fields)


def countersunk(**fields):
    return screw_form(
        kind=HoleKind.COUNTERSUNK, countersink=Countersink(angle=100.0, diameter=fields.pop("across", 7.0)), **fields
    )


def nutplate_form():
    plate = Nutplate(rivet_diameter=2.4, rivet_spacing=17.5, flange_length=25.0, flange_width=9.5)
    return screw_form(kind=HoleKind.NUTPLATE, nutplate=plate)


def holes(*spots, form=None):
    return HoleGroup(form=form or screw_form(), spots=tuple(Spot(x=x, y=y) for x, y in spots), source=SOURCE)


def four_screws(form=None):
    """The screws of a 3-1/8 in instrument: four at 45° on 3.500 in."""
    ring = BoltCircle(diameter=88.9, count=4, first_angle=45.0)
    return HoleGroup(form=form or screw_form(), bolt_circle=ring, source=SOURCE)


def body(kind=BodyKind.CASE, shape=None, **fields):
    plain = {"kind": kind, "shape": shape or Circle(diameter=CASE), "far": 100.0, "source": SOURCE}
    return Body.model_validate(plain | fields)


def bezel(width=82.55, height=82.55, thickness=3.0):
    return Bezel(shape=Rectangle(width=width, height=height), thickness=thickness, source=SOURCE)


def instrument(name="gauge", **fields):
    """A 3-1/8 in round instrument with a square bezel, a round case and no screws unless told."""
    return round_cutout(name=name, **{"bezel": bezel(), "bodies": (body(),)} | fields)


def fitted(name, x, y, cutout="gauge", **fields):
    """A cut and the item in it."""
    cut_id = f"{name}-cut"
    return cut(cut_id, x, y, cutout), item(name, x, y, cutout, cut=cut_id, **fields)


def panel(*pairs, cutouts=None, around=None, cuts=(), items=(), size=(900.0, 600.0), **plate):
    """A project of these fitted things and loose cuts on one large sheet."""
    made = sheet(*size, cuts=(*cuts, *(one for one, _ in pairs)), **plate)
    carried = (round_cutout(), instrument()) if cutouts is None else cutouts
    return project(
        made, items=(*items, *(other for _, other in pairs)), cutouts=carried, surroundings=around or Surroundings()
    )


def own_cut(name, x, y, shape, **fields):
    """A cut with one opening of its own."""
    return Cut(id=name, name=name, x=x, y=y, openings=(opening(shape),), **fields)


def drilled(name, x, y, form=None, **fields):
    """A cut that is one screw hole."""
    return Cut(id=name, name=name, x=x, y=y, holes=(holes((0, 0), form=form),), **fields)


def attach(name, x, y, form=None, **fields):
    return AttachScrew(id=name, x=x, y=y, form=form or screw_form(), **fields)


def volume(shape, x, y, depth=(10.0, 60.0)):
    return Volume(shape=shape, x=x, y=y, near=depth[0], far=depth[1])


def rib(shape, x, y, depth=(10.0, 60.0), kind=ObstacleKind.RIB):
    obstacle = Obstacle(id="rib", name="Rib", kind=kind, plate="main", volume=volume(shape, x, y, depth))
    return Surroundings(obstacles=(obstacle,))


def shaft(shape, x, y, depth=(-200.0, 300.0), **ways):
    moving = MovingPart(id="shaft", name="Control shaft", plate="main", volume=volume(shape, x, y, depth), **ways)
    return Surroundings(moving_parts=(moving,))


def keep_out(shape, x, y, depth=(-300.0, -20.0)):
    kept = KeepOut(id="shade", name="Glareshield", plate="main", volume=volume(shape, x, y, depth))
    return Surroundings(keep_outs=(kept,))


def rack_unit(name, height, **fields):
    """A unit 158.75 mm (6.25 in) wide for rails 160.02 mm (6.30 in) apart."""
    unit = RackUnit(height=height, width=158.75, rail_distance=160.02, source=SOURCE)
    plain = {
        "mounting": "tray",
        "openings": (opening(Rectangle(width=160.02, height=height + 1.0)),),
        "rack": unit,
        "bezel": bezel(158.75, height),
        "bodies": (body(BodyKind.TRAY, Rectangle(width=158.75, height=height), far=250.0),),
    }
    return round_cutout(name=name, **plain | fields)
