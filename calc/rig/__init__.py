"""A rig's profile, its own hose figures, its panel card."""
