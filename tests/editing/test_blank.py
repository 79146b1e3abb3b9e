import pytest

from panelcad.editing.blank import blank_project
from panelcad.model.layout import layout
from panelcad.units import LengthUnit, format_exact


@pytest.mark.parametrize("unit", list(LengthUnit))
def test_a_blank_project_stands_on_its_datum(unit: LengthUnit) -> None:
    project = blank_project(unit)
    left, bottom, right, _ = layout(project, project.options[0]).plates[0].outline.bounds
    assert bottom == pytest.approx(0, abs=1e-6)
    assert -left == pytest.approx(right)
    assert project.unit is unit


def test_the_tolerance_of_a_blank_project_is_a_round_number_in_its_unit() -> None:
    told = {unit: format_exact(blank_project(unit).profile.sheet_tolerance, unit) for unit in LengthUnit}
    assert told == {LengthUnit.INCH: "0.005", LengthUnit.MM: "0.1"}
