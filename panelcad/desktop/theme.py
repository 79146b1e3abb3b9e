"""Colours of the window, light and dark. Every pair of ink and ground has a contrast of at least 4.5 : 1 (WCAG AA)."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from panelcad.desktop.stylesheet import stylesheet
from panelcad.drawing.style import SCREEN_DARK, SCREEN_LIGHT, ViewStyle


class ThemeChoice(StrEnum):
    SYSTEM = "as the system"
    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True)
class Theme:
    """Colours as '#rrggbb'."""

    is_dark: bool
    view: ViewStyle
    ground: str
    raised: str
    field: str
    hovered: str
    line: str
    field_line: str
    ink: str
    faint: str
    disabled: str
    accent: str
    on_accent: str
    chosen: str
    selection: str
    guide: str
    label_ground: str
    caution_ground: str
    caution_ink: str
    wrong: str
    severity: dict[str, str]
    on_severity: str


LIGHT: Final = Theme(
    is_dark=False,
    view=SCREEN_LIGHT,
    ground="#f3f4f6",
    raised="#ffffff",
    field="#ffffff",
    hovered="#e4e7eb",
    line="#d3d8de",
    field_line="#7b8590",
    ink="#1c232b",
    faint="#56616d",
    disabled="#9aa3ad",
    accent="#0a6e6a",
    on_accent="#ffffff",
    chosen="#d3ebe9",
    selection="#0a7f7a",
    guide="#a3127a",
    label_ground="#ffffff",
    caution_ground="#fdf1d3",
    caution_ink="#4d3800",
    wrong="#b3261e",
    severity={"error": "#b3261e", "warning": "#945200", "advice": "#3a5a80", "accepted": "#56616d"},
    on_severity="#ffffff",
)
DARK: Final = Theme(
    is_dark=True,
    view=SCREEN_DARK,
    ground="#1d2228",
    raised="#252b32",
    field="#161a1f",
    hovered="#313942",
    line="#39424c",
    field_line="#76828f",
    ink="#e6eaee",
    faint="#a3afbb",
    disabled="#66717c",
    accent="#53c7bf",
    on_accent="#08211f",
    chosen="#1f4644",
    selection="#3fd6cb",
    guide="#f58fd5",
    label_ground="#252b32",
    caution_ground="#3a3115",
    caution_ink="#f5dfa3",
    wrong="#ff8f87",
    severity={"error": "#ff8f87", "warning": "#f2b45c", "advice": "#9cc3f0", "accepted": "#a3afbb"},
    on_severity="#14181c",
)


def theme_for(choice: ThemeChoice) -> Theme:
    """The chosen theme; the system's where none was chosen."""
    if choice is ThemeChoice.SYSTEM:
        return DARK if QGuiApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark else LIGHT
    return DARK if choice is ThemeChoice.DARK else LIGHT


def dress(app: QApplication, theme: Theme) -> None:
    """Give the whole program this theme."""
    app.setStyle("Fusion")
    app.setPalette(palette(theme))
    app.setStyleSheet(stylesheet(theme))


def palette(theme: Theme) -> QPalette:
    made = QPalette()
    role = QPalette.ColorRole
    for name, colour in (
        (role.Window, theme.ground),
        (role.WindowText, theme.ink),
        (role.Base, theme.field),
        (role.AlternateBase, theme.ground),
        (role.Text, theme.ink),
        (role.Button, theme.raised),
        (role.ButtonText, theme.ink),
        (role.ToolTipBase, theme.raised),
        (role.ToolTipText, theme.ink),
        (role.PlaceholderText, theme.faint),
        (role.Highlight, theme.accent),
        (role.HighlightedText, theme.on_accent),
        (role.Link, theme.accent),
        (role.Accent, theme.accent),
        (role.Mid, theme.line),
    ):
        made.setColor(name, QColor(colour))
    for name in (role.WindowText, role.Text, role.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, name, QColor(theme.disabled))
    return made
