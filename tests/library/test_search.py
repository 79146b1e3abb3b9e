import pytest

from panelcad.library.catalogue import packaged_catalogue
from panelcad.library.search import Index, words

INDEX = Index(
    [
        ("asi", "Airspeed indicator", "pitot knots 3-1/8 in round"),
        ("alt", "Altimeter", "static height 3-1/8 in round"),
        ("alt-small", "Altimeter, small", "static height 2-1/4 in round"),
        ("switch", "Toggle switch", "two pole"),
    ]
)


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("altimeter", ["alt", "alt-small"]),
        ("small altimeter", ["alt-small"]),
        ("Altimeter SMALL", ["alt-small"]),
        ("altimetre", ["alt", "alt-small"]),
        ("togle", ["switch"]),
        ("air speed", ["asi"]),
        ("3 1/8", ["asi", "alt"]),
        ('2-1/4"', ["alt-small"]),
        ("pitot", ["asi"]),
        ("pitot switch", []),
        ("zebra", []),
        ("", ["asi", "alt", "alt-small", "switch"]),
        ("  ", ["asi", "alt", "alt-small", "switch"]),
    ],
)
def test_words_find_entries_in_any_order_and_with_slips(typed: str, found: list[str]) -> None:
    assert INDEX.search(typed) == found


def test_a_word_of_the_title_comes_first() -> None:
    index = Index([("a", "Blank", "altimeter"), ("b", "Altimeter", "")])
    assert index.search("altimeter") == ["b", "a"]


def test_a_whole_word_comes_before_a_part_of_a_word_of_a_title() -> None:
    index = Index([("a", "Intercom", ""), ("b", "Radio", "com")])
    assert index.search("com") == ["b", "a"]


def test_few_letters_in_the_midst_of_a_word_are_not_that_word() -> None:
    index = Index([("a", "Navigation light", ""), ("b", "Display, 3 ATI", ""), ("c", "Airspeed", "")])
    assert index.search("ati") == ["b"]
    assert index.search("viga") == ["a"]
    assert index.search("eed") == ["c"]


def test_what_is_spelled_as_a_known_word_is_no_slip_of_the_pen() -> None:
    index = Index([("a", "Headphone jack", ""), ("b", "Blank, rack", "")])
    assert index.search("rack") == ["b"]
    assert index.search("rakc") == ["b"]


def test_of_two_titles_with_the_same_words_the_one_that_begins_with_them_comes_first() -> None:
    index = Index([("a", "To the pilot's centre line", ""), ("b", "Pilot's centre line and eye", "")])
    assert index.search("pilot centre") == ["b", "a"]


def test_numbers_keep_their_fractions() -> None:
    assert words("3-1/8 in, 15/32") == ["3", "1/8", "in", "15/32"]


def test_accents_do_not_matter() -> None:
    assert words("Géneràl") == ["general"]


def test_the_packaged_cutouts_are_found_by_title_and_family() -> None:
    found = packaged_catalogue().search("airspeed 3 1/8")
    assert found[0].name == "airspeed-3-1-8"


def test_the_best_are_those_that_suit_the_words_equally_well() -> None:
    assert INDEX.best("altimeter") == ["alt", "alt-small"]
    assert INDEX.best("altimeter small") == ["alt-small"]
    assert INDEX.best("zebra") == []
