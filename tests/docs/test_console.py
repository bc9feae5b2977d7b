"""The reader of console blocks, on which the tests of the documents rest."""

from docs.console import Step, blocks, files, prints

TEXT = """Save this as `rows.txt`:

```text
Row 1: k2
```

```console
$ cat rows.txt
Row 1: k2
$ echo one \\
  two
```
"""


def test_each_command_is_read_with_the_lines_under_it():
    """A command that goes on after a backslash is one command."""
    assert blocks(TEXT) == [(Step("cat rows.txt", ("Row 1: k2",)), Step("echo one \\\n  two", ()))]


def test_a_file_to_save_is_read_by_its_name():
    """The block after the sentence is the file, to the last line end."""
    assert files(TEXT) == {"rows.txt": "Row 1: k2\n"}


def test_an_ellipsis_stands_for_any_lines_and_nothing_else_does():
    """A line left out without an ellipsis is a difference."""
    assert prints(("a", "…", "d"), "a\nb\nc\nd\n")
    assert prints(("a", "…"), "a\n")
    assert not prints(("a", "d"), "a\nb\nd\n")
