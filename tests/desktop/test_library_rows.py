"""Each row of the library shows what the thing looks like, its title, its size, and where its figures are from."""

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics

from panelcad.desktop.panes.cutout_row import two_lines
from panelcad.desktop.theme import LIGHT
from panelcad.desktop.thumbnails import library_picture, thumbnail
from panelcad.library.catalogue import packaged_catalogue

CATALOGUE = packaged_catalogue()


def picture(name: str):
    return thumbnail(library_picture(CATALOGUE.cutout(name), LIGHT), QSize(44, 44), 1.0).toImage()


def test_instruments_that_fit_the_same_cutout_look_different(qapp) -> None:
    alike = [one for one in CATALOGUE.search("3 1/8") if one.name in {"altimeter-3-1-8", "airspeed-3-1-8"}]
    first, second = alike
    assert first.openings == second.openings
    assert picture(first.name) != picture(second.name)


@pytest.mark.parametrize("name", CATALOGUE.cutouts)
def test_every_cutout_has_a_picture_that_fits(qapp, name) -> None:
    image = picture(name)
    seen = [(x, y) for x in range(44) for y in range(44) if image.pixelColor(x, y).alpha() > 40]
    across, up = ({at[axis] for at in seen} for axis in (0, 1))
    assert max(len(across), len(up)) > 30


def test_a_row_tells_title_and_sources(window) -> None:
    library = window.docks.dock("library").widget()
    library.search.setText("Altimeter, 3 ATI")
    said = library.model.data(library.model.index(0), Qt.ItemDataRole.ToolTipRole)
    assert "Altimeter, 3 ATI" in said
    assert "ARINC 408A" in said


def test_a_long_title_is_broken_between_words_and_loses_none(qapp) -> None:
    metrics = QFontMetrics(QFont())
    title = "D-subminiature, 9 contacts, rear mounted"
    width = metrics.horizontalAdvance("D-subminiature, 9 contacts,")
    assert two_lines(title, metrics, width) == ["D-subminiature, 9 contacts,", "rear mounted"]
    assert two_lines("Altimeter", metrics, width) == ["Altimeter"]
    assert two_lines("Cylinder-head-and-exhaust-gas-temperature-gauge", metrics, width)[0].endswith("…")
