"""A shop's own limits as a TOML file."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.checks.profile_file import differences, length_limits, limit_names, profile_text, read_profile
from panelcad.errors import UnusableInput
from panelcad.model.function import Function
from panelcad.model.profile import Profile, limit_source
from panelcad.model.view_zones import FunctionZone, ViewZone, functions_in, functions_told
from panelcad.units import LengthUnit


def written(tmp_path, text):
    file = tmp_path / "our shop.toml"
    file.write_text(text)
    return file


def test_what_the_file_says_and_defaults_for_the_rest(tmp_path):
    profile = read_profile(
        written(tmp_path, 'name = "Our shop"\nunit = "in"\n[limits]\nweb_advised = 0.3\nedge_distance_plain = 3\n')
    )
    assert (profile.name, profile.web_advised, profile.edge_distance_plain) == ("Our shop", 7.62, 3.0)
    assert profile.revised(name="defaults", web_advised=6.35, edge_distance_plain=2.0) == Profile()
    assert [d.text(LengthUnit.INCH) for d in differences(profile)] == [
        "Web between neighbouring cuts, advised: 0.300 in instead of 0.250 in",
        "Edge distance of a plain hole, in D: 3 instead of 2",
    ]


@settings(max_examples=20, deadline=None)
@given(unit=st.sampled_from(LengthUnit), web=st.integers(1, 10**8), bed=st.none() | st.integers(1, 10**9))
def test_what_is_written_reads_back_the_same(tmp_path_factory, unit, web, bed):
    profile = Profile(name='A "shop"', web_advised=web / 1e6, bed_width=None if bed is None else bed / 1e6)
    file = written(tmp_path_factory.mktemp("shop"), profile_text(profile, unit))
    assert read_profile(file) == profile


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('unit = "in"\n[limits]\nweb_advisd = 3\n', "web_advisd: this key is not known; expected 'web_advised'"),
        ('unit = "inch"\n', "'inch' is no unit; expected in or mm"),
        ("[limits]\n", "'' is no unit; expected in or mm"),
        ('unit = "mm"\nlimits = 3\n', "it is no table; expected a table such as [limits]"),
        (
            'unit = "mm"\ncolour = "red"\n',
            "colour: this key is not known; expected name, unit or a table",
        ),
        ('unit = "mm"\n[limits]\nweb_advised = -3\n', "web_advised: -3.0 is not usable"),
        ('unit = "mm"\n[limits]\nweb_advised = "wide"\n', "web_advised: 'wide' is not usable"),
        ('unit = "mm"\n[limits]\nweb_advised = nan\n', "web_advised: nan is not usable"),
        ("unit =", "it is not whole TOML text"),
    ],
)
def test_an_unusable_file_gets_one_sentence(tmp_path, text, said):
    with pytest.raises(UnusableInput) as caught:
        read_profile(written(tmp_path, text))
    assert said in str(caught.value)
    assert "our shop.toml" in str(caught.value)


def test_every_limit_has_a_title_and_a_source():
    for name in limit_names():
        assert Profile.model_fields[name].title
        assert limit_source(name).text
    assert "web_advised" in length_limits()
    assert "edge_distance_plain" not in length_limits()


def test_zones_are_read_told_and_written_back(tmp_path):
    text = 'unit = "mm"\n[zones]\n"vertical speed" = "primary"\nattitude = "primary"\nclock = "important"\n'
    profile = read_profile(written(tmp_path, text))
    assert functions_in(ViewZone.PRIMARY, profile.zones) == functions_in(ViewZone.PRIMARY) | {Function.VERTICAL_SPEED}
    assert Function.CLOCK in functions_told(profile.zones)
    assert [d.text(LengthUnit.MM) for d in differences(profile)] == [
        "Zone of the pilot's view for vertical speed: primary instead of important",
        "Zone of the pilot's view for clock: important instead of anywhere",
    ]
    assert [d.name for d in differences(profile)] == ["zones.vertical speed", "zones.clock"]
    assert read_profile(written(tmp_path, profile_text(profile, LengthUnit.INCH))) == profile
    assert read_profile(written(tmp_path, profile_text(Profile(), LengthUnit.MM))) == Profile()


def test_the_order_of_zones_and_zones_as_the_defaults_make_no_other_profile():
    clock, slip = (FunctionZone(function=f, zone=ViewZone.PRIMARY) for f in (Function.CLOCK, Function.SLIP))
    usual = FunctionZone(function=Function.ATTITUDE, zone=ViewZone.PRIMARY)
    assert Profile(zones=(clock, slip, usual)) == Profile(zones=(slip, clock))
    with pytest.raises(ValueError, match="the zone of 'clock' is stated twice"):
        Profile(zones=(clock, clock))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            '[zones]\n"vertcal speed" = "primary"\n',
            "zones, vertcal speed: no function bears this name",
        ),
        ('[zones]\nclock = "first"\n', "zones, clock: 'first' is no zone; expected one of primary, primary advised"),
        ("[zones]\nclock = 3\n", "zones, clock: 3 is no zone"),
        ("[limits]\nzones = 3\n", "limits, zones: it is no limit; expected a table of its own, [zones]"),
    ],
)
def test_an_unusable_zone_gets_one_sentence(tmp_path, text, said):
    with pytest.raises(UnusableInput) as caught:
        read_profile(written(tmp_path, f'unit = "mm"\n{text}'))
    assert said in str(caught.value)
