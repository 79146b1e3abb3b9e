"""The proof of the pilot's-seat rules: inside, outside, turned and moved with the eye, and what they ignore."""

import math

from panelcad.checks.pilot_reading import height_for
from panelcad.model.finding import Severity
from panelcad.model.function import Function
from panelcad.model.pilot import Light, LightColour, LightMeaning, Purpose
from panelcad.model.planning import FlightKind, Planning
from panelcad.model.plate import Frame
from panelcad.model.project import Item, Project
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import KeepOut, Surroundings, Volume
from tests.builders import sheet
from tests.checks.cases import Case, Ignored
from tests.checks.pilot_panels import EYE_DISTANCE, FACE, eye, fitted, panel, words

PILOTS_OWN = "left, right, up and down are the pilot's, who does not turn with the sheet"
STEP = FACE + 10.0
AT_30_IN = height_for(15, EYE_DISTANCE)
"""15 minutes of arc at 30 in: 3.325 mm."""
HALF_A_LINE = 2.5 * (1 + 1 / 7)
"""Half the height of letters 5 mm high, with strokes of a seventh."""


def basic_t(**moved: tuple[float, float]) -> list[Item]:
    places = {"attitude": (0, 0), "airspeed": (-STEP, 0), "altimeter": (STEP, 0), "heading": (0, -STEP)} | moved
    return [fitted(name, x, y) for name, (x, y) in places.items()]


def airspeed_low_by(out: float) -> Project:
    return panel(*basic_t(airspeed=(-STEP, -out)))


def altimeter_high_by(up: float) -> Project:
    """A flight instrument whose middle stands more than half a face above the attitude's."""
    return panel(*basic_t(altimeter=(STEP, up)))


def group_aside(offset: float) -> Project:
    return panel(*[item.revised(x=item.x + offset) for item in basic_t()])


def engines(left: int) -> Project:
    pair = (fitted("a", -60, -200, "tachometer", engine=left), fitted("b", 60, -200, "tachometer", engine=3 - left))
    return panel(*pair)


def levers(*order: Purpose) -> Project:
    return panel(*(fitted(f"l{i}", 40 * i, 0, "push-pull", purpose=purpose) for i, purpose in enumerate(order)))


def lever_left_of_mixture(purpose: Purpose) -> Project:
    """Left of the mixture stands the power lever as it should, or right of it."""
    pair = (purpose, Purpose.MIXTURE) if purpose is Purpose.POWER else (Purpose.MIXTURE, Purpose.POWER)
    return levers(*pair)


def heat_from_mixture(apart: float) -> Project:
    """Carburettor heat `apart` from the mixture, from middle to middle as the hand finds them."""
    places = ((Purpose.POWER, 0.0), (Purpose.MIXTURE, 50.0), (Purpose.CARBURETTOR_HEAT, 50.0 + apart))
    return panel(
        *(fitted(purpose.value.replace(" ", "-"), x, 0, "push-pull", purpose=purpose) for purpose, x in places)
    )


def halves(apart: float) -> Project:
    return panel(
        fitted("bat", 0, 0, "toggle", purpose=Purpose.BATTERY_MASTER),
        fitted("alt", 10 + apart, 0, "toggle", purpose=Purpose.ALTERNATOR_MASTER),
    )


def toggles(apart: float) -> Project:
    return panel(fitted("a", 0, 0, "toggle"), fitted("b", 10 + apart, 0, "toggle"))


def toggle_from_shoulder(far: float) -> Project:
    """The shoulder is 215.9 mm below and 101.6 mm behind the eye, so 500 mm before the sheet."""
    around = Surroundings(eye=eye(y=215.9, z=-500.0 + 101.6))
    return panel(fitted("a", math.sqrt(far**2 - 500.0**2), 0, "toggle"), around=around)


def label_below(apart: float) -> Project:
    """A knob of 10 mm side and letters 5 mm high."""
    return panel(fitted("a", 0, 0, "toggle"), plate={"engravings": (words("PITOT HEAT", 0, -apart - 5 - HALF_A_LINE),)})


def label_between(nearer: float) -> Project:
    """Two knobs of 10 mm side, 25 mm apart, and one label below their middle, brought nearer to the first.

    The second has a label of its own 10 mm above it.
    """
    below = words("PUMP", 12.5 - nearer, -20)
    above = words("HEAT", 25, 5 + 10 + HALF_A_LINE)
    return panel(fitted("a", 0, 0, "toggle"), fitted("b", 25, 0, "toggle"), plate={"engravings": (below, above)})


def one_label_for(controls: int) -> Project:
    """Knobs 25 mm apart, and one label right below the first."""
    fit = (fitted(f"a{i}", 25 * i, 0, "toggle") for i in range(controls))
    return panel(*fit, plate={"engravings": (words("PUMP", 0, -5 - 5 - HALF_A_LINE),)})


def card_below_compass(apart: float) -> Project:
    words_there = words("COMPASS", 0, -FACE / 2 - apart - HALF_A_LINE)
    return panel(fitted("compass", 0, 0), plate={"engravings": (words_there,)})


def words_beside_bezel(gap: float) -> Project:
    return panel(fitted("attitude", 0, 0), plate={"engravings": (words("X", 0, -FACE / 2 - HALF_A_LINE - gap),)})


def words_below_words(gap: float) -> Project:
    """Two lines 5 mm high; the lower one stands a line and a gap below the other."""
    lines = (words("THROTTLE", 0, 0), words("MIXTURE", 12, -2 * HALF_A_LINE - gap))
    return panel(plate={"engravings": lines})


def words_beside_words(gap: float) -> Project:
    """Two letters I, each one stroke and so a seventh of its height wide, side by side a gap apart."""
    lines = (words("I", 0, 0), words("I", 5.0 / 7 + gap, 1.0))
    return panel(plate={"engravings": lines})


def words_of_two_plates() -> Project:
    """One line on the sheet, and one on a plate of its own that has the same axes."""
    sub = sheet(id="sub", name="Sub-panel", frame=Frame(z=80.0), engravings=(words("TRIM", 0, 0),))
    return panel(plate={"engravings": (words("FLAPS", 0, 0),)}, more=(sub,))


def letters(height: float) -> Project:
    return panel(plate={"engravings": (words("FLAPS", 0, 0, height),)})


def stroke(tool: float) -> Project:
    return panel(plate={"engravings": (words("FLAPS", 0, 0, 5.0),)}, profile={"engraving_tool": tool})


def sideways(degrees: float, name: str) -> Project:
    """At the pilot's normal line of sight, 15 degrees down, so that only the angle sideways counts."""
    down = -EYE_DISTANCE * math.tan(math.radians(15))
    return panel(fitted(name, EYE_DISTANCE * math.tan(math.radians(degrees)), down))


def turned_face(degrees: float) -> Project:
    """Straight before the eye the face is turned by as much as the line of sight is from square on."""
    return panel(fitted("tachometer", EYE_DISTANCE * math.tan(math.radians(degrees)), 0))


BESIDE = 400.0
"""The pilot's centre line, left of the middle of the panel; the second pilot's is as far to the right."""


def beside(*items: Item) -> Project:
    """The pilot sits left with an attitude instrument before him; the sheet reaches as far right as left."""
    around = Surroundings(eye=eye(-BESIDE))
    down = -EYE_DISTANCE * math.tan(math.radians(15))
    return panel(fitted("attitude", -BESIDE, down), *items, around=around)


def second_attitude(degrees: float) -> Project:
    """So far to the right of straight ahead for the second pilot, at his normal line of sight."""
    aside = EYE_DISTANCE * math.tan(math.radians(degrees))
    down = -EYE_DISTANCE * math.tan(math.radians(15))
    return beside(fitted("second", BESIDE + aside, down, "attitude"))


def turned_from_second(degrees: float) -> Project:
    """Level with the eye the face is turned by as much as the line of sight is from square on."""
    return beside(fitted("second", BESIDE + EYE_DISTANCE * math.tan(math.radians(degrees)), 0, "attitude"))


def shaded(share: float) -> Project:
    """A bar half way to the eye hides twice its overlap of the face's upper edge, by similar triangles."""
    around = bar_over(FACE / 2 - share * FACE)
    return panel(fitted("attitude", 0, 0), around=around, profile={"eye_sweep": 0.0})


def shaded_words(share: float) -> Project:
    around = bar_over(HALF_A_LINE - share * 2 * HALF_A_LINE)
    return panel(around=around, plate={"engravings": (words("FLAPS", 0, 0, 5.0),)})


def bar_over(edge: float) -> Surroundings:
    """A bar half way to the eye, whose shadow on the sheet begins at this height."""
    half_way = -EYE_DISTANCE / 2
    foot = edge / 2
    bar = Volume(shape=Rectangle(width=400, height=20), x=0, y=foot + 10, near=half_way - 0.001, far=half_way)
    shield = KeepOut(id="shield", name="Glareshield", plate="main", volume=bar, is_solid=True)
    return Surroundings(eye=eye(), keep_outs=(shield,))


def only_kept_free(made: Project) -> Project:
    (shield,) = made.surroundings.keep_outs
    return made.revised(surroundings=made.surroundings.revised(keep_outs=(shield.revised(is_solid=False),)))


def seen(has_eye: bool) -> Project:
    return panel(fitted("tachometer", 0, 0), around=None if has_eye else Surroundings())


def lamp(colour: LightColour) -> Project:
    return panel(fitted("l", 0, 0, "lamp", light=Light(colour=colour, meaning=LightMeaning.WARNING)))


def by_night(*lights: Function) -> Project:
    return panel(planning=Planning(flight=FlightKind.NIGHT_VFR, fitted=lights))


WARNS, ADVISES = {"severity": Severity.WARNING}, {"severity": Severity.ADVICE}
FIXED = {"not_turned": PILOTS_OWN}
BARE = {"measured": None}
CASES = [
    Case("basic-t", airspeed_low_by, FACE / 2, FACE / 2 + 0.01, required=FACE / 2, **WARNS, **FIXED),
    Case("top-centre", altimeter_high_by, FACE / 2, FACE / 2 + 0.01, **BARE, **WARNS, **FIXED),
    Case("flight-group", group_aside, 101.6, 101.61, required=101.6, **ADVISES, **FIXED),
    Case("engine-order", engines, 1, 2, **BARE, **WARNS, **FIXED),
    Case("lever-order", lever_left_of_mixture, Purpose.POWER, Purpose.MIXTURE, **BARE, **WARNS, **FIXED),
    Case("carburettor-heat", heat_from_mixture, 203.2, 203.19, required=203.2, **WARNS, **FIXED),
    Case("split-master", halves, 19.05, 19.06, required=19.05, **WARNS),
    Case("finger-room", toggles, 19.05, 19.04, required=19.05, **ADVISES),
    Case("reach", toggle_from_shoulder, 678.18, 678.2, required=678.18, **ADVISES, **FIXED),
    Case("reach", toggle_from_shoulder, 678.18, 889.0, required=886.46, **WARNS, **FIXED),
    Case("label", label_below, 25.4, 25.41, required=25.4, **WARNS),
    Case("label", label_between, 0.1, -0.1, **BARE, **WARNS),
    Case("label", one_label_for, 1, 2, **BARE, **WARNS),
    Case("compass-placard", card_below_compass, 50.8, 50.81, required=50.8, **WARNS),
    Case("covered-words", words_beside_bezel, 0.0, -0.01, required=0.0, **WARNS),
    Case("crossed-words", words_below_words, 0.0, -0.01, required=0.0, **WARNS),
    Case("crossed-words", words_beside_words, 0.0, -0.01, required=0.0, **WARNS),
    Case("letter-height", letters, height_for(20, EYE_DISTANCE), AT_30_IN, **ADVISES),
    Case("letter-height", letters, height_for(20, EYE_DISTANCE), AT_30_IN - 0.001, required=AT_30_IN, **WARNS),
    Case("letter-stroke", stroke, 5 / 8, 5 / 8 - 0.01, lambda tool: tool / 5, required=1 / 8, **ADVISES),
    Case("letter-stroke", stroke, 5 / 6, 5 / 6 + 0.01, lambda tool: tool / 5, required=1 / 6, **ADVISES),
    Case("view-primary", lambda a: sideways(a, "attitude"), 14.9999, 15.01, required=15.0, **WARNS, **FIXED),
    Case("view-important", lambda a: sideways(a, "tachometer"), 34.9999, 35.01, required=35.0, **WARNS, **FIXED),
    Case("view-important", second_attitude, 34.9999, 35.01, required=35.0, **WARNS, **FIXED),
    Case("face-turned", turned_from_second, 44.9999, 45.01, required=45.0, **WARNS, **FIXED),
    Case("face-turned", turned_face, 44.9999, 45.01, required=45.0, **WARNS),
    Case("hidden-face", shaded, 0.05, 0.06, required=0.05, accuracy=1e-3, **WARNS, **FIXED),
    Case("hidden-words", shaded_words, 0.049, 0.06, required=0.05, accuracy=1e-3, **ADVISES, **FIXED),
    Case("eye-point", seen, passes=True, fails=False, **BARE, **ADVISES),
    Case("light-colour", lamp, LightColour.RED, LightColour.GREEN, **BARE, **WARNS),
    Case(
        "instrument-lights",
        lambda lit: by_night(*([Function.INSTRUMENT_LIGHTING] if lit else [])),
        passes=True,
        fails=False,
        **BARE,
        **WARNS,
    ),
]

FAR = [item.revised(id=f"far-{item.id}", x=item.x + 700, y=-item.y) for item in basic_t()]
IGNORED = [
    Ignored("basic-t", "the copilot's instruments", lambda: panel(*basic_t(), *FAR)),
    Ignored("top-centre", "an engine instrument above", lambda: panel(*basic_t(), fitted("tachometer", 0, STEP))),
    Ignored("flight-group", "engine instruments aside", lambda: panel(*basic_t(), fitted("tachometer", 500, 0))),
    Ignored(
        "engine-order",
        "instruments of two kinds",
        lambda: panel(
            fitted("a", -60, 0, "tachometer", engine=2),
            fitted("b", 60, 0, "nothing", engine=1),
        ),
    ),
    Ignored(
        "lever-order",
        "a lever of no engine control",
        lambda: levers(Purpose.POWER, Purpose.CARBURETTOR_HEAT, Purpose.MIXTURE),
    ),
    Ignored(
        "carburettor-heat",
        "a control left of the throttle",
        lambda: panel(
            fitted("heat", -50, 0, "push-pull", purpose=Purpose.CARBURETTOR_HEAT),
            fitted("throttle", 0, 0, "push-pull", purpose=Purpose.POWER),
            fitted("mixture", 50, 0, "push-pull", purpose=Purpose.MIXTURE),
        ),
    ),
    Ignored("split-master", "two other switches far apart", lambda: toggles(300.0)),
    Ignored(
        "finger-room",
        "kinds without a published figure",
        lambda: panel(fitted("a", 0, 0, "push-pull"), fitted("b", 11, 0, "toggle")),
    ),
    Ignored("reach", "an instrument", lambda: panel(fitted("attitude", 900, 0))),
    Ignored("label", "an instrument", lambda: panel(fitted("attitude", 0, 0))),
    Ignored("compass-placard", "another instrument", lambda: panel(fitted("attitude", 0, 0))),
    Ignored(
        "covered-words",
        "a bezel behind the sheet",
        lambda: panel(fitted("lamp", 0, 0, mounting="rear"), plate={"engravings": (words("X", 0, -30),)}),
    ),
    Ignored("crossed-words", "lines of two plates", words_of_two_plates),
    Ignored(
        "letter-height",
        "a panel whose eye nobody entered",
        lambda: panel(plate={"engravings": (words("FLAPS", 0, 0, 1.0),)}, around=Surroundings()),
    ),
    Ignored("letter-stroke", "a placard, which is not engraved here", lambda: panel(fitted("plate", 0, 0))),
    Ignored("view-primary", "an engine instrument", lambda: sideways(30.0, "tachometer")),
    Ignored("view-important", "a second pilot's instrument before him", lambda: second_attitude(0.0)),
    Ignored("view-important", "what shows nothing", lambda: sideways(60.0, "nothing")),
    Ignored(
        "face-turned",
        "an outlet, which nobody reads",
        lambda: panel(fitted("outlet", 0, 0), plate={"frame": Frame(cant=60.0)}),
    ),
    Ignored("hidden-face", "a space that is only kept free", lambda: only_kept_free(shaded(0.5))),
    Ignored("hidden-words", "a space that is only kept free", lambda: only_kept_free(shaded_words(0.5))),
    Ignored("eye-point", "what shows nothing", lambda: panel(fitted("nothing", 0, 0), around=Surroundings())),
    Ignored("light-colour", "an instrument", lambda: panel(fitted("attitude", 0, 0))),
    Ignored("instrument-lights", "a flight by day", lambda: panel(planning=Planning(flight=FlightKind.DAY_VFR))),
]
