"""Faces: where people and programs come in."""
