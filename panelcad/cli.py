"""The commands."""

import typer

app = typer.Typer()


@app.command()
def version() -> None:
    """Say which panelcad this is."""


def main() -> None:
    app()
