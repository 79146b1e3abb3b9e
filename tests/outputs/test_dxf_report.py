import math
import re

import pytest

from panelcad.checks.run import check
from panelcad.model.alloy import density
from panelcad.model.shape import FlattedCircle, Rectangle
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_nest import Stock
from panelcad.outputs.dxf_options import Content, CornerRelief, DxfOptions, DxfVersion, LeadIns, Origin
from panelcad.outputs.dxf_report import cut_report
from panelcad.outputs.dxf_report_text import report_text, stock_report_text
from panelcad.outputs.dxf_stock import stock_sheets
from panelcad.units import LengthUnit
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

    assert report(made).tight.by_feature == report(made).sharp.by_feature == {"window/opening": 4}


def test_a_flat_is_filed_as_the_rule_says_and_no_corner_of_the_cutter():
    """A D-hole has two sharp corners; neither the rule nor the report holds them against the cutter."""
    flat = opening(FlattedCircle(diameter=28.0, flat_depth=2.0))
    made = project(sheet(state="new", cuts=(cut("outlet", 0.0, 0.0, None, openings=(flat,)),)))
    figures = report(made)

    assert figures.filed.by_feature == {"outlet/opening": 2}
    assert figures.tight.count == figures.sharp.count == 0
    assert "inside-corner" not in {found.rule for found in check(made, made.option("new")).findings}
    relieved = report(made, DxfOptions(corner_relief=CornerRelief.ROUND))
    assert relieved.filed == figures.filed


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


def test_the_report_says_how_the_file_was_written():
    made = panel()
    options = DxfOptions(
        DxfVersion.R12,
        LengthUnit.INCH,
        content=frozenset(Content) - {Content.ENGRAVING},
        origin=Origin.LOWER_LEFT,
        lead_ins=LeadIns.POINTS,
        cutter=3.175,
    )
    rows = rows_of(report_text(made, made.option("new"), "main", options))

    assert rows["File"] == "test-1-new-draft-main-r12-in-corner-no-engraving-lead-ins-cutter-3.175mm.dxf"
    assert (rows["DXF version"], rows["Unit of the file"]) == ("R12", "inches")
    assert "every number is in inches" in rows["Unit note"]
    assert rows["Face"] == "front face up, as the pilot sees it"
    assert rows["Origin"].endswith("; the sheet lies at x 0.00 to 600.00 mm, y 0.00 to 300.00 mm")
    assert rows["Left out"] == "engraving, by choice"
    assert rows["Finish"] == "none"
    assert rows["Corner relief"] == "none"
    assert rows["Lead-in points"] == "in the scrap, for a cutter of 0.125 in"
    assert "Part of the option" not in rows


def test_a_cutter_is_told_in_the_files_unit():
    sharp = opening(Rectangle(width=50.0, height=30.0))
    made = project(sheet(state="new", cuts=(cut("w", 0.0, 0.0, None, openings=(sharp,)),)), unit=LengthUnit.INCH)
    rows = rows_of(report_text(made, made.option("new"), "main"))
    assert rows["Inside corners"] == "too tight for a cutter of 0.0394 in: 4, in 1"


def test_radii_and_sharp_corners_name_their_holes():
    sharp, fine = (opening(Rectangle(width=50.0, height=30.0, corner_radius=r)) for r in (0.0, 0.4))
    cuts = (cut("gauge", -200.0, 0.0), *(cut(f"w{i}", 100.0 * i, 0.0, None, openings=(sharp,)) for i in range(3)))
    made = project(sheet(state="new", cuts=(*cuts, cut("fine", -100.0, 0.0, None, openings=(fine,)))))
    rows = rows_of(report_text(made, made.option("new"), "main"))

    assert rows["Smallest inside radius"] == "0.40 mm, in 2"
    assert rows["Sharp inside corners"] == "12, in 3 to 5"
    assert rows["Inside corners"] == "too tight for a cutter of 1 mm: 16, in 2 to 5"


def test_what_could_not_be_relieved_is_told_with_its_reason():
    """A slit 0.8 mm high has no room for two lobes of a 1 mm cutter on its short sides."""
    slit = opening(Rectangle(width=50.0, height=0.8))
    made = project(
        sheet(state="new", cuts=(cut("slit", 0.0, 0.0, None, openings=(slit,)), cut("gauge", -100.0, 0.0))),
    )
    options = DxfOptions(corner_relief=CornerRelief.ROUND)
    figures = report(made, options)
    rows = rows_of(report_text(made, made.option("new"), "main", options))

    assert rows["Not relieved"] == "4, in 2: an edge beside it is too short"
    assert sum(corners.count for corners in figures.unrelieved.values()) == figures.tight.count == 4
    thin = DxfOptions(corner_relief=CornerRelief.ROUND, cutter=0.2)
    assert rows_of(report_text(made, made.option("new"), "main", thin))["Not relieved"] == "none"


def test_one_plate_of_several_is_called_a_part():
    made = project(sheet(state="new"), sheet(200.0, 100.0, id="side", state="new"))

    rows = rows_of(report_text(made, made.option("new"), "side"))
    assert rows["Part of the option"] == "plate side only, without main"


def rows_of(text: str) -> dict[str, str]:
    """The report's rows by their keys."""
    lines = (line.partition(": ") for line in text.splitlines())
    return {key: value.strip() for key, colon, value in lines if colon}
