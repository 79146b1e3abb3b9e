"""Wire, breaker and voltage drop tables of AC 43.13-1B chapter 11, copper wire."""

from typing import Final, NamedTuple

from panelcad.model.planning import Voltage


class WireSize(NamedTuple):
    """A row of table 11-9: continuous A in a bundle by conductor rating, largest resistance at 20 °C in ohm/1000 ft."""

    gauge: str
    amperes_105: float
    amperes_150: float
    amperes_200: float
    ohms: float
    circular_mils: float


TABLE_11_9: Final = (
    WireSize("24", 2.5, 4, 5, 28.40, 475),
    WireSize("22", 3, 5, 6, 16.20, 755),
    WireSize("20", 4, 7, 9, 9.88, 1216),
    WireSize("18", 6, 9, 12, 6.23, 1900),
    WireSize("16", 7, 11, 14, 4.81, 2426),
    WireSize("14", 10, 14, 18, 3.06, 3831),
    WireSize("12", 13, 19, 25, 2.02, 5874),
    WireSize("10", 17, 26, 32, 1.26, 9354),
    WireSize("8", 38, 57, 71, 0.70, 16983),
    WireSize("6", 50, 76, 97, 0.44, 26818),
    WireSize("4", 68, 103, 133, 0.28, 42615),
    WireSize("2", 95, 141, 179, 0.18, 66500),
    WireSize("1", 113, 166, 210, 0.15, 81700),
    WireSize("0", 128, 192, 243, 0.12, 104500),
    WireSize("00", 147, 222, 285, 0.09, 133000),
    WireSize("000", 172, 262, 335, 0.07, 166500),
    WireSize("0000", 204, 310, 395, 0.06, 210900),
)
"""AC 43.13-1B table 11-9 (page 11-23): 70 °C ambient, 33 or more wires in a bundle, 60,000 ft. Smallest first."""

BREAKER_OF_GAUGE: Final = {
    "22": 5.0,
    "20": 7.5,
    "18": 10.0,
    "16": 15.0,
    "14": 20.0,
    "12": 30.0,
    "10": 40.0,
    "8": 50.0,
    "6": 80.0,
    "4": 100.0,
    "2": 125.0,
}
"""AC 43.13-1B table 11-3 (page 11-15): the largest breaker in A that protects a gauge; none is given for 1 and 0."""

FUSE_OF_GAUGE: Final = {
    "22": 5.0,
    "20": 5.0,
    "18": 10.0,
    "16": 10.0,
    "14": 15.0,
    "12": 20.0,
    "10": 30.0,
    "8": 50.0,
    "6": 70.0,
    "4": 70.0,
    "2": 100.0,
    "1": 150.0,
    "0": 150.0,
}
"""AC 43.13-1B table 11-3 (page 11-15), fuses in A."""

BREAKER_SIZES: Final = (1.0, 2.0, 3.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0)
"""Ratings that breakers come in (common practice)."""

CONTINUOUS_DROP: Final = {Voltage.V14: 0.5, Voltage.V28: 1.0}
"""AC 43.13-1B table 11-6, volts between bus and load, as tables 11-7 and 11-8 repeat them."""
INTERMITTENT_DROP: Final = {Voltage.V14: 1.0, Voltage.V28: 2.0}
"""AC 43.13-1B table 11-6, from memory."""

SWITCH_FACTORS: Final = {
    (28, "lamp"): 8,
    (28, "inductive"): 4,
    (28, "resistive"): 2,
    (28, "motor"): 3,
    (12, "lamp"): 5,
    (12, "inductive"): 2,
    (12, "resistive"): 1,
    (12, "motor"): 2,
}
"""AC 43.13-1B table 11-4 (page 11-17): a switch's nominal rating is the continuous current times this."""


def wire_size(gauge: str) -> WireSize:
    """The row of table 11-9. Raises `KeyError`."""
    return _BY_GAUGE[gauge]


_BY_GAUGE: Final = {size.gauge: size for size in TABLE_11_9}
