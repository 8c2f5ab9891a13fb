"""Types that the stubs share."""

from collections.abc import Sequence
from typing import Any, TypeAlias, Union

import numpy as np
import numpy.typing as npt

Results: TypeAlias = npt.NDArray[np.float64]
Truths: TypeAlias = npt.NDArray[np.bool_]
Numbers: TypeAlias = Union[npt.NDArray[np.floating[Any] | np.integer[Any]], Sequence[float], Sequence[Sequence[float]]]
Where: TypeAlias = Union[Truths, Sequence[bool], None]
