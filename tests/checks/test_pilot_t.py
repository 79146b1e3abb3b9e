"""14 CFR 23.1321(d) as it stood before amendment 23-64: the positions of the basic T."""

import pytest

from panelcad.model.project import Item
from panelcad.model.surroundings import Surroundings
from tests.checks.pilot_panels import FACE, blamed, eye, fitted, found, panel

STEP = FACE + 10


def t(**moved: tuple[float, float]) -> list[Item]:
    places = {"attitude": (0, 0), "airspeed": (-STEP, 0), "altimeter": (STEP, 0), "heading": (0, -STEP)} | moved
    return [fitted(name, x, y) for name, (x, y) in places.items()]


def sources(items: list[Item]) -> set[str]:
    return {finding.source[:18] for finding in found(panel(*items), "basic-t")}


def test_the_t_as_the_regulation_has_it() -> None:
    assert found(panel(*t()), "basic-t") == []
    assert found(panel(*t()), "top-centre") == []


def test_airspeed_and_altitude_swapped_break_2_and_3() -> None:
    assert sources(t(airspeed=(STEP, 0), altimeter=(-STEP, 0))) == {"14 CFR 23.1321(d)("}
    cited = {f.source for f in found(panel(*t(airspeed=(STEP, 0), altimeter=(-STEP, 0))), "basic-t")}
    assert {source[17:20] for source in cited} == {"(2)", "(3)"}


def test_heading_above_attitude_breaks_1_and_4() -> None:
    above = panel(*t(heading=(0, STEP)))
    cited = {f.source for f in (*found(above, "basic-t"), *found(above, "top-centre"))}
    assert {source[17:20] for source in cited} == {"(1)", "(4)"}


@pytest.mark.parametrize(("out", "wrong"), [(FACE / 2 - 0.1, False), (FACE / 2 + 0.1, True)])
def test_a_neighbour_may_be_half_a_face_out_of_line(out: float, wrong: bool) -> None:
    findings = found(panel(*t(airspeed=(-STEP, -out))), "basic-t")
    assert bool(findings) == wrong
    if wrong:
        assert findings[0].measured == pytest.approx(out)


@pytest.mark.parametrize(("apart", "wrong"), [(FACE - 0.1, False), (FACE + 0.1, True)])
def test_a_neighbour_is_adjacent_while_no_other_face_fits_between(apart: float, wrong: bool) -> None:
    assert bool(found(panel(*t(altimeter=(FACE + apart, 0))), "basic-t")) == wrong


def test_one_display_that_spans_them_satisfies_the_t_and_the_others_stand_by() -> None:
    odd = t(airspeed=(STEP * 3, 0), altimeter=(STEP * 4, 0), attitude=(STEP * 5, 0), heading=(STEP * 6, 0))
    assert found(panel(fitted("display", 0, 0), *odd), "basic-t") == []
    assert found(panel(*odd), "basic-t") != []


def test_the_pilots_own_set_is_the_one_at_the_centre_line() -> None:
    far = [item.revised(id=f"far-{item.id}", x=item.x + 700, y=-item.y) for item in t()]
    assert found(panel(*t(), *far), "basic-t") == []


def test_the_answer_is_the_same_elsewhere() -> None:
    moved = [item.revised(x=item.x + 333.3, y=item.y - 55.5) for item in t(airspeed=(-STEP, -60))]
    around = Surroundings(eye=eye(x=333.3, y=-55.5))
    (here,) = found(panel(*t(airspeed=(-STEP, -60))), "basic-t")
    (there,) = found(panel(*moved, around=around), "basic-t")
    assert there.measured == pytest.approx(here.measured)
    assert there.identity == here.identity


@pytest.mark.parametrize(("offset", "aside"), [(101.5, False), (101.7, True), (-101.7, True)])
def test_the_group_may_stand_four_inches_aside(offset: float, aside: bool) -> None:
    findings = found(panel(*[item.revised(x=item.x + offset) for item in t()]), "flight-group")
    assert bool(findings) == aside
    if aside:
        assert findings[0].measured == pytest.approx(101.7)


def test_engine_instruments_in_engine_order() -> None:
    def pair(left: int, right: int) -> list[Item]:
        return [
            fitted("a", -60, -200, "tachometer", engine=left),
            fitted("b", 60, -200, "tachometer", engine=right),
        ]

    assert found(panel(*pair(1, 2)), "engine-order") == []
    assert blamed(found(panel(*pair(2, 1)), "engine-order")) == {("a", "b")}
    one = [fitted("a", -60, -200, "tachometer", engine=2), fitted("b", 60, -200, "nothing", engine=1)]
    assert found(panel(*one), "engine-order") == []
