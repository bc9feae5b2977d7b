"""Settings: which source wins, and that a slip of the pen is never silent."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from counterpane.settings import KINDS, SettingsError, gather


def test_a_flag_comes_before_the_environment_the_file_and_the_default(tmp_path: Path) -> None:
    """Each setting says where its value comes from."""
    file = tmp_path / "counterpane.toml"
    file.write_text('port = 1\nhost = "::1"\nthreads = 3\n')
    known = gather({"port": 4, "host": None}, {"COUNTERPANE_PORT": "2", "COUNTERPANE_THREADS": "5", "HOME": "/"}, file)
    assert (known["port"].value, known["port"].origin) == (4, "command line")
    assert (known["threads"].value, known["threads"].origin) == (5, "environment")
    assert (known["host"].value, known["host"].origin) == ("::1", str(file))
    assert (known["server"].value, known["server"].origin) == ("granian", "default")


def test_every_setting_has_a_value(tmp_path: Path) -> None:
    """Without any source the defaults hold."""
    assert list(gather({}, {}, tmp_path / "none.toml")) == [kind.name for kind in KINDS]


@pytest.mark.parametrize(
    ("flags", "environment"),
    [({"prot": 1}, {}), ({}, {"COUNTERPANE_PROT": "1"}), ({}, {"COUNTERPANE_STROE": "x"})],
)
def test_an_unknown_key_is_refused_with_the_nearest(flags: Any, environment: Any) -> None:
    """From whatever source."""
    with pytest.raises(SettingsError) as caught:
        gather(flags, environment)
    assert caught.value.hint in ("Probably meant: port.", "Probably meant: store.")


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("PORT", "65536"),
        ("PORT", "-1"),
        ("PORT", "8o"),
        ("PORT", "٣"),
        ("WORKERS", "0"),
        ("SERVER", "apache"),
        ("STORE", ""),
        ("REQUESTS_PER_MINUTE", "1000001"),
        ("REQUESTS_PER_MINUTE", "-1"),
        ("REQUESTS_PER_MINUTE", "many"),
    ],
)
def test_a_value_of_nonsense_is_refused(key: str, value: str) -> None:
    """With the setting and its source."""
    with pytest.raises(SettingsError, match=rf"{key.lower()} \(environment\)"):
        gather({}, {f"COUNTERPANE_{key}": value})


@pytest.mark.parametrize(("value", "read"), [("", ""), ("0", 0), ("1000000", 1_000_000)])
def test_a_quota_may_be_left_to_where_the_library_is_served(value: str, read: str | int) -> None:
    """Nothing said, no limit, and the largest."""
    assert gather({}, {"COUNTERPANE_REQUESTS_PER_MINUTE": value})["requests_per_minute"].value == read


@pytest.mark.parametrize("content", [b"port = ", b"\xff", b"prot = 1"])
def test_a_file_that_cannot_be_used_is_refused(tmp_path: Path, content: bytes) -> None:
    """Broken TOML, no UTF-8, an unknown key."""
    file = tmp_path / "counterpane.toml"
    file.write_bytes(content)
    with pytest.raises(SettingsError, match=r"counterpane\.toml"):
        gather({}, {}, file)
