import pytest

from panelcad.checks.run import check
from panelcad.checks.wording import sentence
from panelcad.model.finding import Severity
from tests.builders import cut, project, sheet


def judge(*cuts, **plate):
    made = project(sheet(cuts=cuts, **plate))
    return check(made, made.option("new"))


def test_a_cut_alone_on_a_large_sheet_gives_no_finding():
    assert judge(cut("a", 0, 0)).findings == ()


@pytest.mark.parametrize(
    ("web", "expected"), [(3.99, Severity.ERROR), (4.0, Severity.WARNING), (6.34, Severity.WARNING)]
)
def test_web_between_two_round_cuts(web, expected):
    (finding,) = judge(cut("a", 0, 0), cut("b", 79.375 + web, 0)).findings
    assert (finding.rule, finding.severity) == ("web", expected)
    assert finding.measured == pytest.approx(web, abs=1e-6)


def test_a_web_of_exactly_a_quarter_inch_passes():
    assert judge(cut("a", 0, 0), cut("b", 79.375 + 6.35, 0)).findings == ()


def test_sentence_names_things_and_uses_the_projects_unit():
    made = project(sheet(cuts=(cut("a", 0, 0, name="Altimeter"), cut("b", 84.375, 0, name="Compass"))))
    (finding,) = check(made, made.option("new")).findings
    assert sentence(finding, made, made.option("new")) == (
        "Web between cuts is narrow: Altimeter (opening) and Compass (opening): 5.00 mm, at least 6.35 mm required. "
        "Move Compass 1.4 mm right."
    )
