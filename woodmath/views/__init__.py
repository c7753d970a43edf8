"""Views: a topic's numbers turned into a drawing, one module a topic."""
