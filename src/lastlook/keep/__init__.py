"""The outfits kept on this disk, every revision of them."""
