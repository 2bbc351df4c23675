"""Cautions and answers about doing the work without hurting anybody."""
