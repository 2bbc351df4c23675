"""Plain-language answers to questions of flash and exposure."""

__version__ = "0.1.0"
