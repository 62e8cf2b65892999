"""Printed text to instructions, in every reading that makes sense."""
