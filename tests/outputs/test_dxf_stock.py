import ezdxf
import pytest

from panelcad.errors import UnusableInput
from panelcad.geometry.gap import edge_gap, gap
from panelcad.model.profile import Profile
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_nest import Part, Stock, Turning, packed, part_text, parts_in, stock_of
from panelcad.outputs.dxf_options import DxfOptions, FaceUp
from panelcad.outputs.dxf_stock import export_nested_dxf, stock_sheets
from panelcad.outputs.verify import verify
from panelcad.outputs.verify_words import sentences, verify_text
from tests.builders import cut, project, sheet

STOCK = Stock(1220.0, 620.0, margin=10.0, gap=8.0)


def plate(name, width, height, x=0.0, **fields):
    cuts = (cut(f"{name}-gauge", x, 0.0),) if min(width, height) > 100 else ()
    return sheet(width, height, id=name, name=name, cuts=cuts, state="new", **fields)


def trio(**fields):
    plates = (plate("main", 600.0, 300.0), plate("pedestal", 180.0, 400.0), plate("overlay", 500.0, 200.0))
    return project(*plates, **fields)


def names(made):
    return tuple(each.id for each in made.option("new").plates)


def test_plates_keep_margin_and_gap():
    made = trio()
    (plan,) = (sheet.plan for sheet in stock_sheets(made, made.option("new"), STOCK))
    edges = [loop.contour for loop in plan.loops if loop.layer is Layer.OUTLINE]
    (stock,) = (loop.contour for loop in plan.loops if loop.layer is Layer.REFERENCE)

    assert len(edges) == 3
    assert all(edge_gap(edge, stock).distance >= 10.0 - 1e-6 for edge in edges)
    assert all(gap(a, b).distance >= 8.0 - 1e-6 for i, a in enumerate(edges) for b in edges[:i])


def test_what_needs_two_stock_sheets_gets_two_files(tmp_path):
    made = trio()
    files = export_nested_dxf(made, made.option("new"), tmp_path, Stock(640.0, 420.0))

    assert [file.name for file in files] == [f"test-1-new-draft-stock-{n}.dxf" for n in range(1, len(files) + 1)]
    assert len(files) > 1
    for file in files:
        assert not ezdxf.readfile(file).audit().errors


def test_a_plate_is_turned_only_where_that_is_allowed():
    made = project(plate("tall", 180.0, 400.0))
    low = Stock(500.0, 200.0, margin=5.0)

    with pytest.raises(UnusableInput, match=r"plate tall: its 180.00 mm x 400.00 mm do not fit the stock"):
        packed(made, made.option("new"), ("tall",), low)
    turned = Stock(500.0, 200.0, margin=5.0, turning=Turning.QUARTER)
    assert packed(made, made.option("new"), ("tall",), turned) == ((Part("tall", 90, 5.0, 5.0),),)


def test_a_plate_that_just_fits_fits():
    made = project(plate("main", 600.0, 300.0))
    stock = Stock(620.0, 320.0, margin=10.0)

    assert packed(made, made.option("new"), ("main",), stock) == ((Part("main", 0, 10.0, 10.0),),)


def test_plates_of_different_sheet_do_not_share_a_stock():
    made = project(plate("main", 600.0, 300.0), plate("thin", 200.0, 200.0, thickness=1.0))

    with pytest.raises(UnusableInput, match=r"plates 'main' and 'thin' are of different sheet"):
        packed(made, made.option("new"), names(made), STOCK)


@pytest.mark.parametrize("face", FaceUp)
def test_a_nested_file_is_verified_as_a_whole(tmp_path, face):
    made = trio(profile=Profile(finish_thickness=0.05))
    stock = Stock(1220.0, 620.0, turning=Turning.QUARTER)
    (file,) = export_nested_dxf(made, made.option("new"), tmp_path, stock, DxfOptions(face_up=face))
    assert sentences(verify(made, file)) == ()
    assert "plates nested on a stock sheet: main (main), pedestal (pedestal)" in verify_text(verify(made, file))

    document = ezdxf.readfile(file)
    document.modelspace().query("CIRCLE")[0].translate(0.5, 0, 0)
    document.saveas(file)
    assert sentences(verify(made, file)) == ("moved: hole 1 (main-gauge: opening) by x 0.500, y 0.000 mm",)


def test_a_part_is_read_back_from_its_line():
    part = Part("main", 90, 12.7, 6.35)

    assert parts_in(("Project: x", part_text(part))) == (part,)


def test_the_stock_is_the_profiles():
    assert stock_of(Profile()) is None
    assert stock_of(Profile(stock_width=1220.0, stock_height=2440.0)) == Stock(1220.0, 2440.0, 6.35, 6.35)


def test_plates_of_different_sheet_lie_on_different_stock(tmp_path):
    made = project(plate("main", 600.0, 300.0), plate("thin", 200.0, 200.0, thickness=1.0), plate("side", 100.0, 300.0))
    plans = [sheet.plan for sheet in stock_sheets(made, made.option("new"), STOCK)]

    assert [sum(loop.layer is Layer.OUTLINE for loop in plan.loops) for plan in plans] == [2, 1]


def test_an_option_without_a_new_plate_has_nothing_to_nest():
    made = project(sheet(state="reworked"))

    with pytest.raises(UnusableInput, match="no new plate"):
        stock_sheets(made, made.option("new"), STOCK)
