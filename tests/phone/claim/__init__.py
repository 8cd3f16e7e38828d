"""The Pressure page as a claim: what a person reads on it, worked out again by another way."""
