"""Actions on cutouts of one's own."""

from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.window_parts import Parts
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


def _describe(parts: Parts, like: Cutout | None) -> None:
    from panelcad.desktop.dialogs.own.form import OwnCutout  # noqa: PLC0415 - a dialog loads when it is opened

    dialog = OwnCutout(parts.bench, parts.window, like)
    if dialog.exec() and dialog.cutout is not None:
        parts.bench.told.emit(f"'{dialog.cutout.title}' is kept in our library")
        parts.bench.place_wanted.emit(dialog.cutout)


def _new(parts: Parts) -> None:
    _describe(parts, None)


def _like(parts: Parts) -> None:
    cutout = _chosen(parts)
    if cutout is None:
        parts.bench.told.emit("Choose a cutout in the library first")
    else:
        _describe(parts, cutout)


def _forget(parts: Parts) -> None:
    from panelcad.desktop.dialogs.own.keep import forget_cutout  # noqa: PLC0415

    cutout = _chosen(parts)
    if cutout is None or not cutout.family.startswith("own-"):
        parts.bench.told.emit("Choose a cutout of our own in the library first")
        return
    if not _is_sure(parts, cutout):
        return
    try:
        forget_cutout(cutout)
    except PanelcadError as refusal:
        parts.bench.told.emit(str(refusal))
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
    Action("place.own-forget", "&Forget our own cutout…", _MENU, 9, _forget, None, has_panel),
)
