"""The service test: plan, readings, verdict, record, years."""
