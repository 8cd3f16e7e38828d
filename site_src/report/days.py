"""Days as the department's clock has them: what a phone wrote at 23:30 belongs to that day, wherever the report is made.

A record has the moment alone. Its day follows from one time zone, summer time and all: the one the report is asked for.
"""
import datetime
import zoneinfo

DAY_MS = 86400000
UTC = datetime.UTC


class ZoneError(ValueError):
    """A name that is no time zone here."""


def zone(name):
    """A time zone by its name, such as "America/Chicago"; this computer's where none is given.

    Raises ZoneError where there is no such zone, or this computer has no list of them.
    """
    if name is None:
        return None
    try:
        return UTC if name == "UTC" else zoneinfo.ZoneInfo(name)
    except (zoneinfo.ZoneInfoNotFoundError, ValueError, OSError):
        raise ZoneError(f"{name}: no time zone of this computer. Type one such as America/Chicago, or leave it out for this computer's own.") from None


class Days:
    """Moments, in milliseconds since 1970, as days of a time zone; of this computer's where it is None."""

    def __init__(self, zone=UTC):
        self._zone = zone

    def _at(self, ms):
        moment = datetime.datetime.fromtimestamp(ms / 1000, UTC)
        return moment.astimezone(self._zone)

    def name(self):
        return str(self._zone) if self._zone else datetime.datetime.now().astimezone().tzname()

    def date(self, ms):
        return self._at(ms).date()

    def today(self):
        return datetime.datetime.now(UTC).astimezone(self._zone).date()

    def end_ms(self, on):
        """The last second of a day."""
        moment = datetime.datetime.combine(on, datetime.time(23, 59, 59), self._zone)
        return (moment if self._zone else moment.astimezone()).timestamp() * 1000

    def wall_ms(self, ms):
        """What the clock shows, as if that were UTC: calc counts days by it, whatever summer time did between two records."""
        return ms + self._at(ms).utcoffset() / datetime.timedelta(milliseconds=1)

    def between(self, ms, on_ms):
        """Whole days from the day of one moment to that of another."""
        return int(self.wall_ms(on_ms) // DAY_MS - self.wall_ms(ms) // DAY_MS)
