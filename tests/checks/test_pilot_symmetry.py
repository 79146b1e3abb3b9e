"""A panel and its mirror image about the pilot's centre line have the same findings, left and right exchanged.

Rules that the regulation makes one-handed are left out: airspeed stands left, altitude right, levers in their order.
"""

from typing import NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.checks.registry import load_rules
from panelcad.checks.run import check
from panelcad.model.finding import Finding
from panelcad.model.plate import Engraving, Frame
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import KeepOut, MovingPart, Surroundings, Volume
from tests.checks.pilot_panels import eye, fitted, panel

ONE_HANDED = {"basic-t", "lever-order", "carburettor-heat", "engine-order"}
PILOTS = frozenset(
    each.id
    for each in load_rules().rules
    if each.judge.__module__.startswith("panelcad.checks.pilot_") and each.id not in ONE_HANDED
)
KINDS = ("attitude", "altimeter", "tachometer", "compass", "display", "toggle", "key", "lamp", "plate")
PLACES = st.tuples(st.integers(-40, 40).map(lambda n: n * 20.0), st.integers(-20, 10).map(lambda n: n * 20.0))


class Placed(NamedTuple):
    kind: str
    x: float
    y: float


PLACED = st.builds(lambda kind, at: Placed(kind, *at), st.sampled_from(KINDS), PLACES)


def made(things: list[Placed], shield: tuple[float, float], cant: float, turn: float, side: float) -> Project:
    """The panel as given (side 1) or mirrored (side -1)."""
    items = [fitted(f"item-{n}", side * t.x, t.y, t.kind) for n, t in enumerate(things)]
    words = tuple(
        Engraving(id=f"words-{n}", text="COMPASS", x=side * t.x, y=t.y - 35, height=2.0 + n, rotation=side * turn)
        for n, t in enumerate(things[:3])
    )
    bar = Volume(
        shape=Rectangle(width=300, height=30),
        x=side * shield[0],
        y=shield[1],
        rotation=side * turn,
        near=-300,
        far=-200,
    )
    shaft = bar.revised(shape=Rectangle(width=40, height=40), y=shield[1] - 250, near=-350, far=100)
    around = Surroundings(
        eye=eye(),
        keep_outs=(KeepOut(id="shield", name="Glareshield", plate="main", volume=bar, is_solid=True),),
        moving_parts=(MovingPart(id="shaft", name="Shaft", plate="main", volume=shaft),),
    )
    return panel(*items, around=around, plate={"engravings": words, "frame": Frame(cant=side * cant, tilt=10)})


def judged(project: Project) -> dict[str, Finding]:
    loaded = load_rules()
    report = check(project, project.option("new"), type(loaded)(tuple(r for r in loaded.rules if r.id in PILOTS), ()))
    assert report.not_judged == ()
    return {finding.identity: finding for finding in report.findings}


@settings(max_examples=40, deadline=None)
@given(
    things=st.lists(PLACED, min_size=1, max_size=7, unique_by=lambda t: (t.x, t.y)),
    shield=PLACES,
    cant=st.sampled_from([0.0, 8.0, -40.0]),
    turn=st.sampled_from([0.0, 15.0, 90.0]),
)
def test_left_and_right_are_judged_alike(
    things: list[Placed], shield: tuple[float, float], cant: float, turn: float
) -> None:
    here, there = (judged(made(things, shield, cant, turn, side)) for side in (1.0, -1.0))
    assert here.keys() == there.keys()
    for identity, finding in here.items():
        other = there[identity]
        assert (finding.severity, finding.items) == (other.severity, other.items)
        assert (finding.measured is None, finding.required is None) == (other.measured is None, other.required is None)
        assert (finding.measured or 0.0) == pytest.approx(other.measured or 0.0, rel=1e-6, abs=1e-6)
        assert (finding.required or 0.0) == pytest.approx(other.required or 0.0)


def test_the_mirrored_panels_have_findings_of_many_rules() -> None:
    """Else the test above would say nothing."""
    things = [
        Placed("attitude", 200, 0),
        Placed("altimeter", 640, 60),
        Placed("toggle", -700, -380),
        Placed("lamp", 0, 0),
    ]
    found = judged(made(things, (100.0, 20.0), 8.0, 0.0, 1.0))
    assert {"view-primary", "hidden-face", "reach", "letter-height", "light-colour", "label", "flight-group"} <= {
        finding.rule for finding in found.values()
    }
