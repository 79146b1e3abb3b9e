"""The layers of the views, named as people switch them on and off."""

from enum import StrEnum


class Layer(StrEnum):
    METAL = "metal"
    BENDS = "bends"
    CUTS = "cuts"
    HOLES = "holes"
    ATTACH = "attach screws"
    BEZELS = "bezels"
    KNOBS = "knobs"
    ENGRAVING = "engraving"
    BODIES = "bodies"
    OBSTACLES = "obstacles"
    DEPTH = "depth limits"
    MOVING = "moving parts"
    KEEP_OUTS = "keep-outs"
    HIDDEN = "hidden from the eye"
    VIEW = "fields of view"
    REACH = "reach"
    DIMENSIONS = "dimensions"
    NOTES = "notes"
    NUMBERS = "numbers"
    NAMES = "names"
