"""A phone with one of the engines, handled by the words on its pages."""
import contextlib
import time

from selenium.common.exceptions import WebDriverException
from selenium.webdriver.common.by import By

PATIENCE_S = 30  # on a slow, busy machine


class Phone:
    """One engine and the host it opens the site from; one page at a time is open."""

    def __init__(self, driver, host):
        self.driver = driver
        self.host = host
        driver.set_window_rect(0, 0, 360, 740)  # or as near to that as its window goes

    def open(self, address=""):
        """Close the page there is and open a new one at an address of the site."""
        left = self.driver.current_window_handle
        self.driver.switch_to.new_window("tab")
        opened = self.driver.current_window_handle
        self.driver.switch_to.window(left)
        self.driver.close()
        self.driver.switch_to.window(opened)
        self.driver.get(self.host.origin + address)

    def reload(self):
        """Load the page again as a person does; WebDriver's own command would pass the worker by."""
        self.run("document.documentElement.dataset.left = 'yes'; location.reload()")
        self.wait(lambda: self.run("return !('left' in document.documentElement.dataset)"))

    def wait(self, seen, patience_s=PATIENCE_S):
        """What is seen, once it is; a part that is not there yet, or just being drawn anew, is looked at again."""
        until = time.monotonic() + patience_s
        while time.monotonic() < until:
            with contextlib.suppress(WebDriverException):
                if found := seen():
                    return found
            time.sleep(0.1)
        raise AssertionError(f"not seen in {patience_s} s at {self.driver.current_url}, which reads: {self.text('body')}")

    def shows(self, css, wanted):
        """Wait until a part of the page reads as wanted."""
        self.wait(lambda: self.text(css) == wanted)

    def text(self, css):
        return " ".join(self.driver.find_element(By.CSS_SELECTOR, css).text.split())

    def texts(self, css):
        return [found.text for found in self.driver.find_elements(By.CSS_SELECTOR, css)]

    def entry(self, label):
        """What stands in the field of this label."""
        field = f'//input[@id=//label[normalize-space()="{label}"]/@for]'
        return self.wait(lambda: self.driver.find_element(By.XPATH, field).get_property("value"))

    def touch(self, name):
        """Touch the button, or the heading of a folded part, of this name."""
        named = f'normalize-space()="{name}" or @aria-label="{name}"'
        def touched():
            found = self.driver.find_element(By.XPATH, f"//button[{named}] | //summary[{named}]")
            self.driver.execute_script("arguments[0].scrollIntoView({ block: 'center' })", found)  # clear of plate and dock, as a person does
            found.click()
            return True

        self.wait(touched)

    def run(self, script):
        """What a script gives on this page."""
        return self.driver.execute_script(script)
