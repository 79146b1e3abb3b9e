"""Words of placards on the front view: within the placard, turned with it, and told once."""

import math

import pytest

from panelcad.drawing.display import Text, walk
from panelcad.drawing.lettering import text_width
from panelcad.drawing.style import SCREEN_LIGHT
from panelcad.drawing.views.names import Sight, front_names
from panelcad.drawing.views.placards import placard_view
from panelcad.model.cutout import Bezel
from panelcad.model.layout import Layout, layout
from panelcad.model.shape import Rectangle
from tests import builders

WIDE, HIGH = 50.0, 12.0


def fitted(name: str, rotation: float = 0.0, **fields: object) -> Layout:
    bezel = Bezel(shape=Rectangle(width=WIDE, height=HIGH), source=builders.SOURCE)
    placard = builders.round_cutout(name="label", openings=(), bezel=bezel, family="placards")
    item = builders.item("p", 30.0, -20.0, cutout="label", rotation=rotation, **fields).revised(name=name)
    project = builders.project(items=(item,), cutouts=(placard,))
    return layout(project, project.option("new"))


@pytest.mark.parametrize("rotation", [0.0, 90.0, 30.0])
@pytest.mark.parametrize("words", ["NO SMOKING", "INTENTIONAL SPINS ARE PROHIBITED IN THIS AIRCRAFT"])
def test_all_words_stand_within_the_placard_however_it_is_turned(words: str, rotation: float) -> None:
    (group,) = placard_view(fitted(words, rotation), "main", SCREEN_LIGHT)
    lines = [node for node in walk((group,)) if isinstance(node, Text)]
    assert group.owner == "p"
    assert " ".join(line.text for line in lines) == words
    along = math.radians(rotation)
    for line in lines:
        dx, dy = line.at.x - 30.0, line.at.y + 20.0
        aside = dx * math.cos(along) + dy * math.sin(along)
        up = dy * math.cos(along) - dx * math.sin(along)
        assert line.rotation == rotation
        assert abs(aside) + text_width(line.text, line.height) / 2 <= WIDE / 2
        assert abs(up) + line.height / 2 <= HIGH / 2


def test_a_placard_behind_the_sheet_shows_none_and_no_name_is_put_beside_the_words() -> None:
    assert placard_view(fitted("NO SMOKING", mounting="rear"), "main", SCREEN_LIGHT) == ()
    names = front_names(fitted("NO SMOKING"), "main", SCREEN_LIGHT, Sight(0.2))
    assert [node for node in walk(names) if isinstance(node, Text)] == []
