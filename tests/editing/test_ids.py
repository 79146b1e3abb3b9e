from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.model.base import Id
from tests.editing.scenes import one_instrument


@given(st.text(max_size=300), st.integers(0, 3))
def test_every_fresh_id_is_one_the_model_takes_and_is_new(typed: str, uses: int) -> None:
    taken: set[str] = set()
    for _ in range(uses + 1):
        made = fresh_id(typed, taken)
        assert made not in taken
        taken.add(TypeAdapter(Id).validate_python(made))


def test_numbers_go_on_where_they_were() -> None:
    assert fresh_id("Clock", set()) == "clock"
    assert fresh_id("clock-2", {"clock", "clock-2"}) == "clock-3"
    assert fresh_name("Clock 2", {"Clock", "Clock 2"}) == "Clock 3"


def test_every_id_of_an_option_is_known() -> None:
    project = one_instrument()
    assert ids_in(project, project.option("new")) == {"main", "gauge", "hole"}
