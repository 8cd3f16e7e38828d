"""What every other package may use: errors, rounding, text typed and text shown."""
