"""Where to try next: a search that always holds the best lay so far."""

from lastlook.lay.search.run import Goal, best_of, search, search_many

__all__ = ["Goal", "best_of", "search", "search_many"]
