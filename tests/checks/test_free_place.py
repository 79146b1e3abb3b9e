"""A free place is one at which the rules find nothing, in front and behind."""

import pytest

from panelcad.checks.free_place import Freedom, FreePlace, free_place
from panelcad.checks.run import check
from panelcad.editing.move import move_by
from panelcad.editing.place import place
from panelcad.editing.row import Row, place_row
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.finding import Severity
from panelcad.model.layout import layout
from panelcad.model.profile import Profile
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import DepthLimit, Surroundings
from tests.checks.made import body, fitted, instrument, panel, rib

WANTED = Point(0.0, 0.0)
STEP = 25.4
GAUGE = instrument()
"""A case of 70 mm across and 100 mm deep behind a bezel of 82.55 mm."""


def put(project: Project, wanted: Point = WANTED) -> tuple[FreePlace, str]:
    """A gauge more at the free place that was found; what it is called free, and the words."""
    made = place(project, "new", "main", GAUGE, 0.0, 0.0)
    laid = layout(made.project, made.project.option("new"))
    found = free_place(laid, "main", made.ids, wanted)
    return found, found.words(laid, "main", made.ids)


def is_clean(project: Project, at: Point) -> bool:
    there = place(project, "new", "main", GAUGE, at.x, at.y)
    grave = {Severity.ERROR, Severity.WARNING}
    found = check(there.project, there.project.option("new")).findings
    return not any(finding.severity in grave for finding in found if set(finding.items) & set(there.ids))


def test_the_wanted_place_is_taken_where_it_is_free() -> None:
    found, words = put(panel(cutouts=(GAUGE,), around=rib(Rectangle(width=10, height=10), 400, 250)))
    assert (found.at, found.freedom, words) == (WANTED, Freedom.FREE, "")


def test_where_nothing_behind_is_entered_that_is_said() -> None:
    found, words = put(panel(cutouts=(GAUGE,)))
    assert found.freedom is Freedom.FREE
    assert "what stands behind this plate is not entered" in words


@pytest.mark.parametrize(("spare", "is_kept"), [(-0.01, False), (0.01, True)])
def test_an_obstacle_that_the_case_would_meet_is_gone_around(spare: float, is_kept: bool) -> None:
    """A rib of 30 mm as far behind the 100 mm of the case as it must be, or nearer."""
    near = 100.0 + Profile().obstacle_clearance + spare
    project = panel(cutouts=(GAUGE,), around=rib(Rectangle(width=30, height=300), 0, 0, depth=(near, near + 50)))
    found, words = put(project)
    assert (found.at == WANTED) == is_kept
    assert (found.freedom, words) == (Freedom.FREE, "")
    assert is_clean(project, found.at)


def test_a_large_case_behind_a_small_face_is_gone_around() -> None:
    """Its face is 82.55 mm, its case 150 mm: the next is free 4 in away and more, not behind the case."""
    wide = instrument(name="wide", bodies=(body(shape=Rectangle(width=150.0, height=150.0)),))
    project = panel(fitted("a", 0, 0, "wide"), cutouts=(GAUGE, wide))
    found, _ = put(project, Point(88.9, 0.0))
    assert found.freedom is Freedom.FREE
    assert is_clean(project, found.at)
    assert max(abs(found.at.x), abs(found.at.y)) >= 75.0 + 35.0


def test_a_depth_limit_before_the_case_ends_is_gone_around() -> None:
    """The firewall is 90 mm behind the left half and far behind the right."""
    half = Rectangle(width=500.0, height=700.0)
    limits = (
        DepthLimit(id="near", name="Firewall, left", plate="main", shape=half, x=-250.0, y=0.0, at_origin=90.0),
        DepthLimit(id="far", name="Firewall, right", plate="main", shape=half, x=250.0, y=0.0, at_origin=400.0),
    )
    project = panel(cutouts=(GAUGE,), around=Surroundings(depth_limits=limits))
    found, words = put(project)
    assert (found.freedom, words) == (Freedom.FREE, "")
    assert found.at.x >= 35.0
    assert is_clean(project, found.at)


def test_where_all_is_blocked_behind_the_place_is_said_to_be_free_in_front_only() -> None:
    project = panel(cutouts=(GAUGE,), around=rib(Rectangle(width=900, height=600), 0, 0), size=(400.0, 300.0))
    found, words = put(project)
    assert (found.at, found.freedom) == (WANTED, Freedom.FRONT_ONLY)
    assert words.startswith("Free in front only. Body meets an obstacle: ")
    assert "Rib" in words


def test_where_the_front_is_full_nothing_is_called_free() -> None:
    project = panel(fitted("a", 0, 0), cutouts=(GAUGE,), size=(120.0, 120.0))
    found, words = put(project)
    assert (found.at, found.freedom, words) == (WANTED, Freedom.NONE, "No free place was found near.")


def test_a_row_is_judged_as_a_whole() -> None:
    cutout = packaged_catalogue().cutout("toggle")
    project = panel(cutouts=(GAUGE,), around=rib(Rectangle(width=10, height=300), 5 * 30.0, 0))
    made = place_row(project, "new", "main", cutout, Row(WANTED, 6, 30.0))
    laid = layout(made.project, made.project.option("new"))
    found = free_place(laid, "main", made.ids, WANTED)
    assert found.freedom is Freedom.FREE
    assert found.at != WANTED
    moved = move_by(made.project, "new", made.ids, found.at.x, found.at.y)
    errors = [f for f in check(moved, moved.option("new")).findings if f.severity is Severity.ERROR]
    assert errors == []
