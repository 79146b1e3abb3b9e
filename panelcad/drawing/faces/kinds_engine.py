"""Instruments of the engine, its fuel and its power."""

from typing import Final

from panelcad.drawing.faces import engine_display, plates
from panelcad.drawing.faces import engine_gauges as engine
from panelcad.drawing.faces.kind import FaceKind

KINDS: Final = (
    FaceKind(
        "tachometer",
        ("tachometer", "rpm", "engine speed", "tach"),
        engine.draw(engine.TACHOMETER),
        "Revolutions of the engine a minute.",
    ),
    FaceKind(
        "manifold and fuel flow",
        ("manifold pressure and fuel flow", "manifold pressure fuel flow"),
        engine.draw_pair(engine.MANIFOLD, engine.FUEL_FLOW),
        "How much power is set (left) and how much fuel it takes an hour (right).",
    ),
    FaceKind(
        "manifold", ("manifold pressure", "manifold", "boost"), engine.draw(engine.MANIFOLD), "How much power is set."
    ),
    FaceKind("fuel flow", ("fuel flow",), engine.draw(engine.FUEL_FLOW), "How much fuel the engine takes an hour."),
    FaceKind(
        "oil",
        ("oil pressure and temperature", "oil pressure temperature"),
        engine.draw_pair(engine.OIL_TEMPERATURE, engine.OIL_PRESSURE),
        "Temperature (left) and pressure (right) of the engine's oil.",
    ),
    FaceKind(
        "oil temperature",
        ("oil temperature", "oil temp"),
        engine.draw(engine.OIL_TEMPERATURE),
        "Temperature of the oil.",
    ),
    FaceKind("oil pressure", ("oil pressure", "oil press"), engine.draw(engine.OIL_PRESSURE), "Pressure of the oil."),
    FaceKind(
        "fuel pressure", ("fuel pressure",), engine.draw(engine.FUEL_PRESSURE), "Pressure of the fuel at the engine."
    ),
    FaceKind(
        "fuel",
        ("fuel quantity", "fuel gauge", "fuel", "fuel level"),
        engine.draw_pair(engine.FUEL_LEFT, engine.FUEL_RIGHT),
        "How much fuel is in the left and the right tank.",
    ),
    FaceKind(
        "fuel left",
        ("fuel left", "fuel quantity left", "left fuel"),
        engine.draw(engine.FUEL_LEFT),
        "Fuel in the left tank.",
    ),
    FaceKind(
        "fuel right",
        ("fuel right", "fuel quantity right", "right fuel"),
        engine.draw(engine.FUEL_RIGHT),
        "Fuel in the right tank.",
    ),
    FaceKind(
        "cylinder and exhaust",
        ("cylinder head and exhaust", "cylinder exhaust", "cylinder head and exhaust gas temperature"),
        engine.draw_pair(engine.EXHAUST, engine.CYLINDER),
        "How hot the exhaust gas and the cylinder heads are: for setting the mixture and sparing the engine.",
    ),
    FaceKind(
        "cylinder",
        ("cylinder head", "cht", "cylinder temperature"),
        engine.draw(engine.CYLINDER),
        "How hot the cylinder heads are.",
    ),
    FaceKind("exhaust", ("exhaust gas", "exhaust", "egt"), engine.draw(engine.EXHAUST), "How hot the exhaust gas is."),
    FaceKind("coolant", ("coolant", "water temperature"), engine.draw(engine.COOLANT), "Temperature of the coolant."),
    FaceKind(
        "suction",
        ("suction", "vacuum gauge", "gyro pressure"),
        engine.draw(engine.SUCTION),
        "Whether the pump drives the gyros.",
    ),
    FaceKind(
        "volts and amperes",
        ("voltmeter and ammeter", "volts and amperes", "volt amp"),
        engine.draw_pair(engine.VOLTS, engine.AMPERES),
        "Voltage of the bus and current into the battery.",
    ),
    FaceKind("voltmeter", ("voltmeter", "volts", "voltage"), engine.draw(engine.VOLTS), "Voltage of the bus."),
    FaceKind(
        "ammeter",
        ("ammeter", "amperes", "load meter"),
        engine.draw(engine.AMPERES),
        "Current into or out of the battery.",
    ),
    FaceKind(
        "carburettor",
        ("carburettor", "carburetor", "carb temperature"),
        engine.draw(engine.CARBURETTOR),
        "Temperature in the carburettor; yellow is where ice forms.",
    ),
    FaceKind(
        "engine cluster",
        ("engine cluster", "cluster gauge", "engine instruments", "cluster"),
        engine.draw_four((engine.OIL_TEMPERATURE, engine.OIL_PRESSURE, engine.FUEL_LEFT, engine.FUEL_RIGHT)),
        "Oil temperature and pressure, and fuel in both tanks, in one place.",
    ),
    FaceKind(
        "engine display",
        ("engine display", "engine monitor", "round engine monitor", "engine and map"),
        engine_display.draw,
        "Power, temperatures, pressures, fuel and each cylinder on one screen; it warns before a limit is reached.",
        engine_display.draw_round,
    ),
    FaceKind(
        "hour meter",
        ("hour meter", "hours", "hobbs"),
        plates.draw_meter,
        "How many hours the engine has run.",
        engine.draw_hours,
    ),
)
