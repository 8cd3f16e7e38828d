"""What is wrong: faults, the collar, lights, loss of water, leaks."""
