"""Drawings: a tape, knitted and paper pieces, the cutting table, a row on the needle."""
