"""The view from the pilot's eye, and the eye dragged in it, by mouse and keys."""

import pytest
from PySide6.QtCore import Qt

from panelcad.editing.eye import place_eye


@pytest.fixture
def seen(window):
    """The window looking from an eye 700 mm before the datum, 100 mm above it."""
    document = window.bench.document
    document.apply("Eye", place_eye(document.project, 0.0, 100.0, -700.0))
    window.menus.actions["tool.eye"].trigger()
    return window


def eye_of(window):
    return window.bench.document.project.surroundings.eye


def test_taking_up_the_tool_shows_the_panel_from_the_eye(seen) -> None:
    assert seen.bench.stage.view.id == "pilot"
    assert seen.bench.stage.scene.box({"one"}) is not None
    assert seen.bench.stage.scene.box({"eye"}) is not None


def test_dragging_moves_the_eye_in_one_undo_step(seen, hands) -> None:
    before = seen.bench.document.project
    hands.drag((0.0, 100.0), (-60.0, 130.0))
    assert (eye_of(seen).x, eye_of(seen).y) == pytest.approx((-60, 130), abs=1.0)
    assert eye_of(seen).centre_line == eye_of(seen).x
    seen.menus.actions["edit.undo"].trigger()
    assert seen.bench.document.project is before


def test_escape_puts_the_eye_back(seen, hands) -> None:
    before = seen.bench.document.project
    hands.press(0.0, 100.0)
    hands.move(-60.0, 130.0)
    hands.key(Qt.Key.Key_Escape)
    hands.release(-60.0, 130.0)
    assert seen.bench.document.project is before


def test_arrow_and_page_keys_nudge_it(seen, hands) -> None:
    step = seen.bench.settings.step("fine", seen.bench.unit)
    hands.key(Qt.Key.Key_Right)
    hands.key(Qt.Key.Key_PageUp)
    assert eye_of(seen).x == pytest.approx(step)
    assert eye_of(seen).z == pytest.approx(-700 + step)


def test_things_are_not_moved_in_perspective(seen, hands) -> None:
    seen.menus.actions["tool.select"].trigger()
    before = seen.bench.document.project
    hands.drag((0.0, 50.0), (40.0, 50.0))
    assert seen.bench.document.project is before


def test_a_first_eye_is_set_by_dragging(window, hands) -> None:
    assert eye_of(window) is None
    window.menus.actions["tool.eye"].trigger()
    hands.drag((0.0, 0.0), (30.0, 0.0))
    assert eye_of(window) is not None


def test_the_panel_is_seen_from_a_shorter_and_a_taller_pilots_eye_too(seen) -> None:
    low, middle, high = (eye_mark(seen, view) for view in ("pilot-shorter", "pilot", "pilot-taller"))
    sweep = seen.bench.document.project.profile.eye_sweep
    assert (abs(middle - low), abs(high - middle), abs(high - low)) == pytest.approx((sweep, sweep, 2 * sweep), abs=1)


def eye_mark(seen, view: str) -> float:
    """How high on the picture the middle of the eye's mark and centre line is."""
    seen.menus.actions[f"view.{view}"].trigger()
    assert seen.bench.stage.view.id == view
    _, bottom, _, top = seen.bench.stage.scene.box({"eye"})
    return (bottom + top) / 2
