"""What an item means to the pilot: what it controls, for which engine, what its light tells, if it is reset in flight.

The rules of the pilot's seat need to know it; each row is one undo step.
"""

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtWidgets import QCheckBox, QComboBox

from panelcad.checks.pilot_lights import COLOURS, LAMPS
from panelcad.checks.pilot_reach import BREAKERS
from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.planning import set_fitting
from panelcad.model.cutout import Cutout
from panelcad.model.pilot import Light, LightColour, LightMeaning, Purpose
from panelcad.model.project import Item

_ENGINES: Final = 4
_NOT_ENTERED: Final = "not entered"
_MEANINGS: Final = {colour: meaning for meaning, colour in COLOURS.items()}
Take = Callable[[dict[str, Any]], None]


class MeaningRows:
    """The rows that fit one item, at the end of a form."""

    def __init__(self, form: Form, bench: Workbench, item: Item, cutout: Cutout) -> None:
        self._bench, self._item_id = bench, item.id
        self.purpose: QComboBox | None = None
        self.engine: QComboBox | None = None
        self.light: LightRows | None = None
        self.reset: QCheckBox | None = None
        if cutout.control is not None:
            said = f"{cutout.purpose}, as its cutout says" if cutout.purpose else "nothing a rule names"
            self.purpose = _choice(form, "Controls", [said, *Purpose])
            self.purpose.activated.connect(lambda _: self._take_from("purpose", self.purpose))
        if cutout.control is not None or cutout.shows:
            self.engine = _choice(form, "En&gine", ["no one engine", *range(1, max(_ENGINES, item.engine or 0) + 1)])
            self.engine.activated.connect(lambda _: self._take_from("engine", self.engine))
        if cutout.family == LAMPS or item.light is not None:
            self.light = LightRows(form, self._take)
        if cutout.family == BREAKERS or item.reset_in_flight:
            self.reset = QCheckBox("Must be reset in flight")
            self.reset.clicked.connect(lambda is_on: self._take({"reset_in_flight": is_on}))
            form.add(self.reset)

    def show(self, item: Item) -> None:
        """The item's values as they are now."""
        for box, value in ((self.purpose, item.purpose), (self.engine, item.engine)):
            if box is not None:
                _choose(box, value)
        if self.light is not None:
            self.light.show(item.light)
        if self.reset is not None:
            self.reset.setChecked(item.reset_in_flight)

    def _take_from(self, field: str, box: QComboBox | None) -> None:
        if box is not None:
            self._take({field: box.currentData()})

    def _take(self, facts: dict[str, Any]) -> None:
        title = f"Say what {self._bench.name_of(self._item_id)} means"
        if not self._bench.edit(title, lambda project, option: set_fitting(project, option, self._item_id, **facts)):
            self.show(self._bench.document.option.item(self._item_id))


class LightRows:
    """A light's meaning and colour; the one that was not asked yet begins with what belongs to the other."""

    def __init__(self, form: Form, take: Take) -> None:
        self._take = take
        self.meaning = _choice(form, "Light tells", [_NOT_ENTERED, *LightMeaning])
        self.colour = _choice(form, "Light is", [_NOT_ENTERED, *LightColour])
        self.meaning.activated.connect(lambda _: self._take_meaning())
        self.colour.activated.connect(lambda _: self._take_colour())

    def show(self, light: Light | None) -> None:
        _choose(self.meaning, light.meaning if light else None)
        _choose(self.colour, light.colour if light else None)

    def _take_meaning(self) -> None:
        meaning = self.meaning.currentData()
        colour = self.colour.currentData() or COLOURS.get(meaning, LightColour.WHITE)
        self._take({"light": Light(colour=colour, meaning=meaning) if meaning else None})

    def _take_colour(self) -> None:
        colour = self.colour.currentData()
        meaning = self.meaning.currentData() or _MEANINGS.get(colour, LightMeaning.OTHER)
        self._take({"light": Light(colour=colour, meaning=meaning) if colour else None})


def _choice(form: Form, title: str, choices: list[Any]) -> QComboBox:
    """A row of choices; the first stands for nothing."""
    box = ChoiceBox()
    box.setAccessibleName(title.replace("&", ""))
    box.setMinimumContentsLength(8)
    box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    for place, choice in enumerate(choices):
        box.addItem(str(choice), choice if place else None)
    form.row(title, box)
    return box


def _choose(box: QComboBox, value: Any) -> None:
    box.setCurrentIndex(next(i for i in range(box.count()) if box.itemData(i) == value))
