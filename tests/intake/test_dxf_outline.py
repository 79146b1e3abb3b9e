"""Outlines from foreign files: what is read is exact, what cannot be read is refused in one sentence."""

import contextlib
import math
import re

import ezdxf
import pytest
from ezdxf.math import Matrix44
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from panelcad.errors import UnusableInput
from panelcad.intake.dxf_outline import NOT_CUT, read_contours, read_panel
from panelcad.model.shape import Circle, Outline
from panelcad.outputs.dxf import export_dxf
from panelcad.outputs.dxf_layers import CUT_THROUGH, IN_THE_METAL, Layer
from panelcad.units import LengthUnit
from tests.outputs.panels import panels

WIDE, HIGH = 100.0, 60.0
CORNERS = [(0.0, 0.0), (WIDE, 0.0), (WIDE, HIGH), (0.0, HIGH)]


def drawing(version="R2010", units=4):
    document = ezdxf.new(version, units=units)
    return document, document.modelspace()


def saved(document, tmp_path):
    file = tmp_path / "foreign.dxf"
    document.saveas(file)
    return file


def loose_rectangle(space, corners=CORNERS, layer="0"):
    for start, end in zip(corners, [*corners[1:], corners[0]], strict=True):
        space.add_line(start, end, dxfattribs={"layer": layer})


def test_loose_lines_and_an_arc_close_to_one_outline(tmp_path):
    """A rectangle 100 x 60 with a half circle of radius 30 on its right: area 6000 + 450 pi."""
    document, space = drawing()
    space.add_line((0, 60), (0, 0))
    space.add_line((100, 60), (0, 60))
    space.add_arc((100, 30), 30, -90, 90)
    space.add_line((100, 0), (0, 0))

    outline = read_panel(saved(document, tmp_path)).outline

    assert isinstance(outline, Outline)
    assert outline.contour().area == pytest.approx(6000 + 450 * math.pi, abs=1e-4)


def test_inches_become_mm_and_a_file_without_unit_needs_one(tmp_path):
    document, space = drawing("R12", 1)
    space.add_circle((1, 2), 0.5)
    file = saved(document, tmp_path)

    with pytest.raises(UnusableInput, match="does not say its unit; expected mm or in"):
        read_contours(file)
    (found,) = read_contours(file, LengthUnit.INCH)
    assert (found.shape, found.x, found.y) == (Circle(diameter=25.4), 25.4, 50.8)


def test_a_file_without_header_is_not_taken_for_metres(tmp_path):
    """ezdxf gives such a file a header of its own that says metres; the file itself says nothing."""
    file = tmp_path / "bare.dxf"
    file.write_text("0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n8\n0\n10\n1.0\n20\n2.0\n40\n0.5\n0\nENDSEC\n0\nEOF\n")

    with pytest.raises(UnusableInput, match="does not say its unit"):
        read_contours(file)
    assert read_contours(file, LengthUnit.MM)[0].shape == Circle(diameter=1.0)


def test_another_unit_is_named(tmp_path):
    document, space = drawing(units=6)
    space.add_circle((0, 0), 1)

    with pytest.raises(UnusableInput, match="its unit is metres; expected mm or in"):
        read_contours(saved(document, tmp_path))


def test_an_open_chain_is_refused_with_place_and_gap(tmp_path):
    document, space = drawing()
    loose_rectangle(space, [(0, 0), (100, 0), (100, 60), (0, 60), (0, 0.5)], layer="EDGE")
    space.query("LINE")[-1].dxf.end = (0, 0.2)

    with pytest.raises(
        UnusableInput, match=r"layer EDGE, x 0\.00 mm, y 0\.\d0 mm: a chain of lines is open by 0\.[1-9]"
    ):
        read_panel(saved(document, tmp_path))


def test_ends_a_hair_apart_are_joined(tmp_path):
    document, space = drawing()
    loose_rectangle(space)
    space.query("LINE")[0].dxf.end = (WIDE + 0.004, 0.003)

    assert read_panel(saved(document, tmp_path)).outline.contour().area == pytest.approx(WIDE * HIGH, abs=1.0)


def test_curves_that_are_neither_line_nor_arc_are_refused(tmp_path):
    document, space = drawing()
    space.add_open_spline([(0, 0), (1, 2), (3, 3), (4, 0)], dxfattribs={"layer": "EDGE"})

    with pytest.raises(UnusableInput, match="layer EDGE: it holds an entity of kind SPLINE; expected closed"):
        read_contours(saved(document, tmp_path))


def test_blocks_are_taken_apart_and_mirrored_entities_put_upright(tmp_path):
    document, space = drawing()
    block = document.blocks.new("GAUGE")
    block.add_circle((10, 0), 5)
    block.add_lwpolyline([(20, 0, 0, 0, 0), (30, 0, 0, 0, 1), (30, 8, 0, 0, 0), (20, 8, 0, 0, 0)], close=True)
    space.add_blockref("GAUGE", (100, 50), dxfattribs={"xscale": -1})

    round_one, other = read_contours(saved(document, tmp_path))

    assert (round_one.shape, round_one.x, round_one.y) == (Circle(diameter=10.0), 90.0, 50.0)
    assert other.shape.contour().bounds == pytest.approx((-7.0, -4.0, 7.0, 4.0))
    assert other.x == pytest.approx(73.0)


def test_a_plane_turned_over_is_put_upright(tmp_path):
    document, space = drawing()
    arc = space.add_circle((10, 5), 3)
    arc.transform(Matrix44.scale(-1, 1, -1))

    (found,) = read_contours(saved(document, tmp_path))
    assert (found.x, found.y) == pytest.approx((-10.0, 5.0))


def test_two_half_circles_are_one_circle(tmp_path):
    document, space = drawing()
    space.add_lwpolyline([(0, 0, 0, 0, 1), (8, 0, 0, 0, 1)], close=True)

    assert read_contours(saved(document, tmp_path))[0].shape == Circle(diameter=8.0)


def test_a_contour_outside_the_sheet_is_refused(tmp_path):
    document, space = drawing()
    loose_rectangle(space)
    space.add_circle((200, 30), 5)

    with pytest.raises(UnusableInput, match="a contour lies outside the largest one"):
        read_panel(saved(document, tmp_path))


def test_a_layer_may_be_named(tmp_path):
    document, space = drawing()
    loose_rectangle(space, layer="EDGE")
    space.add_line((0, 0), (5, 5), dxfattribs={"layer": "NOTES"})
    file = saved(document, tmp_path)

    assert len(read_contours(file, layer="edge")) == 1
    with pytest.raises(UnusableInput, match=r"layer EGDE: it holds no closed contour; .*there are some on EDGE"):
        read_contours(file, layer="EGDE")


DAMAGED = [b"", b"hello", b"\x00" * 400, b"0\nSECTION\n2\nHEADER\n", b"0\nSECTION\n2\nENTITIES\n0\nLINE\n10\nx\n"]


@pytest.mark.parametrize("content", DAMAGED)
def test_what_is_no_dxf_is_refused_in_one_sentence(tmp_path, content):
    file = tmp_path / "damaged.dxf"
    file.write_bytes(content)

    with pytest.raises(UnusableInput, match=re.escape(str(file))):
        read_contours(file, LengthUnit.MM)


def test_an_entity_of_no_known_kind_is_named(tmp_path):
    document, space = drawing()
    space.add_lwpolyline(CORNERS, close=True)
    file = saved(document, tmp_path)
    file.write_bytes(file.read_bytes().replace(b"LWPOLYLINE", b"XWPOLYLINE"))

    with pytest.raises(UnusableInput, match="of kind XWPOLYLINE"):
        read_contours(file)


def test_a_missing_file_is_named(tmp_path):
    with pytest.raises(UnusableInput, match="cannot be read"):
        read_contours(tmp_path / "none.dxf")


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(panels(), st.binary(min_size=1, max_size=40), st.floats(0.0, 1.0))
def test_a_damaged_file_is_read_or_refused_but_never_crashes(tmp_path, plan, noise, share):
    file = tmp_path / "panel.dxf"
    export_dxf(plan, plan.option("new"), "main", file)
    whole = file.read_bytes()
    at = int(len(whole) * share)
    for content in (whole[:at], whole[:at] + noise + whole[at + len(noise) :], whole[:at] + noise + whole[at:]):
        file.write_bytes(content)
        with contextlib.suppress(UnusableInput):
            read_contours(file)


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(panels(), st.sampled_from(LengthUnit))
def test_our_own_file_comes_back(tmp_path, plan, unit):
    """What an earlier job wrote is taken in again: same number of contours, same area to a millionth."""
    file = tmp_path / "panel.dxf"
    option = plan.option("new")
    export_dxf(plan, option, "main", file)
    taken = read_panel(file)

    (plate,) = option.plates
    assert taken.outline.contour().area == pytest.approx(plate.outline.contour().area, rel=1e-6)
    assert all(found.shape.contour().area > 0.0 for found in taken.openings)


def test_the_layers_left_out_are_those_that_are_not_cut():
    ours = {layer.value for layer in Layer if layer not in CUT_THROUGH | IN_THE_METAL}

    assert ours == NOT_CUT - {"DEFPOINTS"}


def test_blocks_that_multiply_without_end_are_refused(tmp_path):
    """Ten levels of ten blocks each would be ten thousand million circles."""
    document, space = drawing()
    document.blocks.new("L0").add_circle((0, 0), 1)
    for level in range(1, 8):
        block = document.blocks.new(f"L{level}")
        for i in range(10):
            block.add_blockref(f"L{level - 1}", (i, level))
    space.add_blockref("L7", (0, 0))

    with pytest.raises(UnusableInput, match="more than 60,000 entities"):
        read_contours(saved(document, tmp_path))


def test_an_array_of_blocks_is_refused_by_name(tmp_path):
    document, space = drawing()
    document.blocks.new("HOLE").add_circle((0, 0), 1)
    space.add_blockref("HOLE", (0, 0), dxfattribs={"row_count": 1000, "row_spacing": 5})

    with pytest.raises(UnusableInput, match="of kind INSERT"):
        read_contours(saved(document, tmp_path))
