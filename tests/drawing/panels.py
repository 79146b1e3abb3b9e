"""A small panel with one of each kind of face, for pictures."""

from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.project import Project
from tests import builders

PLACES = (
    ("airspeed-3-1-8", -240.0, 60.0, "Airspeed indicator"),
    ("attitude-3-1-8", -150.0, 60.0, "Attitude indicator"),
    ("altimeter-3-1-8", -60.0, 60.0, "Altimeter"),
    ("heading-3-1-8", -150.0, -35.0, "Directional gyro"),
    ("round-flight-display-3-1-8", -60.0, -35.0, "Round flight display"),
    ("rack-com", 75.0, 85.0, "COM 1"),
    ("rack-transponder", 75.0, 45.0, "Transponder"),
    ("rack-navigator", 75.0, -15.0, "Navigator"),
    ("engine-display-strip", 205.0, 30.0, "Engine display"),
    ("toggle", -240.0, -60.0, "Battery"),
    ("breaker", -210.0, -60.0, "COM 1, 10 A"),
    ("lamp-1-2", -270.0, -60.0, "Red lamp"),
)


def small_panel(**fields: object) -> Project:
    """One option 'new' with these items on one sheet, without glareshield, so that it is all instruments."""
    cutouts = packaged_catalogue().cutouts
    used = tuple(cutouts[name] for name in dict.fromkeys(place[0] for place in PLACES))
    items = tuple(builders.item(f"i{n}", x, y, name, name=title) for n, (name, x, y, title) in enumerate(PLACES))
    return builders.project(builders.sheet(560.0, 230.0), items=items, cutouts=used, **fields)
