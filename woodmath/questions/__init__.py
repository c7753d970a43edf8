"""The questions of the course, one module for each page that asks any."""
