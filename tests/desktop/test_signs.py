"""The sign of a finding on the panel: a click selects what it is about, a double click goes there."""

import pytest
from PySide6.QtCore import Qt

from panelcad.geometry.point import Point
from tests.desktop.test_keyboard_goes_on import pane, settled

SHIFT = Qt.KeyboardModifier.ShiftModifier
BREAKER = (150.0, 80.0)


@pytest.fixture
def breaker(hands, qtbot) -> str:
    """A breaker that a sign covers, for it has no label; nothing is selected."""
    bench = hands.window.bench
    bench.place_wanted.emit(bench.catalogue.cutout("breaker"))
    hands.click(*BREAKER)
    hands.key(Qt.Key.Key_Escape)
    hands.key(Qt.Key.Key_Escape)
    settled(hands, qtbot)
    assert bench.stage.scene.overlay.mark_at(Point(*BREAKER))
    assert not bench.selection.ids
    bench.view.show_all()
    return bench.document.option.items[-1].id


def test_a_click_on_a_sign_selects_the_thing_and_stays_where_one_looked(hands, breaker) -> None:
    bench, findings = hands.window.bench, pane(hands, "findings")
    seen = bench.view.seen()
    hands.click(*BREAKER)
    assert bench.selection.ids == (breaker,)
    assert pane(hands, "properties").sheet.name.text() == bench.name_of(breaker)
    assert bench.view.seen() == seen
    assert findings.chosen is not None
    assert findings.chosen.identity == bench.stage.current_finding
    assert breaker in findings.chosen.items


def test_a_click_with_shift_on_another_thing_goes_on_from_there(hands, breaker) -> None:
    hands.click(*BREAKER)
    hands.click(0, 50, held=SHIFT)
    assert set(hands.window.bench.selection.ids) == {breaker, "two"}


def test_a_double_click_on_a_sign_goes_there(hands, breaker) -> None:
    zoom = hands.window.bench.view.zoom
    hands.double_click(*BREAKER)
    assert hands.window.bench.view.zoom > zoom
    assert hands.window.bench.selection.ids == (breaker,)


def test_a_sign_that_covers_no_thing_selects_all_that_it_is_about(hands, qtbot) -> None:
    """Two instruments whose bezels are 0.8 mm apart, from so near that the sign stands between them."""
    bench, findings = hands.window.bench, pane(hands, "findings")
    hands.drag((0, 50), (-115, 50), held=Qt.KeyboardModifier.AltModifier)
    qtbot.waitUntil(lambda: bool(findings.model.entries))
    settled(hands, qtbot)
    hands.key(Qt.Key.Key_Escape)
    (web,) = (entry.finding for entry in findings.model.entries if entry.finding.rule == "web")
    middle = (web.where[0][0] + web.where[1][0]) / 2
    bench.view.show_box((middle - 20, 40, middle + 20, 60))
    hands.click(middle, 50)
    assert set(bench.selection.ids) == {"one", "two"}
    assert bench.stage.current_finding == web.identity
