from decimal import Decimal

import pytest
from pydantic import ValidationError

from panelcad.errors import UnusableInput
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.function import Function
from panelcad.model.planning import Bus, ElectricalSystem, Planning, Voltage
from panelcad.model.project import Item
from panelcad.store.project_file import from_bytes, to_bytes
from tests import builders


def unit(**fields: object) -> EquipmentUnit:
    plain = {"name": "box", "title": "Box", "family": "test", "place": "radio bay", "source": builders.SOURCE}
    return EquipmentUnit.model_validate(plain | fields)


def test_mass_may_be_written_with_its_unit() -> None:
    assert unit(mass="2 lb").mass == 0.90718474


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"mass": -1.0}, "greater than or equal to 0"),
        ({"mass": "heavy"}, "a mass in kg, or a text such as '2.4 lb', is expected"),
        ({"price": "-5"}, "greater than or equal to 0"),
        ({"price": "cheap"}, "an exact number such as '1250.00' is expected"),
        ({"provides": ("mind reading",)}, "attitude"),
        ({"draw_14": {"continuous": 2.0, "peak": 1.0}}, "a peak current not below"),
        ({"supplies": ("air data",), "needs": ({"supply": "air data"},)}, "a circular need"),
        ({"needs": ({"supply": "air data", "for_functions": ("altitude",)},)}, "which it does not provide"),
        ({"needs": ({},)}, "either a supply or a controller"),
        ({"unpowered": ("COM",)}, "gives something without power that it does not provide"),
        ({"place": "panel"}, "a cutout for a unit on the panel"),
        ({"provides": ("COM", "COM")}, "lists something twice"),
    ],
)
def test_what_cannot_be_is_refused_with_a_sentence(fields: dict[str, object], sentence: str) -> None:
    with pytest.raises(ValidationError, match=sentence):
        unit(**fields)


def test_what_nobody_entered_is_unknown_not_zero() -> None:
    box = unit()
    assert (box.mass, box.price, box.draw(14), box.labour) == (None, None, None, None)


def test_money_is_exact_as_typed() -> None:
    assert unit(price=0.1).price == Decimal("0.1")


def test_equipment_survives_saving_in_the_files_unit() -> None:
    box = unit(mass="2 lb", price="1250.10", provides=("COM",), draw_14={"continuous": 0.7})
    project = builders.project(units=(box,), unit="in")
    assert from_bytes(to_bytes(project), "test") == project


def test_an_item_names_a_carried_unit() -> None:
    with pytest.raises(ValidationError, match="is unit 'box', which is not carried"):
        builders.project(items=(Item(id="i1", name="Box", unit="box"),))


def test_an_item_hangs_on_a_bus_that_is_there() -> None:
    system = ElectricalSystem(voltage=Voltage.V14, buses=(Bus(id="main", name="Main bus"),))
    with pytest.raises(ValidationError, match="on bus 'avionics', which is not there"):
        builders.project(
            units=(unit(),),
            planning=Planning(electrical=system),
            items=(Item.model_validate({"id": "i1", "name": "Box", "unit": "box", "circuit": {"bus": "avionics"}}),),
        )


def test_buses_are_not_fed_in_a_circle() -> None:
    a, b = Bus(id="a", name="A", fed_by=("b",)), Bus(id="b", name="B", fed_by=("a",))
    with pytest.raises(ValidationError, match="in a circle"):
        ElectricalSystem(voltage=Voltage.V14, buses=(a, b))


def test_an_unknown_function_in_a_file_is_one_clear_sentence() -> None:
    text = to_bytes(builders.project(units=(unit(provides=(Function.COM,)),))).decode()
    with pytest.raises(UnusableInput, match=r"my.panel.json, units 1, provides 1: 'radio' is not usable; expected"):
        from_bytes(text.replace('"COM"', '"radio"').encode(), "my.panel.json")
