"""Actions on cutouts of one's own."""

from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.window_parts import Parts
from panelcad.editing.carry import earlier_versions
from panelcad.editing.lookup import carried_cutout
from panelcad.errors import PanelcadError
from panelcad.model.cutout import Cutout


def _chosen(parts: Parts) -> Cutout | None:
    """The cutout that is picked in the library pane."""
    from panelcad.desktop.panes.library import CUTOUT_ROLE, LibraryPane  # noqa: PLC0415 - the pane is made by then

    pane = parts.window.docks.dock("library").widget()
    if not isinstance(pane, LibraryPane):
        return None
    cutout = pane.list.currentIndex().data(CUTOUT_ROLE)
    return cutout if isinstance(cutout, Cutout) else None


def _own_chosen(parts: Parts) -> Cutout | None:
    """The cutout of our own that is picked in the library pane; that there is none is told."""
    cutout = _chosen(parts)
    if cutout is None or not cutout.family.startswith("own-"):
        parts.bench.told.emit("Choose a cutout of our own in the library first")
        return None
    return cutout


def _describe(parts: Parts, like: Cutout | None, *, is_changed: bool = False) -> Cutout | None:
    """What was kept in the library."""
    from panelcad.desktop.dialogs.own.form import OwnCutout  # noqa: PLC0415 - a dialog loads when it is opened

    dialog = OwnCutout(parts.bench, parts.window, like, is_changed=is_changed)
    if not dialog.exec() or dialog.cutout is None:
        return None
    parts.bench.told.emit(f"'{dialog.cutout.title}' is kept in our library")
    return dialog.cutout


def _describe_and_take(parts: Parts, like: Cutout | None) -> None:
    cutout = _describe(parts, like)
    if cutout is not None:
        parts.bench.place_wanted.emit(cutout)


def _new(parts: Parts) -> None:
    _describe_and_take(parts, None)


def _like(parts: Parts) -> None:
    cutout = _chosen(parts)
    if cutout is None:
        parts.bench.told.emit("Choose a cutout in the library first")
    else:
        _describe_and_take(parts, cutout)


def _change(parts: Parts) -> None:
    cutout = _own_chosen(parts)
    changed = _describe(parts, cutout, is_changed=True) if cutout is not None else None
    document = parts.bench.document
    older = earlier_versions(document.project, document.option, changed) if changed is not None else ()
    if changed is not None and older:
        parts.bench.told.emit(
            f"'{changed.title}' is kept in our library. What is placed from it stays as it was ({len(older)} here): "
            "Ctrl+H replaces what is selected"
        )


def _selected(parts: Parts) -> Cutout | None:
    """The cutout that the one thing selected is made from, as the project carries it."""
    if not has_panel(parts) or len(parts.bench.selection) != 1:
        return None
    document = parts.bench.document
    return carried_cutout(document.project, document.option, parts.bench.selection.current)


def _keep_selected(parts: Parts) -> None:
    cutout = _selected(parts)
    if cutout is not None:
        _describe(parts, cutout)


def _forget(parts: Parts) -> None:
    from panelcad.desktop.dialogs.own.keep import forget_cutout  # noqa: PLC0415

    cutout = _own_chosen(parts)
    if cutout is None or not _is_sure(parts, cutout):
        return
    try:
        forget_cutout(cutout)
    except PanelcadError as refusal:
        parts.bench.refused.emit(str(refusal))
        return
    parts.bench.read_catalogue_again()
    parts.bench.told.emit(f"'{cutout.title}' is no longer in our library; projects that use it keep it")


def _is_sure(parts: Parts, cutout: Cutout) -> bool:
    """The library is a file of its own, so undo does not bring it back."""
    forget, keep = "&Forget it", "&Keep it"
    question = f"Take '{cutout.title}' out of our library for good?"
    detail = "Projects that use it keep it."
    return parts.asking.choice("Forget our own cutout", question, detail, forget, keep, loses=forget) == forget


_MENU: Final = "&Place"
ACTIONS: Final = (
    Action(
        "place.own",
        "A cutout of our &own…",
        _MENU,
        9,
        _new,
        "Ctrl+Alt+N",
        has_panel,
        hint="Describe a cutout in a form and keep it in your library",
    ),
    Action("place.own-like", "A cutout &like the chosen one…", _MENU, 9, _like, None, has_panel),
    Action("place.own-change", "&Change our own cutout…", _MENU, 9, _change, None, has_panel),
    Action(
        "place.own-selected",
        "&Keep the selected one's cutout…",
        _MENU,
        9,
        _keep_selected,
        None,
        lambda parts: _selected(parts) is not None,
        hint="In our library too, such as one that came with somebody's project",
    ),
    Action("place.own-forget", "&Forget our own cutout…", _MENU, 9, _forget, None, has_panel),
)
