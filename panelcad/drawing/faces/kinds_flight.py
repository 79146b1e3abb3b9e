"""Instruments that a pilot flies by."""

from typing import Final

from panelcad.drawing.faces import (
    airspeed,
    altimeter,
    attitude,
    clock,
    course,
    flight_display,
    heading,
    plates,
    turn,
    vertical_speed,
)
from panelcad.drawing.faces import engine_gauges as engine
from panelcad.drawing.faces.kind import FaceKind

KINDS: Final = (
    FaceKind(
        "airspeed",
        ("airspeed", "airspeed indicator", "asi"),
        airspeed.draw,
        "How fast the aircraft moves through the air, in knots. White is the range for flaps, green the normal range, "
        "yellow for smooth air only, the red line is never exceeded.",
    ),
    FaceKind(
        "altimeter",
        ("altimeter", "encoding altimeter", "altitude"),
        altimeter.draw,
        "Height above sea level in feet: the long pointer reads hundreds, the short one thousands. "
        "The knob sets the local air pressure.",
    ),
    FaceKind(
        "attitude",
        ("attitude", "attitude indicator", "artificial horizon", "horizon", "gyro horizon"),
        attitude.draw,
        "Whether the nose is up or down and the wings are level, without looking outside.",
    ),
    FaceKind(
        "turn",
        ("turn coordinator", "turn and slip indicator", "turn and bank", "rate of turn", "wing leveller"),
        turn.draw,
        "How fast the aircraft turns, and with the ball whether the turn is clean.",
    ),
    FaceKind(
        "heading",
        ("heading indicator", "directional gyro", "heading", "dg"),
        heading.draw,
        "Which way the nose points. A gyro keeps it steady; it is set to the compass from time to time.",
    ),
    FaceKind(
        "bearing",
        ("bearing indicator", "bearing", "adf indicator", "rmi"),
        heading.draw_bearing,
        "Which way the chosen radio beacon lies.",
    ),
    FaceKind(
        "vertical speed",
        ("vertical speed", "vertical speed indicator", "rate of climb", "climb indicator", "vsi"),
        vertical_speed.draw,
        "How fast the aircraft climbs or sinks, in hundreds of feet a minute.",
    ),
    FaceKind(
        "course deviation",
        ("course deviation", "course indicator", "cdi", "omnirange indicator", "vor indicator"),
        course.draw,
        "Whether the chosen course lies left or right, and on an approach whether the glide path lies above or below.",
    ),
    FaceKind(
        "course display",
        (
            "heading and course display",
            "heading and course indicator",
            "flight display heading",
            "heading display",
            "hsi",
        ),
        flight_display.draw_heading_display,
        "Heading, course and deviation in one picture, as if seen from above.",
    ),
    FaceKind(
        "load",
        ("accelerometer", "load factor"),
        engine.draw(engine.LOAD),
        "How hard the aircraft is pulled or pushed, in g.",
    ),
    FaceKind(
        "outside air",
        ("outside air", "outside air temperature", "oat"),
        engine.draw(engine.OUTSIDE_AIR),
        "Temperature of the air outside: ice, performance.",
    ),
    FaceKind("clock", ("clock", "chronometer"), plates.draw_meter, "The time.", clock.draw),
    FaceKind("digital clock", ("digital clock",), plates.draw_meter, "The time and a timer.", plates.draw_clock),
    FaceKind(
        "compass",
        ("compass", "magnetic compass", "vertical card compass"),
        clock.draw_compass,
        "The magnetic direction, with nothing that can fail.",
    ),
    FaceKind(
        "slip", ("slip indicator", "inclinometer", "slip"), plates.draw_slip, "Whether the aircraft slips sideways."
    ),
    FaceKind(
        "gear",
        ("landing gear", "gear position", "gear indicator"),
        plates.draw_gear,
        "Whether the wheels are down and locked.",
    ),
)
