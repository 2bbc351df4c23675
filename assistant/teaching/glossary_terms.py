"""All trade terms, gathered from the tables by subject."""

from __future__ import annotations

from assistant.teaching.glossary_exposure import EXPOSURE_TERMS
from assistant.teaching.glossary_flash import FLASH_TERMS
from assistant.teaching.glossary_light import LIGHT_TERMS

TERMS = EXPOSURE_TERMS + FLASH_TERMS + LIGHT_TERMS
