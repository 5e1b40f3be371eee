#!/usr/bin/python3
"""Ten labels as PDF with geometry of their own: columns, turned panels, letters set apart, small capitals, tables, names broken by hyphens.

The files are committed; the tests read those. Needs weasyprint and python3-reportlab. Run in this folder: ./draw.py.
cases.txt says of each: its market, the names in its list, and what is to be found on it; it was written before anything was tried.
Seven of the ten came out right at first sight; three-sides was drawn wrongly then (a line of its list fell off the page), and is drawn anew.
The list of small-capitals, over whose first line its first letter is drawn, is told to go on.
"""
import pathlib
import subprocess

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas

HERE = pathlib.Path(__file__).parent
pdfmetrics.registerFont(TTFont("Serif", "/usr/share/fonts/truetype/dejavu/DejaVuSerif.ttf"))


def weasy(name, body, css, size):
    page = f"<!doctype html><meta charset=utf-8><style>@page{{size:{size};margin:0.15in}}body{{font:8pt 'Liberation Serif';margin:0}}p{{margin:0 0 4pt}}{css}</style>{body}"
    subprocess.run(["weasyprint", "-", str(HERE / f"{name}.pdf")], input=page.encode(), check=True, capture_output=True)


# Two columns whose gap is narrower than a wide space, ranged right and left to one axis.
weasy("axis", """<table><tr><td class=l><b>Plover &amp; Pine</b><br>Body Lotion<br>8 fl oz (236 mL)<br><br>Press twice,<br>rub in.<td class=r>Ingredients: Water, Glycerin, Cetearyl Alcohol,
Helianthus Annuus (Sunflower) Seed Oil, Polysorbate 60, Phenoxyethanol, Fragrance<br><br>Lot 88-C<br>Plover &amp; Pine LLC, 14 Sample Loop, Fairport, ME 00000<br>555-0148</table>""",
      ".l{text-align:right;width:1.1in;padding:0 3pt 0 0;vertical-align:top}.r{width:2in;padding:0 0 0 3pt;vertical-align:top}", "3.5in 2.2in")
# A panel turned upright at either side of one that is not.
weasy("three-sides", """<div class=a>Ingredients: Sodium Palmate, Sodium Cocoate, Aqua, Glycerin, Parfum, Linalool</div>
<div class=m><b>OUZEL BECK</b><p>Hand soap<p>100 g</div><div class=b>Best before end 04/2028. Batch OB-2. Ouzel Beck Soaps, 2 Example Lane, Kendal LA99 0AA, UK. Avoid contact with eyes.</div>""",
      "div{position:absolute}.a{width:2.4in;top:0;left:0.1in;transform:translateY(2.5in) rotate(-90deg);transform-origin:0 0}.m{left:1.1in;top:0.8in;width:1.4in;text-align:center;font-size:12pt}.b{width:2.4in;left:3.6in;top:0.1in;transform:rotate(90deg);transform-origin:0 0}", "4in 3in")
# Letters 0.3 em apart throughout, in capitals.
weasy("wide-letters", """<p>TEAL &amp; TARN<p>BATH SALTS<p>NET WT 12 OZ (340 G)<p>INGREDIENTS: SODIUM CHLORIDE, MAGNESIUM SULFATE, FRAGRANCE, LIMONENE<p>TEAL &amp; TARN, 5 SAMPLE AVE, DULUTH, MN 55800<p>TEALTARN.EXAMPLE""",
      "p{letter-spacing:0.3em;font-size:7pt;text-align:center}", "4in 3in")
# Small capitals with a large first letter, justified, names broken by hyphens.
weasy("small-capitals", """<div lang=en><h3>Curlew Moor</h3><p>Beard oil, 30 ml<p class=j>Ingredients: Simmondsia Chinensis Seed Oil, Argania Spinosa Kernel Oil, Caprylic/Capric Triglyceride, Alpha-Isomethyl Ionone, Hydroxycitronellal, Limonene<p>Heals alopecia.<p>6M. Batch 7. External use only.<p>Curlew Moor Ltd, 1 Example Row, Hexham NE99 0AA</div>""",
      ".j{width:1in;text-align:justify;hyphens:auto}div{font-variant:small-caps}.j::first-letter{font-size:20pt;float:left}", "3in 4.5in")
# A table of label and value whose rows shade and whose list is a cell of four lines.
weasy("rows", """<table><tr><th>Produit<td>Savon surgras à la lavande<tr><th>Poids net<td>100 g<tr><th>Ingredients<td>Sodium Olivate, Sodium Cocoate, Aqua, Glycerin, Olea Europaea Fruit Oil, Parfum, Linalool<tr><th>Emploi<td>Mouiller, faire mousser, rincer. Éviter le contact avec les yeux.<tr><th>À utiliser de préférence avant fin<td>03/2028<tr><th>Fabricant<td>Savonnerie du Pluvier, 8 rue de l'Exemple, 44000 Nantes, France</table>""",
      "th{text-align:left;width:0.9in;font-size:6.5pt;vertical-align:top}td{border-bottom:0.5pt solid #999}tr:nth-child(odd){background:#eee}", "3.2in 3in")
# The list in three balanced columns under a heading across all of them.
weasy("columns-under", """<h3>Tiefer Teich</h3><p>Duschgel, 250 ml ℮<p><b>Ingredients:</b><div class=c>Aqua, Sodium Coco-Sulfate, Cocamidopropyl Betaine, Glycerin, Sodium Chloride, Parfum, Citric Acid, Sodium Benzoate, Potassium Sorbate, Linalool, Limonene</div><p>Kontakt mit den Augen vermeiden. 12M<p>Charge TT-5<p>Seifenhof Teich, Musterweg 2, 24103 Kiel, Deutschland""",
      ".c{columns:3;column-gap:6pt;font-size:6pt;hyphens:auto}", "3in 3in")


def drawn(name, size, draw):
    c = canvas.Canvas(str(HERE / f"{name}.pdf"), pagesize=size, invariant=1)
    draw(c)
    c.save()


def lines(c, x, y, words, size=7, lead=9):
    c.setFont("Serif", size)
    for i, line in enumerate(words):
        c.drawString(x, y - lead * i, line)


LIST = ["Ingredients: Water, Sodium Lau-", "royl Sarcosinate, Cocamido-", "propyl Betaine, Glycerin, Phen-", "oxyethanol, Fragrance, Tet-", "rasodium EDTA, Blue 1"]


def hyphens(c):
    # A typist's hyphens, the lines drawn from the last to the first.
    for i in reversed(range(len(LIST))):
        lines(c, 12, 150 - 9 * i, [LIST[i]])
    lines(c, 12, 215, ["Grebe & Gale", "Body Wash", "16 fl oz (473 mL)"], 9, 12)
    lines(c, 12, 95, ["Lather, rinse.", "Lot GG-81", "Grebe & Gale, 3 Invented Way", "Fairport, ME 00000", "grebegale.example"])


def slanted(c):
    # The whole label turned by seven degrees.
    c.translate(30, 10)
    c.rotate(7)
    lines(c, 12, 200, ["Rook's Nest", "Lip Balm", "0.15 oz (4.25 g)"], 9, 12)
    lines(c, 12, 150, ["Ingredients: Beeswax, Cocos Nucifera (Coconut)", "Oil, Ricinus Communis (Castor) Seed Oil, Flavor"])
    lines(c, 12, 115, ["Helps blorn the wexels.", "Rook's Nest Goods, 9 Sample St, Fairport, ME 00000", "555-0171", "Lot RN6"])


def word_by_word(c):
    # Every word drawn by itself, in an order of no meaning, one line stretched.
    rows = ["Merganser Mill", "Körperbutter", "200 ml", "Ingredients: Butyrospermum Parkii Butter,", "Cocos Nucifera Oil, Cera Alba, Tocopherol, Parfum, Citral",
            "Nur äußerlich. 6M", "Charge 19", "Mühle Merganser GmbH, Musterstr. 1", "24103 Kiel, Deutschland"]
    words = []
    for i, row in enumerate(rows):
        x, stretch = 14, 1.6 if i == 4 else 1
        for w in row.split(" "):
            words.append((x, 200 - 13 * i, w))
            x += pdfmetrics.stringWidth(w, "Serif", 7) + 2.2 * stretch
    c.setFont("Serif", 7)
    for x, y, w in sorted(words, key=lambda t: t[2]):
        c.drawString(x, y, w)


def facing(c):
    # Two panels head to head, as on a wrap that is folded over the top.
    lines(c, 20, 90, ["Smew & Son", "Shaving soap", "Net Wt 4 oz (113 g)"], 10, 14)
    c.saveState()
    c.translate(240, 130)
    c.rotate(180)
    lines(c, 10, -12, ["Ingredients: Potassium Stearate, Sodium Stearate,", "Water, Glycerin, Fragrance, Linalool", "Smew & Son, 77 Sample Quay, Fairport, ME 00000", "smew.example"])
    c.restoreState()


drawn("typists-hyphens", (180, 240), hyphens)
drawn("seven-degrees", (260, 260), slanted)
drawn("word-by-word", (260, 220), word_by_word)
drawn("head-to-head", (240, 200), facing)
