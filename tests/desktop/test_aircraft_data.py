import shutil

import pytest
from PySide6.QtTest import QTest

from panelcad.desktop.commands.planning import write_comparison_of, write_papers_of
from panelcad.desktop.dialogs.aircraft.dialog import AircraftData
from panelcad.library.samples import sample_file
from panelcad.model.planning import FlightKind
from tests.desktop.test_options_pane import equipped  # noqa: F401 - a fixture


@pytest.fixture
def dialog(window):
    made = AircraftData(window.bench, window)
    yield made
    made.deleteLater()


@pytest.mark.parametrize("sample", ["tourer", "trainer", "twin"])
def test_taking_over_untouched_data_changes_nothing(window, tmp_path, sample) -> None:
    path = tmp_path / "sample.panel.json"
    shutil.copy(sample_file(sample), path)
    window.open(path)
    before = window.bench.document.project
    dialog = AircraftData(window.bench, window)
    dialog.take_over()
    assert dialog.problem.text() == ""
    assert window.bench.document.project == before
    dialog.deleteLater()


def test_an_aircraft_is_entered_from_nothing_in_one_undo_step(window, dialog) -> None:
    flight = dialog.flight.form.editors
    flight["flight"].setCurrentText("day IFR")
    flight["engines"].setText("1")
    electrical = dialog.electrical
    electrical.form.editors["voltage"].setCurrentText("14 V")
    electrical.form.editors["capacity"].setText("24,5")
    electrical.alternators.add({"name": "Alternator", "rating": 60.0})
    electrical.buses.add({"name": "Main bus", "fed_by": ("Alternator", "battery")})
    electrical.loads.add({"name": "Pitot heat", "continuous": 7.5, "bus": "Main bus"})
    weight = dialog.weight.form.editors
    weight["datum"].setText("firewall")
    weight["empty_mass"].setText("742")
    weight["empty_arm"].setText("40 in")
    dialog.costs.form.editors["hourly_rate"].setText("115.50")
    dialog.option.lines.add({"name": "Sheet", "amount": "250"})
    dialog.take_over()
    assert dialog.problem.text() == ""
    planning = window.bench.document.project.planning
    assert planning.flight is FlightKind.DAY_IFR
    system = planning.electrical
    assert (system.alternators[0].rating, system.battery.capacity) == (60.0, 24.5)
    assert system.buses[0].fed_by == ("alternator", "battery")
    assert system.loads[0].circuit.bus == "main-bus"
    assert (planning.weight.empty_mass, planning.weight.empty_arm) == (742.0, 1016.0)
    assert str(planning.costs.hourly_rate) == "115.50"
    assert window.bench.document.option.planning.costs.lines[0].name == "Sheet"
    assert [step.title for step in window.bench.document.done] == ["Change the aircraft's data"]


@pytest.mark.parametrize(
    ("key", "text", "words"),
    [
        ("empty_mass", "two stone", "a mass such as 2.4 lb or 1.1 kg"),
        ("empty_arm", "far", "a length such as"),
        ("on", "yesterday", "is not usable"),
    ],
)
def test_nonsense_is_said_and_nothing_is_lost(window, dialog, key, text, words) -> None:
    before = window.bench.document.project
    dialog.weight.form.editors["datum"].setText("firewall")
    dialog.weight.form.editors[key].setText(text)
    dialog.take_over()
    assert words in dialog.problem.text()
    assert window.bench.document.project is before
    assert dialog.weight.form.editors[key].text() == text


def test_a_faulty_row_is_named(dialog) -> None:
    dialog.weight.form.editors["datum"].setText("firewall")
    dialog.weight.stations.add({"name": "Seats", "arm": 900.0, "most": 80.0})
    dialog.weight.stations.add({"name": "Tank"})
    dialog.take_over()
    assert "'Loading stations', row 2" in dialog.problem.text()


def test_a_system_without_its_voltage_is_not_dropped_silently(dialog) -> None:
    dialog.electrical.alternators.add({"name": "Alternator", "rating": 60.0})
    dialog.take_over()
    assert "14 V or 28 V for the electrical system" in dialog.problem.text()


def test_an_option_may_have_a_system_of_its_own(equipped) -> None:  # noqa: F811
    equipped.bench.document.look_at("bad")
    dialog = AircraftData(equipped.bench, equipped)
    page = dialog.own_electrical
    page.begin.click()
    page.system.alternators.table.item(0, 1).setText("40")
    dialog.take_over()
    assert dialog.problem.text() == ""
    project = equipped.bench.document.project
    assert project.option("bad").planning.electrical.alternators[0].rating == 40.0
    assert project.planning.electrical.alternators[0].rating == 10.0
    dialog.deleteLater()


def test_how_a_unit_is_fed_is_entered_beside_it(equipped) -> None:  # noqa: F811
    equipped.docks.dock("equipment").show()
    pane = equipped.docks.dock("equipment").widget()
    equipped.bench.document.look_at("new")
    pane.fitted.setCurrentItem(pane.fitted.topLevelItem(0))
    form = pane.fitting
    form.typed["arm"].setFocus()
    QTest.keyClicks(form.typed["arm"], "16 in")
    form.typed["arm"].editingFinished.emit()
    form.gauge.setCurrentText("18")
    form.gauge.activated.emit(form.gauge.currentIndex())
    item = equipped.bench.document.option.item("radio")
    assert item.arm == pytest.approx(406.4)
    assert item.circuit.wire.gauge == "18"
    form.typed["breaker"].setText("many")
    form.typed["breaker"].editingFinished.emit()
    assert form.typed["breaker"].text() == ""


def test_papers_are_written_from_the_window(equipped, tmp_path) -> None:  # noqa: F811
    report = write_comparison_of(equipped.parts, tmp_path)
    assert report.name == "equipped-comparison.pdf"
    assert report.read_bytes().startswith(b"%PDF")
    assert len(write_papers_of(equipped.parts, tmp_path / "shop")) > 5
