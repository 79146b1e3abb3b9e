import pytest

from panelcad.editing.blank import blank_project
from panelcad.model.layout import layout
from panelcad.units import LengthUnit


@pytest.mark.parametrize("unit", list(LengthUnit))
def test_a_blank_project_stands_on_its_datum(unit: LengthUnit) -> None:
    project = blank_project(unit)
    left, bottom, right, _ = layout(project, project.options[0]).plates[0].outline.bounds
    assert bottom == pytest.approx(0, abs=1e-6)
    assert -left == pytest.approx(right)
    assert project.unit is unit
