"""The page of rules is made from the rules."""

from pathlib import Path

from panelcad.checks.registry import all_rules
from panelcad.checks.rule_page import PAGE, rules_page

ROOT = Path(__file__).parents[2]


def test_the_page_in_docs_is_not_stale():
    """After a change of rules or limits run `python -m panelcad.checks.rule_page`."""
    assert (ROOT / PAGE).read_text(encoding="utf-8") == rules_page()


def test_it_names_every_rule_its_limits_and_their_sources():
    page = rules_page()
    for rule in all_rules():
        assert f"## {rule.id}\n\n**{rule.title}.**" in page
        assert all(f"`{name}`" in page for name in rule.limits)
    assert "0.250 in (6.35 mm)" in page
