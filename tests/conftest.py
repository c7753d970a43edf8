"""What every test stands on: strictness, one hypothesis profile, and no test skipped unseen in CI."""

from __future__ import annotations

import os
from collections.abc import Generator
from typing import Any

import hypothesis
import pytest

IN_CI = os.environ.get("CI", "").lower() not in ("", "0", "false")

MAY_SKIP_IN_CI = (
    "only on Windows",
    "only on Linux and macOS",
)

os.environ["WOODMATH_STRICT"] = "1"

hypothesis.settings.register_profile(
    "woodmath", deadline=None, max_examples=100, derandomize=IN_CI, print_blob=True
)
hypothesis.settings.load_profile("woodmath")


class NothingSkippedUnseen:
    """In CI, a skip for any other reason than those of the list is a failure."""

    @staticmethod
    def _judged(report: Any) -> Any:
        if report.skipped and not hasattr(report, "wasxfail"):
            told = report.longrepr[2] if isinstance(report.longrepr, tuple) else str(report.longrepr)
            reason = told.removeprefix("Skipped: ")
            if not reason.startswith(MAY_SKIP_IN_CI):
                report.outcome = "failed"
                report.longrepr = f"Skipped, which CI must not do: {reason}"
        return report

    @pytest.hookimpl(wrapper=True, tryfirst=True)
    def pytest_runtest_makereport(self) -> Generator[None, Any, Any]:
        return self._judged((yield))

    @pytest.hookimpl(wrapper=True, tryfirst=True)
    def pytest_make_collect_report(self) -> Generator[None, Any, Any]:
        return self._judged((yield))


def pytest_configure(config: pytest.Config) -> None:
    if IN_CI:
        config.pluginmanager.register(NothingSkippedUnseen())


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The browser comes last: its event loop must not meet the kernels that nbval starts."""
    items.sort(key=lambda item: "browser" in item.path.parts)
