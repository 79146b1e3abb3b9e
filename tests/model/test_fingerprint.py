from panelcad.model import fingerprint as fingerprint_module
from panelcad.model.base import in_nanometres
from panelcad.model.fingerprint import feature_fingerprint, option_fingerprint, plate_fingerprint
from panelcad.model.function import Function
from panelcad.model.layout import layout
from panelcad.model.project import Project
from panelcad.model.view_zones import FunctionZone, ViewZone
from tests import builders


def drawn(x: float = 0.0, **fields: object) -> Project:
    return builders.project(builders.sheet(cuts=(builders.cut("c", x, 0),)), **fields)


def of(project: Project) -> str:
    return option_fingerprint(project, project.option("new"))


def test_a_nanometre_changes_the_fingerprint_and_less_does_not() -> None:
    assert of(drawn(0.000001)) != of(drawn())
    assert of(drawn(0.0000001)) == of(drawn())


def test_names_and_notes_do_not_change_the_fingerprint() -> None:
    project = drawn()
    option = project.option("new")
    renamed = project.with_option(option.revised(name="Another name", summary="words"))
    assert of(renamed) == of(project)
    assert of(drawn(title="Another title")) == of(project)


def test_the_profile_changes_the_fingerprint() -> None:
    project = drawn()
    assert of(project.revised(profile=project.profile.revised(bezel_gap=1.0))) != of(project)


def test_zones_count_only_where_a_shop_changed_them() -> None:
    """Files that were released before a profile had zones keep their fingerprint."""
    project = drawn()
    plain = project.profile.model_dump(mode="json", context=in_nanometres())
    assert plain["zones"] == []
    assert "zones" not in fingerprint_module._profile(project.profile)
    zones = (FunctionZone(function=Function.CLOCK, zone=ViewZone.PRIMARY),)
    assert of(project.revised(profile=project.profile.revised(zones=zones))) != of(project)


def test_a_plate_has_its_own() -> None:
    project = drawn()
    option = project.option("new")
    other = option.revised(plates=(*option.plates, builders.sheet(id="sub", role="floating sub-panel")))
    grown = project.with_option(other)
    assert plate_fingerprint(grown, other, other.plates[0]) == plate_fingerprint(project, option, option.plates[0])
    assert of(grown) != of(project)


def test_a_moved_feature_keeps_its_fingerprint_and_a_resized_one_does_not() -> None:
    here, there = (layout(p, p.option("new")).plates[0].features for p in (drawn(), drawn(5.0)))
    small = drawn(cutouts=(builders.round_cutout(57.15),))
    assert feature_fingerprint(here) == feature_fingerprint(there)
    assert feature_fingerprint(layout(small, small.option("new")).plates[0].features) != feature_fingerprint(here)
