import pytest

from panelcad.checks.acceptance import accept
from panelcad.checks.run import check
from panelcad.errors import EditRefused
from panelcad.model.layout import layout
from panelcad.model.shape import Rectangle
from tests.builders import cut, project, round_cutout, sheet
from tests.checks.made import fitted, panel, rib


def narrow(web: float, *, acceptances=(), diameter: float = 79.375):
    cuts = (cut("a", 0, 0), cut("b", diameter / 2 + web + 79.375 / 2, 0, "other"))
    made = project(sheet(cuts=cuts), cutouts=(round_cutout(), round_cutout(diameter, "other")))
    return made.with_option(made.option("new").revised(acceptances=acceptances))


def word(made):
    option = made.option("new")
    (finding,) = check(made, option).findings
    return accept(finding, layout(made, option), reason="agreed with the owner", initials="KT", on="2026-01-31")


def outcome(made):
    report = check(made, made.option("new"))
    return len(report.findings), len(report.accepted), len(report.lapsed)


def test_an_accepted_finding_stays_visible_but_is_no_longer_open():
    assert outcome(narrow(5.0, acceptances=(word(narrow(5.0)),))) == (0, 1, 0)


@pytest.mark.parametrize(("web", "expected"), [(4.991, (0, 1, 0)), (4.98, (1, 0, 1)), (5.5, (0, 1, 0))])
def test_it_lapses_when_the_value_gets_worse_by_more_than_a_hundredth(web, expected):
    assert outcome(narrow(web, acceptances=(word(narrow(5.0)),))) == expected


def test_it_lapses_when_a_feature_it_names_changes():
    assert outcome(narrow(5.0, acceptances=(word(narrow(5.0)),), diameter=60.0)) == (1, 0, 1)


def test_what_can_never_be_right_cannot_be_accepted():
    made = project(sheet(cuts=(cut("a", 290, 0),)))
    with pytest.raises(EditRefused):
        word(made)


def test_it_lapses_when_a_rib_it_names_changes():
    """The rib gets taller and no nearer: the value is as it was, the rib is not."""

    def beside(height):
        return panel(fitted("a", 0, 0), around=rib(Rectangle(width=20, height=height), 35 + 10 + 3.0, 0))

    before = beside(20)
    (finding,) = [f for f in check(before, before.option("new")).findings if f.rule == "obstacles"]
    given = accept(finding, layout(before, before.option("new")), reason="agreed", initials="KT", on="2026-01-31")
    for height, expected in ((20, (0, 1, 0)), (30, (1, 0, 1))):
        made = beside(height)
        assert outcome(made.with_option(made.option("new").revised(acceptances=(given,)))) == expected
