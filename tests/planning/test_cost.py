from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.model.equipment import LabourTask
from panelcad.model.planning import LineKind
from panelcad.planning.cost import Cost, cost, judge_cost
from panelcad.planning.equipment import equipment
from tests.planning import kit

BOX = kit.unit(
    "box",
    price="1234.56",
    labour=(
        {"task": "removal", "hours": 1.5},
        {"task": "installation", "hours": 2.5},
        {"task": "wiring", "hours": "4"},
    ),
)
RATE = {"currency": "USD", "hourly_rate": "110.00", "equipment_tax": "8.25", "labour_tax": "0"}


def quoted(
    *units: object,
    costs: dict[str, object] | None = None,
    option_costs: dict[str, object] | None = None,
    **fields: object,
) -> Cost:
    return cost(built(*units, costs=costs, option_costs=option_costs, **fields))


def built(
    *units: object,
    costs: dict[str, object] | None = None,
    option_costs: dict[str, object] | None = None,
    **fields: object,
) -> object:
    project = kit.project(*units, planning={"costs": RATE if costs is None else costs}, **fields)
    option = project.option("new").revised(planning={"costs": option_costs or {}})
    return equipment(project.with_option(option), option)


def test_a_quote_worked_out_by_hand() -> None:
    """1234.56 less 10 % is 1111.10; 6.5 h at 110 is 715; 250 sheet metal, 40 shipping; 5 % of 2116.10 is 105.81;
    tax 8.25 % of 1111.10 + 40 + 105.81 is 103.70; credit 300 off: 2025.61."""
    found = quoted(
        BOX,
        option_costs={
            "lines": (
                {"name": "New sub-panel", "kind": "sheet metal", "amount": "250"},
                {"name": "Shipping", "kind": "shipping and consumables", "amount": "40"},
                {"name": "Old radio", "kind": "credit for what is removed", "amount": "300"},
            ),
            "equipment_discount": "10",
            "contingency": "5",
        },
    )
    assert found.discount == Decimal("123.46")
    assert found.sum_of(LineKind.LABOUR) == Decimal("715.00")
    assert found.contingency == Decimal("105.81")
    assert found.tax == Decimal("103.70")
    assert found.total == Decimal("2025.61")
    assert found.is_whole


def test_hours_are_shown_by_task() -> None:
    assert quoted(BOX, option_costs={"labour": ({"task": "wiring", "hours": 3},)}).hours_by_task() == {
        LabourTask.INSTALLATION: Decimal("2.5"),
        LabourTask.WIRING: Decimal(7),
    }


def test_what_comes_out_costs_its_removal_only() -> None:
    found = quoted(BOX, items=(), as_found_items=(kit.fit("box"),))
    assert found.hours_by_task() == {LabourTask.REMOVAL: Decimal("1.5")}
    assert found.sum_of(LineKind.EQUIPMENT) == 0


def test_what_stays_costs_nothing() -> None:
    assert quoted(BOX, as_found_items=(kit.fit("box"),)).total == 0


def test_a_price_nobody_entered_is_named_and_in_no_sum() -> None:
    found = quoted(BOX, kit.unit("gift", labour=()))
    assert found.unknown == ("Gift",)
    assert not found.is_whole
    assert found.sum_of(LineKind.EQUIPMENT) == Decimal("1234.56")


def test_another_currency_needs_its_rate() -> None:
    box = BOX.revised(currency="EUR")
    assert quoted(box).unknown == ("Box",)
    found = quoted(box, costs={**RATE, "exchange": ({"currency": "EUR", "rate": "1.1"},)})
    assert found.sum_of(LineKind.EQUIPMENT) == Decimal("1358.02")


def rules(*units: object, **fields: object) -> list[tuple[str, tuple[str, ...]]]:
    return [(f.rule, f.features or f.items) for f in judge_cost(built(*units, **fields))]


def test_what_is_not_known_is_said() -> None:
    bare = kit.unit("bare")
    found = rules(bare, costs={})
    assert ("price-unknown", ("bare",)) in found
    assert ("rate-unknown", ()) in found
    assert ("hours-unknown", ("bare",)) in found


ALTIMETER = kit.unit("altimeter", price="1", labour=(), needs=({"supply": "pitot and static air"},), power="none")
SWING = {"labour": ({"task": "compass swing", "hours": 2},)}


def test_opened_static_lines_call_for_a_test() -> None:
    """14 CFR 91.411(a)(2)."""
    assert ("test-not-quoted", ("pitot-static and altimeter test",)) in rules(ALTIMETER, option_costs=SWING)
    both = {"labour": (*SWING["labour"], {"task": "pitot-static and altimeter test", "hours": 2})}
    assert rules(ALTIMETER, option_costs=both) == []


def test_an_electrical_change_calls_for_a_compass_swing() -> None:
    """AC 43.13-1B paragraph 12-37a."""
    assert rules(BOX) == [("test-not-quoted", ("compass swing",))]
    assert rules(BOX, option_costs=SWING) == []
    assert rules(BOX, as_found_items=(kit.fit("box"),)) == []


MONEY = st.decimals(0, 50_000, places=2)
HOURS = st.decimals(0, 80, places=1)


@settings(max_examples=60)
@given(
    st.lists(st.tuples(MONEY, HOURS), max_size=6),
    st.lists(st.tuples(st.sampled_from(list(LineKind)), MONEY), max_size=4),
    st.decimals(0, 30, places=2),
    st.decimals(0, 30, places=2),
    st.decimals(0, 25, places=2),
)
def test_money_adds_up(
    units: list[tuple[Decimal, Decimal]],
    lines: list[tuple[LineKind, Decimal]],
    discount: Decimal,
    contingency: Decimal,
    tax: Decimal,
) -> None:
    boxes = [kit.unit(f"u{i}", price=p, labour=({"task": "wiring", "hours": h},)) for i, (p, h) in enumerate(units)]
    found = quoted(
        *boxes,
        costs={**RATE, "equipment_tax": tax},
        option_costs={
            "lines": tuple({"name": k.value, "kind": k, "amount": a} for k, a in lines),
            "equipment_discount": discount,
            "contingency": contingency,
        },
    )
    assert (
        found.total
        == sum((line.amount or Decimal(0)) for line in found.lines) - found.discount + found.contingency + found.tax
    )
    assert found.total == found.total.quantize(Decimal("0.01"))
    assert found.total_hours == sum(found.hours_by_task().values(), Decimal(0))
    extra = sum((a for k, a in lines if k is LineKind.EQUIPMENT), Decimal(0))
    assert found.sum_of(LineKind.EQUIPMENT) == sum((p for p, _ in units), extra)


@pytest.mark.parametrize("percent", ["-1", "101"])
def test_a_share_beyond_all_is_refused(percent: str) -> None:
    with pytest.raises(ValueError, match="equipment_tax"):
        quoted(BOX, costs={**RATE, "equipment_tax": percent})
