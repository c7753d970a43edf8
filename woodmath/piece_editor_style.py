"""How the editor of a piece looks: one height whatever it says, readable in both themes and on a phone."""

from __future__ import annotations

from woodmath.drawing import Frame

_NARROW, _LEAST_WIDTH, _SCROLLBAR = 400, 420, 14
"""In pixels, as for a live drawing: a narrower place is a phone's, and there the picture is so wide."""


def style_sheet(name: str, frame: Frame) -> str:
    """Return the rules for one editor.

    Parameters
    ----------
    name : str
        Its class, and the beginning of those of its parts.
    frame : Frame
        Of the picture, which keeps its shape.

    Returns
    -------
    str
        A style element.

    >>> style_sheet("wm1", Frame.around(((0, 0), (4, 2))))[:7]
    '<style>'
    """
    words = (
        "font:15px/1.5 var(--jp-content-font-family,sans-serif);color:var(--jp-content-font-color1,inherit)"
    )
    return (
        f"<style>.{name}-picture{{container-type:inline-size}}"
        f".{name}-picture>.widget-html-content{{contain:strict;position:relative;"
        f"aspect-ratio:{frame.width:g}/{frame.height:g}}}"
        # The words keep their place whatever they say, and scroll when they need more.
        f".{name}-words>.widget-html-content{{height:13em;overflow:auto;{words}}}"
        f".{name}-words p,.{name}-words ul{{margin:0 0 .4em}}"
        f".{name}-status>.widget-html-content{{min-height:3.2em;{words}}}"
        f".{name}-status p{{margin:4px 0;overflow-wrap:anywhere}}"
        f".{name}-words [role=alert] b{{color:var(--jp-error-color1,#b5411e)}}"
        f".{name} .widget-vbox>*{{flex-shrink:0}}"
        # A meaning takes two lines where it needs them, and the box stays beside it.
        f".{name} .jupyter-widgets>.widget-label{{white-space:normal;height:auto;line-height:1.25;"
        "overflow:visible;text-align:left;padding:3px 0;color:var(--jp-content-font-color1,inherit)}"
        f".{name} textarea{{font-family:var(--jp-code-font-family,monospace);white-space:pre;overflow:auto;"
        "resize:none}"
        # There is no room beside the text for what it is called, but a screen reader says it.
        f".{name} .widget-textarea>.widget-label{{position:absolute;width:1px!important;height:1px;overflow:hidden;"
        "clip-path:inset(50%)}"
        f".{name} .widget-html-content b{{color:inherit}}"
        f"@container (max-width:{_NARROW}px){{.{name}-picture>.widget-html-content{{aspect-ratio:auto;"
        f"overflow:auto hidden;height:{_LEAST_WIDTH * frame.height / frame.width + _SCROLLBAR:.0f}px}}"
        f".{name}-picture svg{{width:{_LEAST_WIDTH}px;display:block}}}}</style>"
    )
