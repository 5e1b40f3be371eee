#!/usr/bin/python3
"""Five labels as PDF: words on a curve, two narrow columns with ligatures, a turned tube, a great first letter, lines half a line apart.

The files are committed; the tests read those. Needs ghostscript, chromium, python3-cairo, weasyprint and python3-reportlab. Run here: ./draw.py.
cases.txt says of each: its market, the names in its list, and what is to be found on it; it was written before anything was tried.
Three came out right at first sight; initial was drawn wrongly then (letters over one another), and is drawn anew.
"""
import math
import pathlib
import subprocess
import tempfile

import cairo
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas

HERE = pathlib.Path(__file__).parent

# A round tin by PostScript: the name on the upper arc and the quantity on the lower, each letter turned by itself; lines cut to the circle.
ROUND = r"""%!PS
<</PageSize [216 216]>> setpagedevice
/arcup { /r exch def /s exch def /Helvetica-Bold findfont 13 scalefont setfont
  gsave 108 108 translate s stringwidth pop r div 57.29578 mul 2 div rotate
  0 1 s length 1 sub { s exch 1 getinterval /c exch def c stringwidth pop r div 57.29578 mul /a exch def
    a 2 div neg rotate c stringwidth pop 2 div neg r moveto c show a 2 div neg rotate } for grestore } def
/arcdown { /r exch def /s exch def /Helvetica-Bold findfont 11 scalefont setfont
  gsave 108 108 translate s stringwidth pop r div 57.29578 mul 2 div neg rotate
  0 1 s length 1 sub { s exch 1 getinterval /c exch def c stringwidth pop r div 57.29578 mul /a exch def
    a 2 div rotate c stringwidth pop 2 div neg r neg moveto c show a 2 div rotate } for grestore } def
/mid { /y exch def /Helvetica findfont 6.5 scalefont setfont dup stringwidth pop 2 div 108 exch sub y moveto show } def
108 108 104 0 360 arc stroke
(SANDPIPER & SAGE FOOT BALM) 86 arcup
(Net Wt 2 oz \(56 g\)) 92 arcdown
(Ingredients: Olea Europaea) 142 mid
(\(Olive\) Fruit Oil, Beeswax, Lanolin,) 133 mid
(Butyrospermum Parkii \(Shea\) Butter, Menthol,) 124 mid
(Salvia Officinalis \(Sage\) Leaf Extract, Tocopherol) 115 mid
(Rub in at night. For external use only.) 101 mid
(Sandpiper & Sage LLC, 8 Example Shore Rd,) 87 mid
(Bandon, OR 97400. 555-0137) 78 mid
(Lot SS-206) 66 mid
showpage
"""
subprocess.run(["gs", "-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pdfwrite", f"-sOutputFile={HERE / 'round-tin.pdf'}", "-"], input=ROUND.encode(), check=True)

# Two columns 4 points apart, justified and hyphenated by the browser, with ligatures and real small capitals; no lot.
STRIPS = """<!doctype html><html lang=de><meta charset=utf-8><style>@page{size:2.6in 2.4in;margin:0.12in}body{margin:0;font:7.5pt 'Liberation Serif';
font-variant-ligatures:common-ligatures}h1{font-size:13pt;font-variant:small-caps;letter-spacing:1.5pt;margin:0 0 3pt;text-align:center}
div{columns:2;column-gap:4pt;text-align:justify;hyphens:auto}p{margin:0 0 3pt}</style><h1>Waldschiff</h1><div><p>Reinigungsöl fürs Gesicht, 50 ml ℮. Auf die
trockene Haut auftragen, sanft massieren und mit warmem Wasser abspülen. Kontakt mit den Augen vermeiden.<p>Ingredients: Helianthus Annuus Seed Oil,
Ricinus Communis Seed Oil, Polyglyceryl-4 Oleate, Coffea Arabica Seed Oil, Parfum, Tocopherol, Alpha-Isomethyl Ionone, Limonene, Linalool<p>12M<p>Ölmühle
Waldschiff GmbH, Beispielufer 7, 24999 Musterstadt, Deutschland</div></html>"""
with tempfile.TemporaryDirectory() as folder:
    page = pathlib.Path(folder) / "two-strips.html"
    page.write_text(STRIPS, encoding="utf-8")
    subprocess.run(["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer",
                    f"--print-to-pdf={HERE / 'two-strips.pdf'}", page.as_uri()], check=True, capture_output=True)


def tube():
    """A tube that lies: the front reads upwards, letters apart; the back reads downwards at its side, in narrow lines."""
    surface = cairo.PDFSurface(str(HERE / "tube.pdf"), 200, 300)
    c = cairo.Context(surface)
    c.select_font_face("DejaVu Serif")

    def spaced(text, size, apart):
        c.set_font_size(size)
        for letter in text:
            c.show_text(letter)
            c.rel_move_to(apart, 0)

    c.save()
    c.translate(40, 285)
    c.rotate(-math.pi / 2)
    for i, (text, size, apart) in enumerate([("KITTIWAKE", 20, 5), ("HAND CREAM", 10, 3), ("75 ml", 11, 0.5)]):
        c.move_to(0, 26 * i)
        spaced(text, size, apart)
    c.restore()
    c.save()
    c.translate(185, 12)
    c.rotate(math.pi / 2)
    for i, line in enumerate(["Ingredients: Aqua, Glycerin, Cetearyl Alcohol, Prunus Amyg-", "dalus Dulcis Oil, Parfum, Sodium Benzoate, Citric Acid,",
                              "Linalool", "Rub in well. Keep out of eyes.", "12M · Batch KW-118", "Kittiwake Skin Ltd, 4 Sample Cliff,",
                              "Scarborough YO99 9ZZ, UK"]):
        c.move_to(0, 10 * i)
        spaced(line, 6.5, 0.4)
    c.restore()
    surface.finish()


tube()

# A first letter over three lines and small capitals after it, the list itself beginning with one; and words that claim.
INITIAL = """<style>@page{size:3.2in 3in;margin:0.15in}body{font:8pt 'Liberation Serif';margin:0}p{margin:0 0 5pt;text-align:justify;hyphens:auto}
span{float:left;font-size:27pt;line-height:0.85;padding-right:2pt}b{font:8pt 'Liberation Serif';font-variant:small-caps}h2{margin:0 0 4pt;font-size:12pt}</style>
<body lang=en><h2>Old Orchard Body Wash</h2><p><span>E</span><b>very autumn we</b> shake the trees and wait for the wasps to leave. What is left goes into this bottle, with a
little patience. It clears eczema in a week.<p><span>I</span><b>ngredients: Water,</b> Sodium Coco-Sulfate, Cocamidopropyl Betaine, Glycerin, Pyrus Malus (Apple) Fruit
Extract, Sodium Benzoate, Fragrance<p>12 fl oz (354 mL)<p>Old Orchard Soap Co., 30 Example Hill Rd, Cornish, NH 03700. 555-0109. Lot 4-OO"""
subprocess.run(["weasyprint", "-", str(HERE / "initial.pdf")], input=("<!doctype html><meta charset=utf-8>" + INITIAL).encode(), check=True, capture_output=True)


def half_lines():
    """English at the left and French at the right, a finger's breadth apart, each line of one between two of the other; letters set apart."""
    pdfmetrics.registerFont(TTFont("Serif", "/usr/share/fonts/truetype/liberation/LiberationSerif-Regular.ttf"))
    c = canvas.Canvas(str(HERE / "half-lines.pdf"), pagesize=(260, 200), invariant=1)

    def column(x, top, words):
        text = c.beginText(x, top)
        text.setFont("Serif", 7)
        text.setLeading(10)
        text.setCharSpace(0.7)
        text.setHorizScale(88)
        for line in words:
            text.textLine(line)
        c.drawText(text)

    column(12, 180, ["SNOWBERRY LANE", "Bath oil", "Pour a capful into", "the running water.", "Caution: the tub", "becomes slippery.", "100 mL"])
    column(128, 175, ["SNOWBERRY LANE", "Huile de bain", "Verser un bouchon", "dans l'eau qui coule.", "100 mL"])
    column(12, 100, ["Ingredients/Ingrédients: Helianthus Annuus Seed Oil, Prunus", "Amygdalus Dulcis Oil, Parfum, Tocopherol, Limonene, Linalool"])
    column(12, 70, ["Snowberry Lane Bath Co., 19 Sample Rd, Banff AB T0X 0X4", "snowberrylane.example  Lot SB-9"])
    c.save()


half_lines()
