from panelcad.drawing.display import Measured, Text, walk
from panelcad.drawing.numbering import numbering
from panelcad.drawing.style import SCREEN_LIGHT
from panelcad.drawing.views.numbers import number_view
from panelcad.library.samples import sample_file
from panelcad.model.layout import layout
from panelcad.store.project_file import load
from tests import builders


def test_every_cut_and_screw_of_a_sample_bears_its_number_once() -> None:
    project = load(sample_file("tourer"))
    laid = layout(project, project.options[0])
    plate = laid.plates[0]
    texts = [node for node in walk(number_view(laid, plate.plate.id, SCREEN_LIGHT)) if isinstance(node, Text)]
    numbers = numbering(laid)
    wanted = [numbers.cuts[cut.cut.id] for cut in plate.cuts]
    wanted += [numbers.features[feature.id] for feature in (*plate.attach, *plate.inner)]
    assert sorted(text.text for text in texts) == sorted(wanted)
    assert {text.measured for text in texts} == {Measured.PIXELS}


def test_an_empty_sheet_has_none() -> None:
    project = builders.project()
    assert number_view(layout(project, project.option("new")), "main", SCREEN_LIGHT) == ()
