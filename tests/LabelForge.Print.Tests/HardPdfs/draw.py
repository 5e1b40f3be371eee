#!/usr/bin/python3
"""Draws hard labels as PDF: with a browser, with ReportLab, and changed afterwards by qpdf.

The files it makes are committed; the tests read those, so that none of the programs is needed to run them.
Needs: chromium, python3-reportlab, qpdf. Run it in this folder: ./draw.py
cases.txt says of each: its market, the names in its list, and what is to be found on it.
"""
import html
import pathlib
import subprocess
import tempfile

from reportlab.lib.units import inch
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas

HERE = pathlib.Path(__file__).parent
FONT = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"
pdfmetrics.registerFont(TTFont("Sans", FONT))

LOTION = {
    "front": ["Quail Hollow", "Body Lotion", "8 fl oz (236 mL)"],
    "list": "Ingredients: Water, Glycerin, Cocos Nucifera (Coconut) Oil, Cetearyl Alcohol, Butyrospermum Parkii (Shea) Butter, "
            "Glyceryl Stearate, Stearic Acid, Fragrance, Phenoxyethanol, Ethylhexylglycerin, Xanthan Gum, Disodium EDTA",
    "side": ["Directions: smooth over dry skin as", "often as you like. For external use", "only. Keep out of reach of children."],
    "foot": ["Lot QH-2261", "Quail Hollow Example LLC", "12 Example Road, Fairport, ME 00000", "quailhollow.example"],
}
SALT = {
    "front": ["Turnstone", "Bath Salts", "Net Wt 16 oz (453 g)"],
    "list": "Ingredients: Sodium Chloride, Magnesium Sulfate, Sodium Bicarbonate, Fragrance, Silica",
    "side": ["Add a handful to a warm bath."],
    "foot": ["Lot 26-4", "Turnstone Example LLC", "4 Example Road, Fairport, ME 00000", "turnstone.example"],
}
SEIFE = {
    "front": ["Moosgrund", "Handgemachte Olivenölseife", "100 g"],
    "list": "Ingredients: Sodium Olivate, Sodium Cocoate, Aqua, Glycerin, Butyrospermum Parkii Butter, Parfum, Linalool, Limonene, Citronellol, CI 77288",
    "side": ["Anwendung: mit Wasser aufschäumen, dann", "abspülen. Kontakt mit den Augen vermeiden."],
    "foot": ["Mindestens haltbar bis: 05/2028", "Charge: 26R25-01E", "Muster Seifen GmbH", "Beispielweg 4, 10115 Berlin", "Deutschland"],
}


def wrapped(text, width, size, font="Sans", spacing=0.0):
    lines, line = [], ""
    for word in text.split(" "):
        longer = f"{line} {word}".strip()
        if line and pdfmetrics.stringWidth(longer, font, size) + spacing * len(longer) > width:
            lines.append(line)
            line = word
        else:
            line = longer
    return lines + [line]


class Page:
    """A page of one label, drawn line by line from the top."""

    def __init__(self, name, width=4 * inch, height=6 * inch):
        self.c = canvas.Canvas(str(HERE / f"{name}.pdf"), pagesize=(width, height), invariant=1)
        self.width, self.height = width, height

    def lines(self, lines, x, y, size=8, leading=1.25, spacing=0.0, colour=(0, 0, 0), mode=None):
        for line in lines:
            t = self.c.beginText(x, y)
            t.setFont("Sans", size)
            t.setCharSpace(spacing)
            t.setFillColorRGB(*colour)
            if mode is not None:
                t.setTextRenderMode(mode)
            t.textOut(line)
            self.c.drawText(t)
            y -= size * leading
        return y

    def column(self, label, x, y, width, size=8, spacing=0.0, skip=()):
        if "front" not in skip:
            y = self.lines(label["front"], x, y, size + 3, spacing=spacing) - size
        if "list" not in skip:
            y = self.lines(wrapped(label["list"], width, size, spacing=spacing), x, y, size, spacing=spacing) - size
        y = self.lines([l for part in label["side"] for l in wrapped(part, width, size, spacing=spacing)], x, y, size, spacing=spacing) - size
        return self.lines(label["foot"], x, y, size, spacing=spacing)

    def save(self):
        self.c.save()


def plain(name, label, width=4 * inch, **more):
    p = Page(name, width)
    p.column(label, 18, p.height - 30, p.width - 36, **more)
    p.save()


def columns(name, label, gap, order, size=8):
    """Two columns: front, directions and address beside the list, so near that a line of the one nearly touches the other."""
    p = Page(name, 5 * inch, 3.2 * inch)
    width = (p.width - 24 - gap) / 2
    left, right = 12, 12 + width + gap
    parts = {
        "left": lambda: p.lines(sum([wrapped(l, width, size) for l in label["front"] + label["side"] + label["foot"]], []), left, p.height - 22, size),
        "right": lambda: p.lines(wrapped(label["list"], width, size), right, p.height - 22, size),
    }
    for part in order:
        parts[part]()
    p.save()


def justified(name, label, gap, size=7.5):
    """Both columns filled to the edge, the spaces of each line stretched."""
    p = Page(name, 4.4 * inch, 3.4 * inch)
    width = (p.width - 24 - gap) / 2
    for x, text in ((12, " ".join(label["front"] + label["side"]) + ". " + ". ".join(label["foot"])), (12 + width + gap, label["list"])):
        y = p.height - 22
        lines = wrapped(text, width, size)
        for i, line in enumerate(lines):
            t = p.c.beginText(x, y)
            t.setFont("Sans", size)
            spare = width - pdfmetrics.stringWidth(line, "Sans", size)
            words = line.split(" ")
            if i < len(lines) - 1 and len(words) > 1:
                for k, word in enumerate(words):
                    t.setTextOrigin(x + sum(pdfmetrics.stringWidth(w + " ", "Sans", size) + spare / (len(words) - 1) for w in words[:k]), y)
                    t.textOut(word)
            else:
                t.textOut(line)
            p.c.drawText(t)
            y -= size * 1.25
    p.save()


def turned(name, label, degrees):
    """The front level, the list on a side panel that is turned."""
    p = Page(name, 5 * inch, 5 * inch)
    p.lines(label["front"], 150, 300, 12)
    p.lines(label["side"] + label["foot"], 150, 220, 8)
    p.c.saveState()
    p.c.translate(*{90: (40, 30), 270: (90, 330), 180: (300, 40)}[degrees])
    p.c.rotate(degrees)
    p.lines(wrapped(label["list"], 290, 8), 0, 0, 8)
    p.c.restoreState()
    p.save()


def letter_by_letter(name, label):
    p = Page(name)
    y = p.height - 30
    for line in label["front"] + wrapped(label["list"], p.width - 36, 8) + label["side"] + label["foot"]:
        x = 18
        for letter in line:
            if letter != " ":
                p.c.setFont("Sans", 8)
                p.c.drawString(x, y, letter)
            x += pdfmetrics.stringWidth(letter, "Sans", 8)
        y -= 11
    p.save()


def shuffled(name, label):
    """The words of the page in the order of the alphabet, each where it belongs."""
    p = Page(name)
    y, words = p.height - 30, []
    for line in label["front"] + [""] + wrapped(label["list"], p.width - 36, 8) + [""] + label["side"] + [""] + label["foot"]:
        x = 18
        for word in line.split(" "):
            words.append((word, x, y))
            x += pdfmetrics.stringWidth(word + " ", "Sans", 8)
        y -= 10
    for word, x, y in sorted(words):
        p.c.setFont("Sans", 8)
        p.c.drawString(x, y, word)
    p.save()


def unseen(name, how, what):
    """A part that nobody sees: it is not there."""
    p = Page(name)
    label = LOTION
    hidden = wrapped(label["list"], p.width - 36, 8) if what == "list" else label["front"][2:] if what == "net" else label["foot"][:1]
    rest = {"front": [l for l in label["front"] if l not in hidden], "side": label["side"], "foot": [l for l in label["foot"] if l not in hidden], "list": label["list"]}
    y = p.column(rest, 18, p.height - 30, p.width - 36, skip=("list",) if what == "list" else ()) - 20
    colour = {"white": (1, 1, 1), "pale": (0.86, 0.86, 0.86), "dark": (0.05, 0.2, 0.1), "faint": (0.97, 0.95, 0.9)}.get(how, (0, 0, 0))
    if how == "dark":
        p.c.setFillColorRGB(0, 0.13, 0.1)
        p.c.rect(10, y - 80, p.width - 20, 100, stroke=0, fill=1)
    if how == "clip":
        p.c.saveState()
        path = p.c.beginPath()
        path.rect(10, y + 15, 50, 2)
        p.c.clipPath(path, stroke=0, fill=0)
    x = p.width + 40 if how == "outside" else 18
    p.lines(hidden, x, y, 8, colour=colour, mode=3 if how == "mode3" else None)
    if how == "clip":
        p.c.restoreState()
    if how == "box":
        p.c.setFillColorRGB(1, 1, 1)
        p.c.rect(10, y - 80, p.width - 20, 100, stroke=0, fill=1)
    if how == "picture":
        p.c.drawInlineImage(picture(), 10, y - 80, p.width - 20, 100)
    p.save()


def picture():
    from PIL import Image
    return Image.new("RGB", (40, 20), (200, 180, 150))


def seen(name, how):
    """Light letters on a dark ground, and letters on a picture: they are there."""
    p = Page(name)
    if how == "dark":
        p.c.setFillColorRGB(0.05, 0.2, 0.15)
        p.c.rect(0, 0, p.width, p.height, stroke=0, fill=1)
    else:
        p.c.drawInlineImage(picture(), 0, 0, p.width, p.height)
    colour = (1, 1, 0.95) if how == "dark" else (0, 0, 0)
    y = p.lines(LOTION["front"], 18, p.height - 30, 11, colour=colour) - 8
    y = p.lines(wrapped(LOTION["list"], p.width - 36, 8), 18, y, 8, colour=colour) - 8
    p.lines(LOTION["side"] + [""] + LOTION["foot"], 18, y, 8, colour=colour)
    p.save()


def sheet(name, labels, across=2, down=3):
    p = Page(name, 8.5 * inch, 11 * inch)
    i = 0
    for row in range(down):
        for col in range(across):
            label = labels[i % len(labels)]
            i += 1
            x, y = 20 + col * 300, p.height - 30 - row * 250
            p.column(label, x, y, 270, size=7)
            p.c.rect(x - 8, y - 225, 290, 240, stroke=1, fill=0)
    p.save()


def beside(name):
    """Two products on one page."""
    p = Page(name, 7 * inch, 4 * inch)
    p.column(LOTION, 15, p.height - 25, 220, size=7)
    p.column(SALT, 270, p.height - 25, 220, size=7)
    p.save()


def browser(name, css, body, lang="en"):
    with tempfile.TemporaryDirectory() as folder:
        page = pathlib.Path(folder) / "label.html"
        page.write_text(f"<!doctype html><html lang={lang}><meta charset=utf-8><title>label</title><style>*{{box-sizing:border-box}}body{{margin:0}}{css}</style>{body}")
        subprocess.run(["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", f"--print-to-pdf={HERE / (name + '.pdf')}", page.as_uri()],
                       check=True, capture_output=True, timeout=90)


def blocks(label):
    e = html.escape
    return (f"<h1>{e(label['front'][0])}</h1><h2>{e(label['front'][1])}</h2><p class=net>{e(label['front'][2])}</p><p class=list>{e(label['list'])}</p>"
            f"<p class=side>{e(' '.join(label['side']))}</p>" + "".join(f"<div class=foot>{e(l)}</div>" for l in label["foot"]))


def qpdf(source, name, *options):
    subprocess.run(["qpdf", str(HERE / f"{source}.pdf"), "--static-id", *options, str(HERE / f"{name}.pdf")], check=True)


def main():
    plain("plain", LOTION)
    for degrees in (90, 180, 270):
        qpdf("plain", f"page-turned-{degrees}", f"--rotate=+{degrees}")
        turned(f"side-turned-{degrees}", LOTION, degrees)
    columns("columns-near", LOTION, 0.15 * inch, ["left", "right"])
    columns("columns-near-backwards", SEIFE, 0.15 * inch, ["right", "left"])
    columns("columns-near-small", SEIFE, 0.15 * inch, ["left", "right"], size=6.5)
    justified("columns-justified", LOTION, 0.17 * inch)
    plain("spaced-body", LOTION, spacing=2.0, size=7)
    plain("spaced-half-em", SALT, width=6 * inch, spacing=4.0, size=8)
    letter_by_letter("letter-by-letter", SEIFE)
    shuffled("shuffled", LOTION)
    qpdf("plain", "owner-password", "--encrypt", "", "owner", "256", "--extract=n", "--modify=none", "--")
    qpdf("plain", "owner-password-old", "--allow-weak-crypto", "--encrypt", "", "owner", "40", "--extract=n", "--")
    qpdf("plain", "user-password", "--encrypt", "secret", "owner", "256", "--")
    for how in ("white", "pale", "faint", "dark", "mode3", "outside", "clip", "box", "picture"):
        unseen(f"unseen-list-{how}", how, "list")
    unseen("unseen-net-white", "white", "net")
    unseen("unseen-lot-picture", "picture", "lot")
    seen("light-on-dark", "dark")
    seen("on-a-picture", "picture")
    sheet("sheet-of-one", [LOTION])
    sheet("sheet-mixed", [LOTION, SALT])
    beside("two-beside")
    p = Page("two-pages")
    p.column(LOTION, 18, p.height - 30, p.width - 36)
    p.c.showPage()
    p.column(SALT, 18, p.height - 30, p.width - 36)
    p.save()
    p = Page("front-and-back", 3 * inch, 4 * inch)
    p.lines(LOTION["front"], 40, 200, 14)
    p.c.showPage()
    p.column(LOTION, 12, p.height - 20, p.width - 24, size=7, skip=("front",))
    p.save()
    browser("web-columns", "@page{size:5.5in 3in;margin:.15in} body{font:7pt 'DejaVu Sans';columns:3;column-gap:.15in;text-align:justify} h1,h2{font-size:9pt;margin:0}", blocks(LOTION))
    browser("web-hyphens", "@page{size:2in 6in;margin:.12in} body{font:8pt 'DejaVu Serif';hyphens:auto;text-align:justify} h1,h2{font-size:10pt;margin:0}",
            blocks({**SEIFE, "list": "Ingredients: " + SEIFE["list"][13:].replace("Butyrospermum", "Butyro&shy;spermum").replace("Citronellol", "Citro&shy;nellol").replace("Limonene", "Limo&shy;nene")}).replace("&amp;shy;", "&shy;"), "de")
    browser("web-spaced", "@page{size:4in 5in;margin:.2in} body{font:8pt 'DejaVu Sans'} h1{letter-spacing:.5em;font-size:12pt} h2{letter-spacing:.3em;font-size:10pt;text-transform:uppercase} .list{letter-spacing:.1em} .net{letter-spacing:.2em}", blocks(LOTION))
    browser("web-table", "@page{size:6in 3.5in;margin:.15in} body{font:7.5pt 'DejaVu Sans'} h1,h2{font-size:10pt;margin:0} td{vertical-align:top;width:33%;padding:0 5pt}",
            "<table><tr><td>" + "<td>".join(["".join(f"<div>{html.escape(l)}</div>" for l in SALT["front"] + SALT["side"]), f"<div>{html.escape(SALT['list'])}</div>", "".join(f"<div>{html.escape(l)}</div>" for l in SALT["foot"])]) + "</table>")
    browser("web-wrap", "@page{size:8in 2in;margin:.1in} body{font:7pt 'DejaVu Sans';display:flex;gap:.15in} body>div{flex:1} .front{text-align:center} h1,h2{font-size:11pt;margin:0} .turn{writing-mode:vertical-rl}",
            f"<div>{html.escape(SEIFE['list'])}</div><div class=front>" + "".join(f"<div>{html.escape(l)}</div>" for l in SEIFE["front"]) + "</div><div>" + "".join(f"<div>{html.escape(l)}</div>" for l in SEIFE["side"]) + "</div><div class=turn>" + "".join(f"<div>{html.escape(l)}</div>" for l in SEIFE["foot"]) + "</div>", "de")
    browser("web-round", "@page{size:3in 3in;margin:.1in} body{font:6.5pt 'DejaVu Sans';text-align:center} h1,h2{font-size:9pt;margin:0;text-transform:uppercase} .list{margin:4pt 20pt}", blocks(SALT))
    browser("web-ghost", "@page{size:4in 5in;margin:.2in} body{font:8pt 'DejaVu Sans'} .list{color:#fff} h1,h2{font-size:11pt}", blocks(LOTION))
    browser("web-opacity", "@page{size:4in 5in;margin:.2in} body{font:8pt 'DejaVu Sans'} .list{opacity:.02} h1,h2{font-size:11pt}", blocks(LOTION))
    browser("web-covered", "@page{size:4in 5in;margin:.2in} body{font:8pt 'DejaVu Sans'} h1,h2{font-size:11pt} .list{position:relative} .list::after{content:'';position:absolute;inset:0;background:#cde}", blocks(LOTION))
    browser("web-band", "@page{size:4in 5in;margin:.2in} body{font:8pt 'DejaVu Sans'} h1,h2{font-size:11pt} .list{background:#123;color:#fff;padding:6pt;-webkit-print-color-adjust:exact}", blocks(LOTION))


main()
