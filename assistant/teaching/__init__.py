"""Explanations: what words mean, why the rules hold, what went wrong with a film."""
