"""A cutout of one's own is described in the form, seen, kept in the user's library and placed."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from panelcad.desktop.dialogs.own.form import OwnCutout
from panelcad.library.own import own_cutouts, own_file
from panelcad.library.packaged import folder
from panelcad.model.cutout import BodyKind
from panelcad.model.shape import Circle, FlattedCircle, Outline, Rectangle
from panelcad.units import LengthUnit


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


def test_a_d_shape_is_measured_across_its_flat(form) -> None:
    type_in(form.name, "Key switch")
    choose(form.opening.kind, "D-shape")
    type_in(size(form.opening, "Diameter"), "19")
    type_in(size(form.opening, "Across the flat"), "17.5")
    assert form.cutout.openings[0].shape == FlattedCircle(diameter=19.0, flat_depth=1.5)
    type_in(size(form.opening, "Across the flat"), "25")
    assert "make no d-shape" in form.problem.text()


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
    again = OwnCutout(bench, window, bench.catalogue.cutout("stick-timer"))
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


def test_a_free_contour_comes_from_a_dxf(form, tmp_path) -> None:
    import ezdxf

    drawing = ezdxf.new(units=4)
    drawing.modelspace().add_lwpolyline([(0, 0), (40, 0), (40, 20, 0.3), (0, 20)], format="xyb", close=True)
    drawing.saveas(tmp_path / "part.dxf")
    type_in(form.name, "Odd one")
    form.take_contour(tmp_path / "part.dxf")
    shape = form.cutout.openings[0].shape
    assert isinstance(shape, Outline)
    assert shape.contour().bounds[0] == pytest.approx(-20.0)
    form.take_contour(tmp_path / "gone.dxf")
    assert "gone.dxf" in form.problem.text()
