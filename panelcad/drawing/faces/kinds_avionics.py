"""Displays, navigators, radios and what controls them."""

from typing import Final

from panelcad.drawing.faces import console, flight_display, navigator, plates, radar, radio
from panelcad.drawing.faces.kind import FaceKind

KINDS: Final = (
    FaceKind(
        "flight display",
        (
            "flight display",
            "round flight display",
            "standby display",
            "backup flight display",
            "primary display",
            "efis",
        ),
        flight_display.draw,
        "Attitude, airspeed, altitude, heading and course on one screen.",
        flight_display.draw_round,
    ),
    FaceKind(
        "map display",
        ("map display", "map and engine display", "multifunction display", "map"),
        flight_display.draw_map,
        "A map that moves with the aircraft, with the route, airfields and airspace.",
    ),
    FaceKind(
        "navigator",
        ("navigator", "compact navigator", "large navigator", "gps navigator", "gps"),
        navigator.draw,
        "Finds the way by satellite: route, map and approaches.",
    ),
    FaceKind(
        "com",
        ("com", "com radio", "transceiver", "communication radio", "round com"),
        radio.draw_com,
        "The radio for talking to the tower and to other aircraft: the frequency in use, and the next one.",
    ),
    FaceKind(
        "nav com",
        ("nav com", "nav/com", "navcom", "radio control head"),
        radio.draw_nav_com,
        "Two radios in one: COM for talking, NAV for following ground beacons and landing aids.",
    ),
    FaceKind(
        "nav",
        ("nav", "nav receiver", "navigation receiver", "omnirange"),
        radio.draw_nav,
        "The receiver for ground beacons and landing aids.",
    ),
    FaceKind(
        "adf",
        ("adf", "adf receiver", "beacon receiver", "radio compass"),
        radio.draw_adf,
        "The receiver for radio beacons.",
    ),
    FaceKind(
        "dme", ("dme", "distance measuring"), radio.draw_dme, "Distance to a ground station, and the speed toward it."
    ),
    FaceKind(
        "transponder",
        ("transponder", "mode s", "squawk"),
        radio.draw_transponder,
        "Answers radar with the aircraft's code.",
    ),
    FaceKind(
        "audio panel",
        ("audio panel", "audio", "intercom", "audio selector"),
        console.draw_audio,
        "For the radios and the headsets: what is heard, and who speaks.",
    ),
    FaceKind(
        "autopilot",
        ("autopilot", "autopilot controller", "flight director"),
        console.draw_autopilot,
        "Flies heading, course, altitude and climb as set here.",
    ),
    FaceKind(
        "annunciators",
        ("annunciator panel", "annunciators", "warning panel"),
        console.draw_annunciators,
        "Lights up what needs attention: red at once, amber soon.",
    ),
    FaceKind(
        "weather radar",
        ("weather radar", "radar display", "radar"),
        radar.draw,
        "Rain ahead, from the aircraft's own radar: green light, yellow moderate, red heavy.",
    ),
    FaceKind(
        "elt",
        ("elt", "elt switch", "emergency locator"),
        plates.draw_small_switch_plate,
        "Arms and tests the emergency locator transmitter.",
    ),
)
