"""Sewing-pattern pieces and their alterations."""
