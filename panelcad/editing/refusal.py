"""An edit that would leave a project that cannot be is refused in one sentence."""

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

from pydantic import ValidationError

from panelcad.errors import EditRefused
from panelcad.model.faults import plain_sentence

Given = ParamSpec("Given")
Result = TypeVar("Result")


def edit(function: Callable[Given, Result]) -> Callable[Given, Result]:
    """The same edit; where the model does not take its outcome it raises `EditRefused` with the model's reason."""

    @wraps(function)
    def guarded(*args: Given.args, **kwargs: Given.kwargs) -> Result:
        try:
            return function(*args, **kwargs)
        except ValidationError as error:
            raise EditRefused(plain_sentence(error)) from error

    return guarded
