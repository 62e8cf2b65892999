"""Where to try next: a search that always holds the best lay so far."""

from lastlook.lay.search.run import Goal, search, search_many

__all__ = ["Goal", "search", "search_many"]
