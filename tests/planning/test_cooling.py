import pytest

from panelcad.planning.cooling import airflow, panel_heat
from tests.planning import kit


def test_airflow_of_a_hundred_watts() -> None:
    """P = rho c V dT with 1.2 kg/m³ and 1005 J/(kg·K): 100 W at 10 °C are 0.00829 m³/s, 17.6 cubic feet a minute."""
    assert airflow(100.0, 10.0) == pytest.approx(17.6, abs=0.1)
    assert airflow(100.0, 10.0) == pytest.approx(100.0 / (1.2 * 1005.0 * 10.0) * 60.0 / 0.3048**3, rel=0.005)


def test_only_what_draws_continuously_behind_the_panel_heats_it() -> None:
    behind = kit.unit("behind", place="behind the panel", draw_14={"continuous": 2.0})
    units = (
        behind,
        kit.unit("bay", draw_14={"continuous": 5.0}),
        kit.unit("moments", place="behind the panel", duty="intermittent", draw_14={"continuous": 0.0, "peak": 9.0}),
        kit.unit("unknown", place="behind the panel"),
        kit.unit("gyro", place="behind the panel", power="vacuum"),
    )
    found = panel_heat(kit.fitted(*units, planning={"electrical": {"voltage": 14}}))
    assert found is not None
    assert (found.watts, found.unknown) == (28.0, ("unknown",))


def test_without_a_system_it_is_not_known() -> None:
    assert panel_heat(kit.fitted()) is None
