"""Copy and paste: within an option, between options, and, as text, between projects and windows."""

from typing import Final

from PySide6.QtGui import QGuiApplication, QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.clip_keeper import to_paste
from panelcad.desktop.commands.edit import has_selection
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.left_out import left_out_words
from panelcad.desktop.window_parts import Parts
from panelcad.desktop.workbench import Workbench
from panelcad.editing.clip import Clip, copy, left_out, paste, to_text
from panelcad.editing.clip_marks import attached, words_and_places
from panelcad.editing.duplicate import duplicate, least_pitches, not_repeated
from panelcad.editing.remove import remove
from panelcad.editing.snapping.on_plate import standings
from panelcad.editing.snapping.standing import Standing
from panelcad.errors import PanelcadError
from panelcad.geometry.point import Point
from panelcad.units import rounded

_Keys = QKeySequence.StandardKey


def _copy(parts: Parts) -> None:
    _, words = _copied(parts.bench)
    parts.bench.told.emit(words)


def _copied(bench: Workbench) -> tuple[frozenset[str], str]:
    """What of the selection is on the clipboard now, and words that say what was left out, and why."""
    document, ids = bench.document, bench.selection.ids
    try:
        clip = copy(document.project, document.option_id, ids)
    except PanelcadError as refusal:
        return frozenset(), str(refusal)
    QGuiApplication.clipboard().setText(to_text(clip))
    behind = left_out(document.project, document.option_id, ids, clip)
    along = frozenset(ids).difference(behind)
    return along, f"Copied {len(along)} to the clipboard{left_out_words(document.option, behind)}"


def _cut(parts: Parts) -> None:
    along, words = _copied(parts.bench)
    if not along or parts.bench.edit("Cut", lambda project, option: remove(project, option, along)):
        parts.bench.told.emit(words)


def _paste(parts: Parts) -> None:
    bench = parts.bench
    clip, words = to_paste()
    if clip is None:
        bench.told.emit(words)
        return
    shift = _free_shift(bench, clip)
    done = bench.make("Paste", lambda project, option: paste(project, option, bench.stage.plate_id, clip, *shift))
    if done and words:
        bench.told.emit(words)


def _free_shift(bench: Workbench, clip: Clip) -> tuple[float, float]:
    """Where it was, or a coarse step beside for each time that something stands there already.

    Dimensions of the plate alone have no place that could be free: their lines stand a step off.
    """
    plate_id = bench.stage.plate_id
    taken = {_reading(one.centre) for one in _standings(bench).values()}
    taken |= {_reading(at) for at in words_and_places(bench.document.option, plate_id)}
    step = bench.settings.step("coarse", bench.unit)
    times = 0 if clip.places else 1
    while any(_reading(at.moved(times * step, -times * step)) in taken for at in clip.places):
        times += 1
    return times * step, -times * step


def _reading(at: Point) -> Point:
    return Point(rounded(at.x), rounded(at.y))


def _duplicate(parts: Parts) -> None:
    """Once more, to the right, as near as the web and the bodies behind allow, with the labels and notes of it."""
    bench, document = parts.bench, parts.bench.document
    before, option = document.project, document.option
    ids = (*bench.selection.ids, *attached(before, option, bench.selection.ids))
    plate = bench.stage.layout().plate(bench.stage.plate_id)
    dx, _ = least_pitches(plate, ids, before.profile)
    if bench.make("Duplicate", lambda project, option_id: duplicate(project, option_id, ids, dx, 0.0)):
        behind = not_repeated(before, option.id, ids)
        count = len(set(ids).difference(behind))
        bench.told.emit(f"Duplicated {count}{left_out_words(option, behind)}")


def _standings(bench: Workbench) -> dict[str, Standing]:
    return standings(bench.stage.layout(), bench.stage.plate_id)


ACTIONS: Final = (
    Action("edit.cut", "Cu&t", "&Edit", 1, _cut, _Keys.Cut, has_selection),
    Action("edit.copy", "&Copy", "&Edit", 1, _copy, _Keys.Copy, has_selection),
    Action("edit.paste", "&Paste", "&Edit", 1, _paste, _Keys.Paste, has_panel),
    Action("edit.duplicate", "D&uplicate", "&Edit", 1, _duplicate, "Ctrl+D", has_selection, icon="duplicate"),
)
