"""What is at hand: yarn, cloth, notions, swatches."""
