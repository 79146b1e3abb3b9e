"""How heavy a sheet's metal is."""

from typing import Final

KG_PER_LB: Final = 0.45359237
"""Exact by definition: international yard and pound agreement of 1959; NIST Special Publication 811, B.8."""
_KG_PER_MM3: Final = KG_PER_LB / 25.4**3
"""Of one lb/in³."""

_LB_PER_IN3: Final = {
    "2024": 0.100,
    "3003": 0.099,
    "5052": 0.097,
    "6061": 0.098,
    "7075": 0.101,
}
"""Densities of MIL-HDBK-5H (from memory; 6061 and 2024 agree with suppliers' sheet weight charts)."""


def density(alloy: str) -> float | None:
    """Kg per mm³ of an aluminium alloy by its number, whatever temper follows it; None for any other name."""
    for number, lb_per_in3 in _LB_PER_IN3.items():
        if number in alloy:
            return lb_per_in3 * _KG_PER_MM3
    return None
