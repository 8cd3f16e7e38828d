"""The fleet report: pages made from the records that phones sent."""
