"""Heat behind the panel: nearly all the power that units draw there becomes heat."""

from dataclasses import dataclass
from typing import Final

from panelcad.model.equipment import Duty, Place
from panelcad.planning.electrical.loads import draws
from panelcad.planning.equipment import Equipment

RISE: Final = 10.0
"""The rise of the air's temperature in °C that the airflow is stated for (common practice)."""
_CFM_A_WATT: Final = 1.76
"""Air of 1.2 kg/m³ and 1005 J/(kg·K) at sea level: cubic feet a minute for a watt and a degree."""
_PLACES: Final = frozenset({Place.PANEL, Place.BEHIND_PANEL})


@dataclass(frozen=True)
class PanelHeat:
    """Watts of the continuous loads on and behind the panel; `unknown` are ids of those that are not in it."""

    watts: float
    unknown: tuple[str, ...]


def panel_heat(equipment: Equipment) -> PanelHeat | None:
    """The heat of an option; None where no electrical system is entered."""
    system = equipment.system
    if system is None:
        return None
    there = [f for f in equipment.units if f.place in _PLACES and draws(f) and f.unit.duty is Duty.CONTINUOUS]
    amperes = {f.id: draw.continuous if (draw := f.unit.draw(system.voltage)) else None for f in there}
    watts = system.voltage * sum(a for a in amperes.values() if a is not None)
    return PanelHeat(watts, tuple(item for item, a in amperes.items() if a is None))


def airflow(watts: float, rise: float) -> float:
    """Cubic feet of air a minute that carry this heat away with a rise of so many °C, at sea level."""
    return _CFM_A_WATT * watts / rise
