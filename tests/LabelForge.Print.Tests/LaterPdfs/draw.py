#!/usr/bin/python3
"""Draws labels as PDF with WeasyPrint, LibreOffice, librsvg, paps, groff, Chromium and ReportLab's flowables.

The files it makes are committed; the tests read those, so that none of the programs is needed to run them.
Needs: chromium, weasyprint, libreoffice-writer-nogui, librsvg2-bin, paps, groff, ghostscript, python3-reportlab.
Run it in this folder: ./draw.py. cases.txt says of each: its market, the names in its list, and what is to be found on it.
"""
import html
import pathlib
import subprocess
import tempfile
from xml.sax.saxutils import escape

from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate, Paragraph, Table

HERE = pathlib.Path(__file__).parent
pdfmetrics.registerFont(TTFont("Sans", "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"))

# market, names in the list, front, list, what to do, who and when
LOTION = ("us", 8, ["Heron & Reed", "Hand Lotion", "Net Wt 3 oz (85 g)"],
          "Ingredients: Water, Helianthus Annuus (Sunflower) Seed Oil, Glycerin, Cetearyl Alcohol, Polysorbate 60, Phenoxyethanol, Fragrance, Tocopherol",
          ["Smooth over clean hands."], ["Lot HR-207", "Heron & Reed LLC", "12 Invented Avenue, Fairport, ME 00000", "heronreed.example"])
SALT = ("uk", 5, ["Dunlin Wharf", "Bath Salts", "250 g"],
        "Ingredients: Sodium Chloride, Magnesium Sulfate, Parfum, Linalool, Limonene",
        ["Stir two handfuls into a warm bath. Avoid contact with eyes."], ["Best before end 09/2028", "Batch DW-14", "Dunlin Wharf Ltd, 3 Example Quay", "Whitby YO21 0AA, United Kingdom"])
SEIFE = ("eu", 7, ["Kiebitzhof", "Handgemachte Seife", "100 g"],
         "Ingredients: Sodium Olivate, Sodium Cocoate, Aqua, Glycerin, Parfum, Linalool, Citral",
         ["Nach dem Gebrauch trocknen lassen."], ["Mindestens haltbar bis Ende 05/2028", "Charge KH-3", "Kiebitzhof, Musterweg 4", "24103 Kiel, Deutschland"])
JABON = ("eu", 6, ["Casa Garza", "Jabón de oliva", "120 g"],
         "Ingredients: Sodium Olivate, Aqua, Glycerin, Parfum, Limonene, CI 77891",
         ["Evitar el contacto con los ojos."], ["Consumir preferentemente antes de fin de 07/2028", "Lote CG-9", "Casa Garza, calle Ejemplo 5", "41001 Sevilla, España"])
PRODUCTS = {"lotion": LOTION, "salt": SALT, "seife": SEIFE, "jabon": JABON}

CLAIM = {"us": "Heals eczema.", "uk": "Heals eczema.", "seife": "Heilt Ekzeme.", "jabon": "Cura el eccema."}
NONSENSE = {"us": "Brackens the thworp of your spangs.", "uk": "Brackens the thworp of your spangs.",
            "seife": "Vergrumpelt die Schnorfe des Zwurgels.", "jabon": "Esgrumpa los flurbios del trasgo."}
CASES = []


def case(name, product, defect=None):
    market, count, front, listed, use, foot = PRODUCTS[product]
    words = market if market != "eu" else product
    rule = None
    if defect == "no-lot":
        rule, foot = "lot.missing", [line for line in foot if not line.startswith(("Lot", "Batch", "Charge"))]
    elif defect == "heals":
        rule, use = "claim.drug", use + [CLAIM[words]]
    elif defect == "no-net":
        rule, front = "net-quantity.missing", front[:-1]
    elif defect == "no-list":
        rule, listed, count = "ingredients.missing", "", 0
    elif defect == "unknown":
        rule, use = "reading.not-understood", use + [NONSENSE[words]]
    elif defect == "one-system":
        rule, front = "net-quantity.one-system-only", front[:-1] + [front[-1].split(" (")[0]]
    elif defect == "no-date":
        rule, foot = "durability.missing", foot[1:]
    CASES.append(f"{name} | {market} | {count} | {rule or 'none'}")
    return front, listed, use, foot


def run(*command, **more):
    return subprocess.run([str(c) for c in command], check=True, capture_output=True, **more)


def page(body, css, size):
    return f"<!doctype html><meta charset=utf-8><style>@page{{size:{size};margin:0.2in}}body{{font:9pt 'Liberation Sans';margin:0}}p{{margin:0.05in 0}}{css}</style>{body}"


def weasy(name, body, css="", size="4in 6in"):
    run("weasyprint", "-", HERE / f"{name}.pdf", input=page(body, css, size).encode())


def browser(name, body, css="", size="4in 6in"):
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "page.html"
        file.write_text(page(body, css, size), encoding="utf-8")
        run("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", f"--print-to-pdf={HERE / name}.pdf", file.as_uri())


def office(name, source, ending):
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / f"{name}.{ending}"
        file.write_text(source, encoding="utf-8")
        run("soffice", f"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to", "pdf:writer_pdf_Export", "--outdir", HERE, file)


def svg(name, body, width=288, height=432):
    text = f"<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='{width}' height='{height}' font-family='Liberation Sans' font-size='8'>{body}</svg>"
    run("rsvg-convert", "-f", "pdf", "-o", HERE / f"{name}.pdf", input=text.encode())


def lines(words, tag="br"):
    return "<br>".join(html.escape(w) for w in words)


def items(listed):
    head, names = listed.split(": ", 1)
    return head + ":", [html.escape(n) for n in names.split(", ")]


def simple(p, extra=""):
    front, listed, use, foot = p
    return f"<h2>{lines(front)}</h2><p class=list>{html.escape(listed)}</p><p class=use>{lines(use)}</p>{extra}<p class=foot>{lines(foot)}</p>"


def bullets(p, tag="ul"):
    front, listed, use, foot = p
    head, names = items(listed)
    return f"<h2>{lines(front)}</h2><b>{head}</b><{tag}>{''.join(f'<li>{n}</li>' for n in names)}</{tag}><p>{lines(use)}</p><p>{lines(foot)}</p>"


def wrap(text, width, size=8):
    out, line = [], ""
    for word in text.split(" "):
        longer = f"{line} {word}".strip()
        if line and pdfmetrics.stringWidth(longer, "Sans", size) > width:
            out.append(line)
            line = word
        else:
            line = longer
    return out + [line] if line else out


def all_lines(p, width=240):
    front, listed, use, foot = p
    return front + [""] + wrap(listed, width) + [""] + [w for u in use for w in wrap(u, width)] + [""] + foot


def tspans(ls, x, y, size=8):
    return "".join(f"<text x='{x}' y='{y + 1.35 * size * i:.1f}' font-size='{size}'>{escape(line)}</text>" for i, line in enumerate(ls) if line)


OFFICE = """<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" xmlns:draw="urn:oasis:names:tc:opendocument:xmlns:drawing:1.0" xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.text">
<office:styles><style:default-style style:family="paragraph"><style:text-properties style:font-name="Liberation Serif" fo:font-size="9pt" fo:language="en" fo:country="US"/></style:default-style></office:styles>
<office:automatic-styles><style:page-layout style:name="L"><style:page-layout-properties fo:page-width="4in" fo:page-height="6in" fo:margin="0.2in"/></style:page-layout>
<style:style style:name="Two" style:family="section"><style:section-properties><style:columns fo:column-count="2" fo:column-gap="0.2in"><style:column style:rel-width="1*"/><style:column style:rel-width="1*"/></style:columns></style:section-properties></style:style>
<style:style style:name="J" style:family="paragraph"><style:paragraph-properties fo:text-align="justify"/></style:style>
<style:style style:name="W" style:family="paragraph"><style:text-properties fo:letter-spacing="0.03in"/></style:style>
<style:style style:name="C" style:family="text"><style:text-properties fo:font-variant="small-caps"/></style:style></office:automatic-styles>
<office:master-styles><style:master-page style:name="Standard" style:page-layout-name="L"/></office:master-styles>
<office:body><office:text>%s</office:text></office:body></office:document>"""


def paragraphs(ls, style=""):
    return "".join(f"<text:p{f' text:style-name={chr(34)}{style}{chr(34)}' if style else ''}>{escape(line)}</text:p>" for line in ls)


def groff(name, source, *options):
    with tempfile.TemporaryDirectory() as folder:
        ps = pathlib.Path(folder) / "page.ps"
        ps.write_bytes(run("groff", "-Kutf8", "-Tps", "-P-p4i,6i", *options, input=source.encode()).stdout)
        run("ps2pdf", "-dDEVICEWIDTHPOINTS=288", "-dDEVICEHEIGHTPOINTS=432", "-dFIXEDMEDIA", ps, HERE / f"{name}.pdf")


def paps(name, ls, *options):
    with tempfile.TemporaryDirectory() as folder:
        ps = pathlib.Path(folder) / "page.ps"
        ps.write_bytes(run("paps", "--paper=a4", *options, input=("\n".join(ls) + "\n").encode()).stdout)
        run("ps2pdf", ps, HERE / f"{name}.pdf")


def roff(lines_):
    return [line.replace("'", "\\(aq") for line in lines_]


def by_weasyprint():
    p = case("weasy-two-cells", "lotion")
    weasy("weasy-two-cells", f"<table><tr><td><h2>{lines(p[0])}</h2>{lines(p[2])}<td>{html.escape(p[1])}<p>{lines(p[3])}</table>", "td{width:1.7in;vertical-align:top;padding:0 0.08in}")
    p = case("weasy-flex-no-date", "salt", "no-date")
    weasy("weasy-flex-no-date", f"<div class=f><div>{lines(p[0])}</div><div>{html.escape(p[1])}</div><div>{lines(p[2] + p[3])}</div></div>", ".f{display:flex;gap:0.15in;font-size:7.5pt}.f div{flex:1}", "6in 3in")
    weasy("weasy-columns", simple(case("weasy-columns", "seife")), "body{columns:2;column-gap:0.2in;font-size:8pt}", "4.5in 3in")
    weasy("weasy-items-two-columns", bullets(case("weasy-items-two-columns", "lotion")), "ul{columns:2;font-size:8pt;padding-left:0.15in}")
    weasy("weasy-items-two-columns-heals", bullets(case("weasy-items-two-columns-heals", "jabon", "heals")), "ul{columns:2;font-size:8pt;list-style:none;padding:0}")
    p = case("weasy-chips", "salt")
    head, names = items(p[1])
    weasy("weasy-chips", f"<h2>{lines(p[0])}</h2><b>{head}</b> {' '.join(f'<span>{n}</span>' for n in names)}<p>{lines(p[2])}<p>{lines(p[3])}", "span{display:inline-block;border:0.5pt solid;border-radius:4pt;padding:1pt 4pt;margin:1pt}")
    weasy("weasy-numbered-no-lot", bullets(case("weasy-numbered-no-lot", "seife", "no-lot"), "ol"))
    weasy("weasy-hyphens", f"<div lang=de>{simple(case('weasy-hyphens', 'seife'))}</div>", ".list{width:1.1in;hyphens:auto;text-align:justify}")
    p = case("weasy-margin-box", "jabon")
    weasy("weasy-margin-box", simple((*p[:3], p[3][2:])), f"@page{{margin-bottom:0.5in;@bottom-center{{content:'{p[3][0]} · {p[3][1]}';font-size:7pt}}}}")
    p = case("weasy-float-box-unknown", "lotion", "unknown")
    weasy("weasy-float-box-unknown", simple(p).replace("<p class=list>", "<div class=b>For hands</div><p class=list>"), ".b{float:right;width:0.9in;height:0.6in;border:1pt solid;text-align:center}.list{text-align:justify}")
    weasy("weasy-ranged-right", simple(case("weasy-ranged-right", "salt")), "body{text-align:right;font-style:italic}")
    weasy("weasy-lower-one-system", simple(case("weasy-lower-one-system", "lotion", "one-system")), "body{text-transform:lowercase;letter-spacing:0.12em}")


def by_chromium():
    p = case("grid-of-names", "lotion")
    head, names = items(p[1])
    browser("grid-of-names", f"<h2>{lines(p[0])}</h2><b>{head}</b><div class=g>{''.join(f'<div>{n}</div>' for n in names)}</div><p>{lines(p[2])}<p>{lines(p[3])}", ".g{display:grid;grid-template-columns:1fr 1fr 1fr;font-size:7pt;gap:2pt 8pt}")
    p = case("terms-no-net", "salt", "no-net")
    browser("terms-no-net", f"<h2>{lines(p[0])}</h2><dl><dt>Ingredients:<dd>{html.escape(p[1].split(': ')[1])}<dt>Use:<dd>{lines(p[2])}</dl><p>{lines(p[3])}")
    p = case("table-of-facts", "seife")
    browser("table-of-facts", f"<h2>{lines(p[0])}</h2><p>{html.escape(p[1])}<p>{lines(p[2])}<table><tr><td>Mindestens haltbar bis<td>Ende 05/2028<tr><td>Charge<td>KH-3</table><p>{lines(p[3][2:])}", "td{padding-right:0.3in}")
    p = case("sideways", "salt", "heals")
    browser("sideways", f"<div class=s>{lines(p[3])}</div>" + simple((*p[:3], [])), ".s{writing-mode:sideways-lr;writing-mode:vertical-rl;transform:rotate(180deg);float:left;height:3.5in;margin-right:0.2in}")
    browser("shadowed", simple(case("shadowed", "lotion")), "body{text-shadow:0.5pt 0.5pt 0 #999}")
    p = case("two-pages-no-lot", "lotion", "no-lot")
    browser("two-pages-no-lot", f"<h2>{lines(p[0])}</h2><div style='break-before:page'>{html.escape(p[1])}<p>{lines(p[2])}<p>{lines(p[3])}</div>", "", "3in 3in")
    browser("items-three-columns", bullets(case("items-three-columns", "lotion")), "ul{columns:3;font-size:6.5pt;padding-left:0.12in}")
    p = case("items-beside-text", "seife", "no-date")
    head, names = items(p[1])
    browser("items-beside-text", f"<h2>{lines(p[0])}</h2><div class=f><div>{lines(p[2])}<p>{lines(p[3])}</div><div><b>{head}</b><ul>{''.join(f'<li>{n}</li>' for n in names)}</ul></div></div>", ".f{display:flex;gap:0.2in}ul{margin:0;padding-left:0.15in}")


def by_office():
    p = case("office-plain", "lotion")
    office("office-plain", OFFICE % (paragraphs(p[0]) + paragraphs([p[1]], "J") + paragraphs(p[2] + p[3])), "fodt")
    p = case("office-section-two-columns", "seife", "heals")
    office("office-section-two-columns", OFFICE % (paragraphs(p[0]) + "<text:section text:style-name=\"Two\" text:name=\"s\">" + paragraphs([p[1]]) + paragraphs(p[2]) + paragraphs(p[3]) + "</text:section>"), "fodt")
    p = case("office-bullets", "jabon")
    head, names = items(p[1])
    office("office-bullets", OFFICE % (paragraphs(p[0] + [head]) + "<text:list>" + "".join(f"<text:list-item><text:p>{n}</text:p></text:list-item>" for n in names) + "</text:list>" + paragraphs(p[2] + p[3])), "fodt")
    p = case("office-small-caps-no-lot", "salt", "no-lot")
    office("office-small-caps-no-lot", OFFICE % ("".join(f"<text:p><text:span text:style-name=\"C\">{escape(line)}</text:span></text:p>" for line in [*p[0], p[1], *p[2], *p[3]])), "fodt")
    p = case("office-table", "lotion", "one-system")
    office("office-table", page(f"<table border=1><tr><td>{lines(p[0])}<td rowspan=2>{html.escape(p[1])}<tr><td>{lines(p[2])}</table><p>{lines(p[3])}", "", "4in 6in"), "html")
    p = case("office-spaced", "seife")
    office("office-spaced", OFFICE % (paragraphs(p[0], "W") + paragraphs([p[1], *p[2], *p[3]])), "fodt")


def by_librsvg():
    p = case("svg-lines", "jabon")
    svg("svg-lines", tspans(all_lines(p), 18, 24))
    p = case("svg-name-on-circle", "salt")
    svg("svg-name-on-circle", f"<path id='c' d='M54 110 a90 90 0 0 1 180 0' fill='none'/><text font-size='13'><textPath xlink:href='#c'>{p[0][0]} Example Goods</textPath></text>" + tspans(p[0][1:], 110, 90, 9) + tspans(all_lines(([], *p[1:])), 18, 150))
    p = case("svg-slanted-unknown", "lotion", "unknown")
    svg("svg-slanted-unknown", f"<g transform='skewX(-12) translate(40 0)'>{tspans(all_lines(p, 200), 18, 24)}</g>")
    p = case("svg-clipped", "seife", "no-list")
    # librsvg leaves out what is clipped away: the file holds no list at all.
    CASES[-1] = "svg-clipped | eu | 0 | ingredients.missing"
    svg("svg-clipped", f"<clipPath id='k'><rect width='5' height='5'/></clipPath>{tspans(all_lines(p), 18, 24)}<g clip-path='url(#k)'>{tspans(wrap(SEIFE[3], 240), 18, 300)}</g>")
    p = case("svg-middle-no-net", "lotion", "no-net")
    svg("svg-middle-no-net", "<g text-anchor='middle'>" + tspans(all_lines(p, 220), 144, 24) + "</g>")


def by_others():
    # paps draws letters as outlines, so there is nothing to read, and that is said.
    p = case("paps-plain", "salt")
    CASES[-1] = "paps-plain | uk | 0 | refused There are no words"
    paps("paps-plain", all_lines(p, 260), "--font=DejaVu Sans 8")
    p = case("paps-two-columns-heals", "lotion", "heals")
    CASES[-1] = "paps-two-columns-heals | us | 0 | refused There are no words"
    paps("paps-two-columns-heals", all_lines(p, 150), "--font=DejaVu Sans 7", "--columns=2", "--top-margin=560")
    p = case("groff-plain-no-lot", "salt", "no-lot")
    groff("groff-plain-no-lot", "\n".join([".po 0.2i", ".ll 3.5i", ".ps 9", ".vs 11", ".nf", *roff(p[0]), ".sp", ".fi", *roff([p[1]]), ".sp", ".nf", *roff(p[2] + [""] + p[3])]) + "\n")
    p = case("groff-table", "lotion")
    groff("groff-table", "\n".join([".po 0.2i", ".ll 3.6i", ".ps 8", ".vs 10", ".TS", "tab(@);", "lw(1.4i) lw(2i).", "T{", ".nf", *roff(p[0]), "T}@T{", *roff([p[1]]), "T}", "T{", *roff(p[2]), "T}@T{", ".nf", *roff(p[3]), "T}", ".TE"]) + "\n", "-t")
    styles = ParagraphStyle("label", fontName="Sans", fontSize=7.5, leading=10)

    def flow(name, p, frames, story):
        doc = BaseDocTemplate(str(HERE / f"{name}.pdf"), pagesize=(324, 252), invariant=1)
        doc.addPageTemplates([PageTemplate(frames=[Frame(*f, leftPadding=4, rightPadding=4) for f in frames])])
        doc.build(story)
    say = lambda text: Paragraph(escape(text), styles)
    p = case("frames-two", "jabon", "no-date")
    flow("frames-two", p, [(10, 10, 150, 230), (164, 10, 150, 230)], [say(x) for x in [*p[0], p[1], *p[2], *p[3]]])
    p = case("table-of-names", "seife")
    head, names = items(p[1])
    rows = [[say(n) for n in names[i:i + 2]] for i in range(0, len(names), 2)]
    rows[-1] += [""] * (2 - len(rows[-1]))
    flow("table-of-names", p, [(10, 10, 300, 230)], [*map(say, p[0]), say(head), Table(rows, colWidths=[140, 140]), *map(say, p[2] + p[3])])
    p = case("rewritten", "salt", "unknown")
    c = canvas.Canvas(str(HERE / "loose.pdf"), pagesize=(288, 432), invariant=1)
    c.setFont("Sans", 8)
    for i, line in enumerate(all_lines(p)):
        x = 18
        for letter in line:
            c.drawString(x, 400 - 11 * i, letter)
            x += pdfmetrics.stringWidth(letter, "Sans", 8)
    c.save()
    run("gs", "-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=pdfwrite", "-dCompatibilityLevel=1.3", f"-sOutputFile={HERE / 'rewritten.pdf'}", HERE / "loose.pdf")
    (HERE / "loose.pdf").unlink()
    p = case("outlined-letters", "jabon", "no-net")
    c = canvas.Canvas(str(HERE / "outlined-letters.pdf"), pagesize=(288, 432), invariant=1)
    t = c.beginText(18, 400)
    t.setFont("Sans", 8)
    t.setLeading(11)
    t.setTextRenderMode(1)
    for line in all_lines(p):
        t.textLine(line)
    c.setLineWidth(0.2)
    c.drawText(t)
    c.save()


for part in (by_weasyprint, by_chromium, by_office, by_librsvg, by_others):
    part()
(HERE / "cases.txt").write_text("# file | market | names in the list | what is found\n" + "\n".join(CASES) + "\n", encoding="utf-8")
