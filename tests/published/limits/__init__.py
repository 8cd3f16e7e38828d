"""The limits of the checks against their sources."""
