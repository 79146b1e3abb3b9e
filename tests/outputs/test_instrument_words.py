"""Words about an instrument: what its unit does in this option, and what a control switches or protects."""

import pytest

from panelcad.drawing.faces.registry import BY_NAME
from panelcad.library.samples import sample_file
from panelcad.model.function import Function
from panelcad.outputs.instrument_words import instrument_words
from panelcad.outputs.story import stories
from panelcad.store.project_file import load


@pytest.mark.parametrize(
    ("kind", "name", "words"),
    [
        ("toggle", "Left alternator switch", "Switches the left alternator on and off."),
        ("toggle", "Flap selector", "Sets the flap."),
        ("breaker", "COM 1 breaker, 10 A", "Protects the wires of COM 1 (10 A); pops out on overload."),
        ("breaker", "Fuel pump breaker, 2.5 A", "Protects the wires of the fuel pump (2.5 A); pops out on overload."),
        ("breaker", "Breaker", "Protects the wires of the breaker; pops out on overload."),
        ("rotary", "Panel lights dimmer", "Dims the panel lights."),
        ("lamp", "Low voltage lamp", "Lights up for low voltage."),
        ("pull", "Throttle", "Push and pull for the throttle."),
    ],
)
def test_a_control_says_what_it_is_for(kind: str, name: str, words: str) -> None:
    assert instrument_words(BY_NAME[kind], name, None) == words


def test_a_transponder_tells_its_place_only_where_it_does() -> None:
    kind = BY_NAME["transponder"]
    plain = instrument_words(kind, "Transponder", frozenset({Function.TRANSPONDER}))
    assert "ADS-B" not in plain
    both = instrument_words(kind, "Transponder", frozenset({Function.TRANSPONDER, Function.ADSB_OUT}))
    assert both == f"{plain} Tells other aircraft where this one is (ADS-B out)."
    assert "ADS-B" not in instrument_words(kind, "Transponder 2", None)


def test_a_unit_that_does_nothing_yet_says_so() -> None:
    assert "needs is missing" in instrument_words(BY_NAME["com"], "COM", frozenset())


@pytest.mark.parametrize("sample", ["tourer", "trainer", "twin"])
def test_words_promise_nothing_that_the_table_counts_as_none(sample: str) -> None:
    promises = {Function.ADSB_OUT: "where this one is", Function.INTERCOM: "talk to each other"}
    for told in stories(load(sample_file(sample))):
        words = " ".join(each.text for each in told.instruments)
        for function, promise in promises.items():
            assert (promise in words) <= (told.functions.get(function, 0) > 0)
