"""What the pages hold: data and words read, checked, and brought to the form that templates and scripts take."""
