"""Every cutout of the library has a face; a face stays where its item is, and its words stay on it."""

import pytest

from panelcad.drawing.appearance import Look, unlit_view
from panelcad.drawing.appearance_items import face, fitted_face, frame_of, item_group, visible_outline
from panelcad.drawing.display import Group, LinearGradient, Node, Path, RadialGradient, Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.faces.kind import reading
from panelcad.drawing.faces.registry import BY_NAME, KINDS, kind_of
from panelcad.drawing.lettering import text_bounds
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.cutout import Cutout
from panelcad.model.flight import Flight
from panelcad.model.layout import layout, placed_item
from panelcad.model.pilot import Light, LightColour, LightMeaning
from panelcad.model.project import Item
from tests import builders

CUTOUTS = tuple(packaged_catalogue().cutouts.values())
FLIGHT = Flight()


def _item(cutout: Cutout, name: str = "") -> Item:
    return Item(id="one", name=name or cutout.title, cutout=cutout.name)


def _drawn(cutout: Cutout) -> tuple[Group, Placement]:
    project = builders.project(
        builders.sheet(), items=(builders.item("one", 40.0, -25.0, cutout.name, name=cutout.title),), cutouts=(cutout,)
    )
    laid = layout(project, project.options[0]).plates[0]
    return item_group(project, laid.items[0], laid, FLIGHT), Placement(40.0, -25.0)


@pytest.mark.parametrize("cutout", CUTOUTS, ids=lambda cutout: cutout.name)
def test_face_is_where_the_layout_has_the_item(cutout):
    """The outline that shows is one of the picture's own contours, to 0.1 mm at 1:1."""
    group, at = _drawn(cutout)
    placed = placed_item(_item(cutout), cutout, 2.0)
    wanted = at.contour(visible_outline(placed)).bounds

    boxes = [box for node in group.nodes for box in _path_boxes(node, Placement())]

    assert any(max(abs(a - b) for a, b in zip(box, wanted, strict=True)) < 0.1 for box in boxes)


def _path_boxes(node: Node, at: Placement) -> list[tuple[float, float, float, float]]:
    if isinstance(node, Group):
        inner = at.after(node.placement) if node.placement else at
        return [box for child in node.nodes for box in _path_boxes(child, inner)]
    if isinstance(node, Path) and (node.fill or node.pen):
        contours = [at.contour(o) for o in node.outlines if not hasattr(o, "vertices") or hasattr(o, "area")]
        return [contour.bounds for contour in contours]
    return []


@pytest.mark.parametrize("cutout", CUTOUTS, ids=lambda cutout: cutout.name)
def test_words_stay_on_the_face(cutout):
    """No word of a face reaches beyond what shows of the item; on small hardware words may stand around it."""
    placed = placed_item(_item(cutout), cutout, 2.0)
    kind = kind_of(_item(cutout), cutout)
    project = builders.project(builders.sheet(), items=(), cutouts=(cutout,))
    laid = layout(project, project.options[0]).plates[0]
    picture = face(kind, frame_of(placed, laid, cutout.title if kind.labelled else ""), FLIGHT)
    x1, y1, x2, y2 = visible_outline(placed).bounds

    for text, at in _texts(picture, Placement()):
        spot = at.point(text.at)
        assert x1 - 0.1 <= spot.x <= x2 + 0.1, text.text
        assert y1 - 0.1 <= spot.y <= y2 + 0.1, text.text


def _texts(node: Node, at: Placement) -> list[tuple[Text, Placement]]:
    """Every text with the placement it stands in; what a clip hides is left out."""
    if isinstance(node, Text):
        return [(node, at)]
    if isinstance(node, Group):
        inner = at.after(node.placement) if node.placement else at
        found = [pair for child in node.nodes for pair in _texts(child, inner)]
        if node.clip is None:
            return found
        x1, y1, x2, y2 = inner.contour(node.clip).bounds
        spots = [(pair, pair[1].point(pair[0].at)) for pair in found]
        return [pair for pair, spot in spots if x1 <= spot.x <= x2 and y1 <= spot.y <= y2]
    return []


SCREENS = [c for c in CUTOUTS if c.family in {"rack-6-25", "flight-displays", "engine-displays", "round-3-1-8"}]


@pytest.mark.parametrize("cutout", SCREENS, ids=lambda cutout: cutout.name)
def test_figures_on_plain_readouts_are_not_clipped(cutout):
    """Words that stand still, in a group with a clip, lie wholly inside it; tapes and maps may run out at the edge."""
    placed = placed_item(_item(cutout), cutout, 2.0)
    kind = kind_of(_item(cutout), cutout)
    if kind.name in {"flight display", "navigator", "map display"}:
        pytest.skip("its tapes and its map run out at the edge on purpose")
    project = builders.project(builders.sheet(), items=(), cutouts=(cutout,))
    laid = layout(project, project.options[0]).plates[0]
    picture = face(kind, frame_of(placed, laid, cutout.title), FLIGHT)

    for group in (node for node in walk((picture,)) if isinstance(node, Group) and node.clip is not None):
        x1, y1, x2, y2 = group.clip.bounds
        for text in (node for node in group.nodes if isinstance(node, Text)):
            left, _, right, _ = text_bounds(text)
            assert x1 <= left, text.text
            assert right <= x2, text.text
            assert y1 <= text.at.y <= y2, text.text


def test_gradients_are_opaque():
    """PDF cannot fade inside a gradient: softness comes from stacked translucent shapes."""
    for cutout in CUTOUTS:
        group, _ = _drawn(cutout)
        fills = [node.fill for node in walk((group,)) if isinstance(node, Path)]
        graded = [fill for fill in fills if isinstance(fill, LinearGradient | RadialGradient)]
        assert all(stop.colour.opacity == 255 for fill in graded for stop in fill.stops)


@pytest.mark.parametrize(
    ("name", "cutout", "kind"),
    [
        ("Airspeed indicator", "airspeed-3-1-8", "airspeed"),
        ("Vertical speed indicator", "vertical-speed-3-1-8", "vertical speed"),
        ("COM 1", "breaker", "breaker"),
        ("COM 2", "rack-com", "com"),
        ("NAV/COM 1", "rack-nav-com", "nav com"),
        ("Radio compass receiver", "rack-receiver", "adf"),
        ("Standby attitude", "round-flight-display-3-1-8", "attitude"),
        ("Fuel quantity, left", "fuel-quantity-2-1-4", "fuel left"),
        ("Pitot heat", "toggle", "toggle"),
        ("Landing light", "rocker", "rocker"),
        ("Something odd", "ati-3-indicator", "indicator"),
        ("Clock", "clock-2-1-4", "clock"),
        ("Low voltage lamp", "lamp-5-16", "lamp"),
        ("Blank over the suction gauge", "blank-2-1-4", "blank"),
        ("14 V", "outlet-12v", "power socket"),
        ("Charging outlet, pilot", "outlet-usb", "outlet"),
    ],
)
def test_words_choose_the_face(name, cutout, kind):
    found = packaged_catalogue().cutouts[cutout]

    assert kind_of(_item(found, name), found).name == kind


def _lens(name: str, light: Light | None) -> RadialGradient:
    item = builders.item("one", 40.0, -25.0, "lamp-5-16", name=name).revised(light=light)
    project = builders.project(builders.sheet(), items=(item,), cutouts=(packaged_catalogue().cutouts["lamp-5-16"],))
    laid = layout(project, project.options[0]).plates[0]
    group = item_group(project, laid.items[0], laid, FLIGHT)
    return next(n.fill for n in walk((group,)) if isinstance(n, Path) and isinstance(n.fill, RadialGradient))


@pytest.mark.parametrize("colour", list(LightColour))
def test_a_lamp_has_the_colour_of_its_light(colour):
    light = Light(colour=colour, meaning=LightMeaning.OTHER)

    assert _lens("Low voltage lamp", light) == _lens(f"Lamp {colour}", None)
    assert (_lens("Low voltage lamp", light) == _lens("Low voltage lamp", None)) is (colour is LightColour.AMBER)


def test_every_kind_says_what_it_is_for():
    assert len(BY_NAME) == len(KINDS)
    assert all(reading(kind, "the pump").strip() for kind in KINDS)


def test_faces_show_one_flight():
    """The same heading, altitude and frequencies are read everywhere."""
    flight = Flight(altitude=7350.0, com=(("132.475", "118.000"),), squawk="0317", airspeed=97.0)
    by_name = packaged_catalogue().cutouts
    wanted = {
        "rack-com": "132.475",
        "rack-transponder": "0317",
        "flight-display-9": "7350",
        "rack-navigator": "132.475",
    }
    for name, text in wanted.items():
        cutout = by_name[name]
        project = builders.project(builders.sheet(), items=(builders.item("one", 0, 0, name),), cutouts=(cutout,))
        view = unlit_view(layout(project.revised(flight=flight), project.options[0]), "main", Look())
        assert text in {node.text for node in walk(view) if isinstance(node, Text)}


def test_a_face_is_made_once():
    """The same size and state give the very same group, whatever item shows it."""
    cutout = packaged_catalogue().cutouts["altimeter-3-1-8"]
    items = tuple(builders.item(f"i{n}", 90.0 * n, 0.0, cutout.name, name="Altimeter") for n in range(2))
    project = builders.project(builders.sheet(), items=items, cutouts=(cutout,))
    view = unlit_view(layout(project, project.options[0]), "main", Look())

    first, second = (next(g for g in view if g.owner == f"i{n}").nodes[-1].nodes[0] for n in range(2))

    assert first is second


def test_extent_of_an_item_is_near_its_bezel():
    """Nothing hidden by a clip counts: a picture of the panel is not larger than the panel."""
    group, _ = _drawn(packaged_catalogue().cutouts["flight-display-9"])
    x1, y1, x2, y2 = extent((group,))

    assert x2 - x1 < 9.8 * 25.4 + 12
    assert y2 - y1 < 6.8 * 25.4 + 12
    assert x1 < Point(40.0, -25.0).x < x2


@pytest.mark.parametrize("name", ["flight-display-9", "rack-autopilot"])
@pytest.mark.parametrize(("climb", "mode"), [(500.0, "VS"), (-700.0, "VS"), (0.0, "ALT"), (-30.0, "ALT")])
def test_an_engaged_autopilot_does_what_the_vertical_speed_indicator_shows(name, climb, mode):
    """'ALT' holds an altitude: a climb with 'ALT' engaged would be two moments of flight on one panel."""
    cutout = packaged_catalogue().cutouts[name]
    project = builders.project(builders.sheet(), items=(builders.item("one", 0.0, 0.0, name),), cutouts=(cutout,))
    laid = layout(project, project.options[0]).plates[0]

    nodes = walk((item_group(project, laid.items[0], laid, Flight(vertical_speed=climb)),))

    engaged = [node.text for node in nodes if isinstance(node, Text) and "HDG  " in node.text]
    assert [text.split()[-1] for text in engaged] == [mode]


@pytest.mark.parametrize(("name", "shown"), [("clock-digital", FLIGHT.time[:5]), ("hour-meter", "2416.3")])
def test_what_is_fitted_in_a_cutout_of_the_library_is_known_by_its_title(name, shown) -> None:
    picture = fitted_face(packaged_catalogue().cutout(name))
    assert shown in {node.text for node in walk(picture.nodes) if isinstance(node, Text)}
