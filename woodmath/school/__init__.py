"""The set-up of the course, its JupyterLab, and its tests; no topic and no page imports from here."""
