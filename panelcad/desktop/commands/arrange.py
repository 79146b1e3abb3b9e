"""Actions that put what is selected in order."""

from collections.abc import Callable
from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.edit import has_selection, has_two
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.commands.placing import dialog
from panelcad.desktop.window_parts import Parts
from panelcad.desktop.workbench import Workbench
from panelcad.editing.align import Line, align, align_to, distribute, equal_gaps
from panelcad.editing.between import centre_in_row
from panelcad.editing.extents import Axis, middle
from panelcad.editing.groups import group, lock, ungroup, unlock
from panelcad.editing.mirror import mirror
from panelcad.editing.rotate import turn_each
from panelcad.editing.snapping.on_plate import pilot_line
from panelcad.model.project import Project

Run = Callable[[Parts], None]


def has_three(parts: Parts) -> bool:
    return has_panel(parts) and len(parts.bench.selection) > 2


def has_group(parts: Parts) -> bool:
    chosen = set(parts.bench.selection.ids)
    return has_panel(parts) and any(chosen & {one.id, *one.members} for one in parts.bench.document.option.groups)


def has_locked(parts: Parts) -> bool:
    return has_panel(parts) and bool(set(parts.bench.document.option.locked) & set(parts.bench.selection.ids))


def _turn(degrees: float) -> Run:
    def run(parts: Parts) -> None:
        ids = parts.bench.selection.ids
        parts.bench.edit("Turn", lambda project, option: turn_each(project, option, ids, degrees))

    return run


def _align(line: Line) -> Run:
    def run(parts: Parts) -> None:
        ids = parts.bench.selection.ids
        parts.bench.edit(f"Align {line.value}", lambda project, option: align(project, option, ids, line))

    return run


def _spread(axis: Axis) -> Run:
    def run(parts: Parts) -> None:
        ids = parts.bench.selection.ids
        parts.bench.edit("Spread centres evenly", lambda project, option: distribute(project, option, ids, axis))

    return run


def _gaps(axis: Axis) -> Run:
    def run(parts: Parts) -> None:
        ids = parts.bench.selection.ids
        parts.bench.edit("Make gaps equal", lambda project, option: equal_gaps(project, option, ids, axis))

    return run


def _between(axis: Axis) -> Run:
    def run(parts: Parts) -> None:
        ids = parts.bench.selection.ids
        parts.bench.edit("Centre between", lambda project, option: centre_in_row(project, option, ids, axis))

    return run


def _mirror(axis: Axis) -> Run:
    """About the middle of what is selected."""

    def run(parts: Parts) -> None:
        bench = parts.bench
        ids = bench.selection.ids

        def mirrored(project: Project, option_id: str) -> Project:
            at = middle(project, project.option(option_id), ids)[axis.value]
            return mirror(project, option_id, ids, axis, at)

        bench.edit("Mirror", mirrored)

    return run


def _across_pilot(parts: Parts) -> None:
    """To the other side of the pilot's centre line."""
    bench = parts.bench
    ids, at = bench.selection.ids, _pilot(bench)
    bench.edit("Mirror about the pilot's line", lambda project, option: mirror(project, option, ids, Axis.ACROSS, at))


def _on_pilot(parts: Parts) -> None:
    bench = parts.bench
    ids, at = bench.selection.ids, _pilot(bench)
    bench.edit("To the pilot's line", lambda project, option: align_to(project, option, ids, Line.UPRIGHT, at))


def _on_middle(parts: Parts) -> None:
    bench = parts.bench
    ids = bench.selection.ids
    x1, _, x2, _ = bench.stage.layout().plate(bench.stage.plate_id).outline.bounds
    middle = (x1 + x2) / 2
    bench.edit("To the panel's middle", lambda project, option: align_to(project, option, ids, Line.UPRIGHT, middle))


def _pilot(bench: Workbench) -> float:
    return pilot_line(bench.document.project, bench.stage.layout().plate(bench.stage.plate_id))


def _group(parts: Parts) -> None:
    ids = parts.bench.selection.ids
    parts.bench.edit("Group", lambda project, option: group(project, option, ids)[0])


def _ungroup(parts: Parts) -> None:
    ids = parts.bench.selection.ids
    parts.bench.edit("Ungroup", lambda project, option: ungroup(project, option, ids))


def _lock(parts: Parts) -> None:
    ids = parts.bench.selection.ids
    parts.bench.edit("Lock", lambda project, option: lock(project, option, ids))


def _unlock(parts: Parts) -> None:
    ids = parts.bench.selection.ids
    parts.bench.edit("Unlock", lambda project, option: unlock(project, option, ids))


_MENU: Final = "&Arrange"
_BETWEEN: Final = "One thing between its neighbours; of three the last chosen between the first two"
_ALIGNS: Final = tuple(
    Action(f"arrange.align-{name}", f"Align {line.value}", _MENU, 1, _align(line), None, has_two, icon=f"align-{name}")
    for name, line in (
        ("left", Line.LEFT),
        ("x", Line.UPRIGHT),
        ("right", Line.RIGHT),
        ("top", Line.TOP),
        ("y", Line.LEVEL),
        ("bottom", Line.BOTTOM),
    )
)
ACTIONS: Final = (
    Action("arrange.turn-left", "Turn &left 90°", _MENU, 0, _turn(90.0), "Ctrl+L", has_selection, icon="rotate"),
    Action("arrange.turn-right", "Turn &right 90°", _MENU, 0, _turn(-90.0), "Ctrl+Shift+L", has_selection),
    Action(
        "arrange.turn",
        "Turn b&y an angle…",
        _MENU,
        0,
        dialog("arrange", "turn_in_figures"),
        "Ctrl+U",
        has_selection,
    ),
    *_ALIGNS,
    Action("arrange.spread-x", "Spread centres &across", _MENU, 2, _spread(Axis.ACROSS), None, has_three),
    Action("arrange.spread-y", "Spread centres &up", _MENU, 2, _spread(Axis.UP), None, has_three),
    Action("arrange.gaps-x", "Equal gaps acr&oss", _MENU, 2, _gaps(Axis.ACROSS), "Ctrl+E", has_three, icon="spread-x"),
    Action("arrange.gaps-y", "Equal gaps u&p", _MENU, 2, _gaps(Axis.UP), "Ctrl+Shift+E", has_three, icon="spread-y"),
    Action("arrange.gaps", "Set the &gaps…", _MENU, 2, dialog("arrange", "gaps_in_figures"), "Ctrl+Alt+E", has_two),
    *(
        Action(f"arrange.between-{name}", title, _MENU, 2, _between(axis), None, has_selection, hint=_BETWEEN)
        for name, title, axis in (("x", "Centre &between, across", Axis.ACROSS), ("y", "Centre bet&ween, up", Axis.UP))
    ),
    Action("arrange.to-middle", "To the panel's &middle", _MENU, 3, _on_middle, None, has_selection),
    Action("arrange.to-pilot", "To the p&ilot's centre line", _MENU, 3, _on_pilot, None, has_selection),
    Action("arrange.mirror-x", "Mirror acro&ss", _MENU, 3, _mirror(Axis.ACROSS), None, has_two, icon="mirror"),
    Action("arrange.mirror-y", "Mirror up and &down", _MENU, 3, _mirror(Axis.UP), None, has_two),
    Action("arrange.mirror-pilot", "Mirror about the pilot's line", _MENU, 3, _across_pilot, None, has_selection),
    Action(
        "arrange.repeat",
        "Repeat in a row or grid…",
        _MENU,
        4,
        dialog("arrange", "repeat_in_grid"),
        "Ctrl+Shift+D",
        has_selection,
    ),
    Action("arrange.group", "Group", _MENU, 5, _group, "Ctrl+Alt+G", has_two, icon="group"),
    Action("arrange.ungroup", "U&ngroup", _MENU, 5, _ungroup, "Ctrl+Alt+U", has_group),
    Action("arrange.lock", "Lock in place", _MENU, 5, _lock, "Ctrl+K", has_selection, icon="lock"),
    Action("arrange.unlock", "Unlock", _MENU, 5, _unlock, "Ctrl+Shift+K", has_locked),
)
