"""Screws with countersinks and nutplates on the front and in the schedule."""

from panelcad.drawing.describe import hole_text
from panelcad.drawing.page import bordered
from panelcad.drawing.schedule import holes
from panelcad.drawing.sheets.front import front_page
from panelcad.model.hole import Countersink, Face, HoleForm, HoleKind, Nutplate
from panelcad.model.plate import AttachScrew
from panelcad.units import LengthUnit
from tests import builders
from tests.drawing import papers

FRONT = HoleForm(diameter=4.3, fastener=3.5, kind=HoleKind.COUNTERSUNK, countersink=Countersink(diameter=8))
BACK = FRONT.revised(countersink=Countersink(diameter=8, face=Face.BACK))
NUTPLATE = HoleForm(
    diameter=4.3,
    fastener=4.2,
    kind=HoleKind.NUTPLATE,
    nutplate=Nutplate(rivet_diameter=2.5, rivet_spacing=17.5, flange_length=25.0, flange_width=10.0),
)


def shown():
    screws = (AttachScrew(id=f"s{i}", x=120 + 40 * i, y=100, form=f) for i, f in enumerate((FRONT, BACK, NUTPLATE)))
    project = builders.project(builders.sheet(attach_screws=tuple(screws), state="new"))
    return papers.shown(project, project.options[0])


def test_no_number_touches_a_countersink_or_a_nutplate():
    subject = shown()
    (sheet,) = bordered(subject, [front_page(subject, subject.laid.plates[0])])
    numbers = {"S1", "S2", "S3", "S4", "S5"}
    assert numbers <= {text.text for text in papers.texts(sheet.nodes)}
    assert papers.crossed(sheet) & numbers == set()


def test_the_schedule_says_whose_nutplate_a_rivet_is_of():
    subject = shown()
    told = {hole.number: hole.purpose for hole in holes(subject, subject.laid.plates[0])}
    assert told["S3"] == "attach screw"
    assert told["S4"] == told["S5"] == "rivet of the nutplate of S3"


def test_a_nutplate_names_its_thread_where_it_is_known():
    assert hole_text(NUTPLATE, LengthUnit.MM) == "Ø4.30, nutplate behind"
    assert hole_text(NUTPLATE.revised(thread="#8-32"), LengthUnit.MM) == "Ø4.30, nutplate #8-32 behind"
