"""Airspeed indicator, marked as 14 CFR 23.1545(b) (amendment 23-50) asks.

White arc VS0 to VFE, green arc VS1 to VNO, yellow arc VNO to VNE, red line at VNE; on a twin a red line at VMC and a
blue line at VYSE.
"""

from panelcad.drawing.display import Node
from panelcad.drawing.faces.dial import Dial, PointerForm, Scale, gauge
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLUE, GREEN, RED, WHITE, YELLOW
from panelcad.model.flight import Airspeeds, Flight


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    speeds = flight.airspeeds
    dial = Dial(frame.centre, frame.window_radius, scale(speeds))
    top = dial.scale.pairs[-1][0]
    step = 20 if top <= 200 else 40
    numbered = range(40, int(top) + 1, step)
    marks = (
        *arcs(dial, speeds),
        dial.ticks([v for v in range(40, int(top) + 1, 5) if v % 10], 0.95, 0.88, 0.014),
        dial.ticks(range(40, int(top) + 1, 10), 0.95, 0.83, 0.022),
        *lines(dial, speeds),
        *dial.numbers(numbered, 0.62, 0.125),
        dial.title("AIRSPEED", 0.3, 0.075),
        dial.title("KNOTS", -0.32, 0.065),
    )
    return gauge(frame, marks, (dial.pointer(flight.airspeed, PointerForm(tip=0.9)),))


def scale(speeds: Airspeeds) -> Scale:
    """From 0 at the top by 40 kt at 32° to some way beyond VNE before a full turn."""
    top = 20.0 * (int(speeds.vne * 1.08) // 20 + 1)
    return Scale(((0.0, 0.0), (40.0, 32.0), (top, 338.0)))


def arcs(dial: Dial, speeds: Airspeeds) -> tuple[Node, ...]:
    """The white arc lies inside the green one, so that each shows its whole range."""
    return (
        dial.band(speeds.vs0, speeds.vfe, 0.86, 0.79, WHITE),
        dial.band(speeds.vs1, speeds.vno, 0.96, 0.865, GREEN),
        dial.band(speeds.vno, speeds.vne, 0.96, 0.865, YELLOW),
    )


def lines(dial: Dial, speeds: Airspeeds) -> tuple[Node, ...]:
    """The radial lines: VNE red, and on a twin VMC red and VYSE blue."""
    drawn = [dial.ticks([speeds.vne], 0.975, 0.76, 0.045, RED)]
    if speeds.vmc is not None:
        drawn.append(dial.ticks([speeds.vmc], 0.975, 0.76, 0.04, RED))
    if speeds.vyse is not None:
        drawn.append(dial.ticks([speeds.vyse], 0.975, 0.76, 0.04, BLUE))
    return tuple(drawn)
