"""Run the command line with `python -m counterpane`."""

import sys

from counterpane.cli import main

if __name__ == "__main__":
    sys.exit(main())
