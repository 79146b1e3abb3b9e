"""Which panelcad this is; the package's build reads it here."""

__version__ = "0.1.0"
