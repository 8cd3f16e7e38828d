"""Water in hose and nozzles: friction, elevation, reaction, networks, surge, and what hose may be put to."""
