"""What a control or a light means to the pilot; rules about order, place and colour need to know it."""

from enum import StrEnum

from panelcad.model.base import Record


class Purpose(StrEnum):
    """Controls that a rule names."""

    BATTERY_MASTER = "battery master"
    ALTERNATOR_MASTER = "alternator master"
    POWER = "power"
    PROPELLER = "propeller"
    MIXTURE = "mixture"
    CARBURETTOR_HEAT = "carburettor heat"
    ALTERNATE_AIR = "alternate air"


class LightColour(StrEnum):
    RED = "red"
    AMBER = "amber"
    GREEN = "green"
    WHITE = "white"
    BLUE = "blue"


class LightMeaning(StrEnum):
    """14 CFR 23.1322 as it stood with amendment 23-43."""

    WARNING = "warning"
    CAUTION = "caution"
    SAFE_OPERATION = "safe operation"
    OTHER = "other"


class Light(Record):
    colour: LightColour
    meaning: LightMeaning
