"""Where a dimension or a limit comes from, so that nobody mistakes a guess for a standard."""

from enum import StrEnum

from panelcad.model.base import Name, Record


class Standing(StrEnum):
    """How far a value can be trusted."""

    STANDARD = "published standard"
    PUBLISHED = "published figure"
    COMMON_PRACTICE = "common practice"
    MEMORY = "from memory"
    SHOP_SETTING = "shop setting"
    DEMO = "invented for the demo"
    USER = "entered by the user"


class Source(Record):
    standing: Standing
    text: Name

    def __str__(self) -> str:
        standing = self.standing.value
        return self.text if standing in self.text.lower() else f"{self.text} ({standing})"
