"""What the owner is shown: appearance in the window, one key to flip, two options with a wipe on the whole screen."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from shiboken6 import isValid

from panelcad.desktop.actions import all_actions
from panelcad.desktop.owner_view import OwnerView
from panelcad.drawing.display import Text, walk
from panelcad.library.samples import sample_file
from panelcad.store.project_file import load
from tests.desktop.next_dialog import in_dialog


@pytest.fixture(scope="module")
def project():
    return load(sample_file("trainer"))


@pytest.fixture
def owner(qtbot, project):
    made = OwnerView(project, "as-found", project.options[0].id)
    made.resize(900, 500)
    made.show()
    qtbot.waitExposed(made)
    yield made
    if isValid(made):
        made.close()


def _run(window, action_id):
    next(action for action in all_actions() if action.id == action_id).run(window.parts)


def _column(widget, share):
    """The colours down one column of what is seen."""
    image = widget.picture.grab().toImage()
    x = round(share * (image.width() - 1))
    return [image.pixel(x, y) for y in range(0, image.height(), 3)]


def test_appearance_is_a_view_of_the_canvas(window):
    window.bench.stage.look_from("look-day")

    owners = {item.owner for item in window.bench.stage.scene.groups}
    assert {"one", "two", "three"} <= owners


def test_no_sign_of_a_finding_stands_on_the_appearance(window, hands, qtbot):
    marks = window.bench.stage.scene.overlay
    hands.drag((200.0, -50.0), (20.0, 50.0))
    qtbot.waitUntil(lambda: bool(marks.marks))
    window.bench.stage.look_from("look-day")
    assert not marks.marks
    window.bench.stage.look_from("front")
    assert marks.marks


def test_an_item_is_dragged_in_the_appearance(window, hands):
    window.bench.stage.look_from("look-day")
    before = window.bench.document.project
    hands.drag((200.0, -50.0), (220.0, -50.0))

    moved = window.bench.document.option.item("three")
    assert moved.x == pytest.approx(220.0, abs=1.5)
    window.bench.document.undo()
    assert window.bench.document.project is before


def test_an_item_is_hit_on_its_bezel_and_not_on_its_shadow(window):
    window.bench.stage.look_from("look-day")
    scene = window.bench.stage.scene
    from panelcad.geometry.point import Point

    assert "one" in scene.owners_at(Point(-200.0, 50.0), 0.1)
    assert "one" not in scene.owners_at(Point(-200.0 + 43.5, 50.0 - 2.0), 0.1)


def test_one_key_flips_to_as_found_and_back(window):
    shown = window.bench.document.option_id
    QTest.keyClick(window, Qt.Key.Key_F4)
    assert window.bench.document.option_id == "as-found"
    QTest.keyClick(window, Qt.Key.Key_F4)

    assert window.bench.document.option_id == shown


def test_line_divides_the_two_options(owner, project):
    owner.picture.wipe_to(0.0)
    right = _column(owner, 0.2)
    owner.picture.wipe_to(1.0)
    left = _column(owner, 0.2)
    owner.picture.wipe_to(0.5)

    assert left != right
    assert _column(owner, 0.2) == left
    assert owner.slider.value() == 500


def test_line_follows_the_mouse(owner):
    QTest.mousePress(owner.picture, Qt.MouseButton.LeftButton, pos=QPoint(225, 100))

    assert owner.picture.share == pytest.approx(0.25, abs=0.01)
    assert owner.slider.value() == pytest.approx(250, abs=10)


def test_line_follows_the_slider_and_the_arrow_keys(owner):
    owner.slider.setValue(300)
    assert owner.picture.share == pytest.approx(0.3)
    owner.setFocus()
    QTest.keyClick(owner, Qt.Key.Key_Right)

    assert owner.picture.share == pytest.approx(0.35)


def test_keys_change_the_light_and_swap_the_sides(owner):
    day = _column(owner, 0.3)
    QTest.keyClick(owner, Qt.Key.Key_L)
    assert owner.picture.light == "dusk"
    assert _column(owner, 0.3) != day
    left = owner.picture.left
    QTest.keyClick(owner, Qt.Key.Key_F)

    assert owner.picture.right == left


def test_escape_closes_it(owner, qtbot):
    QTest.keyClick(owner, Qt.Key.Key_Escape)

    assert not isValid(owner) or not owner.isVisible()


def test_an_option_with_open_errors_says_so(qtbot):
    tourer = load(sample_file("tourer"))
    view = OwnerView(tourer, "as-found", "ambitious")
    view.show()
    qtbot.waitUntil(view.right_flaw.isVisible, timeout=30_000)
    assert view.right_flaw.text() == "13 errors open: not to be cut as drawn"
    qtbot.waitUntil(view.left_flaw.isVisible, timeout=30_000)
    assert "lacks something" in view.left_flaw.text()

    view.right.setCurrentIndex(view.right.findData("classic"))
    assert not view.right_flaw.isVisible()
    view.close()


def test_it_closes_while_options_are_still_judged(qtbot):
    view = OwnerView(load(sample_file("tourer")), "as-found", "ambitious")
    view.show()
    qtbot.waitExposed(view)
    view.close()
    QTest.qWait(50)

    assert not isValid(view) or not view.isVisible()


def test_picture_is_painted_once_for_a_size(owner, project):
    first = owner.picture.pixmap("as-found")
    assert owner.picture.pixmap("as-found") is first
    owner.resize(800, 450)
    QTest.qWait(1)

    assert owner.picture.pixmap("as-found") is not first


def test_pictures_and_proposal_are_written_from_the_menu(window, tmp_path, monkeypatch):
    told = []
    window.bench.told.connect(told.append)
    monkeypatch.setattr(window.parts.asking, "folder", lambda *_: tmp_path / "owner")
    _run(window, "file.preview")

    assert (tmp_path / "owner" / "panel.html").exists()
    assert "Wrote" in told[-1]


def test_nothing_is_written_where_the_folder_cannot_be(window, tmp_path, monkeypatch):
    (tmp_path / "file").write_text("in the way")
    said = []
    monkeypatch.setattr(window.parts.asking, "folder", lambda *_: tmp_path / "file" / "x")
    monkeypatch.setattr(window.parts.asking, "tell", lambda *words: said.append(words))
    _run(window, "file.preview")

    assert "cannot be made" in said[0][1]


def test_appearance_shows_the_project_s_flight(window):
    window.bench.stage.look_from("look-night")
    groups = tuple(item.picture for item in window.bench.stage.scene.groups)

    assert [node for node in walk(groups) if isinstance(node, Text)]


def _in_dialog(window, action_id, fill):
    """Open a dialog, let `fill` use it, and say what it said."""
    said = []
    in_dialog(lambda dialog: said.append(fill(dialog)))
    _run(window, action_id)
    return said[0]


def _named(dialog, kind, name):
    return next(w for w in dialog.findChildren(kind) if w.accessibleName().startswith(name))


def test_finish_is_chosen_and_taken_back(window):
    from PySide6.QtWidgets import QComboBox

    from panelcad.model.appearance import Finish

    before = window.bench.document.project

    def fill(dialog):
        _named(dialog, QComboBox, "Finish").setCurrentText("Wood veneer")
        dialog.accept()

    _in_dialog(window, "view.look", fill)
    assert window.bench.document.option.appearance.finish is Finish.VENEER
    window.bench.document.undo()

    assert window.bench.document.project is before


def test_flight_is_typed_and_nonsense_is_refused(window):
    from PySide6.QtWidgets import QLineEdit

    def fill(dialog):
        field = _named(dialog, QLineEdit, "Altitude, ft")
        field.selectAll()
        QTest.keyClicks(field, "seven")
        refused = dialog.problem.text(), dialog.verb.isEnabled()
        field.selectAll()
        QTest.keyClicks(field, "7350")
        dialog.accept()
        return refused

    problem, could_be_set = _in_dialog(window, "view.flight", fill)

    assert "a number" in problem
    assert not could_be_set
    assert window.bench.document.project.flight.altitude == 7350.0


@pytest.fixture
def photo_file(tmp_path):
    from PySide6.QtGui import QColor, QImage

    image = QImage(800, 500, QImage.Format.Format_RGB32)
    image.fill(QColor("#7a5533"))
    path = tmp_path / "panel früher.png"
    assert image.save(str(path))
    return path


def test_a_photograph_is_set_straight_and_taken_away(window, photo_file):

    from panelcad.desktop.dialogs.photograph import set_straight
    from panelcad.desktop.photo_board import PhotoBoard

    before = window.bench.document.project

    def use(dialog) -> None:
        board = dialog.findChild(PhotoBoard)
        at = board.to_widget(board.markers[0]).toPoint()
        QTest.mousePress(board, Qt.MouseButton.LeftButton, pos=at)
        QTest.mouseMove(board, at + QPoint(-10, 5))
        QTest.mouseRelease(board, Qt.MouseButton.LeftButton, pos=at + QPoint(-10, 5))
        QTest.keyClick(board, Qt.Key.Key_2)
        QTest.keyClick(board, Qt.Key.Key_Right)
        dialog.accept()

    in_dialog(use)
    set_straight(window.parts, photo_file, window)
    photo = window.bench.document.option.appearance.photograph

    assert photo.name == "panel früher.png"
    assert photo.width > 600
    _run(window, "view.no-photograph")
    assert window.bench.document.option.appearance.photograph is None
    window.bench.document.undo()
    window.bench.document.undo()
    assert window.bench.document.project is before


def test_what_is_no_photograph_gets_a_sentence(window, tmp_path, monkeypatch):
    from panelcad.desktop.dialogs.photograph import set_straight

    (tmp_path / "x.png").write_bytes(b"nothing")
    said = []
    monkeypatch.setattr(window.parts.asking, "tell", lambda *words: said.append(words))
    set_straight(window.parts, tmp_path / "x.png", window)

    assert "a PNG or JPEG is expected" in said[0][1]
