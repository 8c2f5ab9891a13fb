"""How results come back from a pickle: they are computed anew from what they were computed from, to the bit."""

from typing import Any


def call(owner: Any, name: str, *arguments: Any) -> Any:
    """`owner.name(*arguments)`."""
    return getattr(owner, name)(*arguments)
