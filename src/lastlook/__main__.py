"""Let `python -m lastlook` be the command."""

import sys

from lastlook.cli.main import main

sys.exit(main())
