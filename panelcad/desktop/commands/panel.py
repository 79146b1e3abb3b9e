"""Actions on the panel itself: its outline, its plates, what holds it, what stands around it."""

from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.commands.placing import dialog
from panelcad.desktop.window_parts import Parts
from panelcad.editing.cut_size import own_opening
from panelcad.editing.flatten import flatten
from panelcad.editing.plates import remove_plate


def has_plates(parts: Parts) -> bool:
    return has_panel(parts) and len(parts.bench.document.option.plates) > 1


def _remove_plate(parts: Parts) -> None:
    bench = parts.bench
    plate_id = bench.stage.plate_id
    name = bench.document.option.plate(plate_id).name
    bench.edit(f"Take {name} away", lambda project, option: remove_plate(project, option, plate_id))


def _lay_out_flat(parts: Parts) -> None:
    bench = parts.bench
    plate_id = bench.stage.plate_id
    bench.edit("Lay out flat", lambda project, option: flatten(project, option, plate_id))


def _has_flange(parts: Parts) -> bool:
    if not has_panel(parts):
        return False
    plate = parts.bench.document.option.plate(parts.bench.stage.plate_id)
    return bool(plate.bends) and not plate.is_flat_pattern


def has_opening(parts: Parts) -> bool:
    bench = parts.bench
    return has_panel(parts) and bool(bench.document.option.plate(bench.stage.plate_id).inner_openings)


def has_own_cut(parts: Parts) -> bool:
    """One cut made to measure is selected."""
    if not has_panel(parts) or len(parts.bench.selection) != 1:
        return False
    document = parts.bench.document
    return own_opening(document.project, document.option, parts.bench.selection.current) is not None


def has_standing(parts: Parts) -> bool:
    if not has_panel(parts) or len(parts.bench.selection) != 1:
        return False
    from panelcad.desktop.dialogs.surroundings import selected_standing  # noqa: PLC0415 - a dialog's module loads late

    return selected_standing(parts.bench) is not None


_MENU: Final = "Pane&l"
ACTIONS: Final = (
    Action(
        "panel.measures",
        "Outline by its &measures…",
        _MENU,
        0,
        dialog("sheets", "outline_by_measures"),
        "Ctrl+M",
        has_panel,
        hint="Rectangular, curved top or stepped",
    ),
    Action(
        "panel.screws",
        "Attach &screws along edges…",
        _MENU,
        0,
        dialog("screws", "screws_along_edges"),
        "Ctrl+Shift+M",
        has_panel,
        hint="Evenly spread, at most a pitch apart",
    ),
    Action(
        "panel.screw",
        "Attach sc&rew at a place…",
        _MENU,
        0,
        dialog("screws", "screw_at_place"),
        None,
        has_panel,
        hint="Where it was measured on the aircraft",
    ),
    Action("panel.sheet", "The s&heet…", _MENU, 0, dialog("sheets", "sheet_data"), None, has_panel),
    Action(
        "panel.flange",
        "&Flange on an edge…",
        _MENU,
        0,
        dialog("bending", "bend_edge"),
        None,
        has_panel,
        hint="A straight flange: height, angle, radius and which way",
    ),
    Action(
        "panel.flat",
        "Lay out fla&t",
        _MENU,
        0,
        _lay_out_flat,
        None,
        _has_flange,
        hint="The flat pattern of a bent plate, which a release needs",
    ),
    Action(
        "panel.eye",
        "Pilot's &centre line and eye…",
        _MENU,
        0,
        dialog("eye_point", "eye_point"),
        None,
        has_panel,
        icon="eye",
        hint="Where the pilot sits and where the eye is, in figures",
        words="eye point seat aircraft",
    ),
    Action("panel.plate", "&Another plate…", _MENU, 1, dialog("sheets", "another_plate"), None, has_panel),
    Action("panel.split", "S&plit the plate…", _MENU, 1, dialog("sheets", "split_sheet"), None, has_panel),
    Action("panel.join", "&Join plates…", _MENU, 1, dialog("sheets", "join_sheets"), None, has_plates),
    Action("panel.take-away", "Take the plate a&way", _MENU, 1, _remove_plate, None, has_plates),
    Action("panel.cut-size", "Si&ze of a cut…", _MENU, 2, dialog("cut_size", "cut_size"), None, has_own_cut),
    Action("panel.opening", "Chan&ge an opening…", _MENU, 2, dialog("openings", "change_opening"), None, has_opening),
    Action(
        "panel.standing",
        "Change what stands aro&und…",
        _MENU,
        2,
        dialog("surroundings", "change_standing"),
        "Ctrl+Return",
        has_standing,
        hint="The selected obstacle, keep-out, depth limit or moving part in figures",
    ),
)
