"""Our cutting files as strangers read them, held against the model's own contours to 0.001 mm."""

import math
from itertools import product

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from panelcad.geometry.contour import Rounded
from panelcad.geometry.gap import point_edge_gap
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc
from panelcad.model.layout import layout
from panelcad.model.plate import Engraving
from panelcad.model.project import Project
from panelcad.model.stroke_font import stroke_lettering
from panelcad.model.stroke_glyphs import GLYPHS
from panelcad.outputs.dxf import cutting_plan, export_dxf, to_file_axes
from panelcad.outputs.dxf_layers import CUT_THROUGH
from panelcad.outputs.dxf_options import DxfOptions, DxfVersion, FaceUp, Origin
from panelcad.units import LengthUnit
from tests.builders import cut, project, sheet
from tests.outputs.panels import panels
from tests.outputs.readers import gdal, needs_parser, raw, raw_corners

CLOSE = 0.001
EVERY_WAY = [
    DxfOptions(version=version, unit=unit, face_up=face, origin=origin)
    for version, unit, face, origin in product(DxfVersion, LengthUnit, FaceUp, Origin)
]
CODES = {"R12": "AC1009", "R2000": "AC1015", "R2010": "AC1024", "R2018": "AC1032"}
few = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)


def written(folder, plan: Project, options: DxfOptions):
    file = folder / "panel.dxf"
    export_dxf(plan, plan.option("new"), "main", file, options)
    return file


def model_contours(plan: Project, options: DxfOptions):
    """Outline and cuts straight from the layout, in the file's axes: not by way of the plan that was written."""
    plate = layout(plan, plan.option("new")).plate("main")
    placement = to_file_axes(plate, plan, options)
    return [placement.contour(c) for c in (plate.outline, *(feature.contour for feature in plate.features))]


def between_arcs_and_chords(contour) -> float:
    """The most area, in mm², that chords of one degree, give or take a tenth, can leave beside a contour's arcs."""
    arcs = [segment for segment in contour.segments if isinstance(segment, Arc)]
    return sum(arc.length * arc.radius * (1 - math.cos(math.radians(1.1) / 2)) for arc in arcs)


@few
@given(panels(), st.sampled_from(EVERY_WAY))
def test_every_vertex_gdal_reads_lies_on_our_lines_and_arcs(tmp_path, plan, options):
    contours = model_contours(plan, options)
    cut = [line for line in gdal(written(tmp_path, plan, options), step=1.0) if line.layer in set(CUT_THROUGH)]

    assert len(cut) == len(contours)
    for line, contour in zip(cut, contours, strict=True):
        corners = shapely.get_coordinates(line.shape) * options.unit.mm
        assert tuple(corners[0]) == pytest.approx(tuple(corners[-1]), abs=1e-9)
        assert max(abs(point_edge_gap(Point(*corner), contour).distance) for corner in corners) < CLOSE
        chords = shapely.Polygon(corners)
        assert chords.is_valid
        assert abs(chords.area - contour.area) < between_arcs_and_chords(contour) + CLOSE


@needs_parser
@few
@given(panels(), st.sampled_from(EVERY_WAY))
def test_a_raw_reader_finds_the_same_centres_radii_and_bulges(tmp_path, plan, options):
    contours = model_contours(plan, options)
    (drawing,) = raw(written(tmp_path, plan, options))
    cut = [entity for entity in drawing["entities"] if entity["layer"] in set(CUT_THROUGH)]

    assert len(cut) == len(contours)
    for entity, contour in zip(cut, contours, strict=True):
        if isinstance(contour, Rounded) and contour.is_circle:
            centre = entity["center"]["x"] * options.unit.mm, entity["center"]["y"] * options.unit.mm
            assert entity["type"] == "CIRCLE"
            assert centre == pytest.approx(contour.centre, abs=CLOSE)
            assert entity["radius"] * options.unit.mm == pytest.approx(contour.radius, abs=CLOSE)
        else:
            same_corners(entity, contour, options)


def same_corners(entity, contour, options):
    """Corners and bulges are ours; an arc of more than a half turn is written as two halves of it."""
    kind = "POLYLINE" if options.version is DxfVersion.R12 else "LWPOLYLINE"
    assert (entity["type"], entity["shape"]) == (kind, True)
    pieces = [piece for segment in contour.segments for piece in halves(segment)]
    for (x, y, bulge), (start, sweep) in zip(raw_corners(entity), pieces, strict=True):
        assert (x * options.unit.mm, y * options.unit.mm) == pytest.approx(start, abs=CLOSE)
        assert 4 * math.atan(bulge) == pytest.approx(sweep, abs=1e-9)


def halves(segment):
    sweep = segment.sweep if isinstance(segment, Arc) else 0.0
    if abs(sweep) <= math.pi + 1e-12:
        return [(segment.start, sweep)]
    return [(segment.start, sweep / 2), (segment.at(0.5), sweep / 2)]


@needs_parser
@pytest.mark.parametrize("options", EVERY_WAY, ids=lambda o: f"{o.version}-{o.unit}-{o.face_up}-{o.origin}")
def test_a_raw_reader_finds_version_unit_and_extents(tmp_path, options):
    plan = project(sheet(state="new", cuts=(cut("gauge", 40.0, 10.0),)))
    (drawing,) = raw(written(tmp_path, plan, options))
    header = drawing["header"]

    assert header["$ACADVER"] == CODES[options.version]
    if options.version is DxfVersion.R12:
        assert "$INSUNITS" not in header
    else:
        assert (header["$INSUNITS"], header["$MEASUREMENT"]) == ((4, 1) if options.unit is LengthUnit.MM else (1, 0))
    assert header["$EXTMIN"]["x"] * options.unit.mm == pytest.approx(
        cutting_plan(plan, plan.option("new"), "main", options).bounds[0], abs=1e-6
    )


def test_gdal_reads_every_letter_as_it_is_drawn(tmp_path):
    """Every glyph, arcs of more than a half turn among them: all vertices lie on the strokes of the font."""
    letters = "".join(char for char in GLYPHS if char != " ")
    lines = [letters[i : i + 40] for i in range(0, len(letters), 40)]
    lettering = tuple(
        Engraving(id=f"line-{i}", text=text, x=0.0, y=60.0 - 30.0 * i, height=9.0) for i, text in enumerate(lines)
    )
    plan = project(sheet(state="new", engravings=lettering))
    drawn = [
        segment
        for line in lettering
        for track in stroke_lettering(line.text, line.height, Point(line.x, line.y))
        for segment in track.segments
    ]
    for line in gdal(written(tmp_path, plan, DxfOptions())):
        if line.layer == "ENGRAVE":
            for corner in map(Point._make, shapely.get_coordinates(line.shape)[::3]):
                assert min(distance(segment.nearest(corner), corner) for segment in drawn) < CLOSE
