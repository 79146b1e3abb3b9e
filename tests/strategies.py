"""Hypothesis makes records of the model: shapes, cutouts, plates, projects, in both units and any writing."""

from hypothesis import strategies as st

from panelcad.model.cutout import Bezel, Body, BodyKind, Cutout, Mounting, Opening
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup, Spot
from panelcad.model.markup import Along, Dimension, DrawingNote, Hold, Hook
from panelcad.model.plate import AttachScrew, Cut, CutState, Engraving, Plate, PlateState
from panelcad.model.project import AS_FOUND, Aircraft, Item, Option, Project
from panelcad.model.shape import Circle, Corner, Outline, Rectangle, Shape, Slot
from panelcad.model.source import Source, Standing
from panelcad.model.surroundings import DepthLimit, Obstacle, ObstacleKind, Surroundings, Volume
from panelcad.units import LengthUnit

lengths = st.floats(-2000, 2000)
sizes = st.floats(0.001, 2000)
angles = st.floats(-720, 720)
slopes = st.floats(-2, 2)
words = st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=20).filter(str.strip)
sources = st.builds(Source, standing=st.sampled_from(Standing), text=words)


@st.composite
def rectangles(draw: st.DrawFn) -> Rectangle:
    width, height = draw(sizes), draw(sizes)
    return Rectangle(width=width, height=height, corner_radius=draw(st.floats(0, 0.499)) * min(width, height))


@st.composite
def slots(draw: st.DrawFn) -> Slot:
    width = draw(sizes)
    return Slot(width=width, length=width + draw(sizes))


@st.composite
def outlines(draw: st.DrawFn) -> Outline:
    """A rectangle whose edges are bowed a little."""
    width, height = draw(st.floats(1, 2000)), draw(st.floats(1, 2000))
    bulges = draw(st.lists(st.floats(0, 0.2), min_size=4, max_size=4))
    spots = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    return Outline(corners=tuple(Corner(x=x, y=y, bulge=b) for (x, y), b in zip(spots, bulges, strict=True)))


circles = st.builds(Circle, diameter=sizes)
shapes: st.SearchStrategy[Shape] = st.one_of(circles, rectangles(), slots(), outlines())
openings = st.builds(Opening, shape=shapes, x=lengths, y=lengths, rotation=angles, purpose=words, source=sources)
forms = st.builds(HoleForm, diameter=sizes, fastener=sizes, head=st.floats(0, 100))
rings = st.builds(BoltCircle, diameter=sizes, count=st.integers(1, 12), first_angle=angles)
hole_groups = st.builds(
    HoleGroup,
    form=forms,
    spots=st.lists(st.builds(Spot, x=lengths, y=lengths), max_size=3).map(tuple),
    bolt_circle=rings,
    purpose=words,
    source=sources,
)


@st.composite
def bodies(draw: st.DrawFn) -> Body:
    near = draw(st.floats(0, 500))
    kind = draw(st.sampled_from(BodyKind))
    return Body(kind=kind, shape=draw(shapes), near=near, far=near + draw(sizes), source=draw(sources))


@st.composite
def cutouts(draw: st.DrawFn, name: str) -> Cutout:
    return Cutout(
        name=name,
        title=draw(words),
        family="made-up",
        unit=draw(st.sampled_from(LengthUnit)),
        mounting=draw(st.sampled_from(Mounting)),
        openings=tuple(draw(st.lists(openings, min_size=1, max_size=2))),
        holes=tuple(draw(st.lists(hole_groups, max_size=2))),
        own_web=draw(st.floats(0, 10)),
        bezel=draw(st.none() | st.builds(Bezel, shape=shapes, x=lengths, y=lengths, source=sources)),
        bodies=tuple(draw(st.lists(bodies(), max_size=2))),
        notes=draw(words),
    )


@st.composite
def cuts(draw: st.DrawFn, cut_id: str, cutout: str | None) -> Cut:
    own = () if cutout else (draw(openings),)
    place = {"x": draw(lengths), "y": draw(lengths), "rotation": draw(angles), "mirrored": draw(st.booleans())}
    fields = {"id": cut_id, "name": draw(words), "state": draw(st.sampled_from(CutState)), "cutout": cutout}
    return Cut.model_validate({**fields, **place, "openings": own})


@st.composite
def plates(draw: st.DrawFn) -> Plate:
    screws = (AttachScrew(id="screw", x=draw(lengths), y=draw(lengths), form=draw(forms)),)
    engraving = Engraving(id="words", text=draw(words), x=draw(lengths), y=draw(lengths), height=draw(sizes))
    return Plate(
        id="main",
        name=draw(words),
        state=draw(st.sampled_from(PlateState)),
        outline=draw(shapes),
        inner_openings=tuple(draw(st.lists(openings, max_size=1))),
        thickness=draw(sizes),
        alloy=draw(words),
        attach_screws=screws,
        cuts=(draw(cuts("c1", "one")), draw(cuts("c2", None))),
        engravings=(engraving,),
    )


@st.composite
def options(draw: st.DrawFn, option_id: str) -> Option:
    item = Item(id="i1", name=draw(words), cutout="one", cut="c1", plate="main", x=draw(lengths), y=draw(lengths))
    elsewhere = Item(id="i2", name=draw(words), notes=draw(words))
    end = Hook(part="i1", hold=draw(st.sampled_from(Hold)), x=draw(lengths))
    along = draw(st.sampled_from(Along))
    note = DrawingNote(id="n1", plate="main", text=draw(words), x=draw(lengths), y=draw(lengths), to=end)
    return Option(
        id=option_id,
        name=draw(words),
        plates=(draw(plates()),),
        items=(item, elsewhere),
        dimensions=(Dimension(id="d1", plate="main", start=Hook(), end=end, along=along, offset=draw(lengths)),),
        drawing_notes=(note,),
        locked=("i1", "c1"),
    )


@st.composite
def surroundings(draw: st.DrawFn) -> Surroundings:
    near = draw(lengths)
    volume = Volume(shape=draw(shapes), x=draw(lengths), y=draw(lengths), near=near, far=near + draw(sizes))
    kind = draw(st.sampled_from(ObstacleKind))
    spot = {"shape": draw(shapes), "x": draw(lengths), "y": draw(lengths), "at_origin": draw(lengths)}
    slope = {"slope_x": draw(slopes), "slope_y": draw(slopes)}
    limit = DepthLimit.model_validate({"id": "f1", "name": draw(words), "plate": "main", **spot, **slope})
    return Surroundings(
        obstacles=(Obstacle(id="o1", name=draw(words), kind=kind, plate="main", volume=volume),),
        depth_limits=(limit,),
    )


@st.composite
def projects(draw: st.DrawFn) -> Project:
    return Project(
        title=draw(words),
        unit=draw(st.sampled_from(LengthUnit)),
        aircraft=Aircraft(registration=draw(words), type_name=draw(words), datum=draw(words)),
        surroundings=draw(surroundings()),
        cutouts=(draw(cutouts("one")),),
        as_found=draw(options(AS_FOUND)),
        options=(draw(options("new")),),
        notes=draw(words),
    )
