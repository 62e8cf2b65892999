"""The whole undertaking and its three questions."""
