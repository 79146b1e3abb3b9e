"""What must be read before metal is cut and before the aircraft flies, in plain words."""

from typing import Final

SHORT: Final = "Planning aid: approves nothing. Check every dimension. Do not cut before the data are approved."
BEFORE_CUTTING: Final = (
    "This drawing comes from a planning aid. It never approves anything.",
    "Check every dimension against the equipment makers' installation manuals and against the aircraft itself.",
    "The panel may be primary structure: nothing here judges its strength.",
    "Do not cut before the data are approved and a paper or scrap template was tried in the aircraft.",
    "Built-in equipment is generic; its weights, currents and prices are invented for demonstration.",
)
BEFORE_FLIGHT: Final = (
    "Pitot-static leak check; altimeter and transponder tests; compass swing; interference test.",
    "Controls free through their full travel; required placards in place; flammability of finishes shown.",
    "Redundancy, load and CG results are arithmetic on what was entered; unknown is never safe.",
    "Alterations of a certificated aircraft need approved data and the sign-off of a licensed person.",
    "Follow the rules of the local authority.",
)
