"""What is shown: the Flask app that is frozen into the site, its words and data."""
