"""What things mean to the pilot, said in the properties pane; Qt hands enum members back as they went in."""

import pytest

from panelcad.editing.place import place
from panelcad.model.cutout import Bezel, Control
from panelcad.model.function import Function
from panelcad.model.pilot import Light, LightColour, LightMeaning, Purpose
from panelcad.model.shape import Circle
from tests import builders

BEZEL = Bezel(shape=Circle(diameter=20), source=builders.SOURCE)
CUTOUTS = {
    "lamp": builders.round_cutout(8.0, "lamp", family="lamps", bezel=BEZEL),
    "breaker": builders.round_cutout(10.0, "breaker", family="breakers", bezel=BEZEL, control=Control.PUSH_BUTTON),
    "gauge": builders.round_cutout(50.0, "gauge", bezel=BEZEL, shows=(Function.TACHOMETER,)),
    "heat": builders.round_cutout(10.0, "heat", bezel=BEZEL, control=Control.PUSH_PULL, purpose=Purpose.MIXTURE),
    "blank": builders.round_cutout(50.0, "blank", bezel=BEZEL),
}


@pytest.fixture
def rows(window, hands):
    """The rows for one of the cutouts, placed and selected; and the item as the document has it."""

    def shown(name: str):
        document = window.bench.document
        put = place(document.project, document.option_id, window.bench.stage.plate_id, CUTOUTS[name], 0.0, -60.0)
        document.apply("Place", put.project)
        window.bench.select_parts((put.item_id,))
        sheet = window.docks.dock("properties").widget().sheet
        return sheet.meaning, lambda: document.option.item(put.item_id)

    return shown


def choose(box, words: str) -> None:
    box.setCurrentIndex(box.findText(words))
    assert box.currentText() == words
    box.activated.emit(box.currentIndex())


def test_a_lamp_asks_for_its_light_and_each_half_brings_the_other(rows, window) -> None:
    meaning, item = rows("lamp")
    assert (meaning.purpose, meaning.engine, meaning.reset) == (None, None, None)
    choose(meaning.light.meaning, "caution")
    assert item().light == Light(colour=LightColour.AMBER, meaning=LightMeaning.CAUTION)
    assert meaning.light.colour.currentText() == "amber"
    choose(meaning.light.colour, "green")
    assert item().light == Light(colour=LightColour.GREEN, meaning=LightMeaning.CAUTION)
    choose(meaning.light.meaning, "not entered")
    assert item().light is None
    choose(meaning.light.colour, "red")
    assert item().light == Light(colour=LightColour.RED, meaning=LightMeaning.WARNING)
    window.menus.actions["edit.undo"].trigger()
    assert item().light is None
    assert meaning.light.colour.currentText() == "not entered"


def test_a_breaker_may_have_to_be_reset_in_flight(rows, window) -> None:
    meaning, item = rows("breaker")
    meaning.reset.click()
    assert item().reset_in_flight
    window.menus.actions["edit.undo"].trigger()
    assert not item().reset_in_flight
    assert not meaning.reset.isChecked()


def test_a_control_says_what_it_controls_and_an_instrument_its_engine(rows) -> None:
    meaning, item = rows("heat")
    assert meaning.purpose.currentText() == "mixture, as its cutout says"
    choose(meaning.purpose, "carburettor heat")
    assert item().purpose is Purpose.CARBURETTOR_HEAT
    meaning, item = rows("gauge")
    assert (meaning.purpose, meaning.light) == (None, None)
    choose(meaning.engine, "2")
    assert item().engine == 2


def test_a_blank_means_nothing(rows) -> None:
    meaning, _ = rows("blank")
    assert (meaning.purpose, meaning.engine, meaning.light, meaning.reset) == (None, None, None, None)
