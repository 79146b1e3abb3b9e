"""Copy and paste: within an option, between options, and, as text, between projects and windows."""

from typing import Final

from PySide6.QtGui import QGuiApplication, QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.edit import has_selection
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.window_parts import Parts
from panelcad.desktop.workbench import Workbench
from panelcad.editing.clip import Clip, copy, from_text, paste, to_text
from panelcad.editing.duplicate import duplicate
from panelcad.editing.places import place_of
from panelcad.editing.remove import remove
from panelcad.editing.snapping.on_plate import standings
from panelcad.editing.snapping.standing import Standing, around
from panelcad.errors import PanelcadError
from panelcad.units import rounded

_Keys = QKeySequence.StandardKey


def _copy(parts: Parts) -> None:
    _copied(parts.bench)


def _copied(bench: Workbench) -> bool:
    """Whether there was something to copy; why not is told."""
    try:
        clip = copy(bench.document.project, bench.document.option_id, bench.selection.ids)
    except PanelcadError as refusal:
        bench.told.emit(str(refusal))
        return False
    QGuiApplication.clipboard().setText(to_text(clip))
    bench.told.emit(f"Copied {len(bench.selection)} to the clipboard")
    return True


def _cut(parts: Parts) -> None:
    ids = parts.bench.selection.ids
    if not _copied(parts.bench):
        return
    parts.bench.edit("Cut", lambda project, option: remove(project, option, ids))


def _paste(parts: Parts) -> None:
    bench = parts.bench
    try:
        clip = from_text(QGuiApplication.clipboard().text())
    except PanelcadError:
        bench.told.emit("The clipboard holds nothing that belongs on a panel")
        return
    shift = _free_shift(bench, clip)
    bench.make("Paste", lambda project, option: paste(project, option, bench.stage.plate_id, clip, *shift))


def _free_shift(bench: Workbench, clip: Clip) -> tuple[float, float]:
    """Where it was, or a coarse step beside for each time that something stands there already."""
    taken = {(rounded(one.centre.x), rounded(one.centre.y)) for one in _standings(bench).values()}
    places = [place_of(part) for part in (*clip.items, *clip.cuts, *clip.attach_screws, *clip.engravings)]
    step = bench.settings.step("coarse", bench.unit)
    times = 0
    while any((rounded(at.x + times * step), rounded(at.y - times * step)) in taken for at in places):
        times += 1
    return times * step, -times * step


def _duplicate(parts: Parts) -> None:
    """Once more, to the right, a web's width away."""
    bench = parts.bench
    ids = bench.selection.ids
    known = _standings(bench)
    chosen = [known[one] for one in ids if one in known]
    step = bench.settings.step("coarse", bench.unit)
    width = around(chosen, "").box[2] - around(chosen, "").box[0] if chosen else 0.0
    dx = rounded(width + bench.document.project.profile.web_advised) if chosen else step
    bench.make("Duplicate", lambda project, option: duplicate(project, option, ids, dx, 0.0))


def _standings(bench: Workbench) -> dict[str, Standing]:
    return standings(bench.stage.layout(), bench.stage.plate_id)


ACTIONS: Final = (
    Action("edit.cut", "Cu&t", "&Edit", 1, _cut, _Keys.Cut, has_selection),
    Action("edit.copy", "&Copy", "&Edit", 1, _copy, _Keys.Copy, has_selection),
    Action("edit.paste", "&Paste", "&Edit", 1, _paste, _Keys.Paste, has_panel),
    Action("edit.duplicate", "D&uplicate", "&Edit", 1, _duplicate, "Ctrl+D", has_selection, icon="duplicate"),
)
