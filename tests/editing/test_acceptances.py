from panelcad.editing.acceptances import add_acceptance, withdraw_acceptance
from panelcad.model.finding import Acceptance
from tests import builders


def word(reason: str, finding: str = "web|a|b") -> Acceptance:
    return Acceptance(finding=finding, reason=reason, initials="AB", on="2026-03-01", measured=3.0)


def test_a_second_word_takes_the_place_of_the_first() -> None:
    once = add_acceptance(builders.project(), "new", word("first"))
    other = add_acceptance(once, "new", word("other", "web|c|d"))
    twice = add_acceptance(other, "new", word("second"))
    assert [one.reason for one in twice.option("new").acceptances] == ["other", "second"]


def test_a_word_is_taken_back() -> None:
    before = builders.project()
    given = add_acceptance(before, "new", word("first"))
    assert withdraw_acceptance(given, "new", "web|a|b") == before
