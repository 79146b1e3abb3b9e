"""The technical standard order of each function; revision letters as seen in the source, they change with time."""

from typing import Final, NamedTuple

from panelcad.model.function import Function


class TsoStandard(NamedTuple):
    text: str
    source: str


_LIST: Final = "SAE AS6296 paragraph 2.2.2.3"
_MEMORY: Final = "from memory"
_AIRSPACE: Final = "14 CFR 91.215(a)"
_ADSB: Final = "14 CFR 91.225"

_STANDARDS: Final[dict[Function, TsoStandard]] = {
    Function.AIRSPEED: TsoStandard("TSO-C2d", _LIST),
    Function.RATE_OF_TURN: TsoStandard("TSO-C3e", _LIST),
    Function.SLIP: TsoStandard("TSO-C3e", _LIST),
    Function.ATTITUDE: TsoStandard("TSO-C4c", f"{_LIST}; AC 91-75 paragraph 2"),
    Function.HEADING: TsoStandard("TSO-C5f, magnetically slaved TSO-C6e", _LIST),
    Function.MAGNETIC_DIRECTION: TsoStandard("TSO-C7d", _MEMORY),
    Function.VERTICAL_SPEED: TsoStandard("TSO-C8e", _LIST),
    Function.ALTITUDE: TsoStandard("TSO-C10b", f"{_LIST}; 14 CFR 91.217"),
    Function.GLIDE_SLOPE: TsoStandard("TSO-C34e", _LIST),
    Function.MARKER_BEACON: TsoStandard("TSO-C35d", _LIST),
    Function.NAV: TsoStandard("localizer TSO-C36e, VOR TSO-C40c", _LIST),
    Function.ADF: TsoStandard("TSO-C41d", _LIST),
    Function.OIL_TEMPERATURE: TsoStandard("TSO-C43c", _LIST),
    Function.CYLINDER_HEAD_TEMPERATURE: TsoStandard("TSO-C43c", _LIST),
    Function.EXHAUST_GAS_TEMPERATURE: TsoStandard("TSO-C43c", _LIST),
    Function.COOLANT_TEMPERATURE: TsoStandard("TSO-C43c", _LIST),
    Function.FUEL_FLOW: TsoStandard("TSO-C44c", _LIST),
    Function.MANIFOLD_PRESSURE: TsoStandard("TSO-C45b", _LIST),
    Function.FUEL_PRESSURE: TsoStandard("TSO-C47a", _LIST),
    Function.OIL_PRESSURE: TsoStandard("TSO-C47a", _LIST),
    Function.TACHOMETER: TsoStandard("electric TSO-C49b", _LIST),
    Function.FUEL_QUANTITY: TsoStandard("TSO-C55a", _LIST),
    Function.DME: TsoStandard("TSO-C66c", _LIST),
    Function.TRANSPONDER: TsoStandard("TSO-C74b or C74c, mode S TSO-C112", _AIRSPACE),
    Function.ALTITUDE_REPORTING: TsoStandard("TSO-C88", "14 CFR 91.217"),
    Function.LIGHTNING: TsoStandard("TSO-C110a", _LIST),
    Function.GPS_POSITION: TsoStandard("TSO-C145", _MEMORY),
    Function.GPS_NAVIGATION: TsoStandard("TSO-C146d", _LIST),
    Function.APPROACH_GUIDANCE: TsoStandard("TSO-C146d", _LIST),
    Function.TRAFFIC: TsoStandard("TSO-C147a", _LIST),
    Function.TERRAIN: TsoStandard("TSO-C151c", _LIST),
    Function.ADSB_OUT: TsoStandard("1090 MHz TSO-C166b or C166c, 978 MHz TSO-C154c or C154d", _ADSB),
    Function.WEATHER: TsoStandard("FIS-B TSO-C157a", _LIST),
    Function.MOVING_MAP: TsoStandard("TSO-C165a", _LIST),
    Function.COM: TsoStandard("TSO-C169a", _LIST),
    Function.AUTOPILOT_ROLL: TsoStandard("TSO-C198, older C9c", f"{_LIST}; C9c {_MEMORY}"),
    Function.AUTOPILOT_PITCH: TsoStandard("TSO-C198, older C9c", f"{_LIST}; C9c {_MEMORY}"),
    Function.AUDIO_SELECTION: TsoStandard("TSO-C139, older C50c", _MEMORY),
    Function.ELT: TsoStandard("406 MHz TSO-C126", _MEMORY),
}


def standard_of(function: Function) -> TsoStandard | None:
    """The standard for a function; None where there is none or it is not listed."""
    return _STANDARDS.get(function)
