# The compiled module: what it holds is typed where it is public, in the stub beside each module of the package.
from typing import Any

def __getattr__(name: str) -> Any: ...
