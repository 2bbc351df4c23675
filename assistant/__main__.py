"""python -m assistant: the same as the command."""

import sys

from assistant.faces.cli import main

sys.exit(main())
