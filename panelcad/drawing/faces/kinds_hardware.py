"""Switches, breakers, sockets, plates: small things on the panel, and what nobody has named."""

from typing import Final

from panelcad.drawing.faces import plates, sockets, switches
from panelcad.drawing.faces.kind import FaceKind

KINDS: Final = (
    FaceKind(
        "toggle", ("toggle switch", "toggle breaker", "switch"), switches.draw_toggle, "Switches {label} on and off."
    ),
    FaceKind("rocker", ("rocker switch",), switches.draw_rocker, "Switches {label} on and off."),
    FaceKind("rotary", ("rotary", "dimmer", "selector", "potentiometer"), switches.draw_rotary, "Sets {label}."),
    FaceKind("push", ("push button",), switches.draw_push, "Push for {label}."),
    FaceKind(
        "legend push", ("lit legend push button", "legend button"), switches.draw_legend_push, "Shows and sets {label}."
    ),
    FaceKind(
        "breaker",
        ("breaker", "circuit breaker"),
        sockets.draw_breaker,
        "Protects the wires of {label}; pops out on overload.",
    ),
    FaceKind("jack", ("jack", "headset socket", "headset"), sockets.draw_jack, "Headsets plug in here."),
    FaceKind(
        "outlet", ("outlet", "charging", "power socket", "usb"), sockets.draw_outlet, "Charges tablets and telephones."
    ),
    FaceKind(
        "power socket",
        ("auxiliary power socket", "auxiliary socket", "lighter socket"),
        sockets.draw_power_socket,
        "Electrical power for what is plugged in.",
    ),
    FaceKind("lamp", ("lamp", "light", "post light"), sockets.draw_lamp, "Lights up for {label}."),
    FaceKind("vent", ("vent",), sockets.draw_vent, "Fresh air."),
    FaceKind(
        "key switch",
        ("key switch", "ignition"),
        switches.draw_key_switch,
        "Chooses the magnetos and starts the engine.",
    ),
    FaceKind(
        "pull",
        ("throttle", "mixture", "propeller control", "control"),
        sockets.draw_pull,
        "Push and pull for {label}.",
    ),
    FaceKind("connector", ("d-subminiature", "connector"), plates.draw_connector, "A connector for the workshop."),
    FaceKind("coaxial", ("coaxial",), plates.draw_coaxial, "A coaxial connector."),
    FaceKind("placard", ("placard",), plates.draw_placard, "A placard."),
    FaceKind("rail panel", ("rail panel",), plates.draw_rail_panel, "A control panel."),
    FaceKind("meter", ("panel instrument", "panel meter"), plates.draw_meter, "Shows a value in figures."),
    FaceKind("blank", ("blank", "plug"), plates.draw_blank, "Covers a place that is not used."),
    FaceKind("indicator", ("indicator", "clamp-mounted instrument"), plates.draw_indicator, "{label}."),
    FaceKind("unit", ("rack unit", "radio opening"), plates.draw_plain, "{label}."),
)
