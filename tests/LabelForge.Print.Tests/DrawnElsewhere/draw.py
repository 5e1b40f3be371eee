#!/usr/bin/env python3
"""Draws labels of the corpus (tests/LabelForge.Tests/Checks/Corpus) as PDF with a browser and with an office program.

The files it makes are committed; the tests read those, so that neither program is needed to run them.
Needs: chromium, soffice (libreoffice-writer). Run it in this folder: ./draw.py
Every label is drawn once by each means, in turn in one column, in two, and with the front on a page of its own.
"""
import html
import pathlib
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).parent
CORPUS = HERE.parent.parent / "LabelForge.Tests" / "Checks" / "Corpus"
EVERY = 5  # one label in so many is drawn

CSS = {
    "column": "@page{size:4in 6in;margin:.2in} body{font:8.5pt 'DejaVu Sans'}",
    "columns": "@page{size:7in 4in;margin:.25in} body{font:8pt 'DejaVu Serif';columns:2;column-gap:.4in}",
    "front": "@page{size:3.5in 4in;margin:.2in} body{font:8pt 'DejaVu Sans'} .front{text-align:center;font-size:13pt;break-after:page}",
}

FODT = """<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.text">
<office:font-face-decls><style:font-face xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0" style:name="F" svg:font-family="'DejaVu Sans'"/></office:font-face-decls>
<office:automatic-styles>
<style:page-layout style:name="pm"><style:page-layout-properties fo:page-width="%(width)s" fo:page-height="%(height)s" fo:margin="0.2in">%(columns)s</style:page-layout-properties></style:page-layout>
<style:style style:name="P" style:family="paragraph"><style:text-properties style:font-name="F" fo:font-size="8pt"/></style:style>
<style:style style:name="B" style:family="paragraph"><style:paragraph-properties %(brk)s/><style:text-properties style:font-name="F" fo:font-size="8pt"/></style:style>
<style:style style:name="H" style:family="paragraph"><style:paragraph-properties fo:text-align="center"/><style:text-properties style:font-name="F" fo:font-size="14pt" fo:font-weight="bold"/></style:style>
</office:automatic-styles>
<office:master-styles><style:master-page style:name="Standard" style:page-layout-name="pm"/></office:master-styles>
<office:body><office:text>%(body)s</office:text></office:body></office:document>
"""

SHAPE = {
    "column": ("4in", "6in", "", ""),
    "columns": ("7in", "4in", '<style:columns fo:column-count="2" fo:column-gap="0.4in"/>', ""),
    "front": ("3.5in", "5in", "", 'fo:break-before="page"'),
}


def lines(path):
    return path.read_text().split("---\n", 1)[1].strip("\n").split("\n")


def front(text):
    """How many lines stand on the front: up to the net quantity, at most five."""
    for i, line in enumerate(text[:5]):
        if any(u in line.lower() for u in (" oz", "oz/", " g", "ml")) and any(c.isdigit() for c in line):
            return i + 1
    return 2


def by_browser(path, layout, out, folder):
    text = lines(path)
    n = front(text)
    para = lambda part: "".join(f"<div>{html.escape(l) or '&nbsp;'}</div>" for l in part)
    page = folder / (out.stem + ".html")
    page.write_text(f"<!doctype html><meta charset=utf-8><title>label</title><style>{CSS[layout]}</style><div class=front>{para(text[:n])}</div><div>{para(text[n:])}</div>")
    subprocess.run(["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", f"--print-to-pdf={out}", page.as_uri()], check=True, capture_output=True, timeout=60)


def by_office(path, layout, folder, stem):
    text = lines(path)
    n = front(text)
    width, height, columns, brk = SHAPE[layout]
    p = lambda style, l: f'<text:p text:style-name="{style}">{html.escape(l)}</text:p>'
    body = "".join(p("H", l) for l in text[:n]) + "".join(p("B" if i == 0 else "P", l) for i, l in enumerate(text[n:]))
    (folder / (stem + ".fodt")).write_text(FODT % {"width": width, "height": height, "columns": columns, "brk": brk, "body": body})


def main():
    chosen = [p for i, p in enumerate(sorted(CORPUS.glob("*.txt"))) if i % EVERY == 0]
    layouts = list(CSS)
    with tempfile.TemporaryDirectory() as temporary:
        folder = pathlib.Path(temporary)
        for i, path in enumerate(chosen):
            by_browser(path, layouts[i % 3], HERE / f"{path.stem}.browser.pdf", folder)
            by_office(path, layouts[(i + 1) % 3], folder, f"{path.stem}.office")
        subprocess.run(["soffice", "--headless", "--convert-to", "pdf", "--outdir", str(HERE), *map(str, sorted(folder.glob("*.fodt")))], check=True, capture_output=True, timeout=600)
    print(len(chosen), "labels drawn twice", file=sys.stderr)


main()
