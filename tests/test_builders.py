from tests import builders


def test_a_built_project_carries_what_its_option_uses() -> None:
    built = builders.project(
        builders.sheet(cuts=(builders.cut("c1", 0, 0),)), items=(builders.item("i1", 0, 0, cut="c1"),)
    )
    assert built.option("new").item("i1").cut == "c1"
