"""The one moment of flight that every face of a project shows, and the speeds an airspeed indicator is marked with.

The defaults are invented for the demo; they belong together (a gentle climbing right turn on the way to a fix).
"""

import math
from typing import Annotated, Final, Self

from pydantic import Field, model_validator

from panelcad.model.base import Angle, Name, Number, Record

Knots = Annotated[Number, Field(ge=0, le=600)]
Share = Annotated[Number, Field(ge=0, le=1)]
Frequency = Annotated[str, Field(pattern=r"^\d{2,4}(\.\d{1,3})?$")]
"""MHz or kHz as a radio shows it."""

LEVEL: Final = 50.0
"""Less climb or descent in ft/min than this is level flight: half the smallest division of a dial (common practice)."""


class Airspeeds(Record):
    """Indicated airspeeds in knots that 14 CFR 23.1545 marks; the twin's two are None on a single."""

    vs0: Knots = 44.0
    vs1: Knots = 50.0
    vfe: Knots = 102.0
    vno: Knots = 129.0
    vne: Knots = 163.0
    vmc: Knots | None = None
    vyse: Knots | None = None

    @model_validator(mode="after")
    def _rise(self) -> Self:
        if not 0 < self.vs0 <= self.vs1 < self.vfe <= self.vno < self.vne:
            raise ValueError("airspeeds that rise from VS0 by VS1, VFE and VNO to VNE are expected")
        return self


class Engine(Record):
    """One engine as its gauges show it."""

    rpm: Annotated[Number, Field(ge=0, le=6000)] = 2420.0
    rpm_limit: Annotated[Number, Field(gt=0, le=6000)] = 2700.0
    manifold_in_hg: Annotated[Number, Field(ge=0, le=60)] = 22.8
    fuel_flow_gph: Annotated[Number, Field(ge=0, le=100)] = 9.8
    oil_temperature_f: Annotated[Number, Field(ge=0, le=300)] = 188.0
    oil_pressure_psi: Annotated[Number, Field(ge=0, le=150)] = 74.0
    fuel_pressure_psi: Annotated[Number, Field(ge=0, le=60)] = 5.2
    cylinder_f: tuple[Annotated[Number, Field(ge=0, le=600)], ...] = (348.0, 362.0, 355.0, 340.0)
    exhaust_f: tuple[Annotated[Number, Field(ge=0, le=2000)], ...] = (1352.0, 1368.0, 1340.0, 1361.0)


class Flight(Record):
    """Headings in degrees magnetic, airspeed in knots indicated, altitude in ft, setting in hPa, temperature in °C."""

    heading: Angle = 72.0
    track: Angle = 75.0
    heading_bug: Angle = 95.0
    course: Angle = 95.0
    course_deviation: Annotated[Number, Field(ge=-1, le=1)] = 0.24
    """Share of full scale; positive where the course lies to the right."""
    glide_deviation: Annotated[Number, Field(ge=-1, le=1)] = -0.18
    bearing: Angle = 118.0
    airspeed: Knots = 112.0
    ground_speed: Knots = 124.0
    altitude: Annotated[Number, Field(ge=-1000, le=30_000)] = 4620.0
    altitude_bug: Annotated[Number, Field(ge=0, le=30_000)] = 5500.0
    setting_hpa: Annotated[Number, Field(ge=900, le=1070)] = 1016.0
    vertical_speed: Annotated[Number, Field(ge=-6000, le=6000)] = 420.0
    pitch: Annotated[Number, Field(ge=-40, le=40)] = 4.0
    bank: Annotated[Number, Field(ge=-60, le=60)] = 12.0
    """Positive to the right."""
    slip: Annotated[Number, Field(ge=-1, le=1)] = 0.0
    com: tuple[tuple[Frequency, Frequency], ...] = (("124.350", "118.275"), ("119.850", "126.700"))
    """Active and standby of each."""
    nav: tuple[tuple[Frequency, Frequency], ...] = (("113.90", "110.35"), ("108.75", "115.40"))
    adf: Frequency = "352"
    squawk: Annotated[str, Field(pattern=r"^[0-7]{4}$")] = "4521"
    next_fix: Annotated[str, Field(pattern=r"^[A-Z0-9]{2,5}$")] = "PANEL"
    then_fix: Annotated[str, Field(pattern=r"^[A-Z0-9]{2,5}$")] = "RIVET"
    distance_nm: Annotated[Number, Field(ge=0, le=999)] = 18.4
    fuel_left: Share = 0.72
    fuel_right: Share = 0.66
    fuel_tank_gal: Annotated[Number, Field(gt=0, le=200)] = 25.0
    volts: Annotated[Number, Field(ge=0, le=40)] = 13.9
    amperes: Annotated[Number, Field(ge=-100, le=200)] = 6.0
    outside_c: Annotated[Number, Field(ge=-60, le=60)] = 8.0
    time: Annotated[str, Field(pattern=r"^([01]\d|2[0-3]):[0-5]\d:[0-5]\d$")] = "10:08:36"
    engine: Engine = Engine()
    airspeeds: Airspeeds = Airspeeds()
    callsign: Name = "DEMO"

    @property
    def vertical_mode(self) -> str:
        """What an engaged autopilot does: it holds the altitude, or a vertical speed on the way to another."""
        return "ALT" if abs(self.vertical_speed) < LEVEL else "VS"

    @property
    def turn_rate(self) -> float:
        """Degrees a second, positive right: g tan(bank) / V for a level, coordinated turn at the ground speed."""
        metres_a_second = max(self.ground_speed, 1.0) * 1852.0 / 3600.0
        return math.degrees(9.80665 * math.tan(math.radians(self.bank)) / metres_a_second)

    @property
    def setting_in_hg(self) -> float:
        """The altimeter setting in inches of mercury (one is 33.86389 hPa: ICAO Annex 5)."""
        return self.setting_hpa / 33.86389
