"""The engines that stand beside Chromium: each is found, started without a screen, and put away."""
import contextlib
import json
import os
import pathlib
import shutil
import subprocess
import time

from selenium import webdriver
from selenium.webdriver.webkitgtk.options import Options as WebKitOptions
from selenium.webdriver.webkitgtk.service import Service as WebKitService

from tests.engines.marionette import Connection

PATIENCE_S = 120  # for a cold start on a slow, busy machine
# Both read English, and ask for reduced motion: a page that still scrolls is not where a driver takes it to be.
PREFERENCES = {"marionette.port": 0, "browser.shell.checkDefaultBrowser": False, "ui.prefersReducedMotion": 1, "intl.accept_languages": "en-US"}
GTK_SETTINGS = "[Settings]\ngtk-enable-animations=0\n"


class Missing(Exception):
    """An engine, or what it needs, is not installed; the message says what to install."""


@contextlib.contextmanager
def firefox(home):
    """Firefox without a window."""
    program = shutil.which("firefox-esr") or shutil.which("firefox")
    if not program:
        raise Missing("Firefox (Debian: firefox-esr)")
    lines = [f"user_pref({json.dumps(name)}, {json.dumps(value)});\n" for name, value in PREFERENCES.items()]
    (home / "user.js").write_text("".join(lines), encoding="utf-8")
    command = [program, "-headless", "-marionette", "-no-remote", "-profile", str(home)]
    with _running(command, env={**os.environ, "HOME": str(home)}) as process:
        with contextlib.closing(Connection(_port_of(process, home), PATIENCE_S)) as connection:
            yield webdriver.Remote(connection, options=webdriver.FirefoxOptions())


def _port_of(process, home):
    """The port Firefox chose, once it has written it down."""
    told = home / "MarionetteActivePort"
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until and process.poll() is None:
        if told.exists() and told.read_text(encoding="utf-8"):
            return int(told.read_text(encoding="utf-8"))
        time.sleep(0.05)
    raise RuntimeError("Firefox did not open its socket")


@contextlib.contextmanager
def webkit(home):
    """WebKitGTK's own small browser, on a screen in memory."""
    browser = next(pathlib.Path("/usr/lib").glob("*/webkit2gtk-4*/MiniBrowser"), None)
    if not (browser and shutil.which("WebKitWebDriver") and shutil.which("Xvfb")):
        raise Missing("WebKitGTK and a screen for it (Debian: webkit2gtk-driver xvfb)")
    settings = home / ".config" / "gtk-3.0" / "settings.ini"
    settings.parent.mkdir(parents=True)
    settings.write_text(GTK_SETTINGS, encoding="utf-8")
    options = WebKitOptions()
    options.binary_location = str(browser)
    options.add_argument("--automation")
    screen = ["Xvfb", "-displayfd", "1", "-screen", "0", "800x900x24", "-nolisten", "tcp"]
    with _running(screen, stdout=subprocess.PIPE, encoding="utf-8") as process:
        display = ":" + process.stdout.readline().strip()
        env = {**os.environ, "HOME": str(home), "LC_ALL": "C.UTF-8", "DISPLAY": display, "NO_AT_BRIDGE": "1", "LIBGL_ALWAYS_SOFTWARE": "1"}
        driver = webdriver.WebKitGTK(options, WebKitService(env=env, log_output=subprocess.DEVNULL))
        try:
            yield driver
        finally:
            driver.quit()


@contextlib.contextmanager
def _running(command, stdout=subprocess.DEVNULL, **settings):
    with subprocess.Popen(command, stdout=stdout, stderr=subprocess.DEVNULL, **settings) as process:
        try:
            yield process
        finally:
            process.terminate()
            try:
                process.wait(10)
            except subprocess.TimeoutExpired:
                process.kill()


ENGINES = {"firefox": firefox, "webkit": webkit}
