"""The pump itself: its rating, draft, driveline, engine speed, heat."""
