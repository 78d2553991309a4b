"""Quantities and money of one job, computed a second time from the same YAML files.

Written from the settled rules of the project, in `decimal`; it shares no code and no
intermediate figure with the program. What a rule is stands where it is used. A key that
these files do not know is refused, so that nothing is passed over in silence.
"""

from .job import Job
from .reading import NotCovered, load

__all__ = ["Job", "NotCovered", "load"]
