"""What the program remembers from one day to the next: recent files, the window's layout, steps, the theme."""

from collections.abc import Collection
from pathlib import Path
from typing import Final

from PySide6.QtCore import QByteArray, QObject, QSettings, Signal

from panelcad.desktop.theme import ThemeChoice
from panelcad.units import LengthUnit, parse_length

_MOST_RECENT: Final = 10
_STEPS: Final = {
    LengthUnit.INCH: {"grid": "0.125", "fine": "0.01", "coarse": "0.25"},
    LengthUnit.MM: {"grid": "5", "fine": "0.2", "coarse": "5"},
}
"""Grid, fine and coarse nudge as text in the unit; the user changes them (common practice)."""


_OPTIONS: Final = "options_seen_last"
_BEFORE_PATH: Final = ":"


class Settings(QObject):
    """`changed` says that something the window shows has another value."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._store = QSettings(QSettings.Format.IniFormat, QSettings.Scope.UserScope, "panelcad", "panelcad")

    def _text(self, key: str, default: str = "") -> str:
        return str(self._store.value(key, default))

    def _set(self, key: str, value: object) -> None:
        self._store.setValue(key, value)
        self.changed.emit()

    @property
    def theme(self) -> ThemeChoice:
        stored = self._text("theme", ThemeChoice.SYSTEM.value)
        return ThemeChoice(stored) if stored in set(ThemeChoice) else ThemeChoice.SYSTEM

    @theme.setter
    def theme(self, choice: ThemeChoice) -> None:
        self._set("theme", choice.value)

    @property
    def unit(self) -> LengthUnit:
        """The unit of new projects."""
        return LengthUnit.MM if self._text("unit") == "mm" else LengthUnit.INCH

    @unit.setter
    def unit(self, unit: LengthUnit) -> None:
        self._set("unit", unit.value)

    def step_text(self, name: str, unit: LengthUnit) -> str:
        """The step 'grid', 'fine' or 'coarse' as it was typed, in `unit`."""
        return self._text(f"steps/{unit.value}/{name}", _STEPS[unit][name])

    def step(self, name: str, unit: LengthUnit) -> float:
        """The same in mm."""
        return parse_length(self.step_text(name, unit), unit)

    def set_step(self, name: str, unit: LengthUnit, text: str) -> None:
        """Raises `UnreadableQuantity`."""
        parse_length(text, unit)
        self._set(f"steps/{unit.value}/{name}", text)

    @property
    def snaps(self) -> bool:
        return self._text("snaps", "true") == "true"

    @snaps.setter
    def snaps(self, snaps: bool) -> None:
        self._set("snaps", "true" if snaps else "false")

    @property
    def shows_grid(self) -> bool:
        return self._text("grid", "true") == "true"

    @shows_grid.setter
    def shows_grid(self, shows: bool) -> None:
        self._set("grid", "true" if shows else "false")

    def left_out(self, at_first: frozenset[str]) -> frozenset[str]:
        """Those of the layers that are left out at first which nobody has asked for since."""
        asked_for = self._text("words_shown").split(",")
        return frozenset(layer for layer in at_first if layer not in asked_for)

    def ask_for(self, layers: Collection[str]) -> None:
        """Remember these as the ones that are shown of the layers that are left out at first."""
        self._set("words_shown", ",".join(sorted(layers)))

    @property
    def initials(self) -> str:
        return self._text("initials")

    @initials.setter
    def initials(self, initials: str) -> None:
        self._set("initials", initials)

    @property
    def reason(self) -> str:
        """Why a finding was accepted last."""
        return self._text("reason")

    @reason.setter
    def reason(self, reason: str) -> None:
        self._set("reason", reason)

    @property
    def limits_file(self) -> Path | None:
        """The shop's limits that new panels begin with; None for the program's own."""
        text = self._text("limits_file")
        return Path(text) if text else None

    @limits_file.setter
    def limits_file(self, file: Path | None) -> None:
        self._set("limits_file", str(file) if file is not None else "")

    @property
    def pixels_per_mm(self) -> float:
        """Logical pixels a mm on this screen as calibrated once; 0 where it was not."""
        try:
            return float(self._text("pixels_per_mm", "0"))
        except ValueError:
            return 0.0

    @pixels_per_mm.setter
    def pixels_per_mm(self, value: float) -> None:
        self._set("pixels_per_mm", f"{value:.6f}")

    @property
    def recent_files(self) -> tuple[Path, ...]:
        return tuple(Path(text) for text in self._list("recent_files"))

    def used_file(self, path: Path) -> None:
        """Put a file at the head of the recent ones."""
        self._put_first("recent_files", str(path.resolve()))

    def option_seen_last(self, path: Path) -> str:
        """The id of the option that was looked at last in a file; '' where that is not remembered."""
        kept = (entry.partition(_BEFORE_PATH) for entry in self._list(_OPTIONS))
        return next((option for option, _, file in kept if file == str(path.resolve())), "")

    def saw_option(self, path: Path, option_id: str) -> None:
        """Remember it for as many files as are recent ones."""
        ending = f"{_BEFORE_PATH}{path.resolve()}"
        others = [entry for entry in self._list(_OPTIONS) if not entry.endswith(ending)]
        self._store.setValue(_OPTIONS, [f"{option_id}{ending}", *others][:_MOST_RECENT])

    @property
    def recent_cutouts(self) -> tuple[str, ...]:
        return tuple(self._list("recent_cutouts"))

    def used_cutout(self, name: str) -> None:
        self._put_first("recent_cutouts", name)

    def _list(self, key: str) -> list[str]:
        stored = self._store.value(key, [])
        return [str(entry) for entry in stored] if isinstance(stored, list) else [str(stored)] if stored else []

    def _put_first(self, key: str, entry: str) -> None:
        others = [old for old in self._list(key) if old != entry]
        self._set(key, [entry, *others][:_MOST_RECENT])

    def layout(self) -> tuple[QByteArray, QByteArray]:
        """The window's place and the arrangement of its panes; empty the first time."""
        place, panes = self._store.value("window/place"), self._store.value("window/panes")
        return (
            place if isinstance(place, QByteArray) else QByteArray(),
            panes if isinstance(panes, QByteArray) else QByteArray(),
        )

    def help_layout(self) -> tuple[QByteArray, QByteArray]:
        """The place of the window of help and of the line between its halves; empty the first time."""
        place, halves = self._store.value("help/place"), self._store.value("help/halves")
        return (
            place if isinstance(place, QByteArray) else QByteArray(),
            halves if isinstance(halves, QByteArray) else QByteArray(),
        )

    def remember_help(self, place: QByteArray, halves: QByteArray) -> None:
        self._store.setValue("help/place", place)
        self._store.setValue("help/halves", halves)

    def remember_layout(self, place: QByteArray, panes: QByteArray) -> None:
        self._store.setValue("window/place", place)
        self._store.setValue("window/panes", panes)
