"""A PDF file of many sheets, written from their marks: small, quick, and the same bytes for the same sheets.

What is written is a plain subset of ISO 32000-1: paths, text in two embedded faces, rectangular windows, bookmarks,
and the wish not to be scaled. Every length is written in picture units; one matrix on each page turns them to points.
"""

from __future__ import annotations

import zlib
from collections.abc import Mapping, Sequence

from woodmath.paper import PaperSheet
from woodmath.pdf_fonts import Face
from woodmath.pdf_page import content_of, number

_CATALOGUE, _PAGES, _TOLD = 1, 2, 3
_POINTS_IN_A_MILLIMETRE = 72 / 25.4
_FLAG_OF_A_SYMBOL_FACE = 4


def pdf_of(title: str, sheets: Sequence[PaperSheet], bookmarks: Sequence[tuple[str, int]] = ()) -> bytes:
    """Write sheets as one PDF file that asks to be printed at 100 %.

    Parameters
    ----------
    title : str
        What the file calls itself.
    sheets : sequence of PaperSheet
        At least one.
    bookmarks : sequence of (str, int)
        A name, and which sheet it leads to, counted from 0.

    Returns
    -------
    bytes
        The whole file. It holds no date and no version.

    >>> pdf_of("nothing", [PaperSheet("nothing", 210.0, 297.0, ())])[:8]
    b'%PDF-1.7'
    """
    faces = {False: Face(bold=False), True: Face(bold=True)}
    contents = [content_of(sheet, faces) for sheet in sheets]
    objects: dict[int, bytes] = {}
    first_page = _TOLD + 1
    first_content = first_page + len(sheets)
    first_font = first_content + len(sheets)
    fonts = {bold: first_font + 5 * place for place, bold in enumerate(faces)}
    outline = first_font + 10
    resources = b"<< /Font << /F0 %d 0 R /F1 %d 0 R >> >>" % (fonts[False], fonts[True])
    for place, (sheet, content) in enumerate(zip(sheets, contents, strict=True)):
        box = b"[0 0 %b %b]" % (
            number(sheet.width * _POINTS_IN_A_MILLIMETRE, 5),
            number(sheet.height * _POINTS_IN_A_MILLIMETRE, 5),
        )
        objects[first_page + place] = (
            b"<< /Type /Page /Parent %d 0 R /MediaBox %b /CropBox %b /TrimBox %b /Resources %b /Contents %d 0 R >>"
            % (_PAGES, box, box, box, resources, first_content + place)
        )
        objects[first_content + place] = _stream(content)
    for bold, face in faces.items():
        objects |= _font(face, fonts[bold])
    kids = b" ".join(b"%d 0 R" % (first_page + place) for place in range(len(sheets)))
    objects[_PAGES] = b"<< /Type /Pages /Kids [%b] /Count %d >>" % (kids, len(sheets))
    objects[_TOLD] = b"<< /Title %b >>" % _text(title)
    objects |= _bookmarks(bookmarks, outline, first_page)
    opened = b"/Outlines %d 0 R /PageMode /UseOutlines " % outline if bookmarks else b""
    objects[_CATALOGUE] = (
        b"<< /Type /Catalog /Pages %d 0 R /Lang (en-GB) %b/ViewerPreferences << /PrintScaling /None "
        b"/Duplex /Simplex /PickTrayByPDFSize true /DisplayDocTitle true >> >>" % (_PAGES, opened)
    )
    return _file(objects)


def _file(objects: Mapping[int, bytes]) -> bytes:
    """Put objects in the order of their numbers, with the table that leads to them (7.5.4)."""
    written = bytearray(b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
    places = []
    for name in sorted(objects):
        places.append(b"%010d 00000 n \n" % len(written))
        written += b"%d 0 obj\n%b\nendobj\n" % (name, objects[name])
    table = b"xref\n0 %d\n0000000000 65535 f \n%b" % (len(places) + 1, b"".join(places))
    end = b"trailer\n<< /Size %d /Root %d 0 R /Info %d 0 R >>\nstartxref\n%d\n%%%%EOF\n"
    return bytes(written) + table + end % (len(places) + 1, _CATALOGUE, _TOLD, len(written))


def _stream(content: bytes, told: bytes = b"") -> bytes:
    packed = zlib.compress(content, 6)
    return b"<< /Length %d /Filter /FlateDecode%b >>\nstream\n%b\nendstream" % (len(packed), told, packed)


def _text(text: str) -> bytes:
    """Return a text in the way that no letter of it can end it (7.9.2.2)."""
    return b"<feff%b>" % text.encode("utf-16-be", "replace").hex().encode("ascii")


def _font(face: Face, first: int) -> dict[int, bytes]:
    """Return the five objects of a face: font, its letters, its measures, its file, and how to read it back."""
    name = b"WOODMA+" + face.name.encode("ascii")
    file = face.file()
    widths = b" ".join(b"%d [%d]" % (code, face.advance(face.used[code])) for code in sorted(face.used))
    return {
        first: b"<< /Type /Font /Subtype /Type0 /BaseFont /%b /Encoding /Identity-H "
        b"/DescendantFonts [%d 0 R] /ToUnicode %d 0 R >>" % (name, first + 1, first + 4),
        first + 1: b"<< /Type /Font /Subtype /CIDFontType2 /BaseFont /%b /CIDSystemInfo << /Registry (Adobe) "
        b"/Ordering (Identity) /Supplement 0 >> /FontDescriptor %d 0 R /CIDToGIDMap /Identity /W [%b] >>"
        % (name, first + 2, widths),
        first + 2: b"<< /Type /FontDescriptor /FontName /%b /Flags %d /FontBBox [%d %d %d %d] /ItalicAngle 0 "
        b"/Ascent %d /Descent %d /CapHeight 729 /StemV 80 /FontFile2 %d 0 R >>"
        % (name, _FLAG_OF_A_SYMBOL_FACE, *face.box, face.ascent, face.descent, first + 3),
        first + 3: _stream(file, b" /Length1 %d" % len(file)),
        first + 4: _stream(_read_back(face.used)),
    }


def _read_back(used: Mapping[int, str]) -> bytes:
    """Return the table by which a reader finds the letters of a text again (9.10.3), at most 100 a block."""
    pairs = [f"<{code:04x}> <{used[code].encode('utf-16-be', 'replace').hex()}>" for code in sorted(used)]
    blocks = [pairs[start : start + 100] for start in range(0, len(pairs), 100)]
    body = "".join(f"{len(block)} beginbfchar\n" + "\n".join(block) + "\nendbfchar\n" for block in blocks)
    return (
        "/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def /CMapType 2 def\n"
        "1 begincodespacerange <0000> <ffff> endcodespacerange\n"
        f"{body}endcmap CMapName currentdict /CMap defineresource pop end end"
    ).encode("ascii")


def _bookmarks(bookmarks: Sequence[tuple[str, int]], first: int, first_page: int) -> dict[int, bytes]:
    """Return the list of bookmarks and each of them, chained to its neighbours (12.3.3)."""
    if not bookmarks:
        return {}
    last = first + len(bookmarks)
    objects = {
        first: b"<< /Type /Outlines /First %d 0 R /Last %d 0 R /Count %d >>"
        % (first + 1, last, len(bookmarks))
    }
    for this, (name, sheet) in enumerate(bookmarks, start=first + 1):
        before = b"/Prev %d 0 R " % (this - 1) if this > first + 1 else b""
        after = b"/Next %d 0 R " % (this + 1) if this < last else b""
        objects[this] = b"<< /Title %b /Parent %d 0 R %b%b/Dest [%d 0 R /Fit] >>" % (
            _text(name),
            first,
            before,
            after,
            first_page + sheet,
        )
    return objects
