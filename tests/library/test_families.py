"""The cutouts that come with panelcad, held against closed forms and published figures."""

import itertools
import math
import re
from collections.abc import Iterator
from typing import Any

import pytest

from panelcad.checks.run import check
from panelcad.geometry.contour import Rounded, rectangle
from panelcad.geometry.gap import TIE, edge_gap, gap
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.cutout import BodyKind, Cutout, Mounting
from panelcad.model.layout import FeatureKind, hole_spots, placed_cut, placed_item
from panelcad.model.pilot import Light
from panelcad.model.plate import Cut, Engraving
from panelcad.model.project import Item, Project
from panelcad.model.shape import KeyedCircle, Rectangle
from panelcad.model.source import Source, Standing
from panelcad.model.surroundings import Eye, Surroundings
from panelcad.units import MM_PER_INCH
from tests import builders

CATALOGUE = packaged_catalogue()
ALL = list(CATALOGUE.cutouts.values())
every_cutout = pytest.mark.parametrize("cutout", ALL, ids=lambda cutout: cutout.name)
FAMILIES = {
    *("round-3-1-8", "round-2-1-4", "rack-6-25", "flight-displays", "toggle-switches", "breakers", "blanks"),
    *("small-round", "ati-square", "engine-displays", "iec-61554", "rocker-switches", "rotary-controls", "jacks"),
    *("key-switches", "lamps", "outlets", "d-subminiature", "vents", "clocks", "compass", "rail-panels"),
    *("clamp-rings", "placards", "push-buttons", "coaxial-connectors", "engine-controls", "iso-7736"),
}


def placed(cutout: Cutout) -> Any:
    return placed_cut(Cut(id="c", name="c", x=0.0, y=0.0, cutout=cutout.name), cutout)


def fitted(cutout: Cutout) -> Any:
    return placed_item(Item(id="i", name="i", cutout=cutout.name, plate="p"), cutout, 2.0)


def sources(value: Any) -> Iterator[Any]:
    """Every place of a record where a source belongs, filled or not."""
    for name in type(value).model_fields:
        inner = getattr(value, name)
        if name == "source":
            yield inner
        for part in inner if isinstance(inner, tuple) else (inner,):
            if hasattr(type(part), "model_fields") and not isinstance(part, Source):
                yield from sources(part)


def test_the_families_are_all_there() -> None:
    assert set(CATALOGUE.families) == FAMILIES


@pytest.mark.parametrize(
    ("typed", "family"),
    [
        ("altimeter 2 1/4", "round-2-1-4"),
        ("round gauge 2 1/16", "small-round"),
        ("3 ATI", "ati-square"),
        ("engine display", "engine-displays"),
        ("IEC 61554", "iec-61554"),
        ("rocker switch", "rocker-switches"),
        ("rotary selector", "rotary-controls"),
        ("headphone jack", "jacks"),
        ("microphone jack", "jacks"),
        ("key switch", "key-switches"),
        ("lamp", "lamps"),
        ("outlet", "outlets"),
        ("D-subminiature", "d-subminiature"),
        ("vent", "vents"),
        ("clock", "clocks"),
        ("hour meter", "clocks"),
        ("compass", "compass"),
        ("rail panel", "rail-panels"),
        ("clamp ring", "clamp-rings"),
        ("placard", "placards"),
    ],
)
def test_what_a_panel_needs_is_found_by_the_trades_name(typed: str, family: str) -> None:
    assert family in {cutout.family for cutout in CATALOGUE.search(typed)[:3]}


def test_outlets_are_round_and_rectangular() -> None:
    shapes = {type(cutout.openings[0].shape) for cutout in CATALOGUE.cutouts.values() if cutout.family == "outlets"}
    assert shapes == {KeyedCircle, Rectangle}


def test_rail_panels_are_five_and_three_quarter_inches_wide() -> None:
    """MS25212: 5.75 in across."""
    bezels = [cutout.bezel for cutout in CATALOGUE.cutouts.values() if cutout.family == "rail-panels"]
    widths = [bezel.shape.width for bezel in bezels if bezel is not None and isinstance(bezel.shape, Rectangle)]
    assert widths == [pytest.approx(5.75 * MM_PER_INCH)] * len(bezels)


@every_cutout
def test_each_dimension_group_says_where_it_comes_from(cutout: Cutout) -> None:
    found = list(sources(cutout))
    assert found
    assert all(source.text and source.standing is not Standing.USER for source in found)


@every_cutout
def test_a_cutout_fits_its_own_limits(cutout: Cutout) -> None:
    """Cuts of one cutout are apart by its own limit."""
    for a, b in itertools.combinations(placed(cutout).features, 2):
        assert gap(a.contour, b.contour).distance >= max(cutout.own_web, 0.5) - TIE


@every_cutout
def test_a_bezel_covers_the_opening_it_is_for(cutout: Cutout) -> None:
    """A tray's faceplate is narrower than the distance between its rails; an anti-turn tab lies beside its nut.

    A front mounted D-subminiature's published opening is 13.03 mm tall, its flange 12.55 mm.
    """
    bezel = fitted(cutout).bezel
    if bezel is None or cutout.mounting is Mounting.TRAY or re.fullmatch(r"dsub-\d+-front", cutout.name):
        return
    for feature in placed(cutout).openings:
        if feature.purpose != "anti-turn tab":
            assert edge_gap(feature.contour, bezel).distance >= -TIE


@every_cutout
def test_screw_heads_stay_on_the_bezel_they_hold(cutout: Cutout) -> None:
    """A clamp's screws stand beside the bezel of the case it holds."""
    bezel = fitted(cutout).bezel
    for feature in placed(cutout).holes:
        if (
            bezel is not None
            and cutout.family != "clamp-rings"
            and feature.kind is FeatureKind.HOLE
            and feature.form is not None
        ):
            head = Rounded((feature.centre,), max(feature.form.head, feature.form.diameter) / 2)
            assert edge_gap(head, bezel).distance >= -TIE


@every_cutout
def test_the_case_passes_the_opening(cutout: Cutout) -> None:
    """What starts in front of or inside the sheet goes through the first opening."""
    if cutout.mounting not in {Mounting.FRONT, Mounting.TRAY} or not cutout.openings:
        return
    for body in fitted(cutout).behind:
        if body.near < 1.0 and body.kind in {BodyKind.CASE, BodyKind.TRAY}:
            assert edge_gap(body.footprint, placed(cutout).openings[0].contour).distance >= -TIE


def alone(cutout: Cutout) -> Project:
    """A cutout on a large sheet seen from arm's length, with its label, its light's meaning and a compass's placard."""
    cuts = (builders.cut("cut", 0.0, 0.0, cutout.name),) if cutout.openings or cutout.holes else ()
    light = Light(colour="white", meaning="other") if cutout.family == "lamps" else None
    _, low, _, _ = (fitted(cutout).bezel or rectangle(Point(0.0, 0.0), 10.0, 10.0)).bounds
    label = Engraving(id="label", text="LABEL", x=0.0, y=low - 20.0, height=5.0)
    placard = CATALOGUE.cutout("placard-compass-card")
    return builders.project(
        builders.sheet(1500.0, 1000.0, cuts=cuts, engravings=(label,)),
        items=(
            builders.item("item", 0.0, 0.0, cutout.name, light=light, **({"cut": "cut"} if cuts else {})),
            builders.item("placard", 0.0, low - 50.0, placard.name, name="Compass deviation"),
        ),
        cutouts=tuple({c.name: c for c in (cutout, placard)}.values()),
        surroundings=Surroundings(eye=Eye(x=0.0, y=200.0, z=-560.0, centre_line=0.0, source=builders.SOURCE)),
    )


@every_cutout
def test_a_cutout_alone_on_a_large_sheet_gives_no_finding(cutout: Cutout) -> None:
    project = alone(cutout)
    report = check(project, project.option("new"))
    assert [finding.identity for finding in report.findings] == []
    assert report.not_judged == ()


@every_cutout
def test_nothing_is_named_after_a_product(cutout: Cutout) -> None:
    """A name is its family's plain words and its size; no letters run together with digits as in a model number."""
    assert not re.search(r"[a-z]{2,}\d|\d[a-z]{2,}", cutout.name.replace("12v", "").replace("x", ""))


@pytest.mark.parametrize(
    ("name", "circle", "square"), [("airspeed-3-1-8", 3.5, 2.4749), ("suction-2-1-4", 2.625, 1.8562)]
)
def test_instrument_screws_stand_on_a_square(name: str, circle: float, square: float) -> None:
    """A square's side is its diagonal over √2; measured on published blanks: 62.86 mm and 47.14 mm."""
    (group,) = CATALOGUE.cutout(name).holes
    spots = hole_spots(group)
    side = circle / math.sqrt(2) * MM_PER_INCH
    assert side == pytest.approx(square * MM_PER_INCH, abs=0.002)
    assert [distance(a, b) for a, b in itertools.pairwise(spots)] == pytest.approx([side] * 3)
    assert all(abs(spot.x) == pytest.approx(side / 2) and abs(spot.y) == pytest.approx(side / 2) for spot in spots)


@pytest.mark.parametrize("name", ["altimeter-knob-3-1-8", "altimeter-knob-2-1-4"])
def test_a_knob_takes_the_place_of_the_lower_left_screw_alone(name: str) -> None:
    plain = hole_spots(CATALOGUE.cutout(name.replace("-knob", "")).holes[0])
    left = hole_spots(CATALOGUE.cutout(name).holes[0])
    gone = [spot for spot in plain if min(distance(spot, other) for other in left) > 0.001]
    assert len(left) == 3
    assert [(spot.x < 0, spot.y < 0) for spot in gone] == [(True, True)]


@pytest.mark.parametrize("name", ["airspeed-3-1-8", "suction-2-1-4"])
def test_the_web_of_a_round_instrument_is_its_closed_form(name: str) -> None:
    """1.750 - 1.5625 - 0.085 = 0.1025 in; 1.3125 - 1.125 - 0.085 = 0.1025 in."""
    features = placed(CATALOGUE.cutout(name)).features
    webs = [gap(features[0].contour, hole.contour).distance for hole in features[1:]]
    assert webs == pytest.approx([0.1025 * MM_PER_INCH] * 4)


@pytest.mark.parametrize(
    ("bezel", "opening"),
    [(48, 45.0), (72, 68.0), (96, 92.0), (144, 138.0)],
)
def test_iec_61554_openings_have_plus_tolerances_only(bezel: int, opening: float) -> None:
    cutout = CATALOGUE.cutout(f"iec-{bezel}x{bezel}")
    x1, _, x2, _ = cutout.openings[0].shape.contour().bounds
    assert opening <= x2 - x1 <= opening + 1.0
    assert cutout.bezel is not None
    assert x2 - x1 < bezel == cutout.bezel.shape.contour().bounds[2] * 2


def test_a_d_subminiature_is_wider_than_half_its_hole_spacing() -> None:
    """A table that prints half the hole spacing as the width is known; for shell E it would be 12.49 mm."""
    for contacts in (9, 15, 25, 37, 50):
        cutout = CATALOGUE.cutout(f"dsub-{contacts}-rear")
        left, right = hole_spots(cutout.holes[0])
        x1, _, x2, _ = cutout.openings[0].shape.contour().bounds
        assert x2 - x1 > 0.75 * distance(left, right)


@pytest.mark.parametrize(("part", "across"), [("bezel", 3.970), ("case", 3.885)])
def test_3_ati_measures_across_corners_as_arinc_408a_lists_it(part: str, across: float) -> None:
    """A published chart of ARINC 408A gives both sizes across corners to 0.010 in."""
    for cutout in CATALOGUE.families["ati-square"].cutouts:
        assert cutout.bezel is not None
        shape = cutout.bezel.shape if part == "bezel" else cutout.bodies[0].shape
        x1, _, x2, _ = Placement(rotation=45.0).contour(shape.contour()).bounds
        assert (x2 - x1) / MM_PER_INCH == pytest.approx(across, abs=0.002)


@pytest.mark.parametrize(("contacts", "inches"), [(9, 0.984), (15, 1.312), (25, 1.852), (37, 2.500), (50, 2.406)])
def test_d_subminiature_screws_are_as_far_apart_as_mil_dtl_24308_says(contacts: int, inches: float) -> None:
    """The spacing in inches as a second published table prints it."""
    for side in ("front", "rear"):
        left, right = hole_spots(CATALOGUE.cutout(f"dsub-{contacts}-{side}").holes[0])
        assert distance(left, right) == pytest.approx(inches * MM_PER_INCH, abs=0.02)


def test_a_rotary_controls_tab_is_at_ten_o_clock() -> None:
    """A government stock record: non-turn tab at a radius of 0.531 in, at 10 o'clock."""
    tab = CATALOGUE.cutout("rotary-selector").openings[1]
    assert math.hypot(tab.x, tab.y) == pytest.approx(0.531 * MM_PER_INCH, abs=0.005)
    assert math.degrees(math.atan2(tab.y, tab.x)) == pytest.approx(150.0, abs=0.01)


def test_rail_panels_are_whole_steps_long() -> None:
    """MS25212: 5.75 in wide, a multiple of 0.375 in long."""
    for cutout in CATALOGUE.families["rail-panels"].cutouts:
        assert cutout.bezel is not None
        x1, y1, x2, y2 = cutout.bezel.shape.contour().bounds
        assert (x2 - x1) / MM_PER_INCH == pytest.approx(5.75)
        assert (y2 - y1) / MM_PER_INCH % 0.375 == pytest.approx(0, abs=1e-6)


def test_a_square_tray_clears_the_round_corners_of_its_opening() -> None:
    for cutout in CATALOGUE.families["rack-6-25"].cutouts:
        assert cutout.rack is not None
        tray = rectangle(Point(0.0, 0.0), cutout.rack.width, cutout.rack.height)
        assert edge_gap(tray, cutout.openings[0].shape.contour()).distance > 0


def test_every_source_of_a_file_is_used() -> None:
    for family in CATALOGUE.families.values():
        text = family.file.read_text(encoding="utf-8")
        for key in re.findall(r"^\[sources\.(.+)\]$", text, re.MULTILINE):
            assert f'source = "{key}"' in text, f"{family.file.name}: {key}"
