"""The cautions, in plain words."""

from typing import Final

SHORTEST: Final = "A planning aid: it approves nothing."
SHORT: Final = (
    f"{SHORTEST} Check every dimension against the maker's installation manual and the aircraft itself, and try a "
    "paper or scrap template before metal is cut."
)
FULL: Final = (
    "panelcad is a planning aid. It never approves anything.",
    "Check every dimension against the equipment maker's installation manual and against the aircraft itself.",
    "A panel may be primary structure. Nothing here judges its strength.",
    "Do not cut before the data are approved and a paper or scrap template has been tried in the aircraft.",
    "Redundancy, load and CG results are arithmetic on what was entered; unknown is never safe.",
    (
        "After the work come pitot-static leak check, altimeter and transponder tests, compass swing, interference "
        "test, controls free through full travel, flammability of finishes, and required placards."
    ),
    (
        "Alterations of a certificated aircraft need approved data and the sign-off of a licensed person. Follow the "
        "local authority's rules."
    ),
    "The built-in equipment is generic; its weights, currents and prices are invented for demonstration.",
)
