"""Pages: what stands round them, and blocks filled into them."""
