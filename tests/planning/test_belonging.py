from panelcad.model.finding import Severity
from panelcad.planning.belonging import circles, judge_belonging
from tests.planning import kit

REMOTE_TRANSPONDER = kit.unit("remote-xpdr", provides=("transponder",), needs=({"controller": "transponder"},))
NAVIGATOR = kit.unit("navigator", provides=("COM", "NAV"), controls=("transponder", "audio panel"))


def rules(*units: object, **fields: object) -> list[tuple[str, tuple[str, ...]]]:
    return [(f.rule, f.items) for f in judge_belonging(kit.fitted(*units, **fields))]


def test_a_remote_unit_without_a_controller_is_an_error() -> None:
    (found,) = judge_belonging(kit.fitted(REMOTE_TRANSPONDER))
    assert (found.rule, found.severity, found.items) == ("no-controller", Severity.ERROR, ("remote-xpdr",))
    assert found.source
    assert found.cure is not None
    assert "Large navigator" in found.cure.advice


def test_a_navigator_that_can_control_it_is_its_controller() -> None:
    assert rules(REMOTE_TRANSPONDER, NAVIGATOR) == []


def test_a_need_is_met_by_another_unit_or_by_the_aircraft() -> None:
    altimeter = kit.unit("altimeter", needs=({"supply": "pitot and static air"},), power="none")
    lines = kit.unit("lines", supplies=("pitot and static air",))
    assert rules(altimeter) == [("need", ("altimeter",))]
    assert rules(altimeter, lines) == []
    assert rules(altimeter, planning={"supplied": ("pitot and static air",)}) == []


def test_a_need_for_some_functions_only_is_a_warning() -> None:
    needs = ({"supply": "position source", "for_functions": ("ADS-B out",)},)
    (found,) = judge_belonging(kit.fitted(kit.unit("xpdr", provides=("transponder", "ADS-B out"), needs=needs)))
    assert (found.rule, found.severity) == ("need", Severity.WARNING)
    assert found.problem == "Without position source it gives no ADS-B out"


def test_two_transponders_fight_for_one_role() -> None:
    other = kit.unit("xpdr", provides=("transponder",))
    assert rules(REMOTE_TRANSPONDER, NAVIGATOR, other) == [("one-role", ("remote-xpdr", "xpdr"))]


def test_two_com_radios_do_not_fight() -> None:
    assert rules(kit.unit("com-1", provides=("COM",)), kit.unit("com-2", provides=("COM",))) == []


MONITOR = kit.unit("monitor", needs=({"supply": "fuel senders", "strength": "renewed with it"},))
SENDERS = kit.unit("senders", supplies=("fuel senders",))


def test_an_engine_monitor_with_the_old_senders_is_advice() -> None:
    project = kit.project(MONITOR, SENDERS, as_found_items=(kit.fit("senders"),))
    (found,) = judge_belonging(kit.equipment(project, project.option("new")))
    assert (found.rule, found.severity, found.items) == ("old-senders", Severity.ADVICE, ("monitor", "senders"))
    assert found.source == "common practice"


def test_renewed_senders_leave_nothing_to_say() -> None:
    project = kit.project(
        MONITOR,
        SENDERS,
        items=(kit.fit("monitor"), kit.fit("senders", "new-senders")),
        as_found_items=(kit.fit("senders"),),
    )
    assert list(judge_belonging(kit.equipment(project, project.option("new")))) == []


def test_senders_that_nobody_listed_are_old_too() -> None:
    assert rules(MONITOR, planning={"supplied": ("fuel senders",)}) == [("old-senders", ("monitor",))]


def test_units_that_need_each_other_are_a_circle() -> None:
    a = kit.unit("a", supplies=("air data",), needs=({"supply": "heading source"},))
    b = kit.unit("b", supplies=("heading source",), needs=({"supply": "position source"},))
    c = kit.unit("c", supplies=("position source",), needs=({"supply": "air data"},))
    onlooker = kit.unit("onlooker", needs=({"supply": "air data"},))
    assert circles(kit.fitted(a, b, c, onlooker)) == (("a", "b", "c"),)
    assert rules(a, b, c, onlooker) == [("circular-needs", ("a", "b", "c"))]


def test_a_second_source_breaks_the_circle() -> None:
    a = kit.unit("a", supplies=("air data",), needs=({"supply": "heading source"},))
    b = kit.unit("b", supplies=("heading source",), needs=({"supply": "air data"},))
    assert circles(kit.fitted(a, b, kit.unit("c", supplies=("air data",)))) == ()
