"""Plain-language answers to questions of flash and exposure."""
