"""What the craft allows: whole stitches, rates of shaping, rows on a needle, and the words for them."""
