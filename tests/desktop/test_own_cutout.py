"""A cutout of one's own is described in the form, seen, kept in the user's library and placed."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from panelcad.desktop.dialogs.own.form import OwnCutout
from panelcad.desktop.panes.library import CUTOUT_ROLE
from panelcad.library.own import own_cutouts, own_file
from panelcad.library.packaged import folder
from panelcad.model.cutout import BodyKind
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup, HoleKind
from panelcad.model.shape import Circle, FlattedCircle, Outline, Rectangle, Trapezoid
from panelcad.units import LengthUnit
from tests import builders
from tests.desktop.next_dialog import in_dialog


@pytest.fixture
def form(window, qtbot):
    made = OwnCutout(window.bench, window)
    qtbot.addWidget(made)
    made.show()
    return made


def type_in(field, text: str) -> None:
    field.setText(text)
    field.textEdited.emit(text)


def choose(box, text: str) -> None:
    index = next(i for i in range(box.count()) if text in box.itemText(i))
    box.setCurrentIndex(index)
    box.activated.emit(index)


def size(entry, name: str):
    return next(one for one in entry.sizes if one.accessibleName() == name and not one.isHidden())


def test_a_title_is_all_that_is_missing_at_first(form) -> None:
    assert form.problem.text() == "It has no title yet: say what people call it."
    assert form.cutout is None
    seen = form.picture.grab().toImage()
    assert any(seen.pixel(x, seen.height() // 2) != seen.pixel(0, 0) for x in range(seen.width()))
    assert not form.keep.isEnabled()
    type_in(form.name, "Stick timer")
    assert form.problem.text() == ""
    assert form.cutout.name == "stick-timer"
    assert isinstance(form.cutout.openings[0].shape, Circle)


def test_typing_begins_with_the_title(form, qtbot) -> None:
    with qtbot.waitExposed(form):
        form.show()
    assert form.focusWidget() is form.name


def test_the_wheel_scrolls_the_form_and_changes_no_choice(form) -> None:
    before = form.mounting.currentIndex()
    middle = QPointF(form.mounting.rect().center())
    turn = (QPoint(), QPoint(0, -120), Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(
        form.mounting,
        QWheelEvent(middle, middle, *turn, Qt.ScrollPhase.NoScrollPhase, False),
    )
    assert form.mounting.currentIndex() == before


def test_shapes_holes_bezel_and_bodies_are_described(form) -> None:
    type_in(form.name, "Our display")
    choose(form.opening.kind, "Rectangle")
    type_in(size(form.opening, "Width"), "150")
    type_in(size(form.opening, "Height"), "4 in")
    type_in(size(form.opening, "Corner radius"), "3")
    choose(form.holes.pattern, "rectangle")
    form.has_bezel.setChecked(True)
    choose(form.bezel.kind, "Rectangle")
    form.bodies.add.click()
    form.bodies.add.click()
    form.bodies.table.item(0, 4).setText("160")
    form.bodies.table.item(1, 2).setText("")
    cutout = form.cutout
    assert cutout.openings[0].shape == Rectangle(width=150.0, height=101.6, corner_radius=3.0)
    assert len(cutout.holes[0].spots) == 4
    assert [(body.kind, type(body.shape), body.far) for body in cutout.bodies] == [
        (BodyKind.CASE, Rectangle, 160.0),
        (BodyKind.CONNECTOR, Circle, 150.0),
    ]
    assert cutout.bezel is not None


def test_a_circle_with_a_flat_is_measured_across_it(form) -> None:
    type_in(form.name, "Key switch")
    choose(form.opening.kind, "Circle with a flat")
    type_in(size(form.opening, "Diameter"), "19")
    type_in(size(form.opening, "Across the flat"), "17.5")
    assert form.cutout.openings[0].shape == FlattedCircle(diameter=19.0, flat_depth=1.5)
    type_in(size(form.opening, "Across the flat"), "25")
    assert "make no circle with a flat" in form.problem.text()


@pytest.mark.parametrize("kind", ["Circle with a flat", "Slanted D", "Slot", "Rectangle", "Circle"])
@pytest.mark.parametrize("before", ["Circle", "Rectangle", "Slot"])
def test_each_shape_begins_with_figures_that_make_it(form, before, kind) -> None:
    type_in(form.name, "Plug")
    choose(form.opening.kind, before)
    choose(form.opening.kind, kind)
    assert form.problem.text() == ""
    assert form.cutout is not None


def test_a_connectors_slanted_d_is_described_by_its_longer_side_and_its_angle(form) -> None:
    type_in(form.name, "Plug")
    choose(form.opening.kind, "Slanted D")
    for name, text in (("Width, longer side", "22.2"), ("Height", "13.03"), ("Corner radius", "2.11")):
        type_in(size(form.opening, name), text)
    assert form.opening.angle.isVisibleTo(form)
    assert form.opening.angle.text() == "10"
    type_in(form.opening.angle, "9.5")
    assert form.cutout.openings[0].shape == Trapezoid(width=22.2, height=13.03, corner_radius=2.11, side_angle=9.5)
    choose(form.opening.kind, "Rectangle")
    assert not form.opening.angle.isVisibleTo(form)


def test_a_first_case_goes_through_and_a_larger_one_is_told(form) -> None:
    type_in(form.name, "Timer")
    form.bodies.add.click()
    assert form.cutout.bodies[0].shape == form.cutout.openings[0].shape
    assert not form.notice.isVisibleTo(form)
    type_in(size(form.opening, "Diameter"), "50")
    assert "The case reaches 3.50 mm beyond the opening" in form.notice.text()
    assert form.notice.isVisibleTo(form)
    assert form.keep.isEnabled()
    choose(form.mounting, "rear")
    assert not form.notice.isVisibleTo(form)


def test_the_kind_of_a_body_has_a_column_as_wide_as_it_is(form) -> None:
    form.bodies.add.click()
    table = form.bodies.table
    QApplication.processEvents()
    assert table.cellWidget(0, 0).geometry().right() <= table.columnViewportPosition(1)
    assert table.columnWidth(0) >= table.cellWidget(0, 0).sizeHint().width()


def test_what_is_placed_from_a_changed_cutout_is_said_to_stay(hands, our_own) -> None:
    window = hands.window
    bench = window.bench
    bench.place_wanted.emit(our_own.list.currentIndex().data(CUTOUT_ROLE))
    hands.click(100, -60)
    hands.key(Qt.Key.Key_Escape)

    def change(form: OwnCutout) -> None:
        type_in(size(form.opening, "Diameter"), "60")
        form.keep.click()

    in_dialog(change, OwnCutout)
    window.menus.run("place.own-change")
    assert "What is placed from it stays as it was (1 here)" in window.statusBar().words.text()


def test_nonsense_is_told_and_cannot_be_kept(form) -> None:
    type_in(form.name, "Clock")
    type_in(size(form.opening, "Diameter"), "two inches")
    assert "cannot be read" in form.problem.text()
    type_in(size(form.opening, "Diameter"), "50")
    choose(form.holes.pattern, "on a circle")
    type_in(form.holes._count, "many")
    assert "a whole number of holes" in form.problem.text()
    choose(form.holes.pattern, "none")
    form.has_opening.setChecked(False)
    assert "an opening, holes, a bezel or bodies" in form.problem.text()
    assert form.cutout is None


def test_it_is_kept_found_in_the_library_and_changed_without_doubling(form, window, qtbot) -> None:
    type_in(form.name, "Stick timer")
    type_in(form.words, "clock, chronometer")
    qtbot.mouseClick(form.keep, Qt.MouseButton.LeftButton)
    bench = window.bench
    assert [cutout.title for cutout in bench.catalogue.search("chronometer stick")] == ["Stick timer"]
    again = OwnCutout(bench, window, bench.catalogue.cutout("stick-timer"), is_changed=True)
    qtbot.addWidget(again)
    type_in(again.name, "Our stick timer")
    qtbot.mouseClick(again.keep, Qt.MouseButton.LeftButton)
    kept = own_cutouts(own_file(LengthUnit.MM))
    assert [(cutout.name, cutout.title) for cutout in kept] == [("stick-timer", "Our stick timer")]


@pytest.mark.parametrize("family", sorted(path.stem for path in folder("cutouts").glob("*.toml")))
def test_any_cutout_of_the_library_is_a_pattern_for_one_of_our_own(window, qtbot, family) -> None:
    like = next(one for one in window.bench.catalogue.cutouts.values() if one.family == family)
    form = OwnCutout(window.bench, window, like)
    qtbot.addWidget(form)
    cutout = form.cutout
    assert cutout is not None, form.problem.text()
    assert cutout.name != like.name
    assert [o.shape for o in cutout.openings] == [o.shape for o in like.openings]
    assert [b.shape.contour() for b in cutout.bodies] == [b.shape.contour() for b in like.bodies]
    assert (cutout.holes, cutout.rack, cutout.own_web) == (like.holes, like.rack, like.own_web)


def drawing(path, *contours, units: int = 4) -> None:
    """Closed contours of (x, y) or (x, y, bulge); units as in $INSUNITS: 1 inches, 4 millimetres, 0 none."""
    import ezdxf

    made = ezdxf.new(units=units)
    for points in contours:
        corners = [(*point, 0.0)[:3] for point in points]
        made.modelspace().add_lwpolyline(corners, format="xyb", close=True)
    made.saveas(path)


ROOF = ((0, 0), (40, 0), (40, 20, 0.3), (0, 20))


def test_a_free_contour_comes_from_a_dxf(form, tmp_path) -> None:
    drawing(tmp_path / "part.dxf", ROOF)
    type_in(form.name, "Odd one")
    form.from_dxf.take(tmp_path / "part.dxf")
    shape = form.cutout.openings[0].shape
    assert isinstance(shape, Outline)
    assert shape.contour().bounds[0] == pytest.approx(-20.0)
    assert form.from_dxf.said.text().startswith("part.dxf: 40.00 × ")
    form.from_dxf.take(tmp_path / "gone.dxf")
    assert "gone.dxf" in form.from_dxf.said.text()
    assert form.cutout.openings[0].shape == shape


def test_what_a_dxf_holds_besides_and_an_unnamed_unit_are_told(form, tmp_path) -> None:
    drawing(tmp_path / "two.dxf", ROOF, ((50, 0), (52, 0), (52, 2)), units=0)
    form.from_dxf.take(tmp_path / "two.dxf")
    words = form.from_dxf.said.text()
    assert "the largest of 2 contours; the others are not taken" in words
    assert "names no unit; its figures are read as millimetres" in words
    drawing(tmp_path / "inches.dxf", ((0, 0), (3.125, 0), (3.125, 2), (0, 2)), units=1)
    form.from_dxf.take(tmp_path / "inches.dxf")
    assert form.from_dxf.said.text() == "inches.dxf: 79.38 × 50.80 mm."


@pytest.mark.parametrize(
    ("points", "told"),
    [
        (((0, 0), (60, 30), (60, 0), (0, 40)), "its largest contour crosses itself"),
        (((0, 0), (60, 30), (60, 0), (0, 30)), "expected a contour that encloses an area."),
    ],
)
def test_a_dxf_that_cannot_be_cut_is_told_below_its_button(form, tmp_path, points, told) -> None:
    drawing(tmp_path / "tie.dxf", points)
    form.from_dxf.take(tmp_path / "tie.dxf")
    assert told in form.from_dxf.said.text()
    assert form.from_dxf.said.property("role") == "wrong"


def test_what_is_not_there_has_no_rows(form) -> None:
    assert form.bezel.kind.isHidden()
    assert form.thickness.isHidden()
    form.has_bezel.setChecked(True)
    form.has_opening.setChecked(False)
    assert not form.bezel.kind.isHidden()
    assert not form.thickness.isHidden()
    assert form.opening.kind.isHidden()
    assert form.from_dxf.isHidden()
    form.has_opening.setChecked(True)
    assert [not entry.isHidden() for entry in form.opening.sizes] == [True, False, False]


def test_a_field_that_cannot_be_read_is_marked_and_says_why(form) -> None:
    diameter = size(form.opening, "Diameter")
    type_in(diameter, "5O")
    assert diameter.property("wrong")
    assert diameter.toolTip().startswith("Diameter: '5O' cannot be read")
    type_in(diameter, "50")
    assert not diameter.property("wrong")
    assert diameter.toolTip() == ""


def names() -> list[str]:
    return [cutout.name for cutout in own_cutouts(own_file(LengthUnit.MM))]


def keep_as(title: str):
    def act(dialog) -> None:
        type_in(dialog.name, title)
        dialog.keep.click()

    return act


def test_a_cutout_of_our_own_is_changed_or_is_the_pattern_of_another(hands, our_own) -> None:
    in_dialog(keep_as("Our timer, late"), OwnCutout)
    hands.action("place.own-change")
    assert names() == ["our-timer"]
    assert hands.window.bench.catalogue.cutout("our-timer").title == "Our timer, late"


def test_screw_holes_are_changed_from_the_figures_they_have(window, qtbot) -> None:
    ring = BoltCircle(diameter=88.9, count=3, first_angle=30.0)
    form = HoleForm(diameter=4.3, fastener=3.5, kind=HoleKind.TAPPED, thread="M4")
    like = builders.round_cutout(holes=(HoleGroup(form=form, bolt_circle=ring, source=builders.SOURCE),))
    dialog = OwnCutout(window.bench, window, like)
    qtbot.addWidget(dialog)
    assert dialog.holes.pattern.currentText() == "on a circle"
    assert dialog.cutout.holes == like.holes
    type_in(dialog.holes._lengths["ring"], "90")
    changed = dialog.cutout.holes[0]
    assert changed.bolt_circle == BoltCircle(diameter=90.0, count=3, first_angle=30.0)
    assert changed.form == form
    choose(dialog.holes.pattern, "none")
    assert dialog.cutout.holes == ()


def test_one_like_a_cutout_of_our_own_is_another(hands, our_own) -> None:
    in_dialog(keep_as("Our stop watch"), OwnCutout)
    hands.action("place.own-like")
    assert sorted(names()) == ["our-stop-watch", "our-timer"]


def test_a_cutout_that_came_with_a_project_is_kept_in_our_library(hands) -> None:
    assert not hands.window.menus.actions["place.own-selected"].isEnabled()
    hands.click(-200, 50)
    in_dialog(keep_as("From another shop"), OwnCutout)
    hands.action("place.own-selected")
    assert names() == ["from-another-shop"]


def test_the_librarys_own_menu_offers_to_change_and_forget(hands, our_own) -> None:
    titles = [action.text().replace("&", "") for action in our_own.list.actions()]
    assert titles == ["A cutout like the chosen one…", "Change our own cutout…", "Forget our own cutout…"]
