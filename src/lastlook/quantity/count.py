"""What is counted on the needles: stitches and rows are different things."""

from typing import NewType

Stitches = NewType("Stitches", int)
Rows = NewType("Rows", int)
