"""The browser that stands for a phone in tests and benchmarks."""
import os
import shutil

ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]

PHONE = {"viewport": {"width": 360, "height": 740}, "device_scale_factor": 2, "has_touch": True, "is_mobile": True}


def chromium_path():
    """Where Chromium is: as the environment says, or on the path; None lets Playwright use its own."""
    return os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
