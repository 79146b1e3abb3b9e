"""Colours of the page's pictures: properties with a value by day and one by night, so that one picture is both."""

from dataclasses import dataclass, field

from panelcad.drawing.appearance_light import DAY, NIGHT, Lighting, in_light
from panelcad.drawing.display import Colour
from panelcad.outputs.svg_painter import PlainInks


@dataclass
class DayAndNight(PlainInks):
    """Hands out a property for each pair of colours and lists them for the style sheet."""

    night: Lighting = NIGHT
    _names: dict[tuple[str, str], str] = field(default_factory=dict)

    def paint(self, what: str, colour: Colour, layer: str) -> str:
        pair = (_hex(in_light(colour, layer, DAY)), _hex(in_light(colour, layer, self.night)))
        name = "stop-color" if what == "stop" else what
        if pair[0] == pair[1]:
            return f' {name}="{pair[0]}"'
        known = self._names.setdefault(pair, f"--{len(self._names):x}")
        return f' {name}="var({known})"'

    def style(self) -> str:
        """The style sheet that gives every property its values; paper is by day but for the copies by night."""
        day = "".join(f"{name}:{pair[0]};" for pair, name in self._names.items())
        night = "".join(f"{name}:{pair[1]};" for pair, name in self._names.items())
        return f":root{{{day}}}@media screen{{:root.night{{{night}}}}}#by-night{{{night}}}"


def _hex(colour: Colour) -> str:
    return colour.text if colour.opacity == 255 else f"{colour.text}{colour.opacity:02x}"
