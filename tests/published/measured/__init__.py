"""What was measured at the pump, which the tool's answer stands below."""
