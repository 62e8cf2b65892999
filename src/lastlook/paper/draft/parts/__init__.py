"""The smaller pieces of a skirt: bands, belts, facings, pockets, lining; one a file."""
