"""The bounds of what can be worked with: what a number beyond them is called."""


class OutOfRange(ValueError):
    """A number that a formula or a scale has no value for, named in words that can be shown."""
