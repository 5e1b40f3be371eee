#!/usr/bin/python3
"""Makes the lists of ordinary words, one a language, that labels are read with.

    ./make.py FOLDER [LANGUAGE ...]

FOLDER holds the unpacked packages that SOURCES names (npm pack NAME@VERSION; tar xzf ... -C FOLDER/NAME). What is written, to
src/LabelForge.Law/Markets/Words/Vocabulary/LANGUAGE.br, is text under Brotli: a line that says
how many endings may follow each other and whether the list is whole, a line of endings, a line of beginnings (each "taken
off/put on", "-" for nothing), then words without accents in small letters, sorted by their bytes. Of a list with rules for its
forms the words stand as listed, and the rules as endings, whatever word they were meant for: a word is known that is one of
these with one of those. Licences are in docs/notice.md and beside the lists. Needs python3-brotli.
"""
import json
import pathlib
import re
import sys

import brotli

OUT = pathlib.Path(__file__).resolve().parents[2] / "src/LabelForge.Law/Markets/Words/Vocabulary"

# As src/LabelForge.Labels/Reading/FoldedText.cs.
MARKED = "àáâãäåāăąçćĉċčďđðèéêëēĕėęěĝğġģĥħìíîïĩīĭįıĵķĺļľŀłñńņňòóôõöøōŏőŕŗřśŝşšșţťŧțùúûüũūŭůűųŵýÿŷźżžάέήίόύώϊϋΐΰςѝѐёї’‘ʼ´`"
PLAIN = "aaaaaaaaacccccdddeeeeeeeeegggghhiiiiiiiiijklllllnnnnooooooooorrrsssssttttuuuuuuuuuuwyyyzzzαεηιουωιυιυσиееі'''''"
TABLE = {ord(a): b for a, b in zip(MARKED, PLAIN)}

HUNSPELL = ["bg", "da", "el", "es", "et", "fr", "hr", "hu", "lt", "lv", "nl", "pl", "pt", "ro", "sk", "sl", "sv"]
FREQUENT = ["cs", "fi", "it"]
PART = ["cs", "fi"]

# Languages whose endings follow each other.
TWICE = ["hu"]

# Endings of ours, for lists of forms without rules: "taken off/put on".
OURS = {
    "de": "e en em er es s n ns t st te ten tet test et est end ende enden ender endes endem in innen ung ungen lich liche lichen los lose"
          " losen chen lein heit keit bar bare baren sam same ig ige igen iger iges igem isch ische ischen",
    "it": "e/i o/i a/e o/a e/lo e/la e/li e/le e/ne e/ci e/vi e/mi e/ti e/si ndo/ndolo o/amente e/mente o/oso o/osa o/osi o/ose a/oso a/osa a/osi a/ose e/oso e/osa re/rlo re/rla re/rli re/rle re/rci"
          " re/rvi re/rsi te/telo te/tela te/teli te/tele",
    "cs": "a/y a/u a/e a/ou o/a o/u o/em e/i e/em y/e y/eho y/emu y/ym y/ych y/ymi i/iho i/imu i/im i/ich t/l t/la t/lo t/li t/t t/n a u e y i"
          " em om ovi ove ech ich ami emi ovy ova ka ky ku ce e/ete e/eme i/ite i/ime a/ate a/ame ne",
    "fi": "a n t ta tta ssa sta an en in on un lla lta lle na ksi ja jen ja ia ien issa ista iin illa ilta ille ina iksi mme nne nsa ni si kin"
          " kaan ko han pa kas nut nyt vat mme tte taan tiin isi maan malla massa minen misen mista",
}
BEGINNINGS = {"cs": "ne nej do na od po pre pri pro roz s u v vy z za", "it": "ri dis in s stra", "de": "un", "fi": "epa"}

# Languages that write compounds as one word: a word of two listed ones need not be listed. As KnownWords joins them;
# longer ones are known by their parts.
JOINING = ["de"]
LONGEST_JOINED = 15
LINKS = ["s", "n", "en", "e", "er", "o"]


def fold(word):
    return word.lower().replace("ĳ", "ij").translate(TABLE)


def words_of(text):
    return [w for w in re.findall(r"[^\W\d_]+", fold(text)) if len(w) > 1]


def hunspell(folder):
    """The words of a Hunspell dictionary, its endings and its beginnings."""
    rules = {"SFX": set(), "PFX": set()}
    for line in (folder / "index.aff").read_text("utf-8-sig", "replace").splitlines():
        cells = line.split()
        if len(cells) >= 5 and cells[0] in rules:
            off, on = (fold("" if c == "0" else c.split("/")[0].replace("0", "")) for c in cells[2:4])
            if (off + on).isalpha() and off != on:
                rules[cells[0]].add((off, on))
    listed = (folder / "index.dic").read_text("utf-8-sig", "replace").splitlines()[1:]
    return {w for line in listed for w in words_of(re.split(r"(?<!\\)/|\s", line, 1)[0])}, rules["SFX"], rules["PFX"]


def english(folder):
    """The words of the English dictionary with their endings written out as its rules say, so that no other form is known."""
    rules = {}
    for line in (folder / "index.aff").read_text("utf-8-sig").splitlines():
        c = line.split()
        if len(c) >= 5 and c[0] in ("SFX", "PFX"):
            rules.setdefault(c[1], []).append((c[0], "" if c[2] == "0" else c[2], "" if c[3] == "0" else c[3].split("/")[0], c[4]))
    words = set()
    for line in (folder / "index.dic").read_text("utf-8-sig").splitlines()[1:]:
        word, _, flags = line.split()[0].partition("/")
        forms = [word]
        for kind in ("SFX", "PFX"):
            for rule in (r for f in flags for r in rules.get(f, []) if r[0] == kind):
                for form in forms[:] if kind == "PFX" else [word]:
                    if kind == "SFX" and form.endswith(rule[1]) and re.search(f"(?:{rule[3]})$", form):
                        forms.append(form[:len(form) - len(rule[1])] + rule[2])
                    elif kind == "PFX" and re.match(rule[3], form):
                        forms.append(rule[2] + form[len(rule[1]):])
        words.update(w for f in forms for w in words_of(f) if len(w) > 2)
    return words


def leaves(value):
    if isinstance(value, dict):
        return [leaf for part in value.values() for leaf in leaves(part)]
    return [leaf for part in value for leaf in leaves(part)] if isinstance(value, list) else [value]


def pairs(text):
    return {tuple(p.split("/")) if "/" in p else ("", p) for p in text.split()}


def reduced(words, endings, joins):
    """The words that are no form of another, and where a language joins its words no compound of two that are kept."""
    kept = set()
    for word in sorted(words, key=len):
        form = any(word.endswith(on) and len(word) - len(on) + len(off) >= 4 and word[:len(word) - len(on)] + off in kept
                   for off, on in endings)
        halves = joins and any(word[at:] in kept and (word[:at] in kept or any(word[:at].endswith(link) and len(word[:at]) - len(link) >= 4
                               and word[:at - len(link)] in kept for link in LINKS)) for at in range(3, len(word) - 3))
        if not form and not halves:
            kept.add(word)
    return kept


def main(folder, wanted):
    for language in wanted or ["en", *HUNSPELL, *FREQUENT, "de"]:
        times = 2 if language in TWICE else 1
        endings, beginnings = pairs(OURS.get(language, "")), pairs(BEGINNINGS.get(language, ""))
        if language == "en":
            words = english(folder / "dictionary-en/package")
        elif language in HUNSPELL:
            words, endings, beginnings = hunspell(folder / f"dictionary-{language}/package")
        elif language == "de":
            words = {w for e in json.loads((folder / "all-the-german-words/package/woerter.json").read_text("utf-8")) for w in words_of(e)}
        else:
            lists = folder / f"zxcvbn-ts-language-{language}/package/src"
            words = {w for f in sorted(lists.glob("*.json")) for e in json.loads(f.read_text("utf-8")) for w in words_of(e)}
        if language == "it":
            words |= {w for name in ("italian-words-dict/package/dist/words.json", "italian-verbs-dict/package/dist/verbs.json")
                      for key, value in json.loads((folder / name).read_text("utf-8")).items()
                      for e in [key, *leaves(value)] for w in words_of(str(e))}
        if language in JOINING:
            words = {w for w in words if len(w) <= LONGEST_JOINED}
        if language in [*OURS, "el"]:
            words = reduced(words, endings, language in JOINING)
        rules = [" ".join(f"{off or '-'}/{on or '-'}" for off, on in sorted(r)) for r in (endings, beginnings)]
        text = "\n".join([f"{times} {'part' if language in PART else 'whole'}", *rules, *sorted(words, key=lambda w: w.encode())]) + "\n"
        (OUT / f"{language}.br").write_bytes(brotli.compress(text.encode(), quality=11, lgwin=24))
        print(language, times, len(words), "words", len(endings), "endings", (OUT / f"{language}.br").stat().st_size, "bytes", flush=True)


main(pathlib.Path(sys.argv[1]), sys.argv[2:])
