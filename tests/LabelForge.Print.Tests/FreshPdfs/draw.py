#!/usr/bin/python3
"""Draws labels as PDF in ways unlike those of HardPdfs: with a browser, groff, Cairo, ReportLab and PostScript.

The files it makes are committed; the tests read those, so that none of the programs is needed to run them.
Needs: chromium, groff, ghostscript, python3-reportlab, python3-cairo, qpdf. Run it in this folder: ./draw.py
cases.txt says of each: its market, the names in its list, and what is to be found on it.
"""
import html
import pathlib
import subprocess
import tempfile

import cairo
from reportlab.lib.colors import CMYKColor, Color
from reportlab.lib.units import inch
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFName
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas

HERE = pathlib.Path(__file__).parent
pdfmetrics.registerFont(TTFont("Sans", "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"))
pdfmetrics.registerFont(TTFont("Serif", "/usr/share/fonts/truetype/liberation/LiberationSerif-Regular.ttf"))

BALM = ("us", 6, ["Curlew & Teal", "Lip Balm", "Orange Peel", "Net Wt 0.15 oz (4.25 g)"],
        "Ingredients: Cera Alba (Beeswax), Cocos Nucifera (Coconut) Oil, Ricinus Communis (Castor) Seed Oil, Citrus Aurantium Dulcis (Orange) Peel Oil, Tocopherol, Limonene",
        ["For the lips only."], ["Lot CT-115", "Curlew & Teal LLC", "5 Invented Street, Fairport, ME 00000", "curlewteal.example"])
SCRUB = ("us", 7, ["Lapwing Lane", "Sugar Scrub", "Net Wt 8 oz (226 g)"],
         "Ingredients: Sucrose, Prunus Amygdalus Dulcis (Sweet Almond) Oil, Glycerin, Butyrospermum Parkii (Shea) Butter, Fragrance, Phenoxyethanol, Tocopherol",
         ["Massage into damp skin, then rinse. The tub", "may be slippery."], ["Lot 4 LL 26", "Lapwing Lane Example LLC", "9 Invented Road, Fairport, ME 00000", "lapwing.example"])
SAVON = ("eu", 8, ["L'Avocette", "Savon à l'huile d'olive", "100 g"],
         "Ingredients : Sodium Olivate, Aqua, Glycerin, Sodium Cocoate, Parfum, Linalool, Limonene, CI 77492",
         ["Éviter le contact avec les yeux."], ["À utiliser de préférence avant fin 05/2028", "Lot : AV-31", "L'Avocette, 3 rue des Exemples", "17000 La Rochelle, France"])
OIL = ("uk", 5, ["Sandpiper Hall", "Body Oil", "100 ml"],
       "Ingredients: Helianthus Annuus Seed Oil, Simmondsia Chinensis Seed Oil, Parfum, Tocopherol, Linalool",
       ["Smooth over damp skin. Avoid contact with eyes."], ["Best before end 11/2028", "Batch SH-9", "Sandpiper Hall Ltd, 2 Example Mews", "Whitby YO21 0AA, United Kingdom"])
PRODUCTS = {"balm": BALM, "scrub": SCRUB, "savon": SAVON, "oil": OIL}

# A defect: what is taken out or put in, and the rule that it breaks.
DEFECTS = {
    "no-lot": ("lot.missing", lambda p: drop(p, 5, ("Lot ", "Lot :", "Batch "))),
    "heals": ("claim.drug", lambda p: add(p, "Heals eczema." if p[0] != "eu" else "Soigne l'eczéma.")),
    "no-list": ("ingredients.missing", lambda p: (p[0], 0, p[2], "", p[4], p[5])),
    "no-net": ("net-quantity.missing", lambda p: (p[0], p[1], p[2][:-1], p[3], p[4], p[5])),
    "one-system": ("net-quantity.one-system-only", lambda p: (p[0], p[1], p[2][:-1] + [p[2][-1].split(" (")[0]], p[3], p[4], p[5])),
    "unknown-word": ("reading.not-understood", lambda p: add(p, "Brackens the thworp of your spangs." if p[0] != "eu" else "Grimpouille les vorfes du snargue.")),
}


def drop(p, part, begins):
    return (*p[:part], [line for line in p[part] if not line.startswith(begins)])


def add(p, line):
    return (*p[:4], p[4] + [line], p[5])


CASES = []


def case(name, product, defect=None, extra=None, read=None):
    p = PRODUCTS[product]
    rules = []
    if defect:
        rule, change = DEFECTS[defect]
        p = change(p)
        rules.append(rule)
    if extra:
        rules.append(extra)
    CASES.append(f"{name} | {p[0]} | {read or p[1]} | {', '.join(rules) or 'none'}")
    return p


def browser(name, body, css, size="4in 6in"):
    with tempfile.TemporaryDirectory() as folder:
        page = pathlib.Path(folder) / "page.html"
        page.write_text(f"<!doctype html><meta charset=utf-8><style>@page{{size:{size};margin:0.2in}}body{{font:10pt 'Liberation Serif';margin:0}}p{{margin:0.06in 0}}{css}</style>{body}", encoding="utf-8")
        subprocess.run(["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", f"--print-to-pdf={HERE / name}.pdf", page.as_uri()], check=True, capture_output=True)


def block(tag, lines, cls=""):
    return f"<{tag} class='{cls}'>" + "<br>".join(html.escape(line) for line in lines) + f"</{tag}>"


def simple(p):
    return block("h2", p[2]) + (f"<p class=list>{html.escape(p[3])}</p>" if p[3] else "") + block("p", p[4]) + block("p", p[5])


def wrap(text, width, size, font="Sans"):
    lines, line = [], ""
    for word in text.split(" "):
        longer = f"{line} {word}".strip()
        if line and pdfmetrics.stringWidth(longer, font, size) > width:
            lines.append(line)
            line = word
        else:
            line = longer
    return lines + [line] if line else lines


def lines_of(p, width=250, size=8, font="Sans"):
    return p[2] + [""] + wrap(p[3], width, size, font) + [""] + p[4] + [""] + p[5]


def paper(name, width=4 * inch, height=6 * inch):
    return canvas.Canvas(str(HERE / f"{name}.pdf"), pagesize=(width, height), invariant=1)


def text(c, lines, x, y, size=8, font="Sans", lead=1.3):
    c.setFont(font, size)
    for line in lines:
        c.drawString(x, y, line)
        y -= size * lead
    return y


def ghostscript(name, ps):
    with tempfile.TemporaryDirectory() as folder:
        source = pathlib.Path(folder) / "page.ps"
        source.write_text(ps, encoding="latin-1")
        subprocess.run(["ps2pdf", "-dEPSCrop", str(source), str(HERE / f"{name}.pdf")], check=True, capture_output=True)


def groff(name, p, macros):
    body = "\n".join(macros)
    with tempfile.TemporaryDirectory() as folder:
        ps = pathlib.Path(folder) / "page.ps"
        ps.write_bytes(subprocess.run(["groff", "-Kutf8", "-Tps", "-P-p4i,6i"], input=body.encode("utf-8"), check=True, capture_output=True).stdout)
        subprocess.run(["ps2pdf", "-dDEVICEWIDTHPOINTS=288", "-dDEVICEHEIGHTPOINTS=432", "-dFIXEDMEDIA", str(ps), str(HERE / f"{name}.pdf")], check=True, capture_output=True)


def roff(p, columns=False):
    out = [".pl 6i", ".po 0.2i", ".ll 3.5i", ".ps 9", ".vs 11", ".nf"] + [line.replace("'", "\\(aq") for line in p[2]] + [".sp", ".fi", ".ad b" if columns else ".na"]
    out += [p[3].replace("'", "\\(aq"), ".sp", ".nf"] + [line.replace("'", "\\(aq") for line in p[4] + [""] + p[5]]
    return out


def main():
    # By a browser: grids, tables, columns, right-to-left flow of a panel, transforms, small capitals, generated content.
    p = case("grid-three", "scrub")
    browser("grid-three", f"<div class=g>{block('div', p[2])}<div>{html.escape(p[3])}</div>{block('div', p[4] + p[5])}</div>", ".g{display:grid;grid-template-columns:1fr 1fr 1fr;gap:0.12in;font-size:8pt}", "6in 4in")
    p = case("grid-three-no-lot", "scrub", "no-lot")
    browser("grid-three-no-lot", f"<div class=g>{block('div', p[2])}<div>{html.escape(p[3])}</div>{block('div', p[4] + p[5])}</div>", ".g{display:grid;grid-template-columns:1fr 1fr 1fr;gap:0.12in;font-size:8pt}", "6in 4in")
    p = case("small-caps", "balm")
    browser("small-caps", simple(p), ".list{font-variant:small-caps}")
    p = case("upper-case", "oil", "heals")
    browser("upper-case", simple(p), "body{text-transform:uppercase;font-size:8pt}")
    p = case("word-break", "savon")
    browser("word-break", simple(p), ".list{width:1.1in;word-break:break-all}")
    p = case("hyphens-auto", "savon", "no-lot")
    browser("hyphens-auto", f"<div lang=fr>{simple(p)}</div>", ".list{width:1.2in;hyphens:auto}")
    p = case("vertical-writing", "oil")
    browser("vertical-writing", f"<div class=v>{block('p', p[5])}</div>" + simple((*p[:5], [])), ".v{writing-mode:vertical-rl;float:right;height:4in}")
    p = case("rotated-45", "balm")
    browser("rotated-45", f"<div class=r>{simple(p)}</div>", ".r{transform:rotate(45deg);width:2.6in;margin:1.8in 0 0 1.2in;font-size:7pt}h2{font-size:10pt}", "6in 6in")
    p = case("rotated-8-heals", "scrub", "heals")
    browser("rotated-8-heals", f"<div class=r>{simple(p)}</div>", ".r{transform:rotate(8deg);width:3in;margin:0.6in 0.3in}")
    p = case("list-as-items", "balm")
    browser("list-as-items", block("h2", p[2]) + "<b>Ingredients:</b><ul>" + "".join(f"<li>{html.escape(n)}</li>" for n in p[3].split(": ")[1].split(", ")) + "</ul>" + block("p", p[4]) + block("p", p[5]), "")
    p = case("list-as-items-two-columns", "scrub", "unknown-word")
    browser("list-as-items-two-columns", block("h2", p[2]) + "<b>Ingredients:</b><ul>" + "".join(f"<li>{html.escape(n)}</li>" for n in p[3].split(": ")[1].split(", ")) + "</ul>" + block("p", p[4]) + block("p", p[5]), "ul{columns:2;font-size:8pt}")
    p = case("justified-narrow", "scrub")
    browser("justified-narrow", simple(p), ".list{text-align:justify;width:1.5in;font-size:7pt}")
    p = case("letter-space-040", "oil")
    browser("letter-space-040", simple(p), ".list{letter-spacing:0.4em;font-size:7pt}")
    p = case("letter-space-head", "balm", "one-system")
    browser("letter-space-head", simple(p), "h2{letter-spacing:0.5em;font-size:9pt}")
    p = case("display-none", "balm", "no-list")
    browser("display-none", simple(p) + f"<p style='display:none'>{html.escape(BALM[3])}</p>", "")
    p = case("colour-as-paper", "oil", "no-list", "reading.unseen")
    browser("colour-as-paper", simple(p) + f"<div class=n>{html.escape(OIL[3])}</div>", "body{background:#f3e8d0;-webkit-print-color-adjust:exact}.n{color:#f3e8d0}")
    p = case("size-tiny-list", "scrub")
    browser("size-tiny-list", simple(p), ".list{font-size:3pt}")
    p = case("two-labels-side", "balm", None, "reading.several-labels")
    browser("two-labels-side", f"<div class=g><div>{simple(BALM)}</div><div>{simple(SCRUB)}</div></div>", ".g{display:grid;grid-template-columns:1fr 1fr;gap:0.5in;font-size:8pt}h2{font-size:11pt}", "7in 6in")
    p = case("before-after-content", "balm")
    browser("before-after-content", simple(p), "p.list::after{content:' .'}")

    # By groff and Ghostscript: Type 1 fonts, justified and kerned, and PostScript by hand.
    p = case("groff-plain", "scrub")
    groff("groff-plain", p, roff(p))
    p = case("groff-no-net", "balm", "no-net")
    groff("groff-no-net", p, roff(p))
    p = case("groff-justified", "oil", "heals")
    groff("groff-justified", p, roff(p, True))
    p = case("ps-kshow", "balm")
    ghostscript("ps-kshow", "%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 288 432\n/Helvetica findfont 7 scalefont setfont\n" + "".join(f"20 {410 - 11 * i} moveto {{pop pop 0.4 0 rmoveto}} ({line}) kshow\n".replace("(" + line + ")", "(" + line.replace("(", r"\(").replace(")", r"\)") + ")") for i, line in enumerate(lines_of(p, 230, 7)) if line) + "showpage\n")
    p = case("ps-upside-no-lot", "scrub", "no-lot")
    ghostscript("ps-upside-no-lot", "%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 288 432\n288 432 translate 180 rotate\n/Times-Roman findfont 8 scalefont setfont\n" + "".join("20 {} moveto ({}) show\n".format(410 - 11 * i, line.replace("(", r"\(").replace(")", r"\)")) for i, line in enumerate(lines_of(p, 240, 8)) if line) + "showpage\n")
    p = case("ps-columns", "oil")
    left, right = lines_of((*p[:5], []), 110, 7), p[5]
    ghostscript("ps-columns", "%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 288 216\n/Helvetica findfont 7 scalefont setfont\n" + "".join("{} {} moveto ({}) show\n".format(x, 195 - 10 * i, line.replace("(", r"\(").replace(")", r"\)")) for x, ls in ((12, left), (145, right)) for i, line in enumerate(ls) if line) + "showpage\n")

    # By Cairo: text by glyphs, groups, clips, outlines.
    def cairo_page(name, p, draw):
        surface = cairo.PDFSurface(str(HERE / f"{name}.pdf"), 288, 432)
        surface.set_metadata(cairo.PDFMetadata.CREATE_DATE, "2026-11-26T00:00:00")
        c = cairo.Context(surface)
        c.select_font_face("DejaVu Sans")
        draw(c, p)
        surface.finish()

    def lines(c, ls, x=18, y=24, size=7.5):
        c.set_font_size(size)
        for line in ls:
            c.move_to(x, y)
            c.show_text(line)
            y += size * 1.35

    cairo_page("cairo-plain", case("cairo-plain", "savon"), lambda c, p: lines(c, lines_of(p, 230, 7.5)))
    cairo_page("cairo-turned", case("cairo-turned", "oil"), lambda c, p: (c.translate(288, 0), c.rotate(1.5707963), lines(c, lines_of(p, 330, 7.5))))
    cairo_page("cairo-mirror-back", case("cairo-mirror-back", "balm", "no-lot"), lambda c, p: (c.translate(0, 432), c.scale(1, -1), c.translate(0, 432), c.scale(1, -1), lines(c, lines_of(p, 230, 7.5))))

    def group(c, p):
        c.push_group()
        lines(c, lines_of(p, 230, 7.5))
        c.pop_group_to_source()
        c.paint()
    cairo_page("cairo-group", case("cairo-group", "scrub"), group)

    def faded(c, p):
        lines(c, lines_of(p, 230, 7.5))
        c.push_group()
        lines(c, wrap(SCRUB[3], 230, 7.5), y=300)
        c.pop_group_to_source()
        c.paint_with_alpha(0.02)
    cairo_page("cairo-faded-list", case("cairo-faded-list", "scrub", "no-list", "reading.unseen"), faded)

    def outlines(c, p):
        c.set_font_size(7.5)
        y = 24
        for line in lines_of(p, 230, 7.5):
            c.move_to(18, y)
            c.text_path(line)
            c.fill()
            y += 10
    CASES.append("cairo-outlines | us | 0 | refused no words")
    cairo_page("cairo-outlines", BALM, outlines)

    # By ReportLab: forms within forms, mirrored sheets, CMYK, invisible white by process colours, words out of order, super-imposed twice.
    p = case("forms-in-forms", "savon")
    c = paper("forms-in-forms")
    c.beginForm("inner"); text(c, lines_of(p, 240, 8)[:6], 18, 400); c.endForm()
    c.beginForm("outer"); c.doForm("inner"); text(c, lines_of(p, 240, 8)[6:], 18, 300); c.endForm()
    c.saveState(); c.scale(0.9, 0.9); c.doForm("outer"); c.restoreState(); c.save()

    p = case("bold-by-twice", "balm")
    c = paper("bold-by-twice")
    for dx in (0, 0.25):
        text(c, lines_of(p, 240, 8), 18 + dx, 400)
    c.save()

    p = case("sheet-of-six", "scrub", "heals")
    c = paper("sheet-of-six", 8.5 * inch, 11 * inch)
    for row in range(3):
        for col in range(2):
            text(c, lines_of(p, 230, 7), 30 + col * 290, 770 - row * 255, 7)
    c.save()

    CASES.append("sheet-of-three-mixed | us | 6 | reading.several-labels")
    c = paper("sheet-of-three-mixed", 8.5 * inch, 11 * inch)
    for at, one in enumerate((BALM, SCRUB, BALM)):
        text(c, lines_of(one, 230, 7), 40, 770 - at * 255, 7)
    c.save()

    p = case("white-cmyk", "balm", "no-list", "reading.unseen")
    c = paper("white-cmyk")
    text(c, lines_of(p, 240, 8), 18, 400)
    c.setFillColor(CMYKColor(0, 0, 0, 0)); text(c, wrap(BALM[3], 240, 8), 18, 150)
    c.save()

    p = case("knocked-out-cmyk", "oil")
    c = paper("knocked-out-cmyk")
    c.setFillColor(CMYKColor(0.8, 0.4, 0, 0.5)); c.rect(0, 0, 288, 432, stroke=0, fill=1)
    c.setFillColor(CMYKColor(0, 0, 0, 0)); text(c, lines_of(p, 240, 8), 18, 400)
    c.save()

    p = case("word-by-word-shuffled", "savon", "unknown-word")
    c = paper("word-by-word-shuffled")
    pieces, y = [], 400
    for line in lines_of(p, 240, 8):
        x = 18
        for word in line.split(" "):
            pieces.append((x, y, word))
            x += pdfmetrics.stringWidth(word + " ", "Sans", 8)
        y -= 10.4
    c.setFont("Sans", 8)
    for x, y, word in sorted(pieces, key=lambda t: (len(t[2]), t[0])):
        c.drawString(x, y, word)
    c.save()

    p = case("bottle-wrap", "oil", "no-lot")
    c = paper("bottle-wrap", 7 * inch, 2.5 * inch)
    text(c, p[2], 200, 130, 11)
    text(c, wrap(p[3], 120, 6.5), 20, 150, 6.5)
    c.saveState(); c.translate(462, 20); c.rotate(90); text(c, p[4] + p[5], 0, 0, 6.5); c.restoreState()
    c.save()

    p = case("stretched", "balm")
    c = paper("stretched")
    t = c.beginText(18, 400); t.setFont("Sans", 8); t.setLeading(10.4); t.setHorizScale(70)
    for line in lines_of(p, 330, 8):
        t.textLine(line)
    c.drawText(t); c.save()

    p = case("word-spaced", "scrub", "one-system")
    c = paper("word-spaced")
    t = c.beginText(18, 400); t.setFont("Serif", 8); t.setLeading(10.4); t.setWordSpace(4)
    for line in lines_of(p, 180, 8, "Serif"):
        t.textLine(line)
    c.drawText(t); c.save()

    p = case("crop-box", "balm", "no-list", "reading.unseen")
    c = paper("crop-box")
    text(c, lines_of(p, 240, 8), 18, 400); text(c, wrap(BALM[3], 240, 8), 18, 60)
    c.setCropBox((0, 120, 288, 432)); c.save()

    p = case("owner-only-256", "scrub", "heals")
    c = paper("plain-for-password")
    text(c, lines_of(p, 240, 8), 18, 400); c.save()
    subprocess.run(["qpdf", "--encrypt", "", "owner", "256", "--extract=n", "--print=none", "--", str(HERE / "plain-for-password.pdf"), str(HERE / "owner-only-256.pdf")], check=True)
    (HERE / "plain-for-password.pdf").unlink()

    p = case("object-streams", "savon", "no-net")
    c = paper("loose")
    text(c, lines_of(p, 240, 8), 18, 400); c.save()
    subprocess.run(["qpdf", "--object-streams=generate", "--linearize", str(HERE / "loose.pdf"), str(HERE / "object-streams.pdf")], check=True)
    (HERE / "loose.pdf").unlink()

    # Remarks pinned to the page: a stamp's own drawing prints, a sticky note does not.
    p = case("stamp-heals", "balm", None, "claim.drug")
    c = paper("stamp-heals")
    text(c, lines_of(p, 240, 8), 18, 400); c.save()
    stamp(HERE / "stamp-heals.pdf", "Heals eczema", True)
    p = case("sticky-note", "balm", None, None)
    c = paper("sticky-note")
    text(c, lines_of(p, 240, 8), 18, 400); c.save()
    stamp(HERE / "sticky-note.pdf", "Heals eczema", False)

    (HERE / "cases.txt").write_text("# file | market | names in the list | what is found\n" + "\n".join(CASES) + "\n", encoding="utf-8")


def stamp(file, words, prints):
    """Adds an annotation by appending to the file's objects: a stamp with an appearance, or a note without one."""
    json = subprocess.run(["qpdf", "--json-output", str(file)], check=True, capture_output=True, text=True).stdout
    import base64
    import json as j
    data = j.loads(json)
    objects = data["qpdf"][1]
    page = next(v["value"] for v in objects.values() if isinstance(v.get("value"), dict) and v["value"].get("/Type") == "/Page")
    objects["obj:90 0 R"] = {"value": {"/Type": "/Font", "/Subtype": "/Type1", "/BaseFont": "/Helvetica", "/Encoding": "/WinAnsiEncoding"}}
    stream = f"BT /F 14 Tf 4 8 Td ({words}) Tj ET".encode()
    objects["obj:91 0 R"] = {"stream": {"dict": {"/Type": "/XObject", "/Subtype": "/Form", "/BBox": [0, 0, 120, 26], "/Resources": {"/Font": {"/F": "90 0 R"}}}, "data": base64.b64encode(stream).decode()}}
    note = {"/Type": "/Annot", "/Subtype": "/Stamp" if prints else "/Text", "/Rect": [20, 40, 140, 66], "/F": 4 if prints else 0, "/Contents": "u:" + words}
    if prints:
        note["/AP"] = {"/N": "91 0 R"}
    objects["obj:92 0 R"] = {"value": note}
    page["/Annots"] = ["92 0 R"]
    data["qpdf"][0]["maxobjectid"] = 92
    with tempfile.NamedTemporaryFile("w", suffix=".json") as f:
        j.dump(data, f)
        f.flush()
        subprocess.run(["qpdf", "--json-input", f.name, str(file) + ".new"], check=True)
    pathlib.Path(str(file) + ".new").replace(file)


main()
