import os
import subprocess
import sys

import ezdxf
import pytest

from panelcad.errors import UnknownName
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.outputs.dxf import dxf_content, export_dxf
from panelcad.outputs.dxf_options import Content, DxfOptions, DxfVersion, FaceUp, Origin
from panelcad.outputs.dxf_words import DRAFT_HEIGHT, GAP
from panelcad.units import LengthUnit
from tests.builders import cut, opening, project, sheet

DEFAULTS = DxfOptions()
SLOT = opening(Rectangle(width=50.0, height=30.0, corner_radius=3.0))


def panel(**fields: object) -> Project:
    cuts = (cut("gauge", -100.0, 20.0), cut("window", 100.0, 20.0, None, openings=(SLOT,)))
    return project(sheet(cuts=cuts, state="new"), **fields)


def written(tmp_path, options=DEFAULTS):
    made = panel()
    file = tmp_path / "panel.dxf"
    export_dxf(made, made.option("new"), "main", file, options)
    return ezdxf.readfile(file)


def entities(document, layer):
    return [e for e in document.modelspace() if e.dxf.layer == layer]


@pytest.mark.parametrize("version", DxfVersion)
@pytest.mark.parametrize("unit", LengthUnit)
def test_passes_the_audit_in_every_version_and_unit(tmp_path, version, unit):
    audit = written(tmp_path, DxfOptions(version=version, unit=unit)).audit()

    assert not audit.errors
    assert not audit.fixes


def test_a_round_cut_is_one_circle_and_a_rounded_rectangle_one_closed_polyline(tmp_path):
    circle, rectangle = entities(written(tmp_path), "CUTOUT")

    assert circle.dxftype() == "CIRCLE"
    assert (circle.dxf.center.x, circle.dxf.center.y, circle.dxf.radius) == (-100.0, 20.0, 39.6875)
    assert rectangle.closed
    assert [round(bulge, 5) for *_, bulge in rectangle.get_points("xyb")] == [0.41421, 0.0] * 4


@pytest.mark.parametrize(("unit", "code", "metric"), [(LengthUnit.MM, 4, 1), (LengthUnit.INCH, 1, 0)])
def test_states_its_unit_in_both_header_variables(tmp_path, unit, code, metric):
    document = written(tmp_path, DxfOptions(unit=unit))

    assert (document.header["$INSUNITS"], document.header["$MEASUREMENT"]) == (code, metric)
    assert entities(document, "CUTOUT")[0].dxf.radius == pytest.approx(39.6875 / unit.mm, abs=1e-9)


@pytest.mark.parametrize("version", DxfVersion)
def test_another_process_writes_the_same_bytes(version):
    """The order of Python's sets is chance, told by its seed; none of it may get into a file."""
    code = (
        "import hashlib; from tests.outputs.test_dxf import panel;"
        "from panelcad.outputs.dxf import dxf_content; from panelcad.outputs.dxf_options import *;"
        f"content = dxf_content(panel(), panel().option('new'), 'main', DxfOptions(version=DxfVersion('{version}')));"
        "print(hashlib.sha256(content).hexdigest())"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", code], env=os.environ | {"PYTHONHASHSEED": seed}, check=True, capture_output=True
        ).stdout
        for seed in ("1", "4")
    }

    assert len(said) == 1


def test_extents_hold_the_sheet_and_the_text(tmp_path):
    document = written(tmp_path)

    assert document.header["$EXTMIN"][0] == -300.0
    assert document.header["$EXTMIN"][1] < -200.0
    assert document.header["$EXTMAX"][1] == 150.0 + GAP + DRAFT_HEIGHT


def test_the_same_project_gives_the_same_bytes_and_no_clock():
    made = panel()

    first, second = (dxf_content(made, made.option("new"), "main") for _ in range(2))

    assert first == second
    assert b"2451545.0" in first  # 1 January 2000 as a Julian date, where no release gives one


def test_letters_outside_ascii_are_escaped_as_the_dxf_reference_says():
    made = panel(title="Prüfstück Ł")

    assert rb"Pr\U+00FCfst\U+00FCck \U+0141" in dxf_content(made, made.option("new"), "main")


def test_the_back_face_is_mirrored_and_says_so(tmp_path):
    document = written(tmp_path, DxfOptions(face_up=FaceUp.BACK))

    assert entities(document, "CUTOUT")[0].dxf.center.x == 100.0
    assert any("BACK FACE UP, MIRRORED" in e.dxf.text for e in entities(document, "REFERENCE") if e.dxftype() == "TEXT")


def test_the_origin_may_be_the_lower_left_corner(tmp_path):
    document = written(tmp_path, DxfOptions(origin=Origin.LOWER_LEFT))

    (outline,) = entities(document, "OUTLINE")
    assert min(outline.get_points("xy")) == (0.0, 0.0)


def test_what_is_not_asked_for_is_left_out(tmp_path):
    document = written(tmp_path, DxfOptions(content=frozenset({Content.CUTS})))

    assert {e.dxf.layer for e in document.modelspace()} == {"OUTLINE", "CUTOUT", "REFERENCE"}


def test_an_unknown_plate_is_named(tmp_path):
    made = panel()

    with pytest.raises(UnknownName, match="no plate 'mian'; there is 'main'"):
        export_dxf(made, made.option("new"), "mian", tmp_path / "panel.dxf")
