"""The look and the flight are part of the project, and of no fingerprint."""

import pytest

from panelcad.editing.look import flight_changed, look_changed
from panelcad.errors import EditRefused
from panelcad.model.appearance import Finish
from panelcad.model.fingerprint import option_fingerprint
from panelcad.store.project_file import from_bytes, to_bytes
from tests import builders


def test_look_is_the_options_own():
    project = builders.project()
    changed = look_changed(project, "new", finish=Finish.VENEER, colour="#8a5a33")

    assert changed.option("new").appearance.finish is Finish.VENEER
    assert changed.as_found.appearance == project.as_found.appearance
    assert option_fingerprint(changed, changed.option("new")) == option_fingerprint(project, project.option("new"))


def test_flight_is_kept_in_the_file():
    changed = flight_changed(builders.project(), altitude=6500.0, squawk="1234", airspeeds={"vmc": 72.0})

    assert from_bytes(to_bytes(changed), "test").flight == changed.flight
    assert changed.flight.airspeeds.vmc == 72.0


@pytest.mark.parametrize(
    "changes", [{"squawk": "9999"}, {"airspeed": -1.0}, {"time": "25:00:00"}, {"airspeeds": {"vne": 10.0}}]
)
def test_impossible_flights_are_refused(changes):
    with pytest.raises(EditRefused):
        flight_changed(builders.project(), **changes)


def test_a_colour_is_six_digits():
    with pytest.raises(EditRefused):
        look_changed(builders.project(), "new", colour="red")
