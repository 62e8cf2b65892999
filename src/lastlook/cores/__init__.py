"""Several searches for one lay at once, one on each core: a shell round the pure search."""

from lastlook.cores.search import CORES, Asked, search

__all__ = ["CORES", "Asked", "search"]
