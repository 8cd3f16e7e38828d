"""The bay: what is checked and in which order, defects, a rig's status, the work record, and what is due."""
