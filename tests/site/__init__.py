"""The built site, read without a browser."""
