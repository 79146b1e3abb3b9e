"""Random panels that may be cut: every kind of contour and hole, each in a field of its own, turned and mirrored."""

from hypothesis import strategies as st

from panelcad.model.hole import Countersink, Face, HoleForm, HoleGroup, HoleKind, Nutplate, Spot
from panelcad.model.plate import Engraving
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Corner, Outline, Rectangle, Slot
from tests.builders import SOURCE, cut, opening, project, sheet

FIELD = 60.0
"""No cut reaches further than 28 mm from the middle of its field."""
HOLES = {
    "plain": HoleForm(diameter=4.3, fastener=3.5),
    "countersunk": HoleForm(
        diameter=4.3, fastener=3.5, kind=HoleKind.COUNTERSUNK, countersink=Countersink(diameter=7.6, face=Face.BACK)
    ),
    "tapped": HoleForm(diameter=2.7, fastener=3.5, kind=HoleKind.TAPPED, thread="6-32 UNC"),
    "nutplate": HoleForm(
        diameter=4.9,
        fastener=4.2,
        kind=HoleKind.NUTPLATE,
        nutplate=Nutplate(rivet_diameter=2.5, rivet_spacing=17.5, flange_length=25.0, flange_width=10.0, angle=30.0),
    ),
    "keyed": HoleForm(diameter=12.0, fastener=12.0, kind=HoleKind.KEYED, key_depth=1.2, key_width=2.4),
    "flatted": HoleForm(diameter=12.7, fastener=12.0, kind=HoleKind.FLATTED, key_depth=0.9, key_angle=200.0),
}

SHORT = 0.1
"""mm: sides between two fillets that are shorter than this are refused in a cutting file."""

sizes = st.integers(400, 1900).map(lambda n: n / 50)
"""8 to 38 mm in steps of 0.02 mm, so that half a size is a whole number of nanometres too."""
shapes = st.one_of(
    st.builds(lambda d: Circle(diameter=d), sizes),
    st.builds(
        lambda w, h, share: Rectangle(width=w, height=h, corner_radius=min(w, h) * share),
        sizes,
        sizes,
        st.sampled_from([0.0, 0.1, 0.3, 0.5]),
    ).filter(lambda shape: not 0.0 < shape.width + shape.height - 4 * shape.corner_radius < SHORT),
    st.builds(lambda length, width: Slot(length=length, width=width), st.floats(20.0, 38.0), st.floats(5.0, 18.0)),
    st.builds(
        lambda a, b, bow: Outline(
            corners=(
                Corner(x=-a, y=-b),
                Corner(x=a, y=-b, bulge=bow),
                Corner(x=a, y=b),
                Corner(x=-a, y=b, bulge=-bow / 3),
            )
        ),
        st.floats(6.0, 18.0),
        st.floats(6.0, 18.0),
        st.floats(0.05, 0.6),
    ),
)
holes = st.sampled_from(sorted(HOLES)).map(
    lambda name: HoleGroup(form=HOLES[name], spots=(Spot(x=3.0, y=-4.0),), source=SOURCE)
)


@st.composite
def panels(draw: st.DrawFn) -> Project:
    """A project with one new sheet of up to six fields."""
    fields = draw(st.lists(st.one_of(shapes, holes), min_size=1, max_size=6))
    cuts = []
    for number, made in enumerate(fields):
        content = {"holes": (made,)} if isinstance(made, HoleGroup) else {"openings": (opening(made),)}
        turn = {"rotation": draw(st.sampled_from([0.0, 90.0, 33.3])), "mirrored": draw(st.booleans())}
        x = (number - 2.5) * FIELD + draw(st.floats(-1.0, 1.0))
        cuts.append(cut(f"cut-{number}", x, draw(st.floats(-10.0, 10.0)), None, **content, **turn))
    lettering = Engraving(id="text", text="ALT 28 V", x=0.0, y=40.0, height=4.0)
    outline = Rectangle(width=380.0, height=120.0, corner_radius=draw(st.sampled_from([0.0, 12.0])))
    return project(sheet(outline=outline, cuts=tuple(cuts), engravings=(lettering,), state="new"))
