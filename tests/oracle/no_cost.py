"""Looks for cost, margin and supplier in every layer of a customer's PDF.

    tests/oracle/no_cost.py FLATWORK JOB.yaml FILE.pdf [--on DATE] [--self-test]

Words and figures come from `flatwork cost --format json` and from the price book. Looked
through: the text as printed, the document data, XMP, attachments, the outline, all strings
of the file, and every stream, uncompressed by qpdf. A figure that the customer's own
figures contain (a price, a tax, a total, a payment, a unit price for unforeseen work) is
no leak. `--self-test` attaches, titles and draws each forbidden thing in copies, and each
must be seen. Needs pikepdf, PyYAML, qpdf, pdftotext, pdfinfo.
Exit status: 0 clean, 1 a leak, 2 the check itself is not to be trusted.
"""

import argparse
import json
import re
import subprocess
import sys
import tempfile
from decimal import Decimal as D
from pathlib import Path

import figures
import pikepdf

# Words that no customer reads, beside names of the book.
WORDS = ["direct cost", "overhead", "contingency", "markup", "margin floor", "profit", "burden"]


def run(*command):
    return subprocess.run(command, capture_output=True, check=True).stdout


def forms(value):
    """An amount as it may be written: 1,305.00 and 1305.00 and 1305 cents are one."""
    value = D(value)
    return {f"{value:,.2f}", f"{value:.2f}"}


def forbidden(cost, takeoff):
    """What must not be found: words, and figures that are not the customer's too."""
    business = figures.load(takeoff.parent / "business.yaml")
    book = figures.load(takeoff.parent / business["books"][0])
    # A kind's name, a base material or a title may repeat words the customer is told.
    told = json.dumps([figures.load(takeoff), business], ensure_ascii=False).lower()
    words = {word for word in WORDS if word not in told} | {"margin"}
    words |= {book["book"].lower(), Path(business["books"][0]).stem}
    words |= {hold["note"].lower() for hold in book.get("holds", []) if "note" in hold}
    words |= {key.lower() for key in book["items"] if key.lower() not in told}
    words |= {item["is"].lower() for item in book["items"].values() if item["is"].lower() not in told}
    if "notes" in figures.load(takeoff):
        words.add(figures.load(takeoff)["notes"].lower())
    visible = {cost["totals"][key] for key in ("price", "tax", "total")}
    visible |= {c[key] for c in cost["combinations"] for key in ("price", "tax", "total")}
    visible |= {p["amount"] for p in cost["payments"]} | {s["price"] for s in cost["sections"]}
    quoted = D(cost["totals"]["total"])
    visible |= {str(D(c["total"]) - quoted) for c in cost["combinations"]}
    shown = {form for value in visible for form in forms(value)}
    shown |= set(re.findall(r"\d+\.\d\d", told))
    hidden = set()
    for line in cost["lines"]:
        # Tax is the customer's; all other lines, and the price of one, are not.
        if line["side"] != "tax":
            hidden |= forms(line["amount"])
        if line["price"] is not None:
            hidden |= forms(line["price"])
    for one in [cost["totals"], *cost["combinations"]]:
        hidden |= forms(one["direct"]) | forms(one["cost"])
        hidden.add(f"{D(one['margin']):.2f}%")
    return words, hidden - shown


def layers(file):
    """(name, text, is it drawing code) of every layer of the file."""
    yield "text", run("pdftotext", "-layout", file, "-").decode(), False
    yield "document data", run("pdfinfo", file).decode(), False
    pdf = pikepdf.open(file)
    yield "XMP", pdf.Root.Metadata.read_bytes().decode() if "/Metadata" in pdf.Root else "", False
    for name, attached in pdf.attachments.items():
        yield f"attachment {name}", attached.get_file().read_bytes().decode("utf-8", "replace"), False
    strings = []
    for thing in pdf.objects:
        strings.extend(texts(thing))
    yield "strings and outline", "\n".join(strings), False
    with tempfile.TemporaryDirectory() as room:
        plain = str(Path(room) / "plain.pdf")
        run("qpdf", "--qdf", "--object-streams=disable", str(file), plain)
        yield "streams", Path(plain).read_bytes().decode("latin-1"), True


def texts(thing):
    """Strings of an object and what it holds itself; others come in their own turn."""
    if isinstance(thing, pikepdf.String):
        yield str(thing)
    elif isinstance(thing, pikepdf.Array):
        for one in thing:
            if isinstance(one, pikepdf.Object) and not one.is_indirect:
                yield from texts(one)
    elif isinstance(thing, (pikepdf.Dictionary, pikepdf.Stream)):
        for _, one in thing.items():
            if isinstance(one, pikepdf.Object) and not one.is_indirect:
                yield from texts(one)


def leaks(file, words, hidden):
    found = []
    for name, text, drawing in layers(file):
        flat = " ".join(text.lower().split())
        for word in words:
            if re.search(rf"(?<![\w-]){re.escape(word)}(?![\w-])", flat):
                found.append(f"{name}: the words `{word}`")
        for figure in hidden:
            # In drawing code a short number may be a coordinate; there, only what carries
            # a thousands comma or a percent sign is sure to be a figure.
            if drawing and not re.search("[,%]", figure):
                continue
            if re.search(rf"(?<![\d,.]){re.escape(figure)}(?![\d])", flat):
                found.append(f"{name}: the figure {figure}")
    return found


def self_test(file, words, hidden, room):
    """Every forbidden word and figure, put into each layer in turn, must be seen."""
    things = sorted(words) + sorted(hidden)
    unseen = 0

    def attach(pdf, n, thing):
        pdf.attachments[f"data{n}.txt"] = pikepdf.AttachedFileSpec(pdf, thing.encode())

    def describe(pdf, n, thing):
        pdf.docinfo[f"/Note{n}"] = pikepdf.String(thing)

    def outline(pdf, _n, thing):
        with pdf.open_outline() as outline:
            outline.root.append(pikepdf.OutlineItem(thing, 0))

    def draw(pdf, _n, thing):
        font = pikepdf.Dictionary(Type=pikepdf.Name.Font, Subtype=pikepdf.Name.Type1)
        font.BaseFont = pikepdf.Name.Helvetica
        page = pdf.pages[0]
        page.add_resource(pdf.make_indirect(font), pikepdf.Name.Font, pikepdf.Name("/Leak"))
        code = b"BT /Leak 9 Tf 20 20 Td (" + thing.encode("cp1252", "replace") + b") Tj ET"
        page.contents_add(pikepdf.Stream(pdf, code))

    for put in (attach, describe, outline, draw):
        pdf = pikepdf.open(file)
        copy = Path(room) / "leak.pdf"
        for n, thing in enumerate(things):
            put(pdf, n, thing)
        pdf.save(copy)
        seen = "\n".join(leaks(copy, words, hidden))
        missed = [t for t in things if f"`{t}`" not in seen and f"figure {t}" not in seen]
        unseen += len(missed)
        print(f"  {put.__name__}: {len(things) - len(missed)} of {len(things)} seen {missed[:5] or ''}")
    return unseen


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("flatwork")
    parser.add_argument("takeoff", type=Path)
    parser.add_argument("pdf")
    parser.add_argument("--on", default="2026-05-04")
    parser.add_argument("--self-test", action="store_true")
    wanted = parser.parse_args()
    command = [wanted.flatwork, "cost", str(wanted.takeoff), "--on", wanted.on, "--format", "json"]
    words, hidden = forbidden(json.loads(run(*command)), wanted.takeoff)
    found = leaks(wanted.pdf, words, hidden)
    for leak in found:
        print(f"  LEAK {leak}")
    print(f"{wanted.pdf}: {len(words)} words and {len(hidden)} figures looked for, {len(found)} found")
    if found:
        sys.exit(1)
    if wanted.self_test:
        with tempfile.TemporaryDirectory() as room:
            sys.exit(2 if self_test(wanted.pdf, words, hidden, room) else 0)


if __name__ == "__main__":
    main()
