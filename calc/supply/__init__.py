"""Where the water comes from: hydrant, tank, draft, relay, shuttle, foam, and the answers of those pages."""
