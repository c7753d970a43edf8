"""Joinery mathematics for the bench: one derivation behind every number that a maker marks."""
