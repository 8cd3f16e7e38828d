"""The built site on a phone: a real browser, touched, with the network off where it says so."""
