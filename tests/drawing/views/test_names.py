import pytest

from panelcad.drawing.box import is_within
from panelcad.drawing.display import Text, walk
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import SCREEN_LIGHT
from panelcad.drawing.views.names import Sight, behind_names, front_names
from panelcad.drawing.views.numbers import number_view
from panelcad.editing.around import add_standing
from panelcad.library.samples import sample_file
from panelcad.model.layout import layout
from panelcad.store.project_file import load
from tests import builders
from tests.editing.test_around import FIREWALL, RIB, YOKE

NUMBERED = Sight(0.25)


def laid(*things):
    project = builders.project(
        builders.sheet(cuts=(builders.cut("one-cut", -100.0, 0.0),)),
        items=(builders.item("one", -100.0, 0.0, cut="one-cut"),),
    )
    for thing in things:
        project = add_standing(project, thing).project
    return layout(project, project.options[0])


def told(groups) -> dict[str, str]:
    return {group.owner: " ".join(node.text for node in walk((group,)) if isinstance(node, Text)) for group in groups}


def test_items_and_keep_outs_are_named_in_front_and_what_is_behind_from_behind() -> None:
    found = laid(RIB, FIREWALL, YOKE)
    assert told(front_names(found, "main", SCREEN_LIGHT, NUMBERED)) == {"one": "one", "rib-2": "Yoke"}
    behind = told(behind_names(found, "main", SCREEN_LIGHT, NUMBERED))
    assert behind == {"rib": "Rib", "firewall": "Firewall"}


def test_things_on_hidden_layers_go_without_a_name() -> None:
    sight = Sight(0.25, frozenset({Layer.OBSTACLES, Layer.KEEP_OUTS}))
    found = laid(RIB, FIREWALL, YOKE)
    assert told(front_names(found, "main", SCREEN_LIGHT, sight)) == {"one": "one"}
    assert told(behind_names(found, "main", SCREEN_LIGHT, sight)) == {"firewall": "Firewall"}


def test_from_behind_a_name_is_where_its_thing_is_seen() -> None:
    (rib,) = (g for g in behind_names(laid(RIB), "main", SCREEN_LIGHT, NUMBERED) if g.owner == "rib")
    at = next(node.at for node in walk((rib,)) if isinstance(node, Text))
    assert at.x == pytest.approx(-50.0, abs=20.0)


@pytest.mark.parametrize("hidden", [frozenset(), frozenset({Layer.NUMBERS})])
def test_numbers_stay_where_they_are_and_names_give_way(hidden) -> None:
    found = laid()
    sight = Sight(0.25, hidden)
    (name,) = front_names(found, "main", SCREEN_LIGHT, sight)
    (number,) = sight.words(number_view(found, "main", SCREEN_LIGHT)) or [(0.0, 0.0, 0.0, 0.0)]
    y = next(node.at.y for node in walk((name,)) if isinstance(node, Text))
    assert (y == 0.0) == bool(hidden)
    assert hidden or y < number[1]


@pytest.mark.parametrize("key", ["tourer", "trainer", "twin"])
def test_nearer_by_more_of_the_names_are_told(key) -> None:
    project = load(sample_file(key))
    found = layout(project, project.options[0])
    plate = found.plates[0]
    far, near = (
        told(front_names(found, plate.plate.id, SCREEN_LIGHT, Sight(scale, frozenset({Layer.NUMBERS}))))
        for scale in (1.4, 0.2)
    )
    assert 0 < len(far) < len(near)
    items = {item.item.id: item.item.name for item in plate.items}
    assert sum(near.get(one) == name for one, name in items.items()) > 0.9 * len(items)


def test_no_name_stands_where_something_else_is_told() -> None:
    found = laid()
    (name,) = front_names(found, "main", SCREEN_LIGHT, NUMBERED)
    taken = Sight(0.25, taken=((-139.0, -39.0, -61.0, 39.0),))
    (moved,) = front_names(found, "main", SCREEN_LIGHT, taken)
    assert is_within(_box(name), taken.taken[0])
    assert not is_within(_box(moved), taken.taken[0])


def _box(group):
    at = next(node.at for node in walk((group,)) if isinstance(node, Text))
    return at.x, at.y, at.x, at.y
