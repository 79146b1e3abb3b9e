import math
import re

import pytest

from panelcad.model.alloy import density
from panelcad.model.shape import Rectangle
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_nest import Stock
from panelcad.outputs.dxf_options import Content, DxfOptions
from panelcad.outputs.dxf_report import cut_report
from panelcad.outputs.dxf_report_text import report_text, stock_report_text
from panelcad.outputs.dxf_stock import stock_sheets
from tests.builders import cut, opening, project, sheet

WINDOW = opening(Rectangle(width=50.0, height=30.0, corner_radius=3.0))


def panel(**fields):
    cuts = (cut("gauge", -100.0, 0.0), cut("window", 100.0, 0.0, None, openings=(WINDOW,)))
    return project(sheet(cuts=cuts, state="new", **fields))


def report(made, options=None):
    return cut_report(made, made.option("new"), "main", options or DxfOptions())


def test_way_pierces_and_radius_agree_with_closed_forms():
    figures = report(panel())
    window = 2 * (44.0 + 24.0) + 2 * math.pi * 3.0

    assert figures.pierces == 3
    assert figures.cut_length == pytest.approx(1800.0 + math.pi * 79.375 + window)
    assert figures.smallest_radius == pytest.approx(3.0)
    assert figures.entities[Layer.CUTOUT] == 2


def test_the_weight_is_area_times_thickness_times_density():
    net = 600.0 * 300.0 - math.pi / 4 * 79.375**2 - (50.0 * 30.0 - (4 - math.pi) * 9.0)

    assert report(panel()).sheet_weight == pytest.approx(net * 2.0 * density("2024-T3"))
    assert report(panel(alloy="plywood")).sheet_weight is None


def test_a_sheet_weighs_what_a_suppliers_example_says():
    """A supplier's worked example: 0.063 x 48 x 144 in at 0.101 lb/in³ weigh 43.98 lb."""
    pounds = density("7075-T6") * 25.4**3 * 0.063 * 48 * 144 / 0.45359237

    assert pounds == pytest.approx(43.98, abs=0.005)


def test_sharp_corners_are_counted_against_the_cutter():
    sharp = opening(Rectangle(width=50.0, height=30.0))
    made = project(sheet(state="new", cuts=(cut("window", 0.0, 0.0, None, openings=(sharp,)),)))

    assert report(made).tight_corners == 4


def test_only_what_is_in_the_file_is_counted():
    assert report(panel(), DxfOptions(content=frozenset({Content.DRILLS}))).pierces == 0


def test_the_text_names_revision_fingerprint_and_cautions():
    made = panel()
    text = report_text(made, made.option("new"), "main")

    assert "not released" in text
    assert "Do not cut before" in text
    assert "Way to cut:" in text


def test_a_stock_sheet_has_a_report_of_all_its_plates():
    plates = (sheet(state="new", cuts=(cut("gauge", 0.0, 0.0),)), sheet(200.0, 100.0, id="side", state="new"))
    made = project(*plates)
    (laid,) = stock_sheets(made, made.option("new"), Stock(1220.0, 620.0))
    text = stock_report_text(made, made.option("new"), laid)

    assert "Plates:" in text
    assert "main, side" in text
    assert re.search(r"Pierces: +3\n", text)
