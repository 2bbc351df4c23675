"""Solving: queries to solutions, one topic a file."""
