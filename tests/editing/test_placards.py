"""A placard says what it is called; nothing is engraved under it."""

import pytest

from panelcad.editing.placards import letter_placards, placard_at, placards, words_of
from panelcad.editing.place import place
from panelcad.errors import EditRefused, UnknownName
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.layout import layout
from panelcad.model.project import Project
from tests import builders


def fitted() -> tuple[Project, str, str]:
    """Two small placards and a toggle switch; the placards' ids."""
    catalogue, project, ids = packaged_catalogue(), builders.project(builders.sheet()), []
    for name, x in (("placard-small", 0.0), ("placard-small", 100.0), ("toggle", -60.0)):
        made = place(project, "new", "main", catalogue.cutout(name), x, 0.0)
        project = made.project
        ids.append(made.item_id)
    return project, ids[0], ids[1]


def test_the_placards_among_what_is_chosen_and_what_they_say() -> None:
    project, first, second = fitted()
    option = project.option("new")
    every = [item.id for item in option.items]
    assert [item.id for item in placards(project, option, every)] == [first, second]
    assert [item.id for item in placards(project, option, [second, every[2]])] == [second]
    assert {words_of(project, item) for item in placards(project, option, every)} == {""}


def test_each_gets_its_words_and_nothing_is_engraved() -> None:
    project, first, second = fitted()
    made = letter_placards(project, "new", {first: " COMPASS CARD ", second: " "})
    option = made.project.option("new")
    assert made.ids == (first,)
    assert [words_of(made.project, option.item(one)) for one in (first, second)] == ["COMPASS CARD", ""]
    assert option.plate("main").engravings == ()


@pytest.mark.parametrize(("x", "y", "is_on_it"), [(25.3, 0.0, True), (25.5, 0.0, False), (0.0, 6.4, False)])
def test_the_placard_at_a_place_is_as_large_as_its_face(x: float, y: float, is_on_it: bool) -> None:
    project, first, _ = fitted()
    (plate,) = layout(project, project.option("new")).plates
    found = placard_at(plate, Point(x, y))
    assert (found.id if found else None) == (first if is_on_it else None)
    assert placard_at(plate, Point(-60.0, 0.0)) is None


def test_without_words_or_without_such_a_placard_it_is_refused() -> None:
    project, first, _ = fitted()
    with pytest.raises(EditRefused, match="no words"):
        letter_placards(project, "new", {first: "  "})
    with pytest.raises(EditRefused, match="200 characters"):
        letter_placards(project, "new", {first: "A" * 201})
    with pytest.raises(UnknownName):
        letter_placards(project, "new", {"nobody": "A"})
