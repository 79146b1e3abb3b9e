"""Debian's Chromium without a window, and what happened in it."""

import json
import shutil
from contextlib import contextmanager

import pytest

# Without these Chromium calls home at its start; the tests look for requests.
QUIET = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--hide-scrollbars",
)


LOCAL = {"file", "data", "blob", "about", "chrome", "chrome-untrusted", "devtools"}


@contextmanager
def chromium(profile, width=1280, height=900):
    """A browser with an empty profile; the test is skipped where Chromium is not installed."""
    from selenium import webdriver

    program, driver_program = shutil.which("chromium"), shutil.which("chromedriver")
    if program is None or driver_program is None:
        pytest.skip("Chromium and its driver are not installed (apt install chromium chromium-driver)")
    options = webdriver.ChromeOptions()
    options.binary_location = program
    for flag in (*QUIET, f"--user-data-dir={profile}", f"--window-size={width},{height}"):
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"performance": "ALL", "browser": "ALL"})
    driver = webdriver.Chrome(options=options, service=webdriver.ChromeService(driver_program))
    try:
        yield driver
    finally:
        driver.quit()


def requests(driver):
    """Addresses outside this machine that were asked for; the browser's own pages and the file itself are not."""
    events = (json.loads(entry["message"])["message"] for entry in driver.get_log("performance"))
    sent = (e["params"]["request"]["url"] for e in events if e["method"] == "Network.requestWillBeSent")
    return [url for url in sent if url.split(":", 1)[0] not in LOCAL]


def resize(driver, width, height):
    """The page as a screen of this many CSS pixels shows it."""
    metrics = {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 600}
    driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", metrics)


# The contrast of each text that is seen, after WCAG 2.2, success criterion 1.4.3 and its definition of contrast ratio.
CONTRASTS = """
function channel(v) { v /= 255; return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4); }
function light(c) { return 0.2126 * channel(c[0]) + 0.7152 * channel(c[1]) + 0.0722 * channel(c[2]); }
function parse(text) { const n = text.match(/[\\d.]+/g).map(Number); return n.length === 3 ? [...n, 1] : n; }
function under(node) {
  for (let n = node; n; n = n.parentElement) {
    const c = parse(getComputedStyle(n).backgroundColor);
    if (c[3] === 1) return c;
  }
  return [255, 255, 255, 1];
}
const found = [];
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
while (walker.nextNode()) {
  const node = walker.currentNode, parent = node.parentElement;
  if (!node.textContent.trim() || parent.closest('svg, script, style') || !parent.getClientRects().length) continue;
  const a = light(parse(getComputedStyle(parent).color)), b = light(under(parent));
  found.push([node.textContent.trim().slice(0, 40), (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)]);
}
return found;
"""
