"""Millimetres to a tenth, the same length always shown by the same figure."""

NUDGE_MM = 1e-4
"""So that 29.05 comes out as 29.1 whichever way it was worked out."""


def tenths(mm: float) -> str:
    """Return millimetres to a tenth.

    >>> tenths(29.05), tenths(-0.04)
    ('29.1', '0.0')
    """
    text = f"{abs(mm) + NUDGE_MM:.1f}"
    return f"-{text}" if mm < 0 and float(text) else text


def signed(mm: float) -> str:
    """Return millimetres to a tenth with their sign; nothing has none.

    >>> signed(3.81), signed(-0.01)
    ('+3.8', '0.0')
    """
    text = tenths(mm)
    return text if mm < 0 or not float(text) else f"+{text}"
