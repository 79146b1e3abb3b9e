"""Makes the pictures of docs/help: `python docs/help_pictures.py [NAME ...]` from the clone's root, without a screen.

They are twice as fine as the screen (@2x), so that they stay crisp where the screen is fine too.
"""

import contextlib
import json
import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Final

os.environ["QT_SCALE_FACTOR"] = "2"

from PIL import Image
from PySide6.QtCore import QRect, QSettings, Qt, QTimer
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QPushButton

from panelcad.desktop.canvas.gesture import Held, Pointer
from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.settings import Settings
from panelcad.desktop.start import application
from panelcad.desktop.theme import ThemeChoice, dress, theme_for
from panelcad.geometry.point import Point
from panelcad.library.samples import sample_file
from panelcad.store.project_file import load, save

FOLDER: Final = Path(__file__).parent / "help" / "pictures"
SIZE: Final = (1280, 800)
COLOURS: Final = 255
IN: Final = 25.4
SCREEN: Final = {"name": "screen", "x": 0, "y": 0, "width": 3200, "height": 2200, "logicalDpi": 96, "dpr": 1}
USUAL: Final = frozenset({"library", "items", "properties", "findings"})


def settle(app: QApplication) -> None:
    for _ in range(20):
        app.processEvents()


class Studio:
    """The window with the tourer's glass option, and what is needed to take pictures of it."""

    def __init__(self, scratch: Path) -> None:
        self.app = application()
        settings = Settings()
        settings.theme = ThemeChoice.LIGHT
        dress(self.app, theme_for(settings.theme))
        file = scratch / "tourer.panel.json"
        save(load(sample_file("tourer")), file)
        self.window = MainWindow(settings)
        self.window.resize(*SIZE)
        self.window.show()
        self.window.open(file)
        self.window.workspace.cautions.hide()
        self.bench = self.window.bench
        self.bench.document.look_at("glass")
        while self.bench.judge.report is None:
            settle(self.app)
        self._box = (0.0, 0.0, 1.0, 1.0)
        self.fresh()

    def fresh(self) -> None:
        """As it was opened, from the front, nothing selected."""
        while self.bench.document.done:
            self.bench.document.undo()
        self.bench.selection.clear()
        self.bench.take_tool("select")
        self.bench.stage.marks_are_shown = True
        self.bench.stage.look_from("front")
        self.window.resize(*SIZE)
        for dock in self.window.docks.all:
            dock.setVisible(dock.objectName().removeprefix("dock-") in USUAL)
        settle(self.app)
        self.bench.view.show_all()
        settle(self.app)

    def keep(self, name: str, picture: QPixmap) -> None:
        """Few colours do for a picture of a window and make it small."""
        grabbed = Image.frombytes("RGB", *_pixels(picture))
        grabbed.quantize(COLOURS, Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE).save(
            FOLDER / f"{name}@2x.png", optimize=True
        )

    def look_at(self, left: float, bottom: float, right: float, top: float) -> None:
        """A box of the plate, in inches, fills the canvas and is what a picture of it shows."""
        self._box = left * IN, bottom * IN, right * IN, top * IN
        self.bench.view.show_box(self._box)
        settle(self.app)

    def look_at_all(self, margin: float = 8.0) -> None:
        x1, y1, x2, y2 = self.bench.stage.scene.box() or (0.0, 0.0, 1.0, 1.0)
        self._box = x1 - margin, y1 - margin, x2 + margin, y2 + margin
        self.bench.view.show_box(self._box)
        settle(self.app)

    def canvas(self, name: str) -> None:
        """What is looked at on the canvas."""
        view = self.bench.view
        settle(self.app)
        corners = (view.mapFromScene(x, y) for x, y in (self._box[:2], self._box[2:]))
        self.keep(name, view.grab(QRect(*corners).normalized().intersected(view.viewport().rect())))

    def pane(self, name: str, pane: str, height: int = 0) -> None:
        """A pane alone at its side, as high as is asked for."""
        side = self.window.dockWidgetArea(self.window.docks.dock(pane))
        for dock in self.window.docks.all:
            dock.setVisible(dock is self.window.docks.dock(pane) or self.window.dockWidgetArea(dock) is not side)
        dock = self.window.docks.dock(pane)
        if side is Qt.DockWidgetArea.BottomDockWidgetArea:
            self.window.resize(900, 1300)
            settle(self.app)
            self.window.resizeDocks([dock], [height], Qt.Orientation.Vertical)
        settle(self.app)
        self.keep(name, dock.grab(QRect(0, 0, dock.width(), min(height or dock.height(), dock.height()))))

    def dialog(self, name: str, action: str, fill: Callable[[QDialog], None] = lambda _: None) -> None:
        """What an action asks, filled in."""

        def shoot() -> None:
            dialog = QApplication.activeModalWidget()
            if not isinstance(dialog, QDialog):
                QTimer.singleShot(20, shoot)
                return
            try:
                fill(dialog)
                settle(self.app)
                self.keep(name, dialog.grab())
            finally:
                dialog.reject()

        QTimer.singleShot(0, shoot)
        self.window.menus.run(action)
        settle(self.app)

    def point(self, x: float, y: float, *, free: bool = True) -> Pointer:
        at = self.bench.stage.to_picture(Point(x * IN, y * IN))
        return Pointer(at, 1 / self.bench.view.zoom, Held(free=free))

    def select(self, *names: str) -> None:
        items = self.bench.document.option.items
        self.bench.selection.set([item.id for item in items if any(word in item.name for word in names)])
        settle(self.app)


def _pixels(picture: QPixmap) -> tuple[tuple[int, int], bytes]:
    image = picture.toImage().convertToFormat(QImage.Format.Format_RGB888)
    rows = [bytes(image.constScanLine(y))[: image.width() * 3] for y in range(image.height())]
    return (image.width(), image.height()), b"".join(rows)


# What is shown


def new_panel(studio: Studio) -> None:
    studio.dialog("new-panel", "file.new")


def outline_measures(studio: Studio) -> None:
    def curved(dialog: QDialog) -> None:
        QTest.keyClick(dialog.focusWidget(), Qt.Key.Key_Down)

    studio.dialog("outline-measures", "panel.measures", curved)


def outline_tool(studio: Studio) -> None:
    studio.bench.take_tool("outline")
    studio.look_at(-20.5, 3, -5, 14)
    studio.canvas("outline-tool")


def box(studio: Studio) -> None:
    tool, _view = studio.window.toolbox.tool, studio.bench.view
    studio.look_at(-20, 0.5, -7, 6)
    studio.select("switch")
    tool.press(studio.point(-19.3, 4.8))
    tool.move(studio.point(-15, 3.6))
    tool.move(studio.point(-11.7, 3.5))
    settle(studio.app)
    studio.canvas("box")
    tool.cancel()


def snapping(studio: Studio) -> None:
    studio.look_at(-8, 0.3, 12, 9)
    studio.select("Hour meter")
    tool = studio.window.toolbox.tool
    tool.press(studio.point(9.0, 4.3))
    tool.move(studio.point(8.0, 4.5, free=False))
    tool.move(studio.point(7.02, 5.05, free=False))
    settle(studio.app)
    studio.canvas("snapping")
    tool.cancel()


def turn(studio: Studio) -> None:
    studio.look_at(-7, 8, -1, 13)
    studio.select("Standby flight")
    studio.canvas("turn")


def course(studio: Studio) -> None:
    studio.look_at(-21, -1, 21, 15)
    studio.bench.stage.marks_are_shown = False
    studio.bench.take_tool("course-outline")
    tool = studio.window.toolbox.tool
    for x, y in ((-18, 0), (18, 0), (18, 8)):
        tool.move(studio.point(x, y))
        tool.press(studio.point(x, y))
    tool.move(studio.point(6, 12))
    settle(studio.app)
    studio.canvas("course")
    studio.bench.drawing.abandon()


def properties(studio: Studio) -> None:
    studio.select("Charging outlet, pilot")
    studio.pane("properties", "properties", 560)


def library(studio: Studio) -> None:
    studio.window.docks.dock("library").widget().search.setText("altimeter")
    studio.pane("library", "library", 360)
    studio.window.docks.dock("library").widget().search.clear()


def own_cutout(studio: Studio) -> None:
    def name(dialog: QDialog) -> None:
        QTest.keyClicks(dialog.name, "Stick timer")

    studio.dialog("own-cutout", "place.own", name)


def repeat(studio: Studio) -> None:
    studio.select("Battery master")
    studio.dialog("repeat", "arrange.repeat")


def basic_t(studio: Studio) -> None:
    studio.dialog("basic-t", "place.basic-t")


def stack(studio: Studio) -> None:
    def units(dialog: QDialog) -> None:
        for words in ("Audio panel, rack", "COM radio, rack", "Transponder, rack"):
            field = dialog.focusWidget()
            QTest.keyClick(field, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
            QTest.keyClicks(field, words)
            next(button for button in dialog.findChildren(QPushButton) if "Add" in button.text()).click()
            field.setFocus()

    studio.dialog("stack", "place.stack", units)


def row(studio: Studio) -> None:
    studio.dialog("row", "place.row")


def obstacle(studio: Studio) -> None:
    studio.bench.take_tool("draw-obstacle")
    studio.look_at(-20, 0, 2, 14)
    tool = studio.window.toolbox.tool

    def shoot() -> None:
        dialog = QApplication.activeModalWidget()
        settle(studio.app)
        studio.keep("obstacle", dialog.grab())
        dialog.reject()

    tool.press(studio.point(-5, 0.5))
    tool.move(studio.point(-4.25, 7))
    QTimer.singleShot(200, shoot)
    tool.release(studio.point(-4.25, 7))
    for _ in range(30):
        settle(studio.app)
        QTest.qWait(20)


def measure(studio: Studio) -> None:
    studio.look_at(-7, 3, 6, 12.5)
    studio.bench.take_tool("measure")
    tool = studio.window.toolbox.tool
    tool.press(studio.point(-3.7, 10.0, free=False))
    tool.move(studio.point(1.6, 8.34, free=False))
    tool.press(studio.point(1.6, 8.34, free=False))
    settle(studio.app)
    studio.canvas("measure")


def dimension(studio: Studio) -> None:
    studio.look_at(-7, 3, 6, 13.5)
    studio.bench.take_tool("dimension")
    tool = studio.window.toolbox.tool
    tool.press(studio.point(-3.7, 10.0, free=False))
    tool.press(studio.point(1.6, 8.34, free=False))
    tool.move(studio.point(-1.0, 12.7))
    settle(studio.app)
    studio.canvas("dimension")


def note(studio: Studio) -> None:
    from panelcad.desktop.dialogs.words import note as ask  # noqa: PLC0415 - a dialog
    from panelcad.editing.hooks import hook_near  # noqa: PLC0415

    _words(
        studio,
        "note",
        lambda: ask(
            studio.bench,
            studio.window,
            Point(-4.1 * IN, 2.25 * IN),
            hook_near(studio.bench.stage.layout().plate(studio.bench.stage.plate_id), Point(-4.9 * IN, 1.75 * IN), 5.0),
        ),
        "KEEP CLEAR OF THE LINE",
        (-8, 0.2, 4, 5),
    )


def lettering(studio: Studio) -> None:
    from panelcad.desktop.dialogs.words import lettering as ask  # noqa: PLC0415 - a dialog

    _words(
        studio,
        "lettering",
        lambda: ask(studio.bench, studio.window, Point(-10.3 * IN, 4.9 * IN)),
        "PANEL LIGHTS",
        (-13, 2.5, -6, 6),
    )


def _words(studio: Studio, name: str, ask: Callable[[], None], words: str, box: tuple[float, ...]) -> None:
    """Words put on the panel, as they stand there afterwards."""
    studio.look_at(*box)
    studio.bench.stage.marks_are_shown = False

    def put() -> None:
        dialog = QApplication.activeModalWidget()
        QTest.keyClicks(dialog.focusWidget(), words)
        settle(studio.app)
        dialog.accept()

    QTimer.singleShot(200, put)
    ask()
    settle(studio.app)
    studio.bench.selection.clear()
    settle(studio.app)
    studio.canvas(name)


def views(studio: Studio) -> None:
    for name, view in (("front", "front"), ("behind", "behind"), ("appearance", "look-day"), ("pilot", "pilot")):
        studio.bench.stage.look_from(view)
        studio.look_at_all(60.0 if view == "pilot" else 8.0)
        studio.canvas(f"view-{name}")
    studio.bench.stage.look_from("front")


def section(studio: Studio) -> None:
    studio.bench.section.run_at(1.6 * IN)
    studio.pane("view-section", "section", 420)


def findings(studio: Studio) -> None:
    _faults(studio)
    studio.pane("findings", "findings", 520)
    studio.bench.document.look_at("glass")


def why(studio: Studio) -> None:
    from panelcad.desktop.dialogs.explanation import explain  # noqa: PLC0415 - a dialog

    _faults(studio)

    def shoot() -> None:
        dialog = QApplication.activeModalWidget()
        settle(studio.app)
        studio.keep("why", dialog.grab())
        dialog.reject()

    QTimer.singleShot(200, shoot)
    explain(studio.bench, studio.bench.judge.report.findings[0], studio.window)
    studio.bench.document.look_at("glass")


def _faults(studio: Studio) -> None:
    """The option that the sample spoils on purpose."""
    studio.bench.document.look_at(studio.bench.document.project.options[2].id)
    studio.bench.judge.check_now()
    settle(studio.app)


def options(studio: Studio) -> None:
    studio.window.docks.dock("options").show()
    while studio.bench.comparer.comparison is None:
        settle(studio.app)
        QTest.qWait(20)
    studio.pane("options", "options", 460)


def equipment(studio: Studio) -> None:
    studio.pane("equipment", "equipment", 620)


def release(studio: Studio) -> None:
    def initials(dialog: QDialog) -> None:
        dialog.by.setText("A.B.")
        dialog.folder.text.setText("released")

    studio.dialog("release", "file.release", initials)


def verify(studio: Studio) -> None:
    from panelcad.desktop.dialogs.verifying import show_verification  # noqa: PLC0415 - a dialog
    from panelcad.outputs.dxf import export_dxf  # noqa: PLC0415

    with tempfile.TemporaryDirectory() as folder, contextlib.chdir(folder):
        file = Path("panel.dxf")
        export_dxf(studio.bench.document.project, studio.bench.document.option, "panel", file)

        def shoot() -> None:
            dialog = QApplication.activeModalWidget()
            settle(studio.app)
            studio.keep("verify", dialog.grab())
            dialog.reject()

        QTimer.singleShot(1500, shoot)
        show_verification(studio.window.parts, str(file))


def preferences(studio: Studio) -> None:
    from PySide6.QtWidgets import QTabWidget  # noqa: PLC0415 - only here

    studio.dialog("preferences", "edit.preferences", lambda dialog: dialog.findChild(QTabWidget).setCurrentIndex(2))


SHOTS: Final = {
    shot.__name__: shot
    for shot in (
        new_panel,
        outline_measures,
        outline_tool,
        box,
        snapping,
        turn,
        course,
        properties,
        library,
        own_cutout,
        repeat,
        basic_t,
        stack,
        row,
        obstacle,
        measure,
        dimension,
        note,
        lettering,
        views,
        section,
        findings,
        why,
        options,
        equipment,
        release,
        verify,
        preferences,
    )
}


def main() -> None:
    wanted = sys.argv[1:] or list(SHOTS)
    with tempfile.TemporaryDirectory() as scratch:
        QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, scratch)
        screen = Path(scratch) / "screen.json"
        screen.write_text(json.dumps({"screens": [SCREEN]}), encoding="utf-8")
        os.environ["QT_QPA_PLATFORM"] = f"offscreen:configfile={screen}"  # the usual one is too small for dialogs
        studio = Studio(Path(scratch))
        for name in wanted:
            SHOTS[name](studio)
            studio.fresh()
        studio.bench.document.mark_saved(Path(scratch) / "tourer.panel.json", studio.bench.document.project)
        studio.window.close()


if __name__ == "__main__":
    main()
