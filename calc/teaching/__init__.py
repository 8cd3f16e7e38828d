"""The power path, practice on it, the table of gears, warming water."""
