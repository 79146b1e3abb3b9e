"""From where one is in the window to the section of help that explains it: tools, views, panes, dialogs."""

from enum import Enum
from typing import Final

from PySide6.QtWidgets import QWidget

from panelcad.desktop.tools.toolbox import PLACING

TOOLS: Final = {
    "select": "help/select.md#pick",
    "pan": "help/select.md#zoom-and-pan",
    PLACING: "help/library.md#place",
    "outline": "help/outline.md#shape-the-outline",
    "course-outline": "help/outline.md#point-by-point",
    "course-plate": "help/outline.md#point-by-point",
    "course-hole": "help/outline.md#point-by-point",
    "split": "help/outline.md#split",
    "draw-opening": "help/outline.md#openings-of-the-sheet",
    "draw-obstacle": "help/around.md#obstacles",
    "draw-keep-out": "help/around.md#keep-outs",
    "draw-depth": "help/around.md#depth-limits",
    "draw-moving": "help/around.md#moving-parts",
    "measure": "help/measure.md#measure",
    "dimension": "help/measure.md#dimensions-that-stay",
    "note": "help/lettering.md#notes-on-the-drawing",
    "lettering": "help/lettering.md#lettering-in-the-metal",
    "eye": "help/views.md#pilots-eye",
    "section": "help/views.md#section",
}
"""Each tool of the tool table, and the placing of a cutout."""
VIEWS: Final = {
    "front": "help/views.md#front",
    "behind": "help/views.md#behind",
    "pilot": "help/views.md#pilots-eye",
    "pilot-shorter": "help/views.md#pilots-eye",
    "pilot-taller": "help/views.md#pilots-eye",
    "look-day": "help/views.md#appearance",
    "look-dusk": "help/views.md#appearance",
    "look-night": "help/views.md#appearance",
    "look-night-red": "help/views.md#appearance",
}
PANES: Final = {
    "library": "help/library.md#search-the-library",
    "items": "help/select.md#the-list-of-what-is-on-the-panel",
    "properties": "help/select.md#properties",
    "findings": "help/findings.md#the-list",
    "layers": "help/views.md#layers",
    "outline": "help/outline.md#the-outline-in-figures",
    "drawing": "help/outline.md#point-by-point",
    "history": "help/select.md#undo",
    "equipment": "help/options.md#equipment",
    "section": "help/views.md#section",
    "options": "help/options.md#side-by-side",
}


class Dialog(Enum):
    """Each dialog and its section."""

    ACCEPTANCE = "help/findings.md#accept-a-finding"
    AIRCRAFT = "help/options.md#the-aircrafts-data"
    ANOTHER_PLATE = "help/outline.md#more-plates"
    ARRANGE_GAPS = "help/arrange.md#gaps"
    ARRANGE_GRID = "help/arrange.md#repeat"
    BASIC_T = "help/arrangements.md#the-basic-t"
    CAUTIONS = "help/README.md#before-metal-is-cut"
    CUT_SIZE = "help/library.md#size-of-a-cut"
    EYE = "help/views.md#pilots-eye"
    FILES = "help/files.md#save"
    FIND_ACTION = "help/keys.md#find-an-action"
    FLANGE = "help/outline.md#flanges"
    FLIGHT = "help/views.md#the-flight-shown"
    JOIN = "help/outline.md#join"
    LABELS = "help/lettering.md#labels-of-controls"
    LETTERING = "help/lettering.md#lettering-in-the-metal"
    LONG_WORK = "help/release.md#while-it-is-written"
    LOOK = "help/views.md#finish-and-colours"
    NEW_PANEL = "help/first-panel.md#1-begin"
    NOTE = "help/lettering.md#notes-on-the-drawing"
    OPTION = "help/options.md#options"
    OPENING = "help/outline.md#openings-of-the-sheet"
    OUTLINE_MEASURES = "help/outline.md#an-outline-by-its-measures"
    OWN_CUTOUT = "help/library.md#a-cutout-of-our-own"
    OWNER_VIEW = "help/views.md#show-to-the-owner"
    PHOTOGRAPH = "help/views.md#a-photograph-of-the-panel"
    PLACARDS = "help/lettering.md#placards"
    PREFERENCES = "help/files.md#preferences"
    RECOVERY = "help/files.md#after-a-crash"
    RELEASE = "help/release.md#release"
    REPLACE = "help/library.md#replace"
    REVISION = "help/release.md#the-next-revision"
    ROW = "help/arrangements.md#rows"
    SCREWS = "help/outline.md#attach-screws"
    SHARED_FILE = "help/files.md#a-file-that-changes-elsewhere"
    SHEET = "help/outline.md#the-sheet"
    SPLIT = "help/outline.md#split"
    STACK = "help/arrangements.md#stacks"
    STANDING = "help/around.md#in-figures"
    TAKE_IN = "help/outline.md#take-in-a-drawing"
    TURN = "help/arrange.md#turn"
    VERIFY = "help/release.md#verify"
    WHY = "help/findings.md#why"


MESSAGES: Final = {
    "Unsaved changes": Dialog.FILES,
    "The file cannot be opened": Dialog.FILES,
    "The project was not saved": Dialog.FILES,
    "Not written": Dialog.FILES,
    "Nothing was written": Dialog.FILES,
    "Help cannot be shown": Dialog.FILES,
    "Open elsewhere": Dialog.SHARED_FILE,
    "Changed on disk": Dialog.SHARED_FILE,
    "Unsaved work was found": Dialog.RECOVERY,
    "Discard unsaved work": Dialog.RECOVERY,
    "Forget our own cutout": Dialog.OWN_CUTOUT,
    "The limits cannot be used": Dialog.PREFERENCES,
    "Take in a drawing": Dialog.TAKE_IN,
    "Nothing was taken in": Dialog.TAKE_IN,
    "The photograph cannot be used": Dialog.PHOTOGRAPH,
    "Nothing was released": Dialog.RELEASE,
    "Not released": Dialog.RELEASE,
    "Released": Dialog.RELEASE,
    "No revision was opened": Dialog.REVISION,
    "Not verified": Dialog.VERIFY,
}
"""Messages and questions by their title."""
_PROPERTY: Final = "help"


def lead(widget: QWidget, link: str) -> None:
    """Whoever is in this widget and asks for help is led there."""
    widget.setProperty(_PROPERTY, link)


def link_of(widget: QWidget | None) -> str:
    """The section of the nearest widget around that has one; ''."""
    while widget is not None:
        link = widget.property(_PROPERTY)
        if link:
            return str(link)
        widget = widget.parentWidget()
    return ""
