"""The commands of the course: `python3 -m woodmath open` and `python3 -m woodmath test`.

Every Python 3, however old, must be able to read this file and `woodmath/__init__.py`, so that a Python
which is too old is told so in a sentence and not by a traceback. Hence no annotations and no f-strings
here, and nothing of ours is imported before the check.
"""

import sys

if sys.version_info < (3, 11):
    if sys.platform == "win32":
        mending = "winget install Python.Python.3.13"
        again = "py -3.13 -m woodmath open"
    elif sys.platform == "darwin":
        mending = "brew install python@3.13"
        again = "python3.13 -m woodmath open"
    else:
        mending = "sudo apt install python3.11 python3.11-venv    (or: sudo dnf install python3.11)"
        again = "python3.11 -m woodmath open"
    sys.stderr.write(
        "The course needs Python 3.11 or newer, and this is Python %d.%d.\n"
        "To mend it:  %s\n"
        "Then run:    %s\n" % (sys.version_info[0], sys.version_info[1], mending, again)
    )
    sys.exit(1)

if __name__ == "__main__":
    from woodmath.school.commands import main

    sys.exit(main(sys.argv[1:]))
